using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>Where all joints of a corner are now, for drawing it.</summary>
/// <remarks>Source: docs/theory/hardpoints.md §5.</remarks>
public static class LinkageJoints
{
    /// <summary>Places in the order of the corner's joints, body frame, m; a right corner's lie at negative Y.</summary>
    /// <param name="follower">Where it stands now.</param>
    /// <returns>A joint of a rocker whose pushrod cannot reach stays where it was at the reference state.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §5.</remarks>
    public static IReadOnlyList<Vec3> Now(KnuckleFollower follower)
    {
        KnuckleLinkage linkage = follower.Linkage;
        CornerLinkage corner = linkage.Corner;
        var places = corner.Joints.Select(joint => joint.At).ToArray();
        var knuckle = new MovingKnuckle(follower.Pose, default, default);
        void OnKnuckle(int joint) => places[joint] = linkage.Inward(follower.Pose.Point(linkage.OnKnuckle(joint)));

        foreach (LinkageTie tie in corner.Ties)
        {
            switch (tie)
            {
                case LinkageTie.Rod rod:
                    OnKnuckle(rod.Knuckle);
                    places[rod.Body] = corner.Joints[rod.Body].At + new Vec3(0, rod.Steers ? follower.Place.Rack : 0, 0);
                    break;
                case LinkageTie.Strut strut:
                    OnKnuckle(strut.Low);
                    places[strut.Top] = corner.Joints[strut.Top].At + linkage.Inward(follower.TopShift);
                    break;
            }
        }

        Ride(corner.Spring, linkage.Spring, linkage, knuckle, places, OnKnuckle);
        Ride(corner.Damper, linkage.Damper, linkage, knuckle, places, OnKnuckle);
        if (corner.Bar is { } bar)
        {
            places[bar.LinkOnBar] = linkage.Bar!.Now(knuckle, linkage.Joint(bar.LinkOnBar)) is { } end
                ? linkage.Inward(end) : places[bar.LinkOnBar];
            places[bar.LinkFoot] = linkage.Inward(linkage.Bar.Foot(knuckle));
        }

        return places;
    }

    private static void Ride(
        LinkageStation? station, StationPath? path, KnuckleLinkage linkage, in MovingKnuckle knuckle, Vec3[] places, Action<int> onKnuckle)
    {
        switch (station)
        {
            case LinkageStation.OnKnuckle s:
                onKnuckle(s.Knuckle);
                break;
            case LinkageStation.OnArm s:
                places[s.Moving] = linkage.Inward(ArmPoint.Of(linkage, s.Moving, s.First, s.Second, s.Ball).At(knuckle).V);
                break;
            case LinkageStation.OnRocker s:
                if (s.First == LinkageStation.OnRocker.FromKnuckle)
                {
                    onKnuckle(s.RodOnArm);
                }
                else
                {
                    places[s.RodOnArm] = linkage.Inward(ArmPoint.Of(linkage, s.RodOnArm, s.First, s.Second, s.Ball).At(knuckle).V);
                }

                var rocker = (StationPath.RockerPath)path!;
                foreach (int joint in (ReadOnlySpan<int>)[s.RodOnRocker, s.Moving])
                {
                    places[joint] = rocker.Now(knuckle, linkage.Joint(joint)) is { } now ? linkage.Inward(now) : places[joint];
                }

                break;
        }
    }
}
