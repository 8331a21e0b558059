using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Facts of the trade, asked of the whole judge on a car of about 1.5 t. Common practice, no source: what people who do this
/// work say they see; rough ("about"), so the bands are wide.
/// </summary>
public sealed class CommonPracticeTests
{
    private const double Inch = 0.0254;
    private const CornerPlace Corner = CornerPlace.FrontLeft;

    private static readonly Car Demo = DemoCar.Read();

    // The front corner of the first idea: one 8 kgf/mm spring on a threaded perch.
    private static CornerBuild Stiff => Demo.Build(Tests.Demo.FirstIdea)!.At(Corner);

    // Common practice, no source: an 8 kgf/mm spring under the front corner of a car of about 1.5 t sinks about 2 in from
    // zero preload.
    [Fact]
    public void Eight_kgf_per_mm_sinks_about_two_inches()
    {
        var judgement = Judged(Demo, Stiff);
        Assert.InRange(judgement.Figures.Single(f => f.Name == "mass").Value.Si, 1400, 1600);
        Assert.Equal(8 * 9806.65, Spring(Stiff.Stack.Single()).Rate!.Si, 1e-6);
        Assert.InRange(FigureOf(judgement, "static-deflection") / Inch, 1.5, 2.5);
    }

    // Common practice, no source: five collar turns lowered a strut's perch from 7.75 in to about 7.4 in: read to a tenth,
    // a pitch of 1.6 to 2 mm. The body comes down by the same over the motion ratio, since the load stays; on a car whose ratio does
    // not change through travel, as the practice has it.
    [Theory]
    [InlineData(0.00175)]
    [InlineData(0.0020)]
    public void Five_turns_down_take_a_third_of_an_inch_off_the_perch_and_lower_the_body(double pitch)
    {
        double high = 7.75 * Inch, low = high - (5 * pitch);
        Assert.Equal(7.4, Math.Round(low / Inch, 1));
        var corner = Demo.At(Corner);
        var steady = Demo.With(Corner,
            corner with { Motion = corner.Motion with { SpringRatioChange = Reading.Of("0 1/mm", Dimension.InverseLength) } });
        var before = Judged(steady, Stiff with { PerchHeight = Length(Stiff.PerchHeight!.Si) });
        var after = Judged(steady, Stiff with { PerchHeight = Length(Stiff.PerchHeight!.Si - (high - low)) });
        double lowered = FigureOf(before, "height-change") - FigureOf(after, "height-change");
        Assert.Equal((high - low) / FigureOf(before, "motion-ratio"), lowered, 0.0003);
    }

    // Common practice, no source: a helper gives about 2.5 in at full droop and about 1 in at ride; it is 2.4 in free and
    // 0.8 in closed, and its sheet makes up the rest. Assumed: the collar stands so that the stack just seats at droop (2 mm of
    // squeeze, which the soft helper takes nearly alone); the demo's own build is wound up further.
    [Fact]
    public void A_helper_with_its_sheet_gives_two_and_a_half_inches_at_droop_and_one_at_ride()
    {
        var build = Demo.Build(Tests.Demo.Holding)!;
        string helper = build.At(Corner).Stack.Single(id => Demo.Parts.Springs.Any(s => s.Id == id && s.Role == SpringRole.Helper));
        string sheet = build.At(Corner).Stack.Single(id => Demo.Parts.Sheets.Any(s => s.Id == id));
        string[] names = [Spring(helper).Name, Demo.Parts.Sheets.Single(s => s.Id == sheet).Name];
        Assert.Equal((2.4, 0.8),
            (Math.Round(Spring(helper).FreeLength!.Si / Inch, 2), Math.Round(Spring(helper).SolidHeight!.Si / Inch, 2)));
        var wound = build.At(Corner);
        double turns = Judge.Build(Demo, build, JudgeOptions.FindingsOnly).Findings.Single(f =>
            f.Corner == Corner && f.Check == "seated-at-droop").Value!.Value.Si;
        double squeezed = turns * Demo.Parts.Perches.Single(p => p.Id == wound.Perch).Pitch!.Si;
        build = build.With(Corner, wound with { PerchHeight = Length(wound.PerchHeight!.Si - squeezed + 0.002) });
        var states = Judge.Build(Demo, build, JudgeOptions.Everything).Pictures.Single(p => p.Corner == Corner).Stack;
        Assert.InRange(Together("full droop"), 2.3, 2.6);
        Assert.InRange(Together("ride"), 0.85, 1.1);

        double Together(string state) =>
            states.Single(s => s.State == state).Pieces.Where(p => names.Contains(p.Name)).Sum(p => p.Length) / Inch;
    }

