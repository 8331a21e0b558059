using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>The poses of a wheel on its hardpoints: steer is the rack (m along +Y), the third way the top mount's plate (m).</summary>
/// <param name="linkage">Its travel point must be the hub face (see <see cref="KnuckleLinkage"/>); left or right.</param>
/// <exception cref="ArgumentException">At the reference state the linkage is locked or loose.</exception>
/// <remarks>Keeps its last pose: one instance belongs to one thread. Source: docs/theory/hardpoints.md §3.</remarks>
public sealed class LinkagePoses(KnuckleLinkage linkage) : IPoseField
{
    private readonly KnuckleFollower follower = new(linkage);

    /// <summary>The pose at a place; false where the linkage cannot close. Source: docs/theory/hardpoints.md §3.</summary>
    public bool TryPose(in PosePlace place, out WheelPose pose)
    {
        if (follower.MoveTo(place.Travel, place.Steer, place.Third) != Reach.Reached)
        {
            pose = default;
            return false;
        }

        // The follower works as on the left: back to the car's own side.
        double side = linkage.Side;
        Vec3 hub = follower.Pose.Origin, spindle = follower.Pose.Turned(linkage.Spindle);
        pose = new(new(hub.X, side * hub.Y, hub.Z), new(spindle.X, side * spindle.Y, spindle.Z));
        return true;
    }
}
