using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>How a certification ended.</summary>
public enum CertifyingStop
{
    /// <summary>Lower to Upper is no wider than the tolerance asked for.</summary>
    Closed = 0,

    /// <summary>No pose below the limit given was met; Lower is that limit less the tolerance, and there is no pose.</summary>
    ClearByLimit,

    /// <summary>
    /// They overlap deeply, by Upper at a real pose: how much more in another pose was not pursued, and Lower only
    /// says how deep anything can be.
    /// </summary>
    DeepOverlap,

    /// <summary>The limit of cells was met: the interval holds, but it is wider.</summary>
    CellLimit,

    /// <summary>The poses jump or bend without end: no bound from below.</summary>
    NotSmooth,

    /// <summary>No place of the box can be reached.</summary>
    Unreachable,

    /// <summary>The caller stopped it.</summary>
    Cancelled,
}

/// <summary>The least gap between the wheel and its obstacles over a box of poses, as an interval.</summary>
/// <param name="Lower">m: no allowed pose has a smaller gap. Minus infinity when nothing can be said.</param>
/// <param name="Upper">m: the pose named has no larger gap. Plus infinity when no pose below the limit was met.</param>
/// <param name="Place">Travel, steer and third way of that pose.</param>
/// <param name="Pose">The pose.</param>
/// <param name="Clearing">The gap there, in S; its Gap is to the obstacle as it stands in its tree.</param>
/// <param name="Obstacle">Which obstacle, by its place in the list; -1 for none.</param>
/// <param name="Why">How it ended.</param>
/// <param name="Cells">Cells of poses looked at.</param>
/// <param name="UnreachedCells">Smallest cells left out because no pose in them was found to be reachable.</param>
/// <remarks>
/// Negative: they overlap, by the depth of docs/theory/scan-clearance.md §5. Source: docs/theory/certified-clearance.md §5.
/// </remarks>
public sealed record CertifiedGap(
    double Lower, double Upper, PosePlace Place, WheelPose Pose, Clearing Clearing, int Obstacle, CertifyingStop Why, int Cells,
    int UnreachedCells)
{
    public double Width => Upper - Lower;
}
