using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Gap between the wheel and a line on the body: at a pose, and where along the travel it is least.</summary>
internal sealed class BodyGaps(ThingPlaces places)
{
    /// <summary>
    /// How much a line's least gap may lie below that of its corners and segment middles,
    /// m: the sagitta of a 0.7 m wheel over half a segment of 0.1 m, with room.
    /// </summary>
    public const double RoughError = 0.005;

    /// <summary>A line of no more points than this needs no memory of its own.</summary>
    internal const int FewPoints = 16;

    private readonly ThingPlaces _places = places;

    /// <summary>The least gap and its place; not finite where the wheel cannot be.</summary>
    public static Clearing Of(ThingPlaces places, CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody,
        in PosePlace place)
    {
        if (!places.Pose(n, n.Motion, place, out var pose))
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
    public double GapAt(CornerReader n, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody, double along, in PosePlace place) =>
        _places.Pose(n, n.Motion, place, out var pose)
            ? wheel.SignedDistance(SpindleFrame.Of(pose).ToSpindle(Line.At(pointsInBody, along))) : double.NaN;

    /// <summary>The gap by corners and middles: enough to see where along the travel the least one lies.</summary>
    public static double RoughGap(in SpindleFrame frame, in WheelSolid wheel, ReadOnlySpan<Vec3> pointsInBody)
    {
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
