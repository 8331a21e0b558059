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
/// The demo as it stands on other tyres (205/55 R16 for worn ones of 628 mm) and, in front, on 5 mm spacers: what each check says,
/// worked out by hand. A sign that is turned round falls here.
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

    // Barrel 176 mm, caliper 151 mm; spokes 47 mm and a spacer of 5 mm, caliper 36 mm beyond the face.
    [Fact]
    public void The_caliper_has_the_room_that_the_tape_says()
    {
        Assert.Equal(0.176 - 0.151, Value("calliper-barrel"), 1e-9);
        Assert.Equal(0.047 + Spacer - 0.036, Value("calliper-spokes"), 1e-9);
    }

    [Fact]
    public void A_wheel_is_asked_for_the_heaviest_load_and_a_tyre_for_the_top_speed()
    {
        double heaviest = Car.LoadCases.Max(c => c.FrontLeft!.Si), first = Car.LoadCases[0].FrontLeft!.Si;
        Assert.True(heaviest > first);
        Assert.Equal((690 / heaviest) - 1, Value("wheel-load"), 1e-9);
        Assert.Equal(Car.TopSpeed!.Si, Of(Car, "hand", "tyre-speed").Low!.Value.Si, 1e-9);
    }

    // One number of the corner at a time: what it does to a margin follows from the lengths along the strut, and its sign from which way.
    [Fact]
    public void Lengths_move_the_ends_of_travel_the_way_they_must()
    {
        // A coil 5 mm longer when solid has 5 mm less room; how far it is squeezed at full bump stays.
        var solid = WithParts(p => p with
        {
            Springs = [.. p.Springs.Select(x => x.Id == "f-now" ? x with { SolidHeight = Longer(x.SolidHeight!, 5) } : x)],
        });
        Assert.Equal(Value("coil-room-f-now") - 0.005, Value("coil-room-f-now", solid), 1e-6);

        // A stop 3 mm longer is met sooner, spent as before; one that is spent 3 mm longer leaves the coils more room.
        var stop = WithParts(p => p with
        {
            BumpStops = [.. p.BumpStops.Select(x => x.Id == "b-front-now" ? x with { Length = Longer(x.Length!, 3) } : x)],
        });
        Assert.InRange(Value("bump-travel", stop) - Value("bump-travel"), -0.004, -0.0028);
        var spent = WithParts(p => p with
        {
            BumpStops = [.. p.BumpStops.Select(x => x.Id == "b-front-now" ? x with { SpentLength = Longer(x.SpentLength!, 2) } : x)],
        });
        Assert.InRange(Value("coil-room-f-now", spent) - Value("coil-room-f-now"), 0.0018, 0.0022);

        Assert.InRange(Squeezed(spent) - Squeezed(Car), -0.0022, -0.0018);

        // A rod that comes 4 mm further out lets the wheel drop as much further.
        var rod = WithParts(p => p with
        {
            Dampers = [.. p.Dampers.Select(x => x.Id == "d-now" ? x with { RodOpen = Longer(x.RodOpen!, 4) } : x)],
        });
        Assert.InRange(Value("droop-travel", rod) - Value("droop-travel"), 0.0038, 0.0052);

        // Metal that is met first: 4 mm later is 4 mm more after the stop.
        Car Metal(double mm) => Car.With(CornerPlace.FrontLeft, Car.FrontLeft with { MetalContact = Mm(mm) });
        Assert.Equal(0.004, Value("stop-order", Metal(34)) - Value("stop-order", Metal(30)), 1e-6);
    }

    // Coils that meet before anything else end the travel, and the finding says so.
    [Fact]
    public void Coils_that_meet_first_end_the_travel()
    {
        var bound = WithParts(p => p with
        {
            Springs = [.. p.Springs.Select(x => x.Id == "f-now" ? x with { SolidHeight = Longer(x.SolidHeight!, 75) } : x)],
        });
        var finding = Of(bound, "hand", "stop-order");
        Assert.True(finding.Value!.Value.Si < 0, finding.Sentence);
        Assert.Contains("coils touch", finding.Sentence, StringComparison.Ordinal);
    }

    // How far the coil is squeezed with the stop spent.
    private static double Squeezed(Car car) => Value("spring-travel-f-now", car with
    {
        Parts = car.Parts with
        {
            Springs = [.. car.Parts.Springs.Select(x => x.Id == "f-now" ? x with { GreatestDeflection = Mm(150) } : x)],
        },
    });

    private static Car WithParts(Func<Garage.Parts.PartsShelf, Garage.Parts.PartsShelf> change) => Car with { Parts = change(Car.Parts) };

    private static Reading Longer(Reading reading, double mm) =>
        Reading.Of(FormattableString.Invariant($"{(1000 * reading.Si) + mm:0.###} mm"), Dimension.Length);

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
