using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>A corner asked pose by pose, against the judge, the proof, the map and plain geometry.</summary>
public class CornerClearanceTests
{
    private static CornerClearance Corner(string build, CornerPlace place = CornerPlace.FrontLeft) =>
        CornerClearance.Of(DemoShelf.Car, DemoShelf.Car.Build(build)!, place, DemoShelf.Shelf);

    /// <summary>At the judge's own worst states the gaps are the judge's own numbers.</summary>
    [Theory]
    [InlineData(Demo.FirstIdea)]
    [InlineData(Demo.Holding)]
    public void Gaps_at_the_worst_states_are_those_of_the_verdict(string build)
    {
        var corner = Corner(build);
        Assert.Empty(corner.Missing);
        var judged = Judge.Build(DemoShelf.Car, build, JudgeOptions.FindingsOnly with { Scans = DemoShelf.Shelf });
        int compared = 0;
        foreach (var finding in judged.Findings.Where(f =>
            f.Corner == CornerPlace.FrontLeft && f.Worst is { Travel: not null } && f.Check.StartsWith("clear-", StringComparison.Ordinal)))
        {
            var gap = corner.At(finding.Worst!.Travel!.Value, finding.Worst.Steer ?? 0).Single(g => "clear-" + g.Thing.Id == finding.Check);
            Assert.Equal(finding.Value!.Value.Si, gap.Gap, 1e-6);
            Assert.Equal(finding.Low!.Value.Si, gap.Wanted, 1e-12);
            compared++;
        }

        Assert.True(compared >= 3, $"only {compared} compared");
    }

    /// <summary>The proof holds at every pose of a grid, and its own pose is as near as it says.</summary>
    [Theory]
    [InlineData(Demo.Holding, CornerPlace.FrontLeft)]
    [InlineData(Demo.Holding, CornerPlace.RearRight)]
    public void Nothing_is_nearer_than_proved(string build, CornerPlace place)
    {
        var corner = Corner(build, place);
        var least = corner.Least();
        Assert.NotNull(least);
        Assert.Equal(CertifyingStop.Closed, least.Why);
        var there = corner.At(least.Place.Travel, least.Place.Steer).Single(g => g.Thing == least.Thing);
        Assert.InRange(there.Gap, least.Lower - 1e-5, least.Upper + 1e-5);
        for (int j = 0; j <= 8; j++)
        {
            double steer = corner.Box.Least.Steer + ((corner.Box.Most.Steer - corner.Box.Least.Steer) * j / 8),
                top = Math.Min(corner.Box.Most.Travel, corner.Box.AllowedBump(steer));
            for (int i = 0; i <= 10; i++)
            {
                double gap = corner.At(corner.Box.Least.Travel + ((top - corner.Box.Least.Travel) * i / 10), steer)
                    .Where(g => g.Thing.OnBody).Min(g => g.Gap);
                Assert.True(gap >= least.Lower - 1e-6, $"{gap} below {least}");
            }
        }
    }

    /// <summary>Two routes to the same numbers: trees over everything here, each thing's own search there.</summary>
    [Fact]
    public void The_map_says_the_same()
    {
        var corner = Corner(Demo.Holding);
        var map = ClearanceMap.Of(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, CornerPlace.FrontLeft, DemoShelf.Shelf, 7, 5);
        var met = map.Poses.Where(p => double.IsFinite(p.Gap)).ToList();
        Assert.True(met.Count > 20, $"{met.Count} poses");
        foreach (MapPose pose in met)
        {
            Assert.Equal(corner.At(pose.Travel, pose.Steer).Where(g => g.Thing.OnBody).Min(g => g.Gap), pose.Gap, 5e-6);
        }
    }

