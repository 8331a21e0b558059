using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Gap between the wheel and a line on the body: at a pose, and where along the travel it is least.</summary>
internal sealed class BodyGaps(ThingPlaces places)
{
    /// <summary>How much a line's least gap may lie below that of its corners and segment middles, m: the sagitta of a 0.7 m wheel over half a segment of 0.1 m, with room.</summary>
    public const double RoughError = 0.005;

    /// <summary>A line of no more points than this needs no memory of its own.</summary>
    internal const int FewPoints = 16;

    private readonly ThingPlaces _places = places;

    /// <summary>The least gap and its place; not finite where the wheel cannot be.</summary>
    public Clearing Of(CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody, double travel, double steer)
    {
        if (!_places.Pose(n, n.Motion, travel, steer, out var pose))
        {
            return ClearanceNumbers.Unknown;
        }

        var frame = SpindleFrame.Of(pose);
        Span<Vec3> points = pointsInBody.Length <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[pointsInBody.Length];
        for (int k = 0; k < pointsInBody.Length; k++)
        {
            points[k] = frame.ToSpindle(pointsInBody[k]);
        }

        return PolylineClearing.Of(wheel, points[..pointsInBody.Length]);
    }

    /// <summary>The gap of one place on the line.</summary>
    public double GapAt(CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody, double along, double travel, double steer) =>
        _places.Pose(n, n.Motion, travel, steer, out var pose) ? wheel.SignedDistance(SpindleFrame.Of(pose).ToSpindle(Line.At(pointsInBody, along))) : double.NaN;

    /// <summary>The travel at which a line's gap is least; not a number where it cannot be less than the least known.</summary>
    public double TravelOfLeast(CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> points, double steer, double droop, double bump, double known)
    {
        // Coarse samples first: where even the steepest possible fall between them stays above the least gap known, that is all.
        // Then even samples, and golden section round the lowest unless it is an end toward which the gap still falls.
        const int Samples = 9, Coarse = 4;
        const double Accuracy = 2e-4, Golden = 0.38196601125010515;
        double step = (bump - droop) / (Samples - 1), best = double.PositiveInfinity, at = double.NaN, bound = double.PositiveInfinity;
        Span<double> gaps = stackalloc double[Samples];
        for (int k = 0; k < Samples; k += Coarse)
        {
            gaps[k] = RoughGap(n, wheel, points, droop + (k * step), steer);
            bound = k == 0 ? bound : Math.Min(bound, 0.5 * (gaps[k] + gaps[k - Coarse] - (FirstTouch.SteepestGap * Coarse * step)));
        }

        if (double.IsFinite(known) && bound - RoughError > known)
        {
            return double.NaN;
        }

        for (int k = 0; k < Samples; k++)
        {
            double gap = k % Coarse == 0 ? gaps[k] : RoughGap(n, wheel, points, droop + (k * step), steer);
            if (gap < best)
            {
                (best, at) = (gap, droop + (k * step));
            }
        }

        // At an end: does it fall toward the inside?
        double low = Math.Max(droop, at - step), high = Math.Min(bump, at + step);
        double inward = low == at ? at + Accuracy : high == at ? at - Accuracy : double.NaN;
        if (!(step > 0) || (double.IsFinite(inward) && Of(n, wheel, points, inward, steer).Gap >= Of(n, wheel, points, at, steer).Gap))
        {
            return at;
        }

        double a = low + (Golden * (high - low)), b = high - (Golden * (high - low));
        double fa = Of(n, wheel, points, a, steer).Gap, fb = Of(n, wheel, points, b, steer).Gap;
        for (int k = 0; k < 30 && high - low > Accuracy; k++)
        {
            if (fa < fb)
            {
                (high, b, fb) = (b, a, fa);
                a = low + (Golden * (high - low));
                fa = Of(n, wheel, points, a, steer).Gap;
            }
            else
            {
                (low, a, fa) = (a, b, fb);
                b = high - (Golden * (high - low));
                fb = Of(n, wheel, points, b, steer).Gap;
            }
        }

        return fa < fb ? a : b;
    }

    /// <summary>The gap by corners and middles: enough to see where along the travel the least one lies.</summary>
    public double RoughGap(CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody, double travel, double steer)
    {
        if (!_places.Pose(n, n.Motion, travel, steer, out var pose))
        {
            return double.PositiveInfinity;
        }

        var frame = SpindleFrame.Of(pose);
        double least = double.PositiveInfinity;
        for (int k = 0; k < pointsInBody.Length; k++)
        {
            least = Math.Min(least, wheel.SignedDistance(frame.ToSpindle(pointsInBody[k])));
            if (k > 0)
            {
                least = Math.Min(least, wheel.SignedDistance(frame.ToSpindle(0.5 * (pointsInBody[k] + pointsInBody[k - 1]))));
            }
        }

        return least;
    }
}
