using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance;

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
    /// <param name="wheel">Camber, toe, lateral shift at this travel.</param>
    /// <param name="travel">m, bump positive.</param>
    /// <remarks>Left: spindle = (cos γ sin τ, cos γ cos τ, -sin γ); right: its mirror image in Y.
    /// Source: ISO 8855:2011 definitions of camber and toe; docs/theory/clearance.md §3.</remarks>
    public static WheelPose StraightAhead(in Vec3 referenceHubFace, WheelSide side, in WheelMotionState wheel, double travel)
    {
        double out_ = side == WheelSide.Left ? 1 : -1;
        var (sinCamber, cosCamber) = Math.SinCos(wheel.Camber);
        var (sinToe, cosToe) = Math.SinCos(wheel.Toe);
        return new(
            new(referenceHubFace.X, referenceHubFace.Y + (out_ * wheel.LateralShift), referenceHubFace.Z + travel),
            new(cosCamber * sinToe, out_ * cosCamber * cosToe, -sinCamber));
    }

    /// <summary>This pose turned about a steering axis by an angle (rad, left positive) at the kingpin. Source: rigid rotation, docs/theory/clearance.md §3.</summary>
    public WheelPose Steered(in SteeringAxis axis, double angle) => new(
        axis.Point + (HubFace - axis.Point).RotatedAbout(axis.Direction, angle),
        Spindle.RotatedAbout(axis.Direction, angle));

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

/// <summary>The line a wheel steers about, in B: a point (m) and the upward unit direction.</summary>
/// <remarks>The default has no direction. Source: docs/theory/clearance.md §3.</remarks>
public readonly record struct SteeringAxis(Vec3 Point, Vec3 Direction)
{
    /// <summary>The axis from readings at hub height.</summary>
    /// <param name="pose">Straight-ahead pose the readings belong to.</param>
    /// <param name="side">Side of the car.</param>
    /// <param name="kingpinInclination">rad, positive when the top leans inboard.</param>
    /// <param name="caster">rad, positive when the top leans rearward.</param>
    /// <param name="inboardOffset">Hub-face centre to axis at hub height, m, positive when the axis is inboard.</param>
    /// <param name="forwardOffset">The same fore and aft, m, positive when the axis is ahead of the hub.</param>
    /// <remarks>Direction ∝ (-tan caster, ∓tan kpi, 1), so each angle is the one seen in its own view. Source: ISO 8855:2011; docs/frames.md.</remarks>
    public static SteeringAxis AtHubHeight(
        in WheelPose pose, WheelSide side, double kingpinInclination, double caster, double inboardOffset, double forwardOffset)
    {
        double out_ = side == WheelSide.Left ? 1 : -1;
        Vec3 direction = new(-Math.Tan(caster), -out_ * Math.Tan(kingpinInclination), 1);
        return new(pose.HubFace + new Vec3(forwardOffset, -out_ * inboardOffset, 0), direction.Unit());
    }
}

/// <summary>The S frame at a pose: origin at the hub face, a along the spindle, 12 and 3 o'clock square to it.</summary>
/// <remarks>A point in S is a <see cref="Vec3"/> whose X is a, whose Y points to 12 and whose Z points to 3 o'clock. Source: docs/frames.md.</remarks>
public readonly record struct SpindleFrame(Vec3 Origin, Vec3 Axis, Vec3 Twelve, Vec3 Three)
{
    /// <summary>The S frame of a pose. Source: docs/frames.md, clock position.</summary>
    public static SpindleFrame Of(in WheelPose pose)
    {
        Vec3 s = pose.Spindle;
        double up = Math.Sqrt((s.X * s.X) + (s.Y * s.Y));
        Vec3 twelve = new(-s.Z * s.X / up, -s.Z * s.Y / up, up);
        return new(pose.HubFace, s, twelve, twelve.Cross(s));
    }

    /// <summary>A point of B in S, m. Source: rigid transform.</summary>
    public Vec3 ToSpindle(in Vec3 pointInBody)
    {
        Vec3 p = pointInBody - Origin;
        return new(p.Dot(Axis), p.Dot(Twelve), p.Dot(Three));
    }

    /// <summary>A direction of B in S. Source: rigid transform.</summary>
    public Vec3 DirectionToSpindle(in Vec3 directionInBody) =>
        new(directionInBody.Dot(Axis), directionInBody.Dot(Twelve), directionInBody.Dot(Three));

    /// <summary>A point of S in B, m. Source: rigid transform.</summary>
    public Vec3 ToBody(in Vec3 pointInSpindle) =>
        Origin + (Axis * pointInSpindle.X) + (Twelve * pointInSpindle.Y) + (Three * pointInSpindle.Z);
}

/// <summary>Clock positions and S coordinates.</summary>
/// <remarks>Source: docs/frames.md.</remarks>
public static class Clock
{
    /// <summary>The S point at (a, r) and a clock position in hours, m. Source: docs/frames.md.</summary>
    public static Vec3 PointAt(double a, double r, double hours)
    {
        var (sin, cos) = Math.SinCos(hours * (Math.PI / 6));
        return new(a, r * cos, r * sin);
    }

    /// <summary>Clock position of an S point, hours in (0, 12]; 12 on the spindle itself. Source: docs/frames.md.</summary>
    public static double HoursOf(in Vec3 pointInSpindle)
    {
        double hours = Math.Atan2(pointInSpindle.Z, pointInSpindle.Y) * (6 / Math.PI);
        return hours > 0 ? hours : hours + 12;
    }
}
