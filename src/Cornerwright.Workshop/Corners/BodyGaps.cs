using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>Gap between the wheel and a line on the body, in a spindle frame.</summary>
internal static class BodyGaps
{
    /// <summary>A line of no more points than this needs no memory of its own.</summary>
    internal const int FewPoints = 16;

    /// <summary>The least gap and its place in one state of load.</summary>
    /// <param name="rest">The wheel with nothing to bear.</param>
    /// <param name="at">Where that is, and what is asked.</param>
    /// <param name="state">Of load.</param>
    /// <param name="wheel">Tyre and rim.</param>
    /// <param name="line">m.</param>
    public static Clearing Of(in SpindleFrame rest, in GapAsk at, LoadState state, in WheelSolid wheel, in NearLine line) =>
        TryBelow(rest, at, state, wheel, line, double.PositiveInfinity, out Clearing least) ? least : ClearanceNumbers.Unknown;

    /// <summary>The gap and its place, where it is below a bound.</summary>
    public static bool TryBelow(in SpindleFrame rest, in GapAsk at, LoadState state, in WheelSolid wheel, in NearLine line, double bound,
        out Clearing least)
    {
        var there = line.In(state);
        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        points = points[..line.Count];
        if (!there.InSpindle(state.Places, at.Corner, at.Place, state.Of(rest, at.Place), points))
        {
            least = ClearanceNumbers.Unknown;
            return false;
        }

        bool below = PolylineClearing.TryBelow(there.Facing(wheel), points, bound + line.Radius, out least);
        least = below && line.Radius > 0 ? Skin(least, line.Radius) : least;
        return below;
    }

    // From the line itself to the skin of what is as thick as that.
    private static Clearing Skin(in Clearing axis, double radius)
    {
        Vec3 toWheel = axis.OnWheel - axis.OnObstacle;
        double apart = toWheel.Length;
        return axis with
        {
            Gap = axis.Gap - radius,
            OnObstacle = apart > 1e-9 && axis.Gap > 0 ? axis.OnObstacle + (toWheel * (radius / apart)) : axis.OnObstacle,
        };
    }

    /// <summary>What the gap does not lie below, cut short at a bound, in one state: see <see cref="PolylineClearing.AtLeast"/>.</summary>
    public static double AtLeast(
        in SpindleFrame rest, in GapAsk at, LoadState state, in WheelSolid wheel, in NearLine line, double bound)
    {
        var there = line.In(state);
        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        points = points[..line.Count];
        return there.InSpindle(state.Places, at.Corner, at.Place, state.Of(rest, at.Place), points)
            ? PolylineClearing.AtLeast(there.Facing(wheel), points, bound + line.Radius, out _) - line.Radius : bound;
    }

    /// <summary>The least gap and its place under the load that makes it least; unknown of a thing that could not be placed.</summary>
    public static Clearing Of(
        in SpindleFrame rest, in GapAsk at, ReadOnlySpan<LoadState> states, in WheelSolid wheel, in NearLine line)
    {
        Clearing least = ClearanceNumbers.Unknown;
        double bound = double.PositiveInfinity;
        foreach (LoadState state in states)
        {
            if (TryBelow(rest, at, state, wheel, line, bound, out Clearing there))
            {
                (least, bound) = (there, there.Gap);
            }
        }

        return least;
    }

    /// <summary>
    /// The gap of one place on the line and of its corners: each corner was read by itself, and may come to be the nearest.
    /// </summary>
    public static double GapAt(in SpindleFrame rest, in GapAsk at, LoadState state, in WheelSolid wheel, in NearLine line, double along)
    {
        var there = line.In(state);
        Span<Vec3> points = line.Count <= FewPoints ? stackalloc Vec3[FewPoints] : new Vec3[line.Count];
        points = points[..line.Count];
        if (!there.InSpindle(state.Places, at.Corner, at.Place, state.Of(rest, at.Place), points))
        {
            return double.NaN;
        }

        double least = there.Facing(wheel).SignedDistance(Line.At(points, along)) - line.Radius;
        for (int k = 0; k < points.Length && points.Length > 1 && !line.Moves; k++)
        {
            least = Math.Min(least, wheel.SignedDistance(points[k]));
        }

        return least;
    }
}

/// <summary>Of which corner, and where, a gap is asked.</summary>
internal readonly ref struct GapAsk(CornerReader corner, PosePlace place)
{
    public CornerReader Corner { get; } = corner;

    public PosePlace Place { get; } = place;
}
