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
/// A car that was not read from a file can hold more than the judge has room
/// for. Seen: it judged what it had room for and said that the rest holds.
/// </summary>
public sealed class TooManyThingsTests
{
    private static Corner Measured => DemoShelf.Car.FrontLeft;

    [Fact]
    public void A_line_of_seventeen_gaps_is_unknown_and_says_why()
    {
        // The seventeenth lies in the tyre's way; the sixteen before it are far off.
        var gaps = Enumerable.Range(0, 17).Select(i =>
            new Gap { Clock = 9 + (0.1 * i), Distance = Reading.Of(i == 16 ? "1 mm" : "150 mm", Dimension.Length) });
        var finding = Judged(Measured with { Obstacles = [new Obstacle { Id = "liner", Name = "liner", Gaps = [.. gaps] }] })
            .Single(f => f.Check == "clear-liner");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Equal(["a shorter list of gaps to liner: 17 are given, 16 can be judged"], finding.Missing.Select(m => m.Label));
    }

    [Fact]
    public void More_than_sixty_things_leave_every_clearance_unknown()
    {
        var things = Enumerable.Range(0, 61).Select(i => new Obstacle { Id = $"t{i}", Name = $"thing {i}",
            Gaps = [new Gap { Distance = Reading.Of(i == 60 ? "1 mm" : "150 mm", Dimension.Length) }] });
        var corner = Measured with { Obstacles = [.. things] };
        var findings = Judged(corner).Where(f => f.Check.StartsWith("clear-", StringComparison.Ordinal)).ToList();
        Assert.True(findings.Count >= 60, $"{findings.Count} findings");
        Assert.All(findings, f => Assert.Equal(Verdict.Unknown, f.Verdict));
        Assert.All(findings, f =>
            Assert.Contains("a shorter list of things near the wheel: 61 are given, 60 can be judged", f.Missing.Select(m => m.Label)));
        var car = DemoShelf.Car with { FrontLeft = corner };
        Assert.Contains("a shorter list of things near the wheel: 61 are given, 60 can be judged",
            CornerClearance.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft).Missing);
    }

    /// <summary>Sixty things beside four pieces of a strut use every bit there is; the last thing still counts.</summary>
    [Fact]
    public void The_sixtieth_thing_is_judged_like_the_first()
    {
        var things = Enumerable.Range(0, 60).Select(i => new Obstacle { Id = $"t{i}", Name = $"thing {i}",
            Gaps = [new Gap { Distance = Reading.Of(i is 0 or 59 ? "1 mm" : "150 mm", Dimension.Length) }] });
        var findings = Judged(Measured with { Obstacles = [.. things] });
        Finding first = findings.Single(f => f.Check == "clear-t0"), last = findings.Single(f => f.Check == "clear-t59");
        Assert.Equal(Verdict.Fails, last.Verdict);
        Assert.Equal(first.Value!.Value.Si, last.Value!.Value.Si);
        Assert.Equal(first.Doubt!.Value.Si, last.Doubt!.Value.Si);
    }

    private static List<Finding> Judged(Corner corner)
    {
        var car = DemoShelf.Car with { FrontLeft = corner };
        return [.. Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Where(f => f.Corner == CornerPlace.FrontLeft)];
    }
}
