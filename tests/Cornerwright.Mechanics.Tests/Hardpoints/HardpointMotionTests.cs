using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints;

namespace Cornerwright.Mechanics.Tests.Hardpoints;

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
                    Assert.True(Math.Abs(here.MotionRatioSlope - slope) <= 1e-6 * Math.Max(1, Math.Abs(slope)), $"{id} {station} {mm} mm: {here.MotionRatioSlope} against {slope}");
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
}
