using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Motion;

/// <summary>
/// Sliding a top mount was taken to change camber and nothing else: 20 mm of it lower a usual car by 6 to 8 mm. Held against the strut
/// solved from its points, which needs none of these formulas.
/// </summary>
public class ShiftedMotionTests
{
    [Theory]
    [InlineData(0.020)]
    [InlineData(0.010)]
    [InlineData(-0.015)]
    public void A_slid_mount_lifts_and_tilts_the_wheel_as_the_linkage_says(double slide)
    {
        var points = PlanarLinkageTests.Strut;
        CornerMotion truth = PlanarLinkageTests.StrutMotion(-slide), before = PlanarLinkageTests.StrutMotion();
        PlanarPoint line = points.StrutTop - points.BallJoint;
        var shift = TopMountShift.Of(slide, 0, line.Length, Math.Atan2(-line.Outboard, line.Up), -points.BallJoint.Outboard,
            -points.BallJoint.Up);
        var shifted = new ShiftedMotion(before, shift);
        for (double z = -0.06; z <= 0.0601; z += 0.01)
        {
            Assert.True(truth.StationAt(z, Station.Spring, out var exact).IsUsable());
            Assert.True(shifted.StationAt(z, Station.Spring, out var taken).IsUsable());
            Assert.True(before.StationAt(z, Station.Spring, out var unmoved).IsUsable());
            Assert.InRange(taken.Length - exact.Length, -0.0011, 0.0011);
            Assert.True(Math.Abs(unmoved.Length - exact.Length) > 4 * Math.Abs(taken.Length - exact.Length), $"z {z}");
            Assert.Equal(exact.MotionRatio, taken.MotionRatio, 0.02);
            truth.WheelAt(z, out var wheel);
            shifted.WheelAt(z, out var moved);
            Assert.InRange(moved.LateralShift - wheel.LateralShift, -0.0008, 0.0008);
            Assert.InRange(moved.Camber - Math.Atan2(slide, line.Length) - wheel.Camber, -0.003, 0.003);
        }
    }

    /// <summary>By hand, invented: 20 mm inward, joint 0.66 m below the mount, 12 degrees, hub face 80 mm outboard, 110 mm above.</summary>
    [Fact]
    public void Twenty_millimetres_lower_a_usual_car_by_seven()
    {
        var shift = TopMountShift.Of(0.020, 0, 0.66, 12 * Math.PI / 180, 0.080, 0.110);
        Assert.Equal(0.00425, shift.Joint, 5e-5);   // 20 mm x tan 12 deg
        Assert.Equal(0.00242, shift.Hub, 5e-5);     // 80 mm x 20/660
        Assert.Equal(-0.00333, shift.Outboard, 5e-5);
    }

    /// <summary>The clamp tilts the knuckle about the ball joint: the joint stays where it is.</summary>
    [Fact]
    public void A_clamp_lifts_the_hub_and_not_the_joint()
    {
        var shift = TopMountShift.Of(0, 0.03, 0.66, 0.2, 0.080, 0.110);
        Assert.Equal((0, 0.0024), (shift.Joint, Math.Round(shift.Hub, 9)));
        Assert.Equal(-0.0033, shift.Outboard, 1e-9);
    }
}
