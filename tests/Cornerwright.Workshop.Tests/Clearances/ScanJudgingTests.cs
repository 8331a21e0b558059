using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Surroundings;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>The demo car judged with the demo scan of its front arch: findings, their proof against sampling, cures.</summary>
public class ScanJudgingTests(ITestOutputHelper output)
{
    private static readonly JudgeOptions WithScans = new(Cures: true, Pictures: false) { Scans = DemoShelf.Shelf };

    [Theory]
    [InlineData(Demo.FirstIdea)]
    [InlineData(Demo.Holding)]
    public void A_scan_makes_one_finding_a_side(string build)
    {
        Assert.Empty(DemoShelf.Shelf.Problems);
        var judged = Judge.Build(DemoShelf.Car, build, WithScans);
        var scans = judged.Findings.Where(f => f.Check == "scan-arch").ToList();
        foreach (var f in scans)
        {
            output.WriteLine($"{f.Where}: {f.Verdict} {f.Value?.Text} of {f.Low?.Text}, doubt {f.Doubt?.Text}; {f.Sentence} "
                + $"{f.Worst?.Words}; {string.Join(" | ", f.Cures.Select(c => c.Sentence + " -> " + c.MarginAfter.Text))}");
        }

        Assert.Equal(["front left", "front right"], scans.Select(f => f.Where).Order());
        Assert.All(scans, f =>
        {
            Assert.NotEqual(Verdict.Unknown, f.Verdict);
            Assert.True(f.Doubt!.Value.Si > 0.0005);
            Assert.NotNull(f.Worst);
        });

        // The tape knows lines and points of the same arch: both must say the same within their doubts together.
        foreach (var f in scans)
        {
            var tape = judged.Findings.Where(t => t.Where == f.Where && t.Value is not null
                && DemoShelf.Car.At(f.Corner!.Value).Obstacles.Any(o => o.AttachedTo == AttachedTo.Body && t.Check == "clear-" + o.Id))
                .MinBy(t => t.Value!.Value.Si)!;
            output.WriteLine(
                $"tape: {tape.Check} {tape.Value?.Text} ± {tape.Doubt?.Text}; {string.Join(" | ", tape.Cures.Select(c => c.Sentence))}");
            Assert.InRange(f.Value!.Value.Si - tape.Value!.Value.Si, -f.Doubt!.Value.Si - tape.Doubt!.Value.Si,
                f.Doubt.Value.Si + tape.Doubt.Value.Si);
        }

        // What is there without scans is untouched by them.
        var plain = Judge.Build(DemoShelf.Car, build, WithScans with { Scans = null });
        Assert.Equal(
            plain.Findings.Select(f => f.Key + f.Sentence),
            judged.Findings.Where(f => f.Check != "scan-arch").Select(f => f.Key + f.Sentence));
    }

    /// <summary>
    /// Against sampling: every travel and steer of a grid, every triangle, and the tape's own lines along the same edges.
    /// </summary>
    [Theory]
    [InlineData(Demo.FirstIdea, CornerPlace.FrontLeft)]
    [InlineData(Demo.Holding, CornerPlace.FrontLeft)]
    [InlineData(Demo.Holding, CornerPlace.FrontRight)]
    public void No_pose_comes_nearer_than_what_is_stated(string build, CornerPlace place)
    {
        var (corner, least) = Solved(build, place);
        CertifiedGap found = least.Found!;
        BoundTree tree = ScanObstacles.Of(least.Scan).Tree;
        var (tyre, rim) = corner.Clearance.Sections(corner.Read, forBody: true);
        WheelShape shape = WheelShape.Of(tyre, rim, 12);
        var poses = new CornerPoses(corner.Read);
        PoseBox box = CornerPoses.Box(corner.Read);
        double sampled = double.PositiveInfinity;
        int nearest = -1, count = 0;
        for (int j = 0; j <= 60; j++)
        {
            double steer = box.Least.Steer + ((box.Most.Steer - box.Least.Steer) * j / 60),
                top = Math.Min(box.Most.Travel, box.AllowedBump(steer));
            for (int i = 0; i <= 80; i++)
            {
                Assert.True(poses.TryPose(new(box.Least.Travel + ((top - box.Least.Travel) * i / 80), steer, 0), out WheelPose pose));
                sampled = ScanClearing.TryBelow(tree, shape, pose, ref nearest, out Clearing c, sampled) ? c.Gap : sampled;
                count++;
            }
        }

        output.WriteLine($"{build} {place}: [{found.Lower * 1000:0.000}, {found.Upper * 1000:0.000}] mm {found.Why}, sampled "
            + $"{sampled * 1000:0.000} mm over {count} poses, {found.Cells} cells, {tree.PrimitiveCount} triangles");
        Assert.True(sampled >= found.Lower, $"{sampled} below {found}");
        if (found.Why == CertifyingStop.Closed)
        {
            Assert.InRange(found.Width, 0, 1.001e-4);
            Assert.InRange(sampled, found.Lower, found.Upper + 0.002);
        }
    }

    /// <summary>
    /// Every cure holds when the corner is certified anew with it; where a wish is just
    /// missed the levers do it, where metal is far in the way the arch must give.
    /// </summary>
    [Theory]
    [InlineData(Demo.FirstIdea, 5)]
    [InlineData("winter", 8)]
    public void Cures_hold_over_every_pose(string build, int wantedMm)
    {
        var wish = DemoShelf.Car.Limits with { TyreToBody = Reading.Of($"{wantedMm} mm", Dimension.Length) };
        var judged = Judge.Build(DemoShelf.Car with { Limits = wish }, build, WithScans);
        var failing = judged.Findings.Where(f => f.Check == "scan-arch" && (f.Verdict is Verdict.Fails or Verdict.Tight)).ToList();
        output.WriteLine(string.Join("\n", failing.SelectMany(f =>
            f.Cures.Select(c => $"{f.Where}: {c.Sentence} gain {c.Gain.Text}, then {c.MarginAfter.Text}; {c.Side}"))));
        Assert.NotEmpty(failing);
        Assert.All(failing, f => Assert.NotEmpty(f.Cures));
        Assert.All(failing.SelectMany(f => f.Cures), c => Assert.True(c.MarginAfter.Si >= 0));
        Assert.Contains(failing.SelectMany(f => f.Cures), c =>
            c.Sentence.StartsWith(build == Demo.FirstIdea ? "Work the arch back" : "Put ", StringComparison.Ordinal));
    }

    private static (SolvedCorner Numbers, ScanLeast Least) Solved(string build, CornerPlace place)
    {
        // At rest: what is sampled knows the wheel's poses, and not what the road adds to each.
        var car = DemoShelf.Car with { Allowances = Allowances.None };
        var plan = CornerPlan.Compile(car, car.Build(build)!, place, CarLearning.InUse(car));
        var least = ScanChecks.Prepare(plan, DemoShelf.Shelf.At(place)).Single();
        var numbers = new SolvedCorner(plan);
        numbers.Solve();
        least.Keep(numbers, 0.005);
        Assert.NotNull(least.Found);
        return (numbers, least);
    }
}
