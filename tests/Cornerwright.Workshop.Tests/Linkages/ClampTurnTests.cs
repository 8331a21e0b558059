using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>A strut turned in its clamp: the wheel turns further against the strut than its camber changes.</summary>
public class ClampTurnTests
{
    [Theory]
    [InlineData(-2.0)]
    [InlineData(-0.5)]
    [InlineData(1.0)]
    public void The_turn_taken_for_clearance_is_the_linkage_s_own(double degrees)
    {
        double clamp = degrees * Math.PI / 180;
        var (car, build) = WithClamp(MotionLevel.Hardpoints, degrees);
        var points = LinkageOf.Corner(car, CornerPlace.FrontLeft).Value;
        double exact = StrutSetting.Of(points.Linkage, 0, clamp, points.HubFaceOutboard).Turn;
        double taken = Turn(car, build);
        Assert.InRange(Math.Abs(exact / clamp), 1.2, 1.6);
        Assert.Equal(exact, taken, 1e-5);
        Assert.Equal(Math.Sign(clamp), Math.Sign(taken));
    }

    [Fact]
    public void By_tape_it_is_the_same_within_what_is_assumed_of_the_ball_joint()
    {
        var (byPoints, build) = WithClamp(MotionLevel.Hardpoints, -1.5);
        var (byTape, _) = WithClamp(MotionLevel.Ratios, -1.5);
        double axis = byTape.FrontLeft.SpringAxisLength!.Si;
        double points = Turn(byPoints, build), tape = Turn(byTape, build);

        // The ball joint's height is assumed with a standard deviation of 30 mm.
        Assert.True(Math.Abs(tape - points) <= 2 * 0.03 / axis * Math.Abs(points), $"{tape} against {points}");
        Assert.True(Math.Abs(tape) > 1.2 * 1.5 * Math.PI / 180);
    }

    private static double Turn(Car car, Build build)
    {
        var plan = CornerPlan.Compile(car, build, CornerPlace.FrontLeft, CarLearning.InUse(car));
        return plan.Motion.ClampTurn(plan.Inputs.Best());
    }

    private static (Car Car, Build Build) WithClamp(MotionLevel level, double degrees)
    {
        var car = DemoCar.Read();
        car = car with { UseLearned = false, FrontLeft = car.FrontLeft with { Motion = car.FrontLeft.Motion with { Level = level } } };
        var build = car.Build("gravel-3")!;
        return (car, build with { FrontLeft = build.FrontLeft with { ClampCamber = Reading.Of(FormattableString.Invariant($"{degrees} deg"),
            Dimension.Angle, source: ReadingSource.Setting) } });
    }
}
