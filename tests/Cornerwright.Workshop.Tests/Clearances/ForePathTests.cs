using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Tests.Linkages;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// Seen: an inner arch ahead of a trailing arm "holds, 13.8 ± 1.0 mm, chance 1", where 0.75 mm are left: the hub goes 13.5 mm forward as
/// it rises by 93, and no level but the full linkage of one wheel knew of a path along the car. It is a reading now, or a doubt that is
/// told.
/// </summary>
public sealed class ForePathTests(ITestOutputHelper output)
{
    private const double Degree = Math.PI / 180;

    // By the points of the beam and the axle, a gap ahead of the wheel is that of many poses of the true one.
    [Theory]
    [InlineData(true, CornerPlace.RearLeft)]
    [InlineData(true, CornerPlace.RearRight)]
    [InlineData(false, CornerPlace.RearLeft)]
    [InlineData(false, CornerPlace.RearRight)]
    public void By_hardpoints_a_gap_ahead_is_that_of_the_true_axle(bool rigid, CornerPlace place)
    {
        var demo = DemoCar.Read();
        var car = Ahead(rigid ? AxleTables.Rigid(demo) : AxleTables.Twist(demo), place, 30);
        var (told, least) = (Told(car, place), Truth(car, rigid, place));
        output.WriteLine($"{place}: told {1000 * told.Value!.Value.Si:0.00}, true {1000 * least:0.00} mm");
        Assert.InRange(told.Value.Value.Si, least - 2e-4, least + 2e-6);
        Assert.True(least < 0.025, "the wheel goes forward");
    }

    // By tape the same gap carries the doubt, says what it takes for granted, and does not hold where it may not.
    [Theory]
    [InlineData(CornerPlace.RearLeft)]
    [InlineData(CornerPlace.RearRight)]
    public void By_tape_a_gap_ahead_of_a_trailing_arm_carries_the_doubt(CornerPlace place)
    {
        var demo = DemoCar.Read();
        var car = demo with { Rear = demo.Rear with { Kind = AxleKind.TwistBeam } };
        var motion = demo.RearRight.Motion with { ForwardPerTravel = null, SwingArm = null };
        car = car.With(CornerPlace.RearLeft, car.RearLeft with { Motion = motion })
            .With(CornerPlace.RearRight, car.RearRight with { Motion = motion });
        car = Ahead(car, place, 37);
        var (told, least) = (Told(car, place), Truth(car, false, place));
        output.WriteLine($"{place}: told {1000 * told.Value!.Value.Si:0.00} ± {told.Doubt}, true {1000 * least:0.00} mm");
        Assert.InRange(told.Value.Value.Si, least - told.Doubt!.Value.Si, least + told.Doubt.Value.Si);
        Assert.NotEqual(Verdict.Holds, told.Verdict);
        Assert.Contains(told.Assumptions, a => a.StartsWith("wheel forward with bump: not measured", StringComparison.Ordinal));
    }

    // What was read at each step, or the arm's length and slope, takes the doubt away again.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_path_that_was_read_counts_and_needs_no_assumption(bool cycled)
    {
        var place = CornerPlace.RearLeft;
        var car = DemoCar.Read();
        double[] at = [-110, -70, -30, 10, 50, 90, 130];
        var truth = new TrueAxle(false, true, 0, 0);
        double At(double mm) => 1000 * truth.Pose(mm / 1000, mm / 1000).HubFace.X;
        var corner = car.At(place);
        var motion = cycled
            ? corner.Motion with { Steps = [.. corner.Motion.Steps.Select((s, i) => s with { Forward = Mm(At(at[i])) })] }
            : car.RearRight.Motion with
            {
                ForwardPerTravel = Reading.Of("0.036", Dimension.Ratio, "0.01", ReadingSource.Tape),
                SwingArm = Reading.Of("424 mm", Dimension.Length, "10 mm", ReadingSource.Tape),
            };
        car = Ahead(car.With(place, corner with { Motion = motion }), place, 30);
        var clearance = CornerClearance.Of(car, car.Build(Demo.Holding)!, place);
        for (double travel = -0.08; travel <= clearance.Box.Most.Travel; travel += 0.02)
        {
            Assert.True(clearance.TryPose(travel, 0, out var pose));
            Assert.Equal(At(1000 * travel) / 1000, pose.HubFace.X, 5e-4);
        }

        var told = Told(car, place);
        Assert.DoesNotContain(told.Assumptions, a => a.Contains("forward", StringComparison.Ordinal));
        Assert.True(told.Doubt!.Value.Si < 0.006, told.Doubt.ToString());
    }

