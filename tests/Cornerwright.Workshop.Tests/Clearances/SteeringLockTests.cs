using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Tests.Linkages;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// Seen: with a tie rod that steers against Ackermann the smaller rack of both sides was taken, so that the wheel on the inside never
/// reached the lock that was read (31.6° of 33°), and a gap behind it was optimistic by 6 mm. A lock is read on the inside of the turn.
/// </summary>
public sealed class SteeringLockTests(ITestOutputHelper output)
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(CornerPlace.FrontLeft, 722)]
    [InlineData(CornerPlace.FrontRight, 722)]
    [InlineData(CornerPlace.FrontLeft, 790)]
    [InlineData(CornerPlace.FrontRight, 790)]
    public void The_wheel_reaches_its_lock_on_the_inside_of_the_turn(CornerPlace place, double tieOuter)
    {
        var car = Car(place, tieOuter);
        var box = CornerClearance.Of(car, car.Build(Demo.Holding)!, place).Box;
        var (inside, outside) = place.IsLeft() ? (box.Most.Steer, -box.Least.Steer) : (-box.Least.Steer, box.Most.Steer);
        output.WriteLine($"{place} {tieOuter}: {inside / Degree:0.00} inside, {outside / Degree:0.00} outside");
        Assert.Equal(33, inside / Degree, 1e-6);
        Assert.True(tieOuter > 750 ? outside > inside + (2 * Degree) : outside < inside - (2 * Degree), $"{outside / Degree}");
    }

    // Within 0.1 mm of many poses of the same linkage, up to the lock that was read.
    [Theory]
    [InlineData(CornerPlace.FrontLeft)]
    [InlineData(CornerPlace.FrontRight)]
    public void A_leg_behind_the_wheel_is_told_at_full_lock(CornerPlace place)
    {
        var car = Car(place, 790);
        var corner = CornerClearance.Of(car, car.Build(Demo.Holding)!, place);
        var (tyre, rim) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, forBody: true);
        var shape = WheelShape.Of(tyre, rim, 12);
        var point = corner.Lines().Single(l => l.Thing.Id == "leg").Points.Single();
        double least = double.PositiveInfinity, own = place.IsLeft() ? 1 : -1;
        for (int i = 0; i <= 120; i++)
        {
            for (int k = 0; k <= 60; k++)
            {
                double travel = corner.Box.Least.Travel + ((corner.Box.Most.Travel - corner.Box.Least.Travel) * k / 60);
                least = corner.TryPose(travel, own * 33 * Degree * i / 120, out var pose)
                    ? Math.Min(least, shape.SignedDistance(pose, point)) : least;
            }
        }

        var finding = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f =>
            f.Corner == place && f.Check == "clear-leg");
        output.WriteLine($"{place}: told {1000 * finding.Value!.Value.Si:0.000}, sampled {1000 * least:0.000} mm, {finding.Worst!.Words}");
        Assert.InRange(finding.Value.Value.Si, least - 1e-4, least + 1e-6);
        Assert.Equal(own * 33, finding.Worst.Steer!.Value / Degree, 0.5);
    }

    // The outside goes over its dead centre before the inside has its lock, or the other way about: said, not left out in silence.
    [Theory]
    [InlineData(790, 50, "the hardpoints end the steering before the rack is at the lock of 50.0 °")]
    [InlineData(650, 60, "the hardpoints reach the lock of 60.0 ° on the outside of the turn alone: nothing at lock is judged")]
    public void A_lock_that_the_hardpoints_reach_on_one_side_alone_is_said(double tieOuter, double lockDegrees, string said)
    {
        var car = Car(CornerPlace.FrontLeft, tieOuter, lockDegrees);
        var plan = CornerPlan.Compile(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft, null);
        Assert.StartsWith(said, plan.Clearance.LockNote, StringComparison.Ordinal);

        // Short of the lock that was read on the inside nothing passes.
        var finding = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f => f.Key == "front-left/clear-leg");
        Assert.Contains(plan.Clearance.LockNote, finding.Assumptions);
        Assert.Equal(said.Contains("nothing", StringComparison.Ordinal), finding.Verdict == Verdict.Unknown);
    }

    private static Car Car(CornerPlace place, double tieOuter, double lockDegrees = 33)
    {
        var car = DemoCar.Read();
        var table = car.FrontLeft.Hardpoints!;
        table = table with { TieOuter = table.TieOuter! with { Y = OracleTables.Typed(tieOuter, "mm", Dimension.Length) } };
        var right = new HardpointTable { Kind = table.Kind, SpringOn = table.SpringOn, DamperOn = table.DamperOn, Mirrored = true };
        foreach (var (side, points) in new[] { (CornerPlace.FrontLeft, table), (CornerPlace.FrontRight, right) })
        {
            var corner = car.At(side);
            car = car.With(side, corner with
            {
                Hardpoints = points,
                Motion = corner.Motion with { Level = MotionLevel.Hardpoints },
                Steering = corner.Steering! with { RackTravel = null, BumpAtLock = null, Lock = Lock(lockDegrees) },
                Obstacles = side != place ? corner.Obstacles :
                [
                    new Obstacle
                    {
                        Id = "leg", Name = "leg of the subframe",
                        Gaps = [new Gap { From = GapFrom.InnerShoulder, Clock = side.IsLeft() ? 3 : 9,
                            Distance = Reading.Of("150 mm", Dimension.Length, "2 mm", ReadingSource.Tape) }],
                    },
                ],
            });
        }

        return car;
    }

    private static Reading Lock(double degrees) => Reading.Of(FormattableString.Invariant($"{degrees} deg"), Dimension.Angle);
}
