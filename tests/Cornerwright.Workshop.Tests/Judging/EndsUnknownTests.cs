using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Where nobody knows what ends the travel, gaps were judged over 60 mm either way and "held, over 99 %": the wheel may go further.
/// </summary>
public sealed class EndsUnknownTests
{
    private static readonly Car Whole = DemoCar.Read();

    [Theory]
    [InlineData(CornerPlace.FrontLeft)]
    [InlineData(CornerPlace.FrontRight)]
    [InlineData(CornerPlace.RearLeft)]
    [InlineData(CornerPlace.RearRight)]
    public void A_gap_to_the_body_does_not_hold_where_the_travel_has_no_known_end(CornerPlace place)
    {
        var gaps = Gaps(Endless(Whole), place);
        Assert.NotEmpty(gaps);
        foreach (var gap in gaps)
        {
            Assert.Equal(Verdict.Unknown, gap.Verdict);
            Assert.Contains(gap.Missing, m => m.Label == "a damper");
            Assert.Contains("Ends of travel not known", gap.Sentence, StringComparison.Ordinal);
            Assert.Contains("60 mm either way", gap.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void One_that_is_too_small_within_that_fails_all_the_same()
    {
        var car = Endless(Whole);
        var lip = car.FrontLeft.Obstacles.Single(o => o.Id == "arch-lip");
        var near = lip with { Gaps = [.. lip.Gaps.Select(g => g with { Distance = Reading.Of("25 mm", Dimension.Length, "2 mm") })] };
        car = car.With(CornerPlace.FrontLeft,
            car.FrontLeft with { Obstacles = [.. car.FrontLeft.Obstacles.Select(o => o.Id == lip.Id ? near : o)] });
        Assert.Equal(Verdict.Fails, Gaps(car, CornerPlace.FrontLeft).Single(f => f.Check == "clear-arch-lip").Verdict);
    }

    [Fact]
    public void Nor_is_it_said_how_wide_a_wheel_may_be()
    {
        var car = Endless(Whole);
        var answer = WidestWheel.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft);
        Assert.Contains("a damper", answer.Missing);
        Assert.Empty(WidestWheel.Of(Whole, Whole.Build(Demo.Holding)!, CornerPlace.FrontLeft).Missing);
    }

    [Fact]
    public void A_damper_of_unknown_closed_length_may_shut_before_its_stop_is_spent()
    {
        var car = Whole with
        {
            Parts = Whole.Parts with { Dampers = [.. Whole.Parts.Dampers.Select(d => d with { RodClosed = null })] },
        };
        var order = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Where(f => f.Check == "stop-order").ToList();
        Assert.Equal(4, order.Count);
        Assert.All(order, f => Assert.Equal(Verdict.Unknown, f.Verdict));
        Assert.All(order, f => Assert.Contains(f.Missing, m => m.Path.EndsWith("/rodClosed", StringComparison.Ordinal)));
    }

    // A name that says "60 mm" beside a part whose length nobody read ended the headline in an error.
    [Fact]
    public void A_name_with_a_number_in_it_needs_no_reading_beside_it()
    {
        var car = Whole with
        {
            Parts = Whole.Parts with
            {
                BumpStops = [.. Whole.Parts.BumpStops.Select(b => b with { Name = "Bump stop 60 mm", Length = null })],
                Sheets = [.. Whole.Parts.Sheets.Select(b => b with { Name = "Pad 6 mm", Thickness = null })],
            },
        };
        var judged = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly);
        Assert.Empty(judged.Relations.OpenWords);
        Assert.Equal(Verdict.Unknown, judged.Verdict);
    }

    private static List<Finding> Gaps(Car car, CornerPlace place)
    {
        var things = car.At(place).Obstacles.Where(o => o.AttachedTo == AttachedTo.Body).Select(o => "clear-" + o.Id).ToHashSet();
        var findings = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings;
        return [.. findings.Where(f => f.Corner == place && things.Contains(f.Check))];
    }

    // No damper, no stack, nothing that ends droop or bump.
    private static Car Endless(Car car)
    {
        foreach (var place in Places.Corners)
        {
            car = car.With(place, car.At(place) with { MetalContact = null, DroopLimit = null });
        }

        return car with { Builds = [.. car.Builds.Select(Bare)] };
    }

    private static Build Bare(Build build)
    {
        foreach (var place in Places.Corners)
        {
            build = build.With(place, build.At(place) with { Damper = "", Stack = [] });
        }

        return build;
    }
}