    // Common practice, no source: a 60 mm spring goes on a 61.5 mm perch register with anti-seize. One of 63 mm it does not.
    [Theory]
    [InlineData("61.5 mm", Verdict.Holds, "anti-seize")]
    [InlineData("63 mm", Verdict.Fails, "does not go on")]
    public void A_sixty_mm_spring_on_its_register(string register, Verdict verdict, string words)
    {
        var perches = Demo.Parts.Perches.Select(p =>
            p.Id == Stiff.Perch ? p with { Register = Reading.Of(register, Dimension.Length, "0.2 mm", ReadingSource.Calliper) } : p);
        var car = Demo with { Parts = Demo.Parts with { Perches = [.. perches] } };
        Assert.Equal(0.060, Spring(Stiff.Stack.Single()).InnerDiameter!.Si, 1e-9);
        var finding = Judged(car, Stiff).Findings.Single(f =>
            f.Corner == Corner && f.Check.StartsWith("fit-perch-", StringComparison.Ordinal));
        Assert.Equal(verdict, finding.Verdict);
        Assert.Contains(words, finding.Sentence, StringComparison.Ordinal);
    }

    // Common practice, no source: a quarter to half a turn trims for a driver alone. Assumed: 75 kg sitting 0.37 m off the
    // middle of a 1.5 m track loads his front wheel by 75/2·0.37/1.5 = 9.25 kg more than the mean of both, and bars as stiff
    // in roll as the springs carry half of that. The collar makes good what is left at this corner; pitch 1.5 to 2 mm.
    [Theory]
    [InlineData(0.0015)]
    [InlineData(0.0020)]
    public void A_quarter_to_half_a_turn_trims_for_the_driver(double pitch)
    {
        var load = Demo.LoadCases[0];
        double share = 75 / 2.0 * 0.37 / 1.5 / 2;
        var laden = Demo with { LoadCases = [load with { FrontLeft =
            load.FrontLeft! with { Value = Quantity.Of(load.FrontLeft.Si + share, Units.Kilogram) } }, .. Demo.LoadCases.Skip(1)] };
        double level = FigureOf(Judged(Demo, Stiff), "height-change");
        Assert.True(FigureOf(Judged(laden, Stiff), "height-change") < level);
        Assert.True(FigureOf(Judged(laden, Raised(0.25)), "height-change") < level, "a quarter of a turn is too much");
        Assert.True(FigureOf(Judged(laden, Raised(0.5)), "height-change") > level, "half a turn is not enough");

        CornerBuild Raised(double turns) => Stiff with { PerchHeight = Length(Stiff.PerchHeight!.Si + (turns * pitch)) };
    }

    // Common practice, no source: going 2 to 2.5 in shorter in main spring is what a helper of that size makes good. A
    // spring long enough to be squeezed at droop, then a shorter one alone, then the shorter one with helper and sheet.
    [Theory]
    [InlineData(2.0)]
    [InlineData(2.25)]
    [InlineData(2.5)]
    public void A_helper_makes_good_a_spring_two_to_two_and_a_half_inches_shorter(double shorterInches)
    {
        var main = Spring(Stiff.Stack.Single());
        string[] helper = [.. Demo.Build(Tests.Demo.Holding)!.At(Corner).Stack.Take(2)];
        var judged = Judged(Demo, Stiff).Findings.Single(f => f.Corner == Corner && f.Check == "seated-at-droop");
        double pitch = Demo.Parts.Perches.Single(p => p.Id == Stiff.Perch).Pitch!.Si;
        double filling = main.FreeLength!.Si - (judged.Value!.Value.Si * pitch) + (4 * pitch);
        var shorter = filling - (shorterInches * Inch);
        Assert.NotEqual(Verdict.Fails, Seated(filling, [main.Id]));
        Assert.Equal(Verdict.Fails, Seated(shorter, [main.Id]));
        Assert.NotEqual(Verdict.Fails, Seated(shorter, [.. helper, main.Id]));

        Verdict Seated(double free, string[] stack)
        {
            var springs = Demo.Parts.Springs.Select(s => s.Id == main.Id ? s with { FreeLength = Length(free) } : s);
            var car = Demo with { Parts = Demo.Parts with { Springs = [.. springs] } };
            return Judged(car, Stiff with { Stack = stack }).Findings.Single(f =>
                f.Corner == Corner && f.Check == "seated-at-droop").Verdict;
        }
    }

    private static Spring Spring(string id) => Demo.Parts.Springs.Single(s => s.Id == id);

    private static Reading Length(double si) => new(Quantity.Of(si * 1000, Units.Millimetre), null, ReadingSource.Setting);

    private static Judgement Judged(Car car, CornerBuild corner) =>
        Judge.Build(car, car.Build(Tests.Demo.FirstIdea)!.With(Corner, corner), JudgeOptions.FindingsOnly);

    private static double FigureOf(Judgement judgement, string name) =>
        judgement.Figures.Single(f => f.Corner == Corner && f.Name == name).Value.Si;
}
