using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Signs of the pose, clock positions, steering, and readings carried to B and back.</summary>
public class PoseTests
{
    private static readonly Vec3 LeftHub = new(0, 0.75, 0.31);

    [Theory]
    [InlineData(WheelSide.Left, 1)]
    [InlineData(WheelSide.Right, -1)]
    public void Camber_and_toe_have_the_signs_of_the_table(WheelSide side, double out_)
    {
        Vec3 hub = new(0, out_ * 0.75, 0.31);
        WheelPose pose = WheelPose.StraightAhead(hub, side, new(Camber: 0.05, Toe: 0.02, LateralShift: 0.004), travel: 0.03);
        Assert.Equal(0, (pose.HubFace - new Vec3(0, out_ * 0.754, 0.34)).Length, 1e-15);
        Assert.Equal(1, pose.Spindle.Length, 1e-15);
        Assert.Equal(0.05, Math.Asin(-pose.Spindle.Z), 1e-15);

        // Positive camber: the top lies further out than the bottom. Toe-in: the front lies further in than the back.
        Assert.True(out_ * (pose.ClockDirection(12).Y - pose.ClockDirection(6).Y) > 0);
        double forward = side == WheelSide.Left ? 9 : 3, backward = 12 - forward;
        Assert.True(out_ * (pose.ClockDirection(forward).Y - pose.ClockDirection(backward).Y) < 0);
        Assert.True(pose.ClockDirection(forward).X > 0.99);
        Assert.True(pose.ClockDirection(12).Z > 0.99);
        foreach (double hours in new[] { 0.5, 4, 7.25, 11 })
        {
            Assert.Equal(0, pose.ClockDirection(hours).Dot(pose.Spindle), 1e-15);
            Assert.Equal(hours, Clock.HoursOf(SpindleFrame.Of(pose).ToSpindle(pose.HubFace + (pose.ClockDirection(hours) * 0.3))), 1e-12);
        }
    }

    [Fact]
    public void Steering_to_the_left_points_both_wheels_left_and_keeps_them_on_their_axis()
    {
        foreach (WheelSide side in Enum.GetValues<WheelSide>())
        {
            double out_ = side == WheelSide.Left ? 1 : -1;
            WheelPose straight = WheelPose.StraightAhead(new(0, out_ * 0.75, 0.31), side, default, 0);
            SteeringLine axis =
                SteeringLine.AtHubHeight(straight, side, kingpinInclination: 0.21, caster: 0.10, inboardOffset: 0.08, forwardOffset: 0.01);
            Assert.Equal(0.21, Math.Atan2(-out_ * axis.Direction.Y, axis.Direction.Z), 1e-14);
            Assert.Equal(0.10, Math.Atan2(-axis.Direction.X, axis.Direction.Z), 1e-14);
            WheelPose left = straight.Steered(axis, 0.5);
            Vec3 heading = left.Spindle.Cross(Vec3.UnitZ) * out_;
            Assert.True(heading.Y > 0.4, $"{side}: heading {heading}");

            // A rigid turn: distances to two points of the axis stay.
            foreach (double along in new[] { 0, 0.4 })
            {
                Vec3 on = axis.Point + (axis.Direction * along);
                Assert.Equal((straight.HubFace - on).Length, (left.HubFace - on).Length, 1e-14);
                Assert.Equal((straight.HubFace + straight.Spindle - on).Length, (left.HubFace + left.Spindle - on).Length, 1e-14);
            }

            Assert.Equal(0, (left.Steered(axis, -0.5).HubFace - straight.HubFace).Length, 1e-15);
        }
    }

    /// <summary>
    /// Seen: a lock of 35°, read on turning plates, turned the wheel about its leaning axis by 35°, and the road wheel by 33.6°: 8 mm
    /// at the tyre's edge were not reached.
    /// </summary>
    [Theory]
    [InlineData(WheelSide.Left, 14, 5)]
    [InlineData(WheelSide.Right, 14, 5)]
    [InlineData(WheelSide.Left, 0, 0)]
    [InlineData(WheelSide.Right, 7, -3)]
    public void A_road_wheel_turns_by_the_angle_that_turning_plates_show(WheelSide side, double kingpin, double caster)
    {
        const double Degree = Math.PI / 180;
        double out_ = side == WheelSide.Left ? 1 : -1;
        WheelPose straight = WheelPose.StraightAhead(new(0, out_ * 0.75, 0.31), side, new(-0.02, 0.004, 0, 0), 0);
        SteeringLine axis = SteeringLine.AtHubHeight(straight, side, kingpin * Degree, caster * Degree, 0.08, 0.01);
        double Heading(in WheelPose pose) => Math.Atan2(-out_ * pose.Spindle.X, out_ * pose.Spindle.Y);
        for (int degrees = -60; degrees <= 60; degrees += 5)
        {
            WheelPose turned = straight.SteeredTo(axis, degrees * Degree);
            Assert.Equal(degrees * Degree, Heading(turned) - Heading(straight), 1e-12);

            // Rigidly about that axis, the short way.
            Assert.Equal((straight.HubFace - axis.Point).Length, (turned.HubFace - axis.Point).Length, 1e-14);
            Assert.Equal(axis.Direction.Dot(straight.Spindle), axis.Direction.Dot(turned.Spindle), 1e-14);
            Assert.True(turned.Spindle.Dot(straight.Spindle) > 0.4);
        }

        if (kingpin == 14)
        {
            double about = Math.Abs(Heading(straight.Steered(axis, 35 * Degree)) - Heading(straight)) / Degree;
            Assert.InRange(about, 33.4, 34.2);
        }
    }

