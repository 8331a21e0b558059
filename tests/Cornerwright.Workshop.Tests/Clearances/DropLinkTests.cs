using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Relations;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>The drop link beside the wheel: where it is, how near the tyre comes, what is said where its place is not known.</summary>
public sealed class DropLinkTests(ITestOutputHelper output)
{
    private const int Seed = 20261201, Cars = 16;

    // By hand-written kinematics, sampled densely; the worst differences are printed.
    [Fact]
    public void On_random_links_the_verdict_says_what_sampling_finds()
    {
        var random = new Random(Seed);
        double above = 0, below = 0;
        int touching = 0, between = 0;
        for (int c = 0; c < Cars; c++)
        {
            var place = c % 2 == 0 ? CornerPlace.FrontLeft : CornerPlace.FrontRight;
            string build = c % 4 < 2 ? "now" : Demo.Holding;
            Car car = Still(place, Any(random));
            var finding = Finding(car, build, place);
            var least = new HandLink(car, build, place, build == "now" ? 0 : 0.010, build == "now" ? 0.012 : 0.016).Least();
            double off = finding.Value!.Value.Si - least.Gap;
            (above, below) = (Math.Max(above, off), Math.Max(below, -off));
            touching += least.Gap < 0 ? 1 : 0;
            between += Math.Abs(least.Steer) is > 0.03 and < 0.55 ? 1 : 0;
            Assert.True(Math.Abs(off) < 1e-4, $"seed {Seed}, car {c}, {build} {place}: told {1000 * finding.Value.Value.Si:0.000} mm, "
                + $"sampled {1000 * least.Gap:0.000} mm at {1000 * least.Travel:0.0} mm, {least.Steer * 180 / Math.PI:0.0} deg");
        }

        output.WriteLine($"above the sampled by at most {1e6 * above:0.00} um, below by {1e6 * below:0.00} um; "
            + $"{touching} touch, {between} between locks");
        Assert.True(touching is > 1 and < Cars - 1 && between > 1, $"{touching} touch, {between} between locks");
    }

    [Fact]
    public void A_link_without_its_ends_is_unknown_and_one_that_is_not_there_is_no_row()
    {
        Car car = DemoCar.Read();
        Car bare = car.With(CornerPlace.FrontLeft, car.FrontLeft with { DropLink = null });
        var finding = Finding(bare, Demo.Holding, CornerPlace.FrontLeft);
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains(finding.Missing, m => m.Path == "frontLeft/dropLink");
        Car half = car.With(CornerPlace.FrontLeft, car.FrontLeft with
        {
            DropLink = car.FrontLeft.DropLink! with { BarEnd = car.FrontLeft.DropLink.BarEnd! with { Above = null } },
        });
        finding = Finding(half, Demo.Holding, CornerPlace.FrontLeft);
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Equal("frontLeft/dropLink/barEnd/above", Assert.Single(finding.Missing).Path);
        Assert.DoesNotContain(Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings, f => f.Check == "clear-drop-link"
            && f.Corner is CornerPlace.RearLeft or CornerPlace.RearRight);
    }

    [Fact]
    public void A_link_to_an_arm_has_no_row_and_a_longer_one_of_unknown_length_none_is_guessed()
    {
        Car car = DemoCar.Read();
        var parts = car.Parts with { BarLinks = [.. car.Parts.BarLinks.Select(l => l.Id == "link-adj" ? l with { Length = null } : l)] };
        var finding = Finding(car with { Parts = parts }, Demo.Holding, CornerPlace.FrontLeft);
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains(finding.Missing, m => m.Path == "parts/barLinks/link-adj/length");
        Car onArm = Points(car, StationCarrier.LowerArm);
        Assert.DoesNotContain(Judge.Build(onArm, Demo.Holding, JudgeOptions.FindingsOnly).Findings, f => f.Check == "clear-drop-link"
            && f.Corner == CornerPlace.FrontLeft);
    }

