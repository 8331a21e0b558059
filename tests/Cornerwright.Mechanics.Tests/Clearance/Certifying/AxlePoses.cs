using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>
/// The poses of one wheel of a rigid axle: travel is its own, the third way that of the axle's other wheel (m, bump positive).
/// </summary>
/// <param name="axle">Its wheel centres must be the hub-face centres, because travel and poses are those of the hub face.</param>
/// <param name="left">Which wheel.</param>
/// <remarks>An axle is not steered: any steer but 0 is out of reach. Source: docs/theory/rigid-axles.md §2, §4.</remarks>
public sealed class AxlePoses(RigidAxle axle, bool left) : IPoseField
{
    /// <summary>The pose at a place; false where the axle cannot follow. Source: docs/theory/rigid-axles.md §2.</summary>
    public bool TryPose(in PosePlace place, out WheelPose pose)
    {
        pose = default;
        if (place.Steer != 0)
        {
            return false;
        }

        var (leftTravel, rightTravel) = left ? (place.Travel, place.Third) : (place.Third, place.Travel);
        bool there = axle.WheelAt(leftTravel, rightTravel, left, out Vec3 centre, out Vec3 spindle) == Reach.Reached;
        pose = there ? new(centre, spindle) : default;
        return there;
    }
}
