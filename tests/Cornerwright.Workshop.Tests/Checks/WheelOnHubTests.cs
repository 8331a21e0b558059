using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Checks;

/// <summary>Spacers, rings, bolts and nuts: small cases worked out by hand, lengths in mm along the axle.</summary>
public sealed class WheelOnHubTests
{
    private const CornerPlace Place = CornerPlace.FrontLeft;

    private static readonly WheelBolt Present = new()
    {
        Id = "now", Name = "Present bolt", Thread = "M12x1.5", Length = Mm(24), Seat = BoltSeat.Cone, Class = "10.9",
    };

    private static readonly Wheel Old = new()
    {
        Id = "w-old", Name = "Old wheel", Designation = "6.5Jx16 ET45 5x110", CentreBore = Mm(65.1), SeatThickness = Mm(9),
        Seat = BoltSeat.Cone,
    };

    private static readonly Hub Hub = new()
    {
        Bolts = 5, BoltCircle = Mm(110), Centring = Mm(65.04), Thread = Mm(12), ThreadPitch = Mm(1.5), EngagedNow = Mm(15),
        SpigotLength = Mm(9),
    };

    private static Reading Mm(double value) => Reading.Of(
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value} mm"), Dimension.Length)
        with { Tolerance = new Tolerance(Quantity.Of(0.02, Units.Millimetre), ToleranceKind.TwoSigma) };

    /// <summary>The demo's front left corner with nothing of wheel and hub but what is given here.</summary>
    private static IReadOnlyList<Finding> Judged(Hub hub, Wheel wheel, Spacer? spacer = null, WheelBolt? bolt = null,
        CentringRing? ring = null, WheelBolt? present = null, Reading? wingEdge = null)
    {
        var demo = DemoCar.Read();
        var car = demo with
        {
            Front = demo.Front with { Hub = hub },
            FrontLeft = demo.FrontLeft with { WingEdge = wingEdge },
            Parts = demo.Parts with
            {
                Wheels = [Old, .. wheel.Id == Old.Id ? [] : new[] { wheel }], Spacers = spacer is null ? [] : [spacer],
                WheelBolts = [.. new[] { present, bolt }.OfType<WheelBolt>().DistinctBy(b => b.Id)],
                CentringRings = ring is null ? [] : [ring],
            },
        };
        var build = demo.Build(Demo.Holding)!;
        car = car with
        {
            Builds =
            [
                Corner(car.Build(car.MeasuredBuild)!, c => c with { Wheel = Old.Id, Spacer = "", WheelBolt = present?.Id ?? "" }),
                Corner(build, c => c with
                {
                    Wheel = wheel.Id, Spacer = spacer?.Id ?? "", WheelBolt = bolt?.Id ?? "", CentringRing = ring?.Id ?? "",
                }),
            ],
        };
        return [.. Judge.Build(car, car.Builds[1], JudgeOptions.FindingsOnly).Findings.Where(f => f.Corner == Place)];

        static Build Corner(Build build, Func<CornerBuild, CornerBuild> change) => build.With(Place, change(build.At(Place)));
    }

    private static Finding Of(IReadOnlyList<Finding> findings, string check) => Assert.Single(findings, f => f.Check == check);

    private static void Is(Verdict verdict, double valueMm, Finding finding)
    {
        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(valueMm, finding.Value!.Value.Si * 1000, 1e-6);
    }

    private static Spacer Disc(double thickness, bool collar = false) => new()
    {
        Id = "sp", Name = "Spacer", Thickness = Mm(thickness), HubCentric = collar, Bore = collar ? Mm(65.1) : null,
        Collar = collar ? Mm(65.04) : null,
    };