    [Fact]
    public void Where_nobody_read_the_bushes_the_swing_of_the_bar_is_told_and_doubted()
    {
        Car known = Still(CornerPlace.FrontLeft, Near(), 1);
        Car unknown = known.With(CornerPlace.FrontLeft, known.FrontLeft with
        {
            DropLink = known.FrontLeft.DropLink! with { BushesAhead = null, BushesAbove = null },
        });
        var (sure, unsure) = (Finding(known, "now", CornerPlace.FrontLeft), Finding(unknown, "now", CornerPlace.FrontLeft));
        Assert.Contains(unsure.Assumptions, a => a.Contains("swing about an arm of 235 mm", StringComparison.Ordinal));
        Assert.DoesNotContain(sure.Assumptions, a => a.Contains("swing about", StringComparison.Ordinal));
        Assert.True(unsure.Doubt!.Value.Si > sure.Doubt!.Value.Si,
            $"{unsure.Doubt} {sure.Doubt}");
        var unmeasured = known.Parts.BarLinks.Select(l => l with { Thickness = null });
        Car plain = known with { Parts = known.Parts with { BarLinks = [.. unmeasured] } };
        var thin = Finding(plain, "now", CornerPlace.FrontLeft);
        Assert.Contains(thin.Assumptions, a => a.Contains("taken as 14 ± 4 mm", StringComparison.Ordinal));
        Assert.Equal(sure.Value!.Value.Si - 0.001, thin.Value!.Value.Si, 1e-4);
    }

    // The same ends, once from a tape and once among the hardpoints: the same row.
    [Fact]
    public void Hardpoints_of_the_bar_say_what_the_tape_said()
    {
        foreach (var place in (CornerPlace[])[CornerPlace.FrontLeft, CornerPlace.FrontRight])
        {
            Car car = Still(CornerPlace.FrontLeft, Near(), 1);
            car = car with { FrontRight = car.FrontRight with { DropLink = car.FrontLeft.DropLink } };
            double taped = Finding(car, "now", place).Value!.Value.Si;
            Car points = Points(car, StationCarrier.Carrier);
            points = points with
            {
                FrontLeft = points.FrontLeft with { DropLink = null }, FrontRight = points.FrontRight with { DropLink = null },
            };
            Assert.Equal(taped, Finding(points, "now", place).Value!.Value.Si, 1e-6);
        }
    }

    // On the strut, the clamp's camber moves the end against the wheel as it moves the tube; on the knuckle it does not.
    [Fact]
    public void The_clamp_turns_an_end_on_the_strut_and_leaves_one_on_the_knuckle()
    {
        const double Turn = 1.0;
        double[] moved = [.. ((LinkOn[])[LinkOn.Strut, LinkOn.Knuckle]).Select(on =>
        {
            Car car = Still(CornerPlace.FrontLeft, Near() with { On = on }, 1);
            var clamped = car.Build("now")! with { Id = "clamped" };
            clamped = clamped with { FrontLeft = clamped.FrontLeft with { ClampCamber = Reading.Of($"{Turn} deg", Dimension.Angle) } };
            car = car with { Builds = [.. car.Builds, clamped] };
            var before = CornerClearance.Of(car, car.Build("now")!, CornerPlace.FrontLeft).Link(0, 0)!.Value.Foot;
            return CornerClearance.Of(car, clamped, CornerPlace.FrontLeft).Link(0, 0)!.Value.Foot.X - before.X;
        })];

        // By hand: the end stands 24 mm above the clamp, and 196 mm inboard of a face that leans 0.6 deg; between top mount (520 mm) and
        // ball joint (92 + 110 mm) the strut leans back, so that a degree of camber takes 722/520 of a degree at the clamp.
        double byHand = (0.024 + (0.196 * Math.Sin(0.6 * Math.PI / 180))) * Turn * Math.PI / 180 * 722 / 520;
        Assert.Equal(0, moved[1], 1e-9);
        Assert.Equal(byHand, Math.Abs(moved[0]), 0.03 * byHand);
    }