    /// <summary>
    /// Both ends of the dimensioned gap lie in the cut's plane, as far apart as the
    /// gap; what the plane meets of a scan is no nearer to the wheel than the gap.
    /// </summary>
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.02, 0.4)]
    [InlineData(-0.03, -0.3)]
    public void A_cut_shows_its_gap_and_nothing_nearer(double travel, double steer)
    {
        var corner = Corner(Demo.Holding);
        foreach (var gap in corner.At(travel, steer).Where(g => g.Thing.Kind != NearKind.Strut))
        {
            var cut = WheelCut.Of(corner, travel, steer, gap)!;
            double apart = Math.Sqrt(Math.Pow(cut.OnThing.A - cut.OnWheel.A, 2) + Math.Pow(cut.OnThing.R - cut.OnWheel.R, 2));
            Assert.Equal(Math.Abs(gap.Gap), apart, 1e-6);
            var (tyre, rim) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, gap.Thing.OnBody);
            WheelShape shape = WheelShape.Of(tyre, rim, 12);
            foreach (var thing in cut.Things.Where(t => t.Thing.Id == gap.Thing.Id))
            {
                double nearest = thing.Lines.SelectMany(l => new[] { l.From, l.To }).Concat(thing.Dots)
                    .Min(p => shape.SignedDistance(p.A, p.R, out _, out _, out _));
                Assert.True(nearest >= gap.Gap - 1e-5, $"{thing.Thing.Name}: {nearest} in the cut, {gap.Gap} stated");
            }
        }
    }

    /// <summary>
    /// A strut's pieces are cut as the bodies they are: no nearer than the stated gap, and as near within what 48 sides of a prism cut off.
    /// </summary>
    [Fact]
    public void A_strut_is_cut_where_it_stands()
    {
        var corner = Corner(Demo.Holding);
        var gaps = corner.At(0, 0).Where(g => g.Thing.Kind == NearKind.Strut).ToList();
        Assert.True(gaps.Count >= 3, $"{gaps.Count} pieces");
        foreach (var gap in gaps)
        {
            var cut = WheelCut.Of(corner, 0, 0, gap)!;
            var thing = Assert.Single(cut.Things, t => t.Thing.Id == gap.Thing.Id);
            var (tyre, rim) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, forBody: false);
            WheelShape shape = WheelShape.Of(tyre, rim, 12);
            double nearest = thing.Lines.Min(l => Enumerable.Range(0, 201).Min(i => shape.SignedDistance(
                l.From.A + ((l.To.A - l.From.A) * i / 200), l.From.R + ((l.To.R - l.From.R) * i / 200), out _, out _, out _)));
            Assert.InRange(nearest, gap.Gap - 1e-5, gap.Gap + 0.001);
        }
    }

    /// <summary>
    /// No tyre at any sampled pose stands out of the swept room; and the room is not larger than the tyres by more than its own coarseness.
    /// </summary>
    [Fact]
    public void Swept_room_holds_the_tyres_at_both_ends()
    {
        var corner = Corner(Demo.Holding);
        var swept = SweptTyre.Of(corner)!;
        var (tyre, _) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, forBody: true);
        float top = float.NegativeInfinity, bottom = float.PositiveInfinity, street = float.NegativeInfinity;
        for (int i = 0; i < swept.Coordinates.Length / 3; i++)
        {
            top = Math.Max(top, swept.Coordinates[(3 * i) + 2]);
            bottom = Math.Min(bottom, swept.Coordinates[(3 * i) + 2]);
            street = Math.Max(street, swept.Coordinates[(3 * i) + 1]);
        }

        Assert.All(swept.Coordinates, c => Assert.True(float.IsFinite(c)));
        Assert.All(swept.Corners, c => Assert.InRange(c, 0, (swept.Coordinates.Length / 3) - 1));
        Assert.True(corner.TryPose(corner.Box.Most.Travel, 0, out WheelPose high));
        Assert.True(corner.TryPose(corner.Box.Least.Travel, 0, out WheelPose low));
        Assert.InRange(top, Crown(high, tyre, 12) - 0.004, Crown(high, tyre, 12) + 0.004);

        // With caster a steered wheel stands a little lower on one side.
        Assert.InRange(bottom, Crown(low, tyre, 6) - 0.015, Crown(low, tyre, 6) + 0.004);

        // Steered, the street side's tread edge swings further out than straight ahead.
        Assert.True(street > tyre.AxialCentre + (0.5 * tyre.SectionWidth) + 0.01, $"{street}");

        // Each edge belongs to two triangles: the surface is closed.
        var edges = new Dictionary<(int, int), int>();
        for (int t = 0; t < swept.Corners.Length; t += 3)
        {
            for (int k = 0; k < 3; k++)
            {
                int a = swept.Corners[t + k], b = swept.Corners[t + ((k + 1) % 3)];
                edges[(Math.Min(a, b), Math.Max(a, b))] = edges.GetValueOrDefault((Math.Min(a, b), Math.Max(a, b))) + 1;
            }
        }

        Assert.All(edges.Values, n => Assert.Equal(2, n));
    }

    [Fact]
    public void What_is_missing_is_said_and_nothing_throws()
    {
        var car = DemoShelf.Car with { MeasuredBuild = "" };
        var corner = CornerClearance.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft, DemoShelf.Shelf);
        Assert.NotEmpty(corner.Missing);
        Assert.Empty(corner.At(0, 0));
        Assert.Null(corner.Least());
    }

    private static double Crown(in WheelPose pose, in TyreSection tyre, double clock) =>
        SpindleFrame.Of(pose).ToBody(Clock.PointAt(tyre.AxialCentre, tyre.CrownRadius, clock)).Z;
}
