using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>Polylines (an arch lip through several gap points) against the wheel.</summary>
/// <remarks>Source: docs/theory/clearance.md §5.</remarks>
public static class PolylineClearing
{
    /// <summary>The gap between the wheel and a polyline without thickness.</summary>
    /// <param name="wheel">Tyre and rim.</param>
    /// <param name="corners">One point or more, in S (a, 12, 3), m.</param>
    /// <remarks>
    /// Least over all points of the line of their signed distance; negative is the depth of the deepest of them. Error below 1e-6 m
    /// when certified. Source: docs/theory/clearance.md §5.
    /// </remarks>
    /// <exception cref="ArgumentException">No corner, or one that is not finite: a caller's bug.</exception>
    public static Clearing Of(in WheelSolid wheel, ReadOnlySpan<Vec3> corners) =>
        TryBelow(wheel, corners, double.PositiveInfinity, out Clearing least) ? least : least;

    /// <summary>The gap, where it is less than a bound that is known already: what cannot be is not looked at.</summary>
    /// <param name="wheel">Tyre and rim.</param>
    /// <param name="corners">One point or more, in S (a, 12, 3), m.</param>
    /// <param name="bound">m.</param>
    /// <param name="least">As <see cref="Of"/> gives it; of no use where the gap is not below the bound.</param>
    /// <returns>True if the gap is below the bound.</returns>
    /// <remarks>Source: docs/theory/clearance.md §5.</remarks>
    /// <exception cref="ArgumentException">No corner, or one that is not finite: a caller's bug.</exception>
    public static bool TryBelow(in WheelSolid wheel, ReadOnlySpan<Vec3> corners, double bound, out Clearing least)
    {
        if (corners.IsEmpty)
        {
            throw new ArgumentException("A polyline has at least one corner.", nameof(corners));
        }

        Span<SegmentLeast.Interval> stack = stackalloc SegmentLeast.Interval[SegmentLeast.StackLength];
        var search = new SegmentLeast(wheel, stack);
        bool certified = true, below = false, line = false;
        Vec3 bestPoint = corners[0];
        double best = bound, bestAlong = 0;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            Vec3 step = corners[i + 1] - corners[i];
            double length = step.Length;
            if (!double.IsFinite(length))
            {
                throw new ArgumentException("A polyline's corners are finite.", nameof(corners));
            }

            if (length <= 1e-9)
            {
                continue;
            }

            line = true;
            Vec3 direction = step / length;
            double s = -1;
            for (int piece = 0; piece < wheel.Pieces; piece++)
            {
                certified &= search.Lower(piece, corners[i], direction, length, ref best, ref s);
            }

            if (s >= 0)
            {
                below = true;
                (bestPoint, bestAlong) = (corners[i] + (direction * s), i + (s / length));
            }
        }

        bool near = below || (!line && !wheel.IsBeyond(bestPoint, bound));
        least = near ? Clearing.OfPoint(wheel, bestPoint, bestAlong) with { Certified = certified } : default;
        return below || (near && least.Gap < bound);
    }

    /// <summary>What a polyline's gap does not lie below, from a look at corners and segment middles, m.</summary>
    /// <param name="wheel">Tyre and rim.</param>
    /// <param name="corners">One point or more, in S (a, 12, 3), m.</param>
    /// <param name="bound">What does not lie below this need not be told apart, m: then this is given back.</param>
    /// <param name="found">The least gap seen, m: the true one is no larger. Infinite where nothing was looked at.</param>
    /// <remarks>Of a single point both are its gap. Source: docs/theory/clearance.md §5.</remarks>
    public static double AtLeast(in WheelSolid wheel, ReadOnlySpan<Vec3> corners, double bound, out double found)
    {
        found = double.PositiveInfinity;
        if (corners.Length == 1)
        {
            found = wheel.IsBeyond(corners[0], bound) ? double.PositiveInfinity : wheel.SignedDistance(corners[0]);
            return Math.Min(found, bound);
        }

        var search = new SegmentLeast(wheel, []);
        double least = bound;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            Vec3 step = corners[i + 1] - corners[i];
            double length = step.Length;
            Vec3 direction = length > 1e-9 ? step / length : Vec3.UnitX;
            for (int piece = 0; piece < wheel.Pieces; piece++)
            {
                search.Look(piece, corners[i], direction, length, ref least, ref found);
            }
        }

        return least;
    }

    /// <summary>
    /// The gap of a round bar: the polyline's gap less its radius (m). Ends count as balls. Source: docs/theory/clearance.md §5.
    /// </summary>
    public static Clearing OfBar(in WheelSolid wheel, ReadOnlySpan<Vec3> corners, double radius)
    {
        Clearing line = Of(wheel, corners);
        Vec3 toWheel = line.OnWheel - line.OnObstacle;
        double length = toWheel.Length;
        double inward = line.Gap >= 0 ? 1 : -1;
        Vec3 touch = length > 0 ? line.OnObstacle + (toWheel * (inward * radius / length)) : line.OnObstacle;
        return line with { Gap = line.Gap - radius, OnObstacle = touch };
    }
}
