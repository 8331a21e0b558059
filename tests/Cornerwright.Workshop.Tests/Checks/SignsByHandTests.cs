using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Checks;

/// <summary>
/// The demo as it stands on other tyres (205/55 R16 for worn ones of 628 mm) and, in front, on 5 mm spacers: what each check says, worked out
/// by hand. A sign that is turned round falls here.
/// </summary>
public sealed class SignsByHandTests
{
    /// <summary>The size as tabled in whole millimetres, 406 mm and twice 113 mm (55 % of 205 mm), against 628 mm read.</summary>
    private const double Diameter = 0.632, Now = 0.628, Spacer = 0.005;

    private static readonly Car Car = Made();

    [Fact]
    public void A_spacer_takes_its_thickness_from_the_thread() =>
        Assert.Equal((0.015 - Spacer) / 0.012, Value("bolt-engagement"), 1e-9);

    // With the lengths alone: 24 mm of bolt, 9 mm of wheel, the spacer. The present thread is not counted.
    [Fact]
    public void By_lengths_alone_it_does_the_same()
    {
        var hub = Car.Front.Hub with { EngagedNow = null };
        var bolt = Car.Parts.WheelBolts.Single(b => b.Id == Car.Build("now")!.FrontLeft.WheelBolt);
        double byHand = bolt.Length!.Si - 0.009 - Spacer;
        Assert.Equal(byHand / 0.012, Value("bolt-engagement", Car with { Front = Car.Front with { Hub = hub } }), 1e-9);
    }

    [Fact]
    public void Taller_tyres_lift_the_lowest_place()
    {
        double lifted = Of(Car, "hand", "ground-clearance").Value!.Value.Si - Of(Car, "now", "ground-clearance").Value!.Value.Si;
        Assert.Equal((Diameter - Now) / 2, lifted, 1e-6);
    }

    // Outward by the spacer; a taller wheel meets the ground where the leaning axis has come further out.
    [Fact]
    public void Scrub_grows_with_the_spacer_and_shrinks_with_the_radius() =>
        Assert.Equal(Spacer - ((Diameter - Now) / 2 * Math.Tan(14 * Math.PI / 180)), Value("scrub-change"), 1e-9);

    [Fact]
    public void A_taller_wheel_rolls_further() => Assert.Equal((Diameter / Now) - 1, Value("rolling-circumference"), 1e-9);

    [Fact]
    public void A_spacer_on_each_side_widens_the_track_by_two() =>
        Assert.Equal(2 * Spacer, Of(Car, "hand", "track-change", AxlePlace.Front).Value!.Value.Si, 1e-9);

    // 94 is 670 kg at the 2.9 bar of a reinforced tyre; at 2.3 bar (2.3/2.9)^0.8 of it.
    // Source: load index table and pressure exponent of the ETRTO Standards Manual, from memory.
    [Fact]
    public void A_tyre_bears_less_at_less_pressure()
    {
        double heaviest = Car.LoadCases.Max(c => c.FrontLeft!.Si);
        Assert.Equal((670 * Math.Pow(2.3 / 2.9, 0.8) / heaviest) - 1, Value("tyre-load"), 1e-3);
    }

    [Fact]
    public void What_is_wanted_to_the_body_is_not_what_is_wanted_to_the_knuckle()
    {
        Car car = Car with { Limits = Car.Limits with { TyreToBody = Mm(11), TyreToKnuckle = Mm(3) } };
        var findings = Judge.Build(car, "hand", JudgeOptions.FindingsOnly).Findings;
        double Low(string check) => findings.Single(f => f.Check == check && f.Corner == CornerPlace.FrontLeft).Low!.Value.Si;
        Assert.Equal(0.011, Low("clear-arch-lip"), 1e-12);
        Assert.Equal(0.011, Low("clear-chassis-leg"), 1e-12);
        Assert.Equal(0.003, Low("clear-strut-tube"), 1e-12);
        Assert.Equal(0.003, Low("clear-perch"), 1e-12);
    }

    // The gap of a strut's tube was read: a millimetre of doubt in it is a millimetre in the finding.
    [Fact]
    public void The_strut_s_own_reading_decides_its_gap()
    {
        var finding = Of(Car, "hand", "clear-strut-tube");
        Assert.Contains(finding.Deciding, d => d.Path == "frontLeft/strut/tyreToTube");
        var surer = Car.FrontLeft with
        {
            Strut = Car.FrontLeft.Strut! with { TyreToTube = Reading.Of("24 mm", Dimension.Length, "0.01 mm", ReadingSource.Tape) },
        };
        Assert.True(Of(Car.With(CornerPlace.FrontLeft, surer), "hand", "clear-strut-tube").Doubt!.Value.Si < 0.8 * finding.Doubt!.Value.Si);
    }

    private static double Value(string check, Car? car = null) => Of(car ?? Car, "hand", check).Value!.Value.Si;

    private static Finding Of(Car car, string build, string check, AxlePlace? axle = null) =>
        Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings.First(f =>
            f.Check == check && (axle is null ? f.Corner is null or CornerPlace.FrontLeft : f.Axle == axle));

    private static Car Made()
    {
        Car car = DemoCar.Read() with { Allowances = Allowances.None };
        var now = car.Build("now")!;
        CornerBuild On(CornerBuild corner, string spacer) => corner with { Tyre = "t-winter", Spacer = spacer };
        return car with
        {
            Builds = [.. car.Builds, now with
            {
                Id = "hand", FrontLeft = On(now.FrontLeft, "sp-5"), FrontRight = On(now.FrontRight, "sp-5"),
                RearLeft = On(now.RearLeft, ""), RearRight = On(now.RearRight, ""),
            }],
        };
    }

    private static Reading Mm(double mm) => Reading.Of(FormattableString.Invariant($"{mm} mm"), Dimension.Length);
}
