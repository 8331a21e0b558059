using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// All that a drop link passes over travel, steer and the other wheel's travel, as a thick surface in S: there the wheel stands still, so
/// that any other wheel can be held against it at once.
/// </summary>
/// <remarks>
/// A lattice of the link's places, closed by plates between neighbours. What bends out between two of them is added to the thickness, so
/// that a gap is never stated too large. Source: docs/theory/clearance.md §10.
/// </remarks>
internal static class SweptLink
{
    /// <summary>How far an arc may bend out beyond what its neighbours' second difference says: it changes slowly.</summary>
    private const double Safety = 1.5;

    /// <returns>Null where the wheel can be nowhere.</returns>
    public static ClearanceObstacle? Of(LoadState state, CornerReader n, PoseGrid grid, in NearLine line)
    {
        int count = grid.Count;
        var points = new Vec3[2 * count];   // outer end, bar's end
        bool[] there = new bool[count];
        Span<Vec3> ends = stackalloc Vec3[2];
        for (int i = 0; i < count; i++)
        {
            var (s, o, t) = grid.At(i);
            PosePlace place = grid.PlaceOf(s, o, t);
            there[i] = grid.Frame(s, o, t, out SpindleFrame rest) && line.InSpindle(state.Places, n, place, state.Of(rest, place), ends);
            (points[2 * i], points[(2 * i) + 1]) = (ends[0], ends[1]);
        }

        var plates = new List<int>();
        double bend = 0;
        for (int i = 0; i < count; i++)
        {
            Lay(grid, there, points, i, plates, ref bend);
        }

        int first = Array.IndexOf(there, true);
        plates.AddRange(plates.Count == 0 && first >= 0 ? [2 * first, (2 * first) + 1, (2 * first) + 1] : (int[])[]);
        return first < 0 ? null
            : ClearanceObstacle.OfPlates(points, [.. plates], line.Radius + (Safety * bend), ObstacleFrame.Knuckle);
    }

    // The plates from one place of the lattice to the next ones each way, and those between the ends of four.
    private static void Lay(PoseGrid grid, bool[] there, Vec3[] points, int i, List<int> plates, ref double bend)
    {
        var (s, o, t) = grid.At(i);
        Span<int> next = [Next(1, 0, 0), Next(0, 1, 0), Next(0, 0, 1)], before = [Next(-1, 0, 0), Next(0, -1, 0), Next(0, 0, -1)];
        for (int way = 0; way < 3; way++)
        {
            int to = next[way];
            if (!there[i] || to < 0)
            {
                continue;
            }

            plates.AddRange([2 * i, (2 * i) + 1, (2 * to) + 1, 2 * i, (2 * to) + 1, 2 * to]);
            for (int end = 0; end < 2 && before[way] >= 0; end++)
            {
                // Of three places of an arc the middle one stands off by four times what each half bends.
                Vec3 off = points[(2 * before[way]) + end] - (2 * points[(2 * i) + end]) + points[(2 * to) + end];
                bend = Math.Max(bend, off.Length / 8);
            }

            for (int other = way + 1; other < 3; other++)
            {
                if (next[other] is var aside and >= 0 && to + aside - i is var corner && corner < there.Length && there[corner])
                {
                    for (int end = 0; end < 2; end++)
                    {
                        plates.AddRange([(2 * i) + end, (2 * to) + end, (2 * corner) + end, (2 * i) + end, (2 * corner) + end,
                            (2 * aside) + end]);
                    }
                }
            }
        }

        int Next(int ds, int d, int dt) =>
            s + ds >= 0 && s + ds < grid.Steers.Count && o + d >= 0 && o + d < grid.Others && t + dt is >= 0 and < PoseGrid.Travels
            && there[grid.Index(s + ds, o + d, t + dt)] ? grid.Index(s + ds, o + d, t + dt) : -1;
    }
}
