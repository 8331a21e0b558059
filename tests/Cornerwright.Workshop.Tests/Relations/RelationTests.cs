using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Relations;

namespace Cornerwright.Workshop.Tests.Relations;

/// <summary>A number that contradicts another is seen, asked, confirmed with a word of why, and asked again when it changes.</summary>
public class RelationTests
{
    private static readonly Car Demo = DemoCar.Read();

    [Fact]
    public void The_demo_goes_together()
    {
        var relations = CarRelations.Of(Demo);
        Assert.Empty(relations.Found);
        Assert.True(relations.Looked > 500, $"only {relations.Looked} relations were looked at");
    }

    // Each example: what was typed, the relation that sees it, and how bad it is. The right numbers stand in the demo.
    [Theory]
    [InlineData("parts/springs/f-8-220/solidHeight", "205 mm", "spring-solid/parts/springs/f-8-220", Band.CannotBe)]
    [InlineData("parts/springs/f-8-220/wireDiameter", "8 mm", "spring-wire/parts/springs/f-8-220", Band.Surprising)]
    [InlineData("parts/springs/r-7-320/rate", "7 N/mm", "spring-rate/parts/springs/r-7-320", Band.CannotBe)]
    [InlineData("parts/springs/r-7-320/rate", "7 N/mm", "name-says/parts/springs/r-7-320/rate", Band.CannotBe)]
    [InlineData("parts/springs/f-6-250/greatestDeflection", "290 mm", "spring-travel/parts/springs/f-6-250", Band.CannotBe)]
    [InlineData("parts/springs/f-6-250/tensileStrength", "700 MPa", "spring-stress/parts/springs/f-6-250", Band.CannotBe)]
    [InlineData("parts/wheels/w-gravel/barrelRadius", "348 mm", "barrel-rim/parts/wheels/w-gravel", Band.CannotBe)]
    [InlineData("parts/wheels/w-now/loadRating", "1380 kg", "rating-load/rear-left/w-now", Band.Surprising)]
    [InlineData("front/hub/centring", "32.5 mm", "bore-spigot/front-left/w-now", Band.Surprising)]
    [InlineData("front/hub/threadPitch", "0.15 mm", "thread-hub/front/hub/threadPitch", Band.CannotBe)]
    [InlineData("frontLeft/calliperProud", "72 mm", "caliper-room/frontLeft/calliperProud", Band.CannotBe)]
    [InlineData("frontLeft/obstacles/liner/gaps/1/distance", "12.6 mm", "gap-line/frontLeft/obstacles/liner/gaps/1", Band.Surprising)]
    [InlineData("frontLeft/obstacles/chassis-leg/gaps/0/distance", "310 mm", "sides/frontLeft/obstacles/chassis-leg/gaps/0/distance",
        Band.Surprising)]
    [InlineData("frontLeft/obstacles/chassis-leg/gaps/0/steer", "-35 deg", "gap-steer/frontLeft/obstacles/chassis-leg/gaps/0/way",
        Band.Surprising)]
    [InlineData("frontLeft/rideHeight", "368 mm", "arch-height/frontLeft/obstacles/arch-lip/gaps/1", Band.Surprising)]
    [InlineData("frontLeft/strut/tyreToTube", "240 mm", "sides/frontLeft/strut/tyreToTube", Band.Surprising)]
    [InlineData("parts/bumpStops/b-front/curve/2/deflection", "58 mm", "stop-curve/parts/bumpStops/b-front/end", Band.CannotBe)]
    [InlineData("parts/perches/p-front/register", "30.75 mm", "perch-shape/parts/perches/p-front", Band.Surprising)]
    [InlineData("loadCases/full/rearLeft", "48.8 kg", "load-sides/full/rear", Band.CannotBe)]
    [InlineData("rearLeft/motion/steps/2/springLength", "278.5 mm", "cycled-even/rearLeft/motion/steps/2/springLength", Band.Surprising)]
    [InlineData("rearLeft/springAxisLength", "296 mm", "cycled-meets/rearLeft/springAxisLength", Band.Surprising)]
    [InlineData("rearRight/motion/springRatio", "0.062", "spring-carries/builds/now/rearRight", Band.CannotBe)]
    [InlineData("builds/now/frontLeft/perchHeight", "24.5 mm", "spring-carries/builds/now/frontLeft", Band.CannotBe)]
    [InlineData("parts/dampers/d-now/bodyHeight", "185 mm", "rod-shows/builds/now/frontLeft/droop", Band.CannotBe)]
    [InlineData("parts/dampers/d-front/threadHigh", "690 mm", "damper-thread/parts/dampers/d-front/body", Band.CannotBe)]
    [InlineData("parts/antiRollBars/bar-front/diameter", "44 mm", "name-says/parts/antiRollBars/bar-front/diameter", Band.Surprising)]
    [InlineData("frontLeft/steering/kingpin", "28 deg", "points-axis/frontLeft/steering/kingpin", Band.Surprising)]
    [InlineData("frontLeft/hardpoints/tieInner/z", "29.3 mm", "points-motion/frontLeft/hardpoints/toe", Band.CannotBe)]
    [InlineData("frontLeft/hardpoints/hubFace/y", "-798 mm", "points-hub/frontLeft/hardpoints/hubFace/y", Band.CannotBe)]
    [InlineData("builds/gravel-3/frontLeft/pressure", "22 bar", "usual-range/builds/gravel-3/frontLeft/pressure", Band.CannotBe)]
    [InlineData("limits/bumpTravel", "4 mm", "limit-lax/limits/bumpTravel", Band.Surprising)]
    public void A_slip_is_seen(string path, string typed, string relation, Band band)
    {
        var found = CarRelations.Of(Typed(Demo, path, typed)).Found;
        var seen = found.FirstOrDefault(r => r.Id == relation);
        Assert.True(seen is not null, $"{relation} is not among {string.Join(", ", found.Select(r => r.Id))}");
        Assert.Equal(band, seen.Band);
        Assert.Contains(seen.Ties, t => t.Path == path && t.Typed == typed);
        Assert.NotEmpty(seen.Sentence);
    }

