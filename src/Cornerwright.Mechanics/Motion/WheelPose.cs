using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Motion;

/// <summary>Which side of the car a wheel is on: +Y is left.</summary>
public enum WheelSide
{
    Left = 0,
    Right = 1,
}

/// <summary>Where a wheel is: hub-face centre (m) and spindle direction (unit, to the street side), both in B.</summary>
/// <remarks>The default has no spindle and is no pose. Source: docs/theory/clearance.md §3.</remarks>
public readonly record struct WheelPose(Vec3 HubFace, Vec3 Spindle)
{
    /// <summary>The straight-ahead pose at a travel.</summary>
    /// <param name="referenceHubFace">Hub-face centre at the reference state, B, m.</param>
    /// <param name="side">Outboard is +Y left, -Y right.</param>
    /// <param name="wheel">Camber, toe, lateral and forward shift at this travel.</param>
    /// <param name="travel">m, bump positive.</param>
    /// <remarks>Left: spindle = (cos γ sin τ, cos γ cos τ, -sin γ); right: its mirror image in Y.
    /// Source: ISO 8855:2011 definitions of camber and toe; docs/theory/clearance.md §3.</remarks>
    public static WheelPose StraightAhead(in Vec3 referenceHubFace, WheelSide side, in WheelMotionState wheel, double travel)
    {
        double out_ = side == WheelSide.Left ? 1 : -1;
        var (sinCamber, cosCamber) = Math.SinCos(wheel.Camber);
        var (sinToe, cosToe) = Math.SinCos(wheel.Toe);
        return new(
            new(referenceHubFace.X + wheel.ForwardShift, referenceHubFace.Y + (out_ * wheel.LateralShift), referenceHubFace.Z + travel),
            new(cosCamber * sinToe, out_ * cosCamber * cosToe, -sinCamber));
    }

    /// <summary>
    /// This pose turned about a steering axis by an angle (rad, left positive) at the kingpin. Source: rigid
    /// rotation, docs/theory/clearance.md §3.
    /// </summary>
    public WheelPose Steered(in SteeringLine axis, double angle) => new(
        axis.Point + (HubFace - axis.Point).RotatedAbout(axis.Direction, angle),
        Spindle.RotatedAbout(axis.Direction, angle));

    /// <summary>
    /// This pose turned about a steering axis until the road wheel has turned by an angle (rad, left positive) as seen from above: what
    /// turning plates show. Source: docs/theory/clearance.md §3.
    /// </summary>
    public WheelPose SteeredTo(in SteeringLine axis, double steer) => Steered(axis, TurnTo(axis, steer));

    /// <summary>
    /// The angle (rad) about a steering axis by which the road wheel turns by another one seen from above. About an axis that leans that is
    /// more than the angle itself: 36.5 deg for 35 with 14 deg of inclination.
    /// </summary>
    /// <remarks>No number (NaN) (NaN) where the axis leans so far that the wheel never points there. The spindle s turns to
    /// s(t) = k(k·s)(1 - cos t) + s cos t + (k × s) sin t; p level and square to the direction wanted, s(t)·p = 0 is a cos t + b sin t = c.
    /// Source: rotation about an axis, docs/theory/clearance.md §3.</remarks>
    public double TurnTo(in SteeringLine axis, double steer)
    {
        var (sin, cos) = Math.SinCos(steer);
        Vec3 square = new(-((Spindle.X * sin) + (Spindle.Y * cos)), (Spindle.X * cos) - (Spindle.Y * sin), 0);
        double along = axis.Direction.Dot(Spindle) * axis.Direction.Dot(square);
        double a = Spindle.Dot(square) - along, b = axis.Direction.Cross(Spindle).Dot(square);
        double middle = Math.Atan2(b, a), half = Math.Acos(-along / Math.Sqrt((a * a) + (b * b)));
        double one = Math.IEEERemainder(middle - half, 2 * Math.PI), other = Math.IEEERemainder(middle + half, 2 * Math.PI);
        return Math.Abs(one - steer) <= Math.Abs(other - steer) ? one : other;
    }

    /// <summary>Unit vector in B, square to the spindle, at a clock position seen from the street side (12 up, hours clockwise).</summary>
    /// <remarks>12 is the direction square to the spindle nearest to body Z; 3 is 12 × spindle: rearward on a left wheel, forward on a
    /// right one. A spindle along Z (a wheel lying flat) has no 12 and gives NaN. Source: docs/frames.md.</remarks>
    public Vec3 ClockDirection(double hours)
    {
        SpindleFrame frame = SpindleFrame.Of(this);
        var (sin, cos) = Math.SinCos(hours * (Math.PI / 6));
        return (frame.Twelve * cos) + (frame.Three * sin);
    }
}
