using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>
/// A wheel that moves as its motion says and steers about a rigid axis; steer in rad at the kingpin, left positive. There is no third way.
/// </summary>
/// <param name="motion">Camber, toe and lateral shift over travel.</param>
/// <param name="referenceHubFace">Hub-face centre at the reference state, B, m.</param>
/// <param name="side">Side of the car.</param>
/// <param name="axis">The axis at the reference state; it moves with the hub face.</param>
/// <remarks>Source: docs/theory/clearance.md §3.</remarks>
public sealed class RigidSteerPoses(
    CornerMotion motion, Mechanics.Geometry.Vec3 referenceHubFace, WheelSide side, SteeringLine axis) : IPoseField
{
    private readonly Mechanics.Geometry.Vec3 hubToAxis = axis.Point - referenceHubFace;

    /// <summary>The pose at a place; false outside the motion's reach. Source: docs/theory/clearance.md §3.</summary>
    public bool TryPose(in PosePlace place, out WheelPose pose)
    {
        if (!motion.WheelAt(place.Travel, out WheelMotionState wheel).IsUsable())
        {
            pose = default;
            return false;
        }

        WheelPose straight = WheelPose.StraightAhead(referenceHubFace, side, wheel, place.Travel);
        pose = place.Steer == 0 ? straight : straight.Steered(new(straight.HubFace + hubToAxis, axis.Direction), place.Steer);
        return true;
    }
}