    // Judging such a car ended in an error: the end on the strut turns with the clamp about a line that nobody read.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void On_a_strut_whose_line_was_not_read_it_is_known_as_long_as_the_clamp_stands(bool turned)
    {
        Car car = DemoCar.Read();
        var corner = car.FrontLeft;
        car = car.With(CornerPlace.FrontLeft, corner with { Strut = corner.Strut! with { TyreToTube = null } });
        var clamped = car.Build("now")! with { Id = "clamped" };
        var camber = Reading.Of(turned ? "-0.8 deg" : "0 deg", Dimension.Angle, "0.1 deg");
        clamped = clamped with { FrontLeft = clamped.FrontLeft with { ClampCamber = camber } };
        car = car with { Builds = [.. car.Builds, clamped] };
        var finding = Finding(car, "clamped", CornerPlace.FrontLeft);
        Assert.Equal(turned, finding.Verdict == Verdict.Unknown);
        Assert.Equal(turned, finding.Missing.Any(m => m.Path == "frontLeft/strut"));
    }

    [Fact]
    public void Loads_and_the_pages_see_the_link_where_the_verdict_does()
    {
        Car still = Still(CornerPlace.FrontLeft, Near(), 1);
        Car moving = still with { Allowances = DemoCar.Read().Allowances };
        var (rest, loaded) = (Finding(still, Demo.Holding, CornerPlace.FrontLeft), Finding(moving, Demo.Holding, CornerPlace.FrontLeft));

        // At lock, where nothing of a side force is left, the tyre still leans on its wheel toward the link, if little so near its bead.
        Assert.StartsWith("The tyre", rest.Sentence, StringComparison.Ordinal);
        Assert.InRange(loaded.Value!.Value.Si, rest.Value!.Value.Si - 0.007, rest.Value.Value.Si - 5e-5);
        rest = Finding(still, "now", CornerPlace.FrontLeft);
        var corner = CornerClearance.Of(still, still.Build("now")!, CornerPlace.FrontLeft);
        var least = corner.Least()!;
        Assert.Equal("drop-link", least.Thing.Id);
        Assert.Equal(rest.Value!.Value.Si, least.Upper, 1e-9);
        Assert.True(least.Lower < least.Upper && least.Why == CertifyingStop.CellLimit);
        Assert.Equal(least.Upper, corner.At(least.Place.Travel, least.Place.Steer).Single(g => g.Thing.Id == "drop-link").Gap, 1e-9);
        var map = ClearanceMap.Of(still, still.Build("now")!, CornerPlace.FrontLeft, null, 21, 21);
        Assert.Contains(map.Poses, p => p.Thing == "drop link" && p.Gap < least.Upper + 0.004);
        Assert.DoesNotContain(map.Poses, p => p.Gap < least.Lower - 1e-9);
    }

    // What other wheels are held against: all that the link passes, at once. Never further away than it comes, and hardly nearer.
    [Fact]
    public void All_that_the_link_passes_lies_round_where_it_comes()
    {
        Car car = Still(CornerPlace.FrontLeft, Near(), 1);
        var solved = new SolvedCorner(CornerPlan.Compile(car, car.Build("now")!, CornerPlace.FrontLeft, null));
        solved.Solve();
        var n = solved.Read;
        int item = n.Plan.Clearance.Items.ToList().FindIndex(i => i.Link is not null);
        var (tyre, rim) = solved.Clearance.Sections(n, forBody: true);
        var swept = solved.Clearance.Things(n).Single(t => t.Item.Link is not null).Obstacle;
        Assert.Equal(ObstacleFrame.Knuckle, swept.Frame);
        double there = solved.Clearance.Worst[item].Clearing.Gap;
        var proved = Certifying.Least(WheelShape.Of(tyre, rim, 12), [swept],
            new Surroundings.CornerPoses(n), Surroundings.CornerPoses.Box(n), new(4e-5));
        Assert.InRange(proved.Upper, there - 0.0012, there);
    }

