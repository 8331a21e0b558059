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
    public static Clearing Of(in WheelSolid wheel, ReadOnlySpan<Vec3> corners)
    {
        if (corners.IsEmpty)
        {
            throw new ArgumentException("A polyline has at least one corner.", nameof(corners));
        }

        Span<SegmentLeast.Interval> stack = stackalloc SegmentLeast.Interval[SegmentLeast.StackLength];
        var least = new SegmentLeast(wheel, stack);
        bool certified = true;
        Vec3 bestPoint = corners[0];
        double best = Clearing.OfPoint(wheel, corners[0]).Gap;
        double bestAlong = 0;
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

            Vec3 direction = step / length;
            double s = -1;
            for (int piece = 0; piece < wheel.Pieces; piece++)
            {
                certified &= least.Lower(piece, corners[i], direction, length, ref best, ref s);
            }

            if (s >= 0)
            {
                (bestPoint, bestAlong) = (corners[i] + (direction * s), i + (s / length));
            }
        }

        return Clearing.OfPoint(wheel, bestPoint, bestAlong) with { Certified = certified };
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
