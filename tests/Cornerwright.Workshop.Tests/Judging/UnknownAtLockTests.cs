using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Tests.Clearances;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Seen: a lock of 35° was typed, the kingpin inclination not; the lock was ignored and a bracket far inside the tyre's way at lock "holds,
/// over 99.9 %". What a steered wheel does at lock is unknown until all of it is known, and says which reading is wanted.
/// </summary>
public sealed class UnknownAtLockTests
{
    // Ahead of the tyre's inner shoulder: clear by far straight ahead, in the tyre's way at left lock.
    private static readonly Obstacle Bracket = new()
    {
        Id = "bracket", Name = "bracket", Gaps = [new Gap { From = GapFrom.InnerShoulder, Direction = GapDirection.Inboard, Clock = 9,
            Distance = Reading.Of("60 mm", Dimension.Length) }],
    };

    private static readonly string[] Body = ["clear-bracket", "scan-arch"];

    private static Car Car { get; } = DemoShelf.Car with
    {
        FrontLeft = DemoShelf.Car.FrontLeft with { Obstacles = [Bracket] },
    };

    [Fact]
    public void With_everything_known_the_bracket_is_hit_at_lock() =>
        Assert.Equal(Verdict.Fails, Of(Car.FrontLeft).Single(f => f.Check == "clear-bracket").Verdict);

    [Theory]
    [InlineData(nameof(SteeringAxis.Kingpin), "kingpin inclination")]
    [InlineData(nameof(SteeringAxis.Caster), "caster")]
    [InlineData(nameof(SteeringAxis.HubOffset), "steering axis to hub face")]
    [InlineData(nameof(SteeringAxis.Lock), "steering lock")]
    public void One_reading_less_and_what_holds_straight_ahead_is_unknown(string taken, string wanted)
    {
        var corner = Car.FrontLeft with { Steering = Without(Car.FrontLeft.Steering!, taken) };
        var findings = Of(corner).Where(f => Body.Contains(f.Check)).ToList();
        Assert.Equal(Body.Length, findings.Count);
        Assert.All(findings.Where(f => f.Verdict != Verdict.Fails), f =>
        {
            Assert.Equal(Verdict.Unknown, f.Verdict);
            Assert.Equal([wanted], f.Missing.Select(m => m.Label));
            Assert.StartsWith($"Not known at lock: {wanted}. Without steering: The ", f.Sentence, StringComparison.Ordinal);
            Assert.Null(f.Probability);
        });
        Assert.Equal(Verdict.Unknown, findings.Single(f => f.Check == "clear-bracket").Verdict);

        // What moves with the wheel does not ask for the steering.
        Assert.Contains(Of(corner), f => f.Check == "clear-strut-tube" && f.Verdict != Verdict.Unknown);
        var car = Car with { FrontLeft = corner };
        Assert.Equal([wanted], CornerClearance.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft, DemoShelf.Shelf).MissingAtLock);
        Assert.Contains(wanted, WidestWheel.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft).Missing);
    }

    [Fact]
    public void A_gap_too_small_straight_ahead_fails_whatever_lock_may_do()
    {
        var near = Bracket with { Gaps = [Bracket.Gaps[0] with { Distance = Reading.Of("1 mm", Dimension.Length) }] };
        var finding = Of(Car.FrontLeft with { Steering = null, Obstacles = [near] }).Single(f => f.Check == "clear-bracket");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.Contains("lock to lock is not judged, for want of: kingpin inclination, caster, steering axis to hub face, steering lock",
            finding.Assumptions);
    }

    /// <summary>
    /// A rack knows its axis from the points; it still has to be told how far it goes, and a lock that the points cannot reach is none.
    /// </summary>
    [Theory]
    [InlineData("", "steering lock or rack travel")]
    [InlineData("60 deg", "a steering lock that the hardpoints can reach")]
    public void Hardpoints_want_a_lock_that_they_reach(string typed, string wanted)
    {
        var steering = new SteeringAxis { Lock = typed.Length == 0 ? null : Reading.Of(typed, Dimension.Angle) };
        var corner = Car.FrontLeft with { Motion = Car.FrontLeft.Motion with { Level = MotionLevel.Hardpoints }, Steering = steering };
        var finding = Of(corner).Single(f => f.Check == "clear-bracket");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Equal([wanted], finding.Missing.Select(m => m.Label));
    }

    [Fact]
    public void A_car_that_steers_with_neither_axle_is_asked_which()
    {
        var car = Car with { Front = Car.Front with { Steered = false }, FrontLeft = Car.FrontLeft with { Steering = null },
            FrontRight = Car.FrontRight with { Steering = null } };
        var findings = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings;
        Assert.Equal(["which axle steers: neither is ticked as steered"],
            findings.Single(f => f.Key == "front-left/clear-bracket").Missing.Select(m => m.Label));
        Assert.Contains(findings, f => f.Key == "rear-left/clear-arch-lip" && f.Verdict != Verdict.Unknown);
    }

    /// <summary>The whole build is then unknown at best, never "holds".</summary>
    [Fact]
    public void The_verdict_of_the_build_is_not_better_than_its_findings()
    {
        var car = DemoShelf.Car with { FrontLeft = Car.FrontLeft with { Steering = null } };
        var judged = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly with { Scans = DemoShelf.Shelf });
        Assert.NotEqual(Verdict.Holds, judged.Verdict);
        Assert.DoesNotContain(judged.Findings, f =>
            f.Corner == CornerPlace.FrontLeft && Body.Contains(f.Check) && f.Verdict is Verdict.Holds or Verdict.Tight);
        Assert.True(judged.Count(Verdict.Unknown) >= 1);
    }

    private static List<Finding> Of(Corner corner) =>
        [.. Judge.Build(Car with { FrontLeft = corner }, Demo.Holding, JudgeOptions.Everything with { Scans = DemoShelf.Shelf })
            .Findings.Where(f => f.Corner == CornerPlace.FrontLeft)];

    private static SteeringAxis Without(SteeringAxis axis, string taken) => taken switch
    {
        nameof(SteeringAxis.Kingpin) => axis with { Kingpin = null },
        nameof(SteeringAxis.Caster) => axis with { Caster = null },
        nameof(SteeringAxis.HubOffset) => axis with { HubOffset = null },
        _ => axis with { Lock = null },
    };
}