    // A left wheel steered about an upright axis 20 mm ahead of the hub: the hub swings about it.
    [Theory]
    [InlineData(CornerPlace.FrontLeft, 1)]
    [InlineData(CornerPlace.FrontRight, -1)]
    public void The_wheel_turns_about_an_axis_ahead_of_the_hub(CornerPlace place, int side)
    {
        var car = DemoCar.Read();
        var upright = car.At(place).Steering! with
        {
            Kingpin = Reading.Of("0 deg", Dimension.Angle), Caster = Reading.Of("0 deg", Dimension.Angle),
            HubOffset = Reading.Of("80 mm", Dimension.Length), TrailAtHub = Reading.Of("20 mm", Dimension.Length),
        };
        car = car.With(place, car.At(place) with { Steering = upright });
        var clearance = CornerClearance.Of(car, car.Build(Demo.Holding)!, place);
        double steer = 30 * Degree;
        Assert.True(clearance.TryPose(0, steer, out var pose));

        // From the axis the hub lies 20 mm behind and 80 mm outboard; to the left is counterclockwise from above.
        var (sin, cos) = Math.SinCos(steer);
        Assert.Equal(0.02 + (-0.02 * cos) - (side * 0.08 * sin), pose.HubFace.X, 1e-9);
        Assert.Equal((-side * 0.08) + (-0.02 * sin) + (side * 0.08 * cos), pose.HubFace.Y, 1e-9);
    }

    [Fact]
    public void An_axis_that_nobody_read_fore_and_aft_is_a_doubt_that_is_told()
    {
        var car = DemoCar.Read();
        var gap = new Gap { From = GapFrom.OuterShoulder, Clock = 10, Distance = Mm(60) };
        Car With(Reading? trail) => car.With(CornerPlace.FrontLeft, car.FrontLeft with
        {
            Steering = car.FrontLeft.Steering! with { TrailAtHub = trail },
            Obstacles = [new Obstacle { Id = "ahead", Name = "liner", Gaps = [gap] }],
        });
        const string Words = "steering axis: taken to pass the hub's centre at hub height, ± 10 mm fore and aft";
        var (unread, read) = (Told(With(null), CornerPlace.FrontLeft), Told(With(Mm(0)), CornerPlace.FrontLeft));
        Assert.Contains(Words, unread.Assumptions);
        Assert.DoesNotContain(Words, read.Assumptions);
        Assert.True(unread.Doubt!.Value.Si > read.Doubt!.Value.Si);
        Assert.Equal(read.Value!.Value.Si, unread.Value!.Value.Si, 1e-9);
    }

    private static Car Ahead(Car car, CornerPlace place, double mm) => car.With(place, car.At(place) with
    {
        Obstacles = [new Obstacle
        {
            Id = "ahead", Name = "inner arch",
            Gaps = [new Gap { From = GapFrom.Crown, Direction = Garage.Chassis.GapDirection.Radial, Clock = place.IsLeft() ? 9.5 : 2.5,
                Distance = Mm(mm) }],
        }],
    });

    private static Finding Told(Car car, CornerPlace place) =>
        Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f => f.Corner == place && f.Check == "clear-ahead");

    private static double Truth(Car car, bool rigid, CornerPlace place)
    {
        var corner = CornerClearance.Of(car, car.Build(Demo.Holding)!, place);
        var axle = new TrueAxle(rigid, place.IsLeft(), car.At(place).Camber!.Si, car.At(place).Toe?.Si ?? 0);
        var (tyre, rim) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, forBody: true);
        return axle.Sampled(WheelShape.Of(tyre, rim, 12), corner.Lines().Single().Points, corner.Box, 61).Least;
    }

    private static Reading Mm(double mm) =>
        Reading.Of(FormattableString.Invariant($"{mm:0.000} mm"), Dimension.Length, "1 mm", ReadingSource.Tape);
}
