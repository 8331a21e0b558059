using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Mechanics.Tests.Motion.Hardpoints;

namespace Cornerwright.Mechanics.Tests.Motion;

/// <summary>A wheel in both wheels' travels: from the track alone against a turned stick, sampled against solved.</summary>
public class PairedMotionTests
{
    private static readonly CycledMotion Level = new(
        MonotoneCurve.Create([-0.3, 0.3], [0, 0], out _), null, null, null, null);

    // A stick of 1.5 m, turned about a point 60 mm below its middle and steered by 0.1 of its roll; both ends as points in space.
    [Theory]
    [InlineData(0.09, -0.08)]
    [InlineData(-0.05, 0.1)]
    [InlineData(0.04, 0.04)]
    public void A_rigid_axle_by_its_track_is_a_stick_turned_about_its_roll_centre(double left, double right)
    {
        const double Track = 1.5, Height = 0.06, Steer = 0.1;
        double roll = Math.Asin((left - right) / Track), yaw = Steer * roll;
        Vec3 Turned(Vec3 v) => v.RotatedAbout(Vec3.UnitX, roll).RotatedAbout(Vec3.UnitZ, yaw);
        Vec3 centre = new(0, -Height * Math.Sin(roll), 0);   // its height is what the travels say
        foreach (var (side, own, other) in new[] { (1, left, right), (-1, right, left) })
        {
            var motion = new RollingMotion(Level, new(Track, 1, Height, Steer, true));
            Assert.Equal(Reach.Reached, motion.WheelAt(own, other, out var wheel));
            var pose = WheelPose.StraightAhead(default, side > 0 ? WheelSide.Left : WheelSide.Right, wheel, own);
            Vec3 end = centre + Turned(new Vec3(0, side * Track / 2, 0)) - new Vec3(0, side * Track / 2, 0),
                spindle = Turned(new Vec3(0, side, 0));

            // Sideways to the second order of the yaw, which the model leaves out: below 0.1 mm here.
            Assert.Equal(end.X, pose.HubFace.X, 2e-4);
            Assert.Equal(end.Y, pose.HubFace.Y, 2e-4);
            Assert.Equal(end.Z + (0.5 * (left + right)), pose.HubFace.Z, 2e-4);
            Assert.True((spindle - pose.Spindle).Length < 2e-3, $"{spindle} {pose.Spindle}");
        }
    }

    [Fact]
    public void Wheels_that_differ_by_more_than_the_axle_is_long_are_out_of_reach()
    {
        var motion = new RollingMotion(
            new CycledMotion(MonotoneCurve.Create([-3, 3], [0, 0], out _), null, null, null, null), new(1.5, 1, 0, 0, true));
        Assert.Equal(Reach.LinkageCannotClose, motion.WheelAt(1.6, 0, out _));
    }

    // Sampled and solved agree: the worst error over a finer grid, m and rad.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_sampled_axle_answers_as_the_solved_one(bool rigid)
    {
        var axle = new RigidAxle(RigidAxleTests.Points());
        var beam = new TwistBeam(TwistBeamTests.Points());
        SolvedAxleMotion Make() => rigid ? new(axle, true, Level) : new(beam, Level);
        var (sampled, solved) = (Make(), Make());
        sampled.Sample((-0.09, 0.08), (-0.085, 0.09));
        double worst = 0;
        for (int i = 0; i <= 12; i++)
        {
            for (int k = 0; k <= 12; k++)
            {
                double own = -0.09 + (0.17 * i / 12), other = -0.085 + (0.175 * k / 12);
                Assert.Equal(Reach.Reached, sampled.WheelAt(own, other, out var a));
                Assert.Equal(Reach.Reached, solved.WheelAt(own, other, out var b));
                worst = Math.Max(worst, Math.Max(Math.Abs(a.Camber - b.Camber), Math.Abs(a.Toe - b.Toe)));
                worst = Math.Max(worst, Math.Max(Math.Abs(a.LateralShift - b.LateralShift), Math.Abs(a.ForwardShift - b.ForwardShift)));
            }
        }

        Assert.InRange(worst, 1e-15, 1e-6);
    }

    // The cheap pose is the pose of the full state.
    [Fact]
    public void A_wheel_without_rates_is_where_the_full_state_has_it()
    {
        var axle = new RigidAxle(RigidAxleTests.Points());
        var state = axle.At(0.07, -0.05);
        foreach (var (left, wheel) in new[] { (true, state.Left!), (false, state.Right!) })
        {
            Assert.Equal(Reach.Reached, axle.WheelAt(0.07, -0.05, left, out Vec3 centre, out Vec3 spindle));
            Assert.Equal(wheel.Centre, centre);
            Assert.Equal(wheel.Spindle, spindle);
        }

        Assert.Equal(Reach.NotFinite, axle.WheelAt(double.NaN, 0, true, out _, out _));
        Assert.Equal(Reach.LinkageCannotClose, axle.WheelAt(2, 0, true, out _, out _));
    }
}
