using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>A part of the box, from low to high corner.</summary>
/// <remarks>The default is the reference state alone. Source: docs/theory/certified-clearance.md §3.</remarks>
internal readonly record struct PoseCell(PosePlace Low, PosePlace High)
{
    /// <summary>The two halves across a way.</summary>
    public (PoseCell Low, PoseCell High) Halved(int way)
    {
        double middle = 0.5 * (Low[way] + High[way]);
        return (this with { High = High.With(way, middle) }, this with { Low = Low.With(way, middle) });
    }
}

/// <summary>A cell seen from one pose in it: straight-line changes along the three ways, and what they may miss.</summary>
/// <param name="Origin">The place of that pose, allowed by the limit.</param>
/// <param name="Pose">The pose there, a true one.</param>
/// <param name="Travel">Change over the greatest distance from the origin along travel; Steer and Third likewise.</param>
/// <param name="HubRest">m.</param>
/// <param name="SpindleRest">rad.</param>
/// <remarks>Source: docs/theory/certified-clearance.md §3.</remarks>
internal readonly record struct CellMotion(
    PosePlace Origin, WheelPose Pose, PoseChange Travel, PoseChange Steer, PoseChange Third, double HubRest, double SpindleRest)
{
    public PoseChange this[int way] => way == 0 ? Travel : way == 1 ? Steer : Third;

    public CoarsePose Coarse => new(Pose, Travel, Steer, Third, HubRest, SpindleRest);
}
