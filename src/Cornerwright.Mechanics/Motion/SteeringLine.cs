using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion;

/// <summary>The line a wheel steers about, in B: a point (m) and the upward unit direction.</summary>
/// <remarks>The default has no direction. Source: docs/theory/clearance.md §3.</remarks>
public readonly record struct SteeringLine(Vec3 Point, Vec3 Direction)
{
    /// <summary>The axis from readings at hub height.</summary>
    /// <param name="pose">Straight-ahead pose the readings belong to.</param>
    /// <param name="side">Side of the car.</param>
    /// <param name="kingpinInclination">rad, positive when the top leans inboard.</param>
    /// <param name="caster">rad, positive when the top leans rearward.</param>
    /// <param name="inboardOffset">Hub-face centre to axis at hub height, m, positive when the axis is inboard.</param>
    /// <param name="forwardOffset">The same fore and aft, m, positive when the axis is ahead of the hub.</param>
    /// <remarks>
    /// Direction ∝ (-tan caster, ∓tan kpi, 1), so each angle is the one seen in its own view. Source: ISO 8855:2011; docs/frames.md.
    /// </remarks>
    public static SteeringLine AtHubHeight(
        in WheelPose pose, WheelSide side, double kingpinInclination, double caster, double inboardOffset, double forwardOffset)
    {
        double out_ = side == WheelSide.Left ? 1 : -1;
        Vec3 direction = new(-Math.Tan(caster), -out_ * Math.Tan(kingpinInclination), 1);
        return new(pose.HubFace + new Vec3(forwardOffset, -out_ * inboardOffset, 0), direction.Unit());
    }
}
