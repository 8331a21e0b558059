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
    public static Clearing Of(ThingPlaces places, CornerReader n, in WheelSolid wheel, in NearLine line, in PosePlace place)
    {
        if (!places.Pose(n, n.Motion, place, out var pose))
        {
            return ClearanceNumbers.Unknown;
        }

        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        if (!line.InSpindle(places, n, place, SpindleFrame.Of(pose), points))
        {
            return ClearanceNumbers.Unknown;
        }

        var axis = PolylineClearing.Of(line.Facing(wheel), points[..line.Count]);
        if (!(line.Radius > 0))
        {
            return axis;
        }

        // From the line itself to the skin of what is as thick as that.
        Vec3 toWheel = axis.OnWheel - axis.OnObstacle;
        double apart = toWheel.Length;
        return axis with
        {
            Gap = axis.Gap - line.Radius,
            OnObstacle = apart > 1e-9 && axis.Gap > 0 ? axis.OnObstacle + (toWheel * (line.Radius / apart)) : axis.OnObstacle,
        };
    }

    /// <summary>The gap of one place on the line.</summary>
    public double GapAt(CornerReader n, in WheelSolid wheel, in NearLine line, double along, in PosePlace place)
    {
        if (!_places.Pose(n, n.Motion, place, out var pose))
        {
            return double.NaN;
        }

        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        return line.InSpindle(_places, n, place, SpindleFrame.Of(pose), points)
            ? line.Facing(wheel).SignedDistance(Line.At(points[..line.Count], along)) - line.Radius : double.NaN;
    }

    /// <summary>
    /// The gap by corners and middles: enough to see where along the travel the least one lies. Of a link, whose middle may be far from
    /// its nearest place, it is exact.
    /// </summary>
    public static double RoughGap(
        ThingPlaces places, CornerReader n, in PosePlace place, in SpindleFrame frame, in WheelSolid wheel, in NearLine line)
    {
        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        if (!line.InSpindle(places, n, place, frame, points))
        {
            return double.PositiveInfinity;
        }

        if (line.Moves)
        {
            return PolylineClearing.Of(line.Facing(wheel), points[..line.Count]).Gap - line.Radius;
        }

        double least = double.PositiveInfinity;
        for (int k = 0; k < line.Count; k++)
        {
            least = Math.Min(least, wheel.SignedDistance(points[k]));
            if (k > 0)
            {
                least = Math.Min(least, wheel.SignedDistance(0.5 * (points[k] + points[k - 1])));
            }
        }

        return least;
    }
}