    [Fact]
    public void What_cannot_be_keeps_a_build_from_holding_until_it_is_confirmed()
    {
        var half = Demo with { Limits = Demo.Limits with { Certainty = Reading.Of("51 %", Garage.Quantities.Dimension.Ratio) } };
        Assert.Equal(Verdict.Holds, Of(half).Verdict);

        // A barrel wider than its rim: the caliper has more room than ever, and every check holds.
        var wide = Typed(half, "parts/wheels/w-gravel-40/barrelRadius", "300 mm");
        Assert.Equal(Verdict.Holds, Of(wide).Worst);
        Assert.Equal(Verdict.Unknown, Of(wide).Verdict);
        var confirmed = Of(wide).Relations.Open.Aggregate(wide, (car, relation) => Confirming.With(car, relation, "measured twice"));
        Assert.Equal(Verdict.Holds, Of(confirmed).Verdict);

        static Judgement Of(Car car) => Judge.Build(car, car.Build("gravel-3")!, JudgeOptions.FindingsOnly);
    }

    [Fact]
    public void A_confirmation_lapses_when_one_of_its_numbers_changes()
    {
        var car = Typed(Demo, "parts/wheels/w-now/loadRating", "1380 kg");
        var open = CarRelations.Of(car).Open.First(r => r.Id == "rating-load/rear-left/w-now");
        car = Confirming.With(car, open, "cast for a van");
        var confirmed = Assert.Single(CarRelations.Of(car).Found, r => r.Id == open.Id);
        Assert.True(confirmed.IsConfirmed);
        Assert.Equal("cast for a van", confirmed.Why);
        Assert.DoesNotContain(CarRelations.Of(car).Open, r => r.Id == open.Id);

        var changed = CarRelations.Of(Typed(car, "parts/wheels/w-now/loadRating", "1400 kg"));
        Assert.Contains(changed.Open, r => r.Id == open.Id);
        Assert.Contains(CarRelations.Of(Confirming.Without(car, open.Id)).Open, r => r.Id == open.Id);
    }

    [Fact]
    public void A_confirmation_is_kept_in_the_file()
    {
        var car = Typed(Demo, "parts/wheels/w-now/loadRating", "1380 kg");
        car = Confirming.With(car, CarRelations.Of(car).Open.First(), "cast for a van");
        var back = CarFile.Read(CarFile.Write(car)).Value;
        Assert.Equal(car.Confirmed[0].Numbers, back.Confirmed[0].Numbers);
        Assert.True(CarRelations.Of(back).Found.First(r => r.Id == back.Confirmed[0].Relation).IsConfirmed);
    }

    [Fact]
    public void A_build_is_not_blamed_for_parts_that_it_does_not_use()
    {
        var car = Typed(Demo, "parts/springs/f-8-220/solidHeight", "205 mm");
        Assert.True(CarRelations.Of(car, car.Build("gravel-1")!).Contradicts);
        Assert.Empty(CarRelations.Of(car, car.Build("gravel-3")!).Found);
    }

    [Fact]
    public void A_number_that_is_missing_is_in_no_relation()
    {
        var car = Demo.With(CornerPlace.FrontLeft, Demo.FrontLeft with { RideHeight = null, Strut = null, Steering = null,
            Obstacles = [] });
        Assert.Empty(CarRelations.Of(car).Found);
        Assert.Empty(CarRelations.Of(new Car()).Found);
    }

    [Fact]
    public void Every_kind_has_its_row_in_the_theory()
    {
        string page = Page("relations.md");
        Assert.Empty(RelationCatalogue.All.Where(k => !page.Contains($"| {k.Id} | {k.Sentence} | {k.Source} |", StringComparison.Ordinal))
            .Select(k => $"| {k.Id} | {k.Sentence} | {k.Source} |"));
        Assert.Equal(RelationCatalogue.All.Count, RelationCatalogue.All.Select(k => k.Id).Distinct().Count());
    }

    internal static Car Typed(Car car, string path, string text)
    {
        var (field, old) = CarPath.Find(car, path) ?? throw new ArgumentException(path);
        return CarPath.With(car, path, Reading.Parse(path, field.Words.Dimension, text, source: old?.Source ?? ReadingSource.Tape).Value
            with { Tolerance = old?.Tolerance })!;
    }

    internal static string Page(string name)
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Cornerwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The repository is not above the tests.");
        }

        return File.ReadAllText(Path.Combine(folder, "docs", "theory", name));
    }
}
