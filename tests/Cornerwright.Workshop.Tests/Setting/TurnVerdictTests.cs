using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Setting;

namespace Cornerwright.Workshop.Tests.Setting;

/// <summary>
/// A turn table that only counts turns led 25 turns down into a car whose springs hang loose and whose stops are touched, without a word.
/// </summary>
public sealed class TurnVerdictTests
{
    private static readonly Car Car = DemoCar.Read();

    [Fact]
    public void A_car_turned_far_down_is_told_to_fail_and_where()
    {
        var verdict = Verdict(345, 385);
        Assert.True(verdict.Fails);
        Assert.StartsWith("Set like this the build fails:", verdict.Summary, StringComparison.Ordinal);
        Assert.Contains(verdict.Lines, l => l.StartsWith("Fails: front left, Seated at full droop.", StringComparison.Ordinal));
        Assert.Contains(verdict.Lines, l => l.StartsWith("Fails: rear right, Free bump travel.", StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_the_judgement_of_the_build_as_it_will_stand()
    {
        var table = Table(345, 385);
        var alone = Judge.Build(Car, table.AfterTurning, JudgeOptions.FindingsOnly);
        var then = TurnVerdict.Of(Car, table).Then;
        foreach (var finding in alone.Findings.Where(f => f.Check != "ride-height"))
        {
            var same = then.Findings.Single(f => f.Key == finding.Key);
            Assert.Equal((finding.Verdict, finding.Value), (same.Verdict, same.Value));
        }

        Assert.True(alone.Count(Findings.Verdict.Fails) > 10);
    }

    [Fact]
    public void A_wish_that_the_car_meets_is_not_talked_down()
    {
        var build = Car.Build(Demo.Holding)!;
        var table = TurnTableMaker.Make(Car, build).Value;
        var verdict = TurnVerdict.Of(Car, table);
        Assert.False(verdict.Fails);
        Assert.Empty(verdict.Lines);
    }

    [Fact]
    public void What_fails_now_already_is_told_apart()
    {
        var build = Car.Build(Demo.FirstIdea)!;
        var wish = TurnTableMaker.UsualWish(Car, build);
        var verdict = TurnVerdict.Of(Car, TurnTableMaker.Make(Car, build, wish).Value);
        Assert.Contains(verdict.Lines, l => l.StartsWith("Fails, as now:", StringComparison.Ordinal));
    }

    private static TurnVerdict Verdict(double front, double rear) => TurnVerdict.Of(Car, Table(front, rear));

    private static TurnTable Table(double front, double rear)
    {
        var build = Car.Build(Demo.Holding)!;
        var wish = TurnTableMaker.UsualWish(Car, build);
        foreach (var place in Places.Corners)
        {
            double mm = place.Axle() == AxlePlace.Front ? front : rear;
            wish = wish.With(place, new CornerWish { Height = Reading.Of(FormattableString.Invariant($"{mm} mm"), Dimension.Length) });
        }

        return TurnTableMaker.Make(Car, build, wish).Value;
    }
}
