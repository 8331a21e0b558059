using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Checks;

/// <summary>
/// A tyre grows in section with its rim: 0.4 of the change of rim width, UN Regulation No. 30, paragraph 6.1.1.1 (S = S1 + 0.4 (A - A1)),
/// so half an inch of rim is 5 mm. Seen: a measured tyre kept its width on any rim, without doubt or remark.
/// </summary>
public class MeasuredTyreTests
{
    [Theory]
    [InlineData(0.5, 5.08)]
    [InlineData(-0.5, -5.08)]
    [InlineData(1, 10.16)]
    public void A_tyre_of_the_car_on_another_rim_is_as_much_wider(double inches, double millimetres)
    {
        var (car, wide) = OnAnotherRim(inches, null);
        var (before, _) = Section(car, car.MeasuredBuild);
        var (after, sigma) = Section(car, wide);
        Assert.Equal(millimetres, 1000 * (after - before), 1e-6);
        Assert.InRange(sigma, 0.0005 * Math.Abs(inches), 0.003);
    }

    [Fact]
    public void The_same_rim_changes_nothing()
    {
        var (car, same) = OnAnotherRim(0, null);
        Assert.Equal(Section(car, car.MeasuredBuild).Width, Section(car, same).Width);
    }

    [Fact]
    public void A_tyre_measured_elsewhere_goes_by_the_rim_that_is_told()
    {
        var (car, build) = OnAnotherRim(0, Reading.Of("6 in", Dimension.Length));
        double typed = car.Parts.Tyres.Single(t => t.Id == "t-now").SectionWidth!.Si;
        double rim = CornerPlan.Compile(car, car.Build(build)!, CornerPlace.FrontLeft, null).Wheel!.RimWidth;
        Assert.Equal(typed + (0.4 * (rim - (6 * 0.0254))), Section(car, build).Width, 1e-9);
    }

    [Fact]
    public void A_tyre_of_which_nobody_said_on_what_rim_is_doubted_and_told()
    {
        var car = DemoCar.Read();
        string tyre = car.Parts.Tyres.First(t => t.SectionWidth is null).Id;
        var width = Reading.Of("220 mm", Dimension.Length);
        car = car with
        {
            Parts = car.Parts with { Tyres = [.. car.Parts.Tyres.Select(t => t.Id == tyre ? t with { SectionWidth = width } : t)] },
        };
        string build = car.Builds.First(b => b.FrontLeft.Tyre == tyre).Id;
        var (_, sigma) = Section(car, build);
        Assert.InRange(sigma, 0.0101, 0.0102);   // 0.4 of an inch
        var findings = Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings;
        Assert.Contains(findings.SelectMany(f => f.Assumptions),
            a => a.Contains("on which rim it was measured is not said", StringComparison.Ordinal));
    }

    /// <summary>The measured build with another rim under the same tyre.</summary>
    private static (Car Car, string Build) OnAnotherRim(double inches, Reading? measuredOn)
    {
        var car = DemoCar.Read();
        var now = car.Build(car.MeasuredBuild)!;
        var wheel = car.Parts.Wheels.Single(w => w.Id == now.FrontLeft.Wheel);
        var rim = Garage.Designations.RimDesignation.Parse(wheel.Designation, "rim").Value;
        string code = FormattableString.Invariant($"{rim.WidthCode}J");
        Assert.Contains(code, wheel.Designation, StringComparison.Ordinal);
        var other = wheel with
        {
            Id = "other",
            Designation = wheel.Designation.Replace(
                code, FormattableString.Invariant($"{rim.WidthCode + inches}J"), StringComparison.Ordinal),
        };
        var build = now with { Id = "wide", FrontLeft = now.FrontLeft with { Wheel = "other" } };
        Tyre tyre = car.Parts.Tyres.Single(t => t.Id == now.FrontLeft.Tyre) with { MeasuredOnRim = measuredOn };
        return (car with
        {
            Builds = [.. car.Builds, build],
            Parts = car.Parts with
            {
                Wheels = [.. car.Parts.Wheels, other],
                Tyres = [.. car.Parts.Tyres.Select(t => t.Id == tyre.Id ? tyre : t)],
            },
        }, "wide");
    }

    /// <summary>Section width, m, and the doubt that the rim brings, at two standard deviations.</summary>
    private static (double Width, double Doubt) Section(Car car, string build)
    {
        var plan = CornerPlan.Compile(car, car.Build(build)!, CornerPlace.FrontLeft, null);
        double sigma = plan.Inputs.Inputs.Where(i => i.Path.Contains("/onRim/", StringComparison.Ordinal)).Sum(i => i.Sigma);
        return (plan.Wheel!.Tyre(plan.Inputs.Best(), 0, 0).SectionWidth, 2 * sigma);
    }
}
