using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

public sealed class HardpointMotionTests
{
    private static readonly string[] Corners = ["M1", "M3", "W1", "W3", "F1", "S1"];

    // The second derivative has no row in the oracle's files: central differences of the exact first one stand in.
    [Fact]
    public void The_slope_of_the_motion_ratio_is_its_derivative()
    {
        foreach (string id in Corners)
        {
            var motion = new HardpointMotion(new KnuckleLinkage(TracedCorners.Linkage(id), 0.04));
            foreach (Station station in (Station[])[Station.Spring, Station.Damper])
            {
                for (int mm = -80; mm <= 80; mm += 20)
                {
                    const double Step = 1e-5;
                    Assert.Equal(Reach.Reached, motion.StationAt((mm / 1000.0) + Step, station, out StationState up));
                    Assert.Equal(Reach.Reached, motion.StationAt((mm / 1000.0) - Step, station, out StationState down));
                    Assert.Equal(Reach.Reached, motion.StationAt(mm / 1000.0, station, out StationState here));
                    double slope = (up.MotionRatio - down.MotionRatio) / (2 * Step), ratio = (down.Length - up.Length) / (2 * Step);
                    Assert.True(
                        Math.Abs(here.MotionRatioSlope - slope) <= 1e-6 * Math.Max(1, Math.Abs(slope)),
                        $"{id} {station} {mm} mm: {here.MotionRatioSlope} against {slope}");
                    Assert.True(Math.Abs(here.MotionRatio - ratio) <= 1e-8, $"{id} {station} {mm} mm");
                }
            }
        }
    }

    // The hub face lies 40 mm outboard of the wheel centre here: with the wheel leaning, its travel and shift are other ones.
    [Fact]
    public void Travel_is_that_of_the_hub_face()
    {
        CornerLinkage corner = TracedCorners.Linkage("W1");
        const double Offset = 0.04;
        var hub = new HardpointMotion(new KnuckleLinkage(corner, Offset));
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        Assert.Equal(Reach.Reached, hub.WheelAt(0, out WheelMotionState rest));
        Assert.Equal(0, rest.LateralShift, 1e-15);
        Assert.Equal(Reach.Reached, hub.GeometryAt(0, out WheelGeometry still));
        Assert.Equal(Reach.Reached, hub.GeometryAt(0.05, out WheelGeometry byHub));
        Assert.Equal(Reach.Reached, hub.WheelAt(0.05, out WheelMotionState wheel));
        Assert.Equal(Reach.Reached, follower.MoveTo(byHub.Centre.Z - corner.WheelCentre.Z));
        Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry byCentre));
        Assert.Equal(byCentre.Camber, wheel.Camber, 1e-12);
        Assert.Equal(byCentre.Toe, wheel.Toe, 1e-12);
        double outboard = byHub.Centre.Y - still.Centre.Y + (Offset * (byHub.Spindle.Y - still.Spindle.Y));
        Assert.Equal(outboard, wheel.LateralShift, 1e-12);
        Assert.Equal(0.05, byHub.Centre.Z - still.Centre.Z + (Offset * (byHub.Spindle.Z - still.Spindle.Z)), 1e-12);
    }

    [Fact]
    public void What_is_not_a_number_or_not_there_is_said()
    {
        CornerLinkage corner = TracedCorners.Linkage("M1") with { Damper = null };
        var motion = new HardpointMotion(new KnuckleLinkage(corner));
        Assert.Equal(Reach.NotFinite, motion.WheelAt(double.NaN, out _));
        Assert.Equal(Reach.NotGiven, motion.StationAt(0, Station.Damper, out _));
        Assert.Equal(Reach.LinkageCannotClose, motion.WheelAt(0.5, out WheelMotionState none));
        Assert.Equal(default, none);
        Assert.Equal(Reach.Reached, motion.WheelAt(0.01, out _));
    }

    // The polynomial against the linkage itself, between the samples too; beyond the range the linkage is asked.
    [Fact]
    public void Sampled_stations_are_the_linkages_own()
    {
        foreach (string id in Corners)
        {
            var linkage = new KnuckleLinkage(TracedCorners.Linkage(id), 0.04);
            HardpointMotion exact = new(linkage, springMore: 0.01), sampled = new(linkage, springMore: 0.01);
            sampled.SampleStations(-0.13, 0.13);
            foreach (Station station in (Station[])[Station.Spring, Station.Damper])
            {
                for (int mm = -125; mm <= 145; mm += 5)
                {
                    Reach reach = exact.StationAt(mm / 1000.0, station, out StationState here);
                    Assert.Equal(reach, sampled.StationAt(mm / 1000.0, station, out StationState read));
                    Assert.Equal(here.Length, read.Length, 1e-7);
                    Assert.Equal(here.MotionRatio, read.MotionRatio, 1e-5);
                    Assert.Equal(here.MotionRatioSlope, read.MotionRatioSlope, 5e-3);
                }
            }
        }
    }

    [Fact]
    public void Following_allocates_nothing()
    {
        foreach (string id in Corners)
        {
            var linkage = new KnuckleLinkage(TracedCorners.Linkage(id), 0.04);
            var follower = new KnuckleFollower(linkage);
            var motion = new HardpointMotion(linkage);
            Walk(follower, motion);
            long before = GC.GetAllocatedBytesForCurrentThread();
            double sum = Walk(follower, motion);
            Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
            Assert.True(double.IsFinite(sum) && sum != 0);
        }
    }

    // The way does not matter: every pose, reached from its neighbour, is the one reached straight from rest.
    [Fact]
    public void A_pose_followed_to_is_the_pose_alone()
    {
        var linkage = new KnuckleLinkage(TracedCorners.Linkage("M3"));
        var walking = new KnuckleFollower(linkage);
        foreach (double plate in (double[])[0, 0.03])
        {
            foreach (double rack in (double[])[-0.05, 0, 0.05])
            {
                foreach (double travel in (double[])[-0.08, -0.03, 0.02, 0.07])
                {
                    var alone = new KnuckleFollower(linkage);
                    Assert.Equal(Reach.Reached, alone.MoveTo(travel, rack, plate));
                    Assert.Equal(Reach.Reached, walking.MoveTo(travel, rack, plate));
                    Vec3 apart = alone.Pose.Turned(linkage.Spindle) - walking.Pose.Turned(linkage.Spindle);
                    Assert.True((alone.Pose.Origin - walking.Pose.Origin).Length < 1e-12 && apart.Length < 1e-12,
                        $"{travel} {rack} {plate}");
                }
            }
        }
    }

    private static double Walk(KnuckleFollower follower, HardpointMotion motion)
    {
        double sum = 0;
        for (int mm = -60; mm <= 60; mm++)
        {
            double z = mm / 1000.0;
            follower.MoveTo(z);
            WheelGeometry.TryRead(follower, out WheelGeometry wheel);
            motion.WheelAt(z, out WheelMotionState state);
            motion.StationAt(z, Station.Spring, out StationState spring);
            sum += wheel.Camber + state.Toe + spring.Length;
        }

        return sum;
    }
}
