using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>
/// A random but plausible motion: camber, toe and track curved over travel, a steering axis with trail, a plate that tilts and shifts.
/// </summary>
internal sealed class RandomField : IPoseField
{
    private readonly Vec3 hub;
    private readonly WheelSide side;
    private readonly double[] c;
    private readonly double kingpin, caster, inboard, forward;

    public RandomField(Random random, Vec3 hub, WheelSide side)
    {
        (this.hub, this.side) = (hub, side);
        c = [random.Between(-0.05, 0.03), random.Between(-0.6, 0.1), random.Between(-3, 3), random.Between(-0.01, 0.01), random.Between(
            -0.1, 0.1),
            random.Between(-0.1, 0.1), random.Between(-0.8, 0.4), random.Between(0, 0.8), random.Between(0, 0.3)];
        (kingpin, caster, inboard, forward) =
            (random.Between(0.1, 0.28), random.Between(0, 0.15), random.Between(0.03, 0.12), random.Between(-0.01, 0.02));
    }

    public bool TryPose(in PosePlace at, out WheelPose pose)
    {
        double z = at.Travel;
        var wheel = new WheelMotionState(
            c[0] + (c[1] * z) + (c[2] * z * z) + (c[7] * at.Third), c[3] + (c[4] * z), (c[5] * z) + (c[6] * z * z) + (c[8] * at.Third));
        WheelPose straight = WheelPose.StraightAhead(hub, side, wheel, z);
        pose = straight.Steered(SteeringLine.AtHubHeight(straight, side, kingpin, caster + (3 * at.Third), inboard, forward), at.Steer);
        return true;
    }
}
