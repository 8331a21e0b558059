using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>A cure is a promise: carried out and judged again, the margin is what it said.</summary>
public sealed class CureTests
{
    [Fact]
    public void Carried_out_every_setting_gives_the_margin_that_was_promised()
    {
        int kept = 0;
        foreach (var (car, build, finding, cure) in Cures().Where(c => c.Cure.Setting.Length > 0))
        {
            var cured = Apply(build, cure);
            var again = Judge.Build(car, cured, JudgeOptions.FindingsOnly).Findings.Single(f => f.Key == finding.Key);
            Assert.True(again.Margin is not null, $"{build.Id} {finding.Key}: {cure.Sentence} makes it unknown");

            // The new value is typed to a thousandth of its unit, and the worst pose is searched to a fraction of a millimetre.
            double promised = cure.MarginAfter.Si,
                slack = Math.Max(Math.Abs(promised - finding.Margin!.Value.Si) * 0.02, Rounding(cure.MarginAfter));
            Assert.True(Math.Abs(again.Margin!.Value.Si - promised) <= slack,
                $"{build.Id} {finding.Key}: {cure.Sentence} promised {cure.MarginAfter.Text}, gave {again.Margin.Value.Text}");
            Assert.True(again.Margin.Value.Si > finding.Margin.Value.Si, $"{build.Id} {finding.Key}: {cure.Sentence} makes it worse");
            kept++;
        }

        Assert.True(kept >= 5, $"only {kept} cures tried");
    }

    [Fact]
    public void Every_cure_gains_and_brings_the_check_inside_its_limits()
    {
        int seen = 0;
        foreach (var (_, build, finding, cure) in Cures())
        {
            Assert.True(cure.Gain.Si > 0 && cure.MarginAfter.Si >= 0, $"{build.Id} {finding.Key}: {cure}");
            Assert.Equal(cure.MarginAfter.Si, finding.Margin!.Value.Si + cure.Gain.Si, 1e-9);
            seen++;
        }

        Assert.True(seen >= 10, $"only {seen} cures");
    }

    [Fact]
    public void Settings_stay_within_what_the_parts_and_the_form_allow()
    {
        foreach (var (car, build, finding, cure) in Cures().Where(c => c.Cure.Setting.Length > 0))
        {
            var (place, field) = Target(cure);
            var corner = Apply(build, cure).At(place);
            var reading = (Reading)field.Get(corner)!;
            Assert.True(field.RangeProblem(cure.Setting, reading) is null, $"{build.Id} {finding.Key}: {cure.Sentence} {cure.NewValue}");
            var damper = car.Parts.Dampers.FirstOrDefault(d => d.Id == corner.Damper);
            var mount = car.Parts.TopMounts.FirstOrDefault(m => m.Id == corner.TopMount);
            const double typed = 1e-6;
            if (field.Name == "perchHeight" && damper?.ThreadLow is { } low && damper.ThreadHigh is { } high)
            {
                Assert.InRange(reading.Si, low.Si - typed, high.Si + typed);
            }
            else if (field.Name == "slide")
            {
                Assert.InRange(reading.Si, -mount!.SlideOut!.Si - typed, mount.SlideIn!.Si + typed);
            }
        }
    }

    private static double Rounding(Measure measure) =>
        Math.Abs(measure.Unit.ToSi(Math.Pow(10, -measure.Decimals)) - measure.Unit.ToSi(0)) * 0.5;

    private static IEnumerable<(Car Car, Build Build, Finding Finding, Cure Cure)> Cures()
    {
        var car = DemoCar.Read();
        foreach (var build in car.Builds)
        {
            foreach (var finding in Judge.Build(car, build, new JudgeOptions(Cures: true, Pictures: false)).Findings)
            {
                foreach (var cure in finding.Cures)
                {
                    yield return (car, build, finding, cure);
                }
            }
        }
    }

    private static (CornerPlace Place, FieldShape Field) Target(Cure cure)
    {
        string[] path = cure.Setting.Split('/');
        return (Enum.Parse<CornerPlace>(path[0], ignoreCase: true), RecordShape.Of<CornerBuild>().ByName[path[1]]);
    }

    private static Build Apply(Build build, Cure cure)
    {
        var (place, field) = Target(cure);
        var reading = Reading.Parse(cure.Setting, field.Words.Dimension, cure.NewValue, source: ReadingSource.Setting).Value;
        return build.With(place, RecordShape.Of<CornerBuild>().With(build.At(place), field, reading));
    }
}