    [Fact]
    public void A_plain_15_mm_spacer_centres_nothing()
    {
        var findings = Judged(Hub, Old, Disc(15), present: Present);
        Is(Verdict.Fails, 9 - 15, Of(findings, "centring-reach"));
        Assert.Contains("nothing centres the wheel", Of(findings, "centring-reach").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thin_plain_spacer_lets_the_hubs_collar_through() =>
        Is(Verdict.Holds, 9 - 5, Of(Judged(Hub, Old, Disc(5), present: Present), "centring-reach"));

    [Fact]
    public void How_far_the_collar_stands_out_is_asked_for_where_nobody_measured_it()
    {
        var finding = Of(Judged(Hub with { SpigotLength = null }, Old, Disc(15), present: Present), "centring-reach");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Equal("front/hub/spigotLength", Assert.Single(finding.Missing).Path);
    }

    [Fact]
    public void A_spacer_with_a_collar_centres_the_wheel_on_its_own()
    {
        var findings = Judged(Hub, Old, Disc(15, collar: true), present: Present);
        Is(Verdict.Holds, 0.06, Of(findings, "spacer-on-hub"));
        Is(Verdict.Holds, 0.06, Of(findings, "centre-bore"));
        Assert.Contains("spacer's collar centres", Of(findings, "centre-bore").Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(findings, f => f.Check == "centring-reach");
    }

    [Fact]
    public void A_bolted_spacer_has_its_own_flange_and_studs()
    {
        var spacer = Disc(20, collar: true) with
        {
            Bolted = true, BoltCircle = Mm(110), Thread = "M14x1.5", StudLength = Mm(30), HubEngagement = Mm(16),
        };
        var nut = new WheelBolt
        {
            Id = "nut", Name = "Open nut", Nut = true, Thread = "M14x1.5", ThreadDepth = Mm(18), Seat = BoltSeat.Cone, Class = "10",
        };
        var findings = Judged(Hub, Old, spacer, nut, present: Present);

        // 30 mm of stud less 9 mm of wheel are 21 mm; the nut has 18 mm: 18 / 14.
        Assert.Equal(18.0 / 14, Of(findings, "bolt-engagement").Value!.Value.Si, 1e-9);
        Assert.Equal(16.0 / 12, Of(findings, "spacer-engagement").Value!.Value.Si, 1e-9);
        Assert.Equal(Verdict.Holds, Of(findings, "bolt-thread").Verdict);
        Assert.Equal(Verdict.Holds, Of(findings, "bolt-circle").Verdict);
        Assert.DoesNotContain(findings, f => f.Check == "bolt-depth");

        // The wheel of another circle goes on its flange, not on the hub's.
        var other = Judged(Hub, Old, spacer with { BoltCircle = Mm(112) }, nut, present: Present);
        Assert.Equal(Verdict.Fails, Of(other, "bolt-circle").Verdict);
    }

    [Fact]
    public void Of_a_bolted_spacer_of_which_little_is_known_little_is_said()
    {
        var findings = Judged(Hub, Old, Disc(20) with { Bolted = true }, present: Present);
        foreach (string check in new[] { "bolt-circle", "bolt-engagement", "spacer-engagement", "bolt-depth", "bolt-thread", "bolt-seat" })
        {
            Assert.Equal(Verdict.Unknown, Of(findings, check).Verdict);
        }

        Assert.Equal(["parts/spacers/sp/studLength", "builds/gravel-3/frontLeft/wheelBolt", "parts/spacers/sp/thread"],
            Of(findings, "bolt-engagement").Missing.Select(m => m.Path));
    }

    [Fact]
    public void The_hubs_studs_end_within_a_bolted_spacer_or_in_pockets()
    {
        var spacer = Disc(20, collar: true) with { Bolted = true };
        var hub = Hub with { Studs = true, StudLength = Mm(27) };
        Is(Verdict.Fails, 20 - 27, Of(Judged(hub, Old, spacer), "stud-room"));
        Is(Verdict.Holds, 20 + 10 - 27, Of(Judged(hub, Old with { Id = "w-new", Pockets = Mm(10) }, spacer), "stud-room"));
    }

    [Fact]
    public void A_bore_larger_than_the_hub_passes_only_with_its_ring()
    {
        var wide = Old with { Id = "w-wide", Name = "Wide bore", CentreBore = Mm(72.6) };
        var without = Of(Judged(Hub, wide, present: Present), "centre-bore");
        Is(Verdict.Fails, 72.6 - 65.04, without);
        Assert.Contains("a centring ring is needed, 72.60 mm outside and 65.04 mm inside", without.Sentence, StringComparison.Ordinal);

        var ring = new CentringRing { Id = "ring", Name = "Ring", OuterDiameter = Mm(72.5), InnerDiameter = Mm(65.1), Price = 4 };
        var with = Judged(Hub, wide, ring: ring, present: Present);
        Is(Verdict.Holds, 0.1, Of(with, "centre-bore"));
        Is(Verdict.Holds, 0.06, Of(with, "centring-ring"));

        // A ring for another hub, and one that nobody measured.
        var narrow = Judged(Hub, wide, ring: ring with { InnerDiameter = Mm(66.6) }, present: Present);
        Is(Verdict.Fails, 66.6 - 65.04, Of(narrow, "centring-ring"));
        var unread = Judged(Hub, wide, ring: ring with { OuterDiameter = null }, present: Present);
        Assert.Equal(Verdict.Unknown, Of(unread, "centre-bore").Verdict);
    }

    [Theory]
    [InlineData(24, 9, 0, 15.0 / 12, Verdict.Holds)]     // nothing changes
    [InlineData(24, 11, 0, 13.0 / 12, Verdict.Holds)]    // a thicker seat takes 2 mm
    [InlineData(24, 9, 10, 5.0 / 12, Verdict.Fails)]     // a plain spacer takes 10 mm
    [InlineData(34, 9, 10, 15.0 / 12, Verdict.Holds)]    // and 10 mm longer bolts give them back
    public void Thread_engaged_is_what_there_is_now_and_what_parts_take_and_give(double length, double seat, double spacer, double times,
        Verdict verdict)
    {
        var wheel = seat == 9 ? Old : Old with { Id = "w-new", SeatThickness = Mm(seat) };
        var bolt = length == 24 ? Present : Present with { Id = "long", Length = Mm(length) };
        var finding = Of(Judged(Hub, wheel, spacer > 0 ? Disc(spacer) : null, bolt, present: Present), "bolt-engagement");
        Assert.Equal(times, finding.Value!.Value.Si, 1e-9);
        Assert.Equal(verdict, finding.Verdict);
    }

    [Fact]
    public void Where_nothing_is_engaged_yet_the_lengths_say_it()
    {
        var finding = Of(Judged(Hub with { EngagedNow = null }, Old, bolt: Present), "bolt-engagement");
        Assert.Equal((24.0 - 9) / 12, finding.Value!.Value.Si, 1e-9);
        Assert.Contains("hub: its thread taken to begin at the face, without a chamfer", finding.Assumptions);
    }

    [Fact]
    public void A_wheel_whose_seat_nobody_measured_leaves_the_engagement_open()
    {
        var finding = Of(Judged(Hub, Old with { Id = "w-new", SeatThickness = null }, present: Present), "bolt-engagement");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Equal(["parts/wheels/w-new/seatThickness"], finding.Missing.Select(m => m.Path));
    }

    [Fact]
    public void A_bolt_that_gained_a_thin_seat_bottoms()
    {
        // 9 mm of seat become 4: the present bolts go 20 mm deep, and 18 mm are free.
        var thin = Old with { Id = "w-thin", SeatThickness = Mm(4) };
        var finding = Of(Judged(Hub with { BoltDepth = Mm(18) }, thin, present: Present), "bolt-depth");
        Is(Verdict.Fails, 18 - 20, finding);
        Assert.Contains("reach 2.0 mm into what lies behind the hub", finding.Sentence, StringComparison.Ordinal);

        // Without the depth it is not known: deeper than now.
        var open = Of(Judged(Hub, thin, present: Present), "bolt-depth");
        Assert.Equal((Verdict.Unknown, "front/hub/boltDepth"), (open.Verdict, Assert.Single(open.Missing).Path));

        // No deeper than now needs no reading: the present bolts turn free.
        Is(Verdict.Holds, 0, Of(Judged(Hub, Old, present: Present), "bolt-depth"));
        Is(Verdict.Holds, 3, Of(Judged(Hub, Old with { Id = "w-new", SeatThickness = Mm(12) }, present: Present), "bolt-depth"));
    }

    [Fact]
    public void A_closed_nut_bottoms_on_a_stud_that_is_too_long()
    {
        var hub = Hub with { Studs = true, StudLength = Mm(32) };
        var nut = new WheelBolt { Id = "closed", Name = "Closed nut", Nut = true, Thread = "M12x1.5", ThreadDepth = Mm(20), Closed = true };

        // 32 mm of stud less 9 mm of wheel are 23 mm, and the nut has 20. Its engagement alone would look good.
        var findings = Judged(hub, Old, bolt: nut);
        Is(Verdict.Fails, 20 - 23, Of(findings, "bolt-depth"));
        Assert.Equal(Verdict.Unknown, Of(Judged(hub with { StudLength = null }, Old, bolt: nut), "bolt-depth").Verdict);
        Assert.DoesNotContain(Judged(hub, Old, bolt: nut with { Closed = false }), f => f.Check == "bolt-depth");
    }

    [Theory]
    [InlineData(BoltSeat.Cone, BoltSeat.Cone, Verdict.Holds)]
    [InlineData(BoltSeat.Cone, BoltSeat.Ball, Verdict.Fails)]
    [InlineData(BoltSeat.Flat, BoltSeat.Cone, Verdict.Fails)]
    [InlineData(null, BoltSeat.Ball, Verdict.Unknown)]
    [InlineData(BoltSeat.Ball, null, Verdict.Unknown)]
    public void The_bolts_have_the_wheels_own_seat(BoltSeat? wheel, BoltSeat? bolt, Verdict verdict) =>
        Assert.Equal(verdict,
            Of(Judged(Hub, Old with { Id = "w-new", Seat = wheel }, bolt: Present with { Seat = bolt }), "bolt-seat").Verdict);

    [Fact]
    public void Bolts_that_nobody_described_leave_their_seat_open_with_the_place_to_say_it() => Assert.Equal(
        ["builds/gravel-3/frontLeft/wheelBolt"], Of(Judged(Hub, Old), "bolt-seat").Missing.Select(m => m.Path));

    [Theory]
    [InlineData("M12x1.5", false, Verdict.Holds)]
    [InlineData("M12x1.25", false, Verdict.Fails)]
    [InlineData("M14x1.5", false, Verdict.Fails)]
    [InlineData("M12x1.5", true, Verdict.Fails)]
    [InlineData("", false, Verdict.Unknown)]
    public void The_bolts_have_the_hubs_thread_and_are_bolts(string thread, bool nut, Verdict verdict) => Assert.Equal(verdict,
        Of(Judged(Hub, Old, bolt: Present with { Id = "new", Thread = thread, Nut = nut }, present: Present), "bolt-thread").Verdict);

    [Theory]
    [InlineData("10.9", Verdict.Holds)]
    [InlineData("12.9", Verdict.Holds)]
    [InlineData("8.8", Verdict.Fails)]
    [InlineData("", Verdict.Unknown)]
    public void Other_bolts_are_of_no_lower_class(string @class, Verdict verdict) => Assert.Equal(verdict,
        Of(Judged(Hub, Old, bolt: Present with { Id = "new", Class = @class }, present: Present), "bolt-class").Verdict);

    [Fact]
    public void Poke_is_told_before_and_after()
    {
        // ET45 to ET30 on the same width and tyre: 15 mm outward. 12 mm inside the wing become 3 mm out of it.
        var findings = Judged(Hub, Old with { Id = "w-out", Designation = "6.5Jx16 ET30 5x110" }, present: Present, wingEdge: Mm(12));
        var poke = Of(findings, "poke");
        Assert.Equal(Verdict.Fails, poke.Verdict);
        Assert.Contains("out past the wing's edge; now 12.0 mm inside", poke.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(Judged(Hub, Old, present: Present), f => f.Check == "poke");
    }
}