    [Fact]
    public void Ends_further_apart_than_the_link_is_long_are_asked_about()
    {
        Car car = DemoCar.Read();
        Assert.DoesNotContain(CarRelations.Of(car).Found, r => r.Kind == "link-length");
        car = car.With(CornerPlace.FrontLeft, car.FrontLeft with
        {
            DropLink = car.FrontLeft.DropLink! with { BarEnd = car.FrontLeft.DropLink.BarEnd! with { Above = Mm(-16.5) } },
        });
        Assert.Equal(Band.CannotBe, CarRelations.Of(car).Found.Single(r => r.Kind == "link-length").Band);
    }

    private static Finding Finding(Car car, string build, CornerPlace place) =>
        Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings.Single(f => f.Check == "clear-drop-link" && f.Corner == place);

    /// <summary>The demo at rest with this link at one corner, and nothing else near that wheel if so wished.</summary>
    private static Car Still(CornerPlace place, DropLinkPlace link, int alone = 0)
    {
        Car car = DemoCar.Read() with { Allowances = Allowances.None };
        var corner = car.At(place) with { DropLink = link };
        return car.With(place, alone == 0 ? corner : corner with { Obstacles = [] });
    }

    // Behind the axle and below, where the tyre comes near it at lock.
    private static DropLinkPlace Near() => Link(196, -30, 116, 238, -12, -165, -234, 12);

    private static DropLinkPlace Any(Random random)
    {
        double In(double low, double high) => low + ((high - low) * random.NextDouble());
        double ahead = In(-110, 110);
        return Link(In(185, 205), ahead, In(60, 260), In(185, 275), ahead + In(-60, 60), In(-180, -20),
            (random.Next(2) == 0 ? 1 : -1) * In(190, 260), In(-20, 20));
    }

    private static DropLinkPlace Link(double inboard, double ahead, double above, double endInboard, double endAhead, double endAbove,
        double bushesAhead, double bushesAbove) => new()
        {
            On = LinkOn.Knuckle, Outer = Point(inboard, ahead, above), BarEnd = Point(endInboard, endAhead, endAbove),
            BushesAhead = Mm(bushesAhead), BushesAbove = Mm(bushesAbove),
        };

    // The bar's points of the same link in the demo's table; the right corner mirrors it.
    private static Car Points(Car car, StationCarrier on)
    {
        var (table, link) = (car.FrontLeft.Hardpoints!, car.FrontLeft.DropLink!);
        Vec3 hub = new(table.HubFace!.X!.Si, table.HubFace.Y!.Si, table.HubFace.Z!.Si);
        BodyPoint At(double ahead, double inboard, double above) => new()
        {
            X = Mm(1000 * (hub.X + ahead)), Y = Mm(1000 * (hub.Y - inboard)), Z = Mm(1000 * (hub.Z + above)),
        };
        var (outer, end) = (link.Outer!, link.BarEnd!);
        return car.With(CornerPlace.FrontLeft, car.FrontLeft with
        {
            Hardpoints = table with
            {
                BarOn = on,
                BarFoot = At(outer.Ahead!.Si, outer.Inboard!.Si, outer.Above!.Si),
                BarEnd = At(end.Ahead!.Si, end.Inboard!.Si, end.Above!.Si),
                BarPivot = At(end.Ahead.Si + link.BushesAhead!.Si, end.Inboard.Si, end.Above.Si + link.BushesAbove!.Si),
            },
        });
    }

    private static HubPoint Point(double inboard, double ahead, double above) =>
        new() { Inboard = Mm(inboard), Ahead = Mm(ahead), Above = Mm(above) };

    private static Reading Mm(double mm) =>
        Reading.Of(FormattableString.Invariant($"{mm:0.###} mm"), Dimension.Length, "3 mm", ReadingSource.Tape);
}
