using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Bench;

/// <summary>Poses of a linkage over a grid of travel, rack and plate.</summary>
/// <remarks>Source: docs/theory/hardpoints.md §8.</remarks>
internal static class LinkageMap
{
    /// <summary>
    /// Follows the whole grid, travel to and fro within each place of the rack, so that every pose has a neighbour before it.
    /// </summary>
    /// <param name="follower">Where it stands does not matter.</param>
    /// <param name="travels">m, in order.</param>
    /// <param name="racks">m along +Y, in order.</param>
    /// <param name="plates">m, in order.</param>
    /// <param name="poses">Plate by plate, in it rack by rack, in it travel by travel; the default where a pose cannot be reached.</param>
    /// <returns>How many poses were reached.</returns>
    /// <exception cref="ArgumentException"><paramref name="poses"/> has not one place for each.</exception>
    /// <remarks>Source: docs/theory/hardpoints.md §8.</remarks>
    public static int Fill(
        KnuckleFollower follower, ReadOnlySpan<double> travels, ReadOnlySpan<double> racks, ReadOnlySpan<double> plates,
        Span<KnucklePose> poses)
    {
        if (poses.Length != travels.Length * racks.Length * plates.Length)
        {
            throw new ArgumentException(
                $"{poses.Length} places for {travels.Length} x {racks.Length} x {plates.Length} poses.", nameof(poses));
        }

        int reached = 0;
        for (int p = 0; p < plates.Length; p++)
        {
            for (int r = 0; r < racks.Length; r++)
            {
                Span<KnucklePose> row = poses.Slice(((p * racks.Length) + r) * travels.Length, travels.Length);
                bool back = ((p * racks.Length) + r) % 2 == 1;
                for (int k = 0; k < row.Length; k++)
                {
                    int t = back ? row.Length - 1 - k : k;
                    bool here = follower.MoveTo(travels[t], racks[r], plates[p]) == Reach.Reached;
                    row[t] = here ? follower.Pose : default;
                    reached += here ? 1 : 0;
                }
            }
        }

        return reached;
    }
}