    [Fact]
    public void Positive_caster_leans_the_outer_wheel_into_the_turn()
    {
        // Fact of the trade, common practice, no source: with caster and no kingpin inclination the outer wheel gains negative camber.
        WheelPose right = WheelPose.StraightAhead(new(0, -0.75, 0.31), WheelSide.Right, default, 0);
        SteeringLine axis = SteeringLine.AtHubHeight(right, WheelSide.Right, 0, 0.12, 0.08, 0);
        double camber = Math.Asin(-right.Steered(axis, 0.4).Spindle.Z);
        Assert.True(camber < -0.03, $"camber {camber}");

        // Closed form: the spindle turned about a unit axis (-sin c, 0, cos c): camber ≈ -sin c · sin steer.
        Assert.Equal(-Math.Sin(0.12) * Math.Sin(0.4), -right.Steered(axis, 0.4).Spindle.Z, 1e-12);
    }

    [Fact]
    public void A_gap_read_at_the_crown_puts_the_arch_where_the_tape_ended()
    {
        // By hand: wheel upright at height 0.31, crown radius 0.31, gap 15 mm straight up at 12: 0.31 + 0.31 + 0.015.
        var tyre = TyreSection.WithEstimates(-0.035, 0.2, 0.19, 0.62, 0.22);
        RimSection rim = RimSection.WithEstimates(-0.035, 0.19, 0.202);
        WheelPose pose = WheelPose.StraightAhead(LeftHub, WheelSide.Left, default, 0);
        Vec3 lip = new GapReading(WheelFeature.Crown, GapDirection.Radial, 12, 0.015).InBody(tyre, rim, pose);
        Assert.Equal(0, (lip - new Vec3(0, 0.715, 0.635)).Length, 1e-15);

        // Outer shoulder along the spindle at 9 o'clock is forward and outboard.
        Vec3 liner = new GapReading(WheelFeature.OuterSidewall, GapDirection.AxialOutboard, 9, 0.02).InBody(tyre, rim, pose);
        Assert.Equal(0, (liner - new Vec3(0.255, 0.75 - 0.035 + 0.11 + 0.02, 0.31)).Length, 1e-15);
        Vec3 tube = new GapReading(WheelFeature.InnerSidewall, GapDirection.AxialInboard, 12, 0.008).InBody(tyre, rim, pose);
        Assert.Equal(0.75 - 0.035 - 0.11 - 0.008, tube.Y, 1e-15);

        // Bump of 10 mm takes 10 mm of the gap; read back at another pose the point stays where it is.
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(4)];
        WheelSolid wheel = WheelSolid.Write(tyre, rim, 4, buffer);
        WheelPose bumped = WheelPose.StraightAhead(LeftHub, WheelSide.Left, default, 0.010);
        Assert.Equal(0.005, Mechanics.Clearance.Clearing.OfPoint(wheel, SpindleFrame.Of(bumped).ToSpindle(lip)).Gap, 1e-12);
    }

    [Fact]
    public void The_frame_carries_points_there_and_back()
    {
        var random = new Random(81);
        for (int i = 0; i < 200; i++)
        {
            WheelPose pose = RandomCorner.Pose(random);
            SpindleFrame frame = SpindleFrame.Of(pose);
            Vec3 p = RandomCorner.Near(random, pose);
            Assert.Equal(0, (frame.ToBody(frame.ToSpindle(p)) - p).Length, 1e-15);
            Assert.Equal(1, frame.Twelve.Cross(frame.Axis).Dot(frame.Three), 1e-14);
        }
    }

    // An axis read 20 mm ahead of the hub passes 20 mm ahead of it, on either side.
    [Fact]
    public void An_axis_ahead_of_the_hub_is_ahead_of_it()
    {
        foreach (WheelSide side in (WheelSide[])[WheelSide.Left, WheelSide.Right])
        {
            WheelPose pose = WheelPose.StraightAhead(new(0.1, 0.7, 0.3), side, default, 0);
            Assert.Equal(0.02, SteeringLine.AtHubHeight(pose, side, 0.2, 0.1, 0.08, 0.02).Point.X - pose.HubFace.X, 1e-12);
        }
    }
}
