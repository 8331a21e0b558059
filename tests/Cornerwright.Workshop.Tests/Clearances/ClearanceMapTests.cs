using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Surroundings;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>The map of gaps over travel and steer, and the section at the worst place.</summary>
public class ClearanceMapTests(ITestOutputHelper output)
{
    private const CornerPlace Place = CornerPlace.FrontLeft;

    [Fact]
    public void Its_lowest_pose_is_what_the_verdict_proves()
    {
        var (car, build) = (DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!);
        var map = ClearanceMap.Of(car, build, Place, DemoShelf.Shelf, 41, 31);
        Assert.Empty(map.Missing);
        Assert.Equal((41, 31, 41 * 31), (map.Travels.Count, map.Steers.Count, map.Poses.Count));
        var known = map.Poses.Where(p => double.IsFinite(p.Gap)).ToList();
        MapPose least = known.MinBy(p => p.Gap);
        var judged = Judge.Build(car, build, new JudgeOptions(false, false) { Scans = DemoShelf.Shelf });
        double proved = judged.Findings.Where(f => f.Corner == Place && f.Value is not null
            && (f.Check == "scan-arch" || car.At(Place).Obstacles.Any(o => o.AttachedTo == AttachedTo.Body && f.Check == "clear-" + o.Id)))
            .Min(f => f.Value!.Value.Si);
        output.WriteLine($"map {1000 * least.Gap:0.00} mm at {least}, proved {1000 * proved:0.00} mm, {known.Count} poses known");
        Assert.InRange(least.Gap, proved - 1e-4, proved + 0.003);
        Assert.All(known, p => Assert.NotEqual("", p.Thing));
        Assert.InRange(known.Count, 41 * 15, (41 * 31) - 1);
    }

    [Fact]
    public void The_section_at_the_worst_place_shows_the_worst_gap()
    {
        var plan = CornerPlan.Compile(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, Place, CarLearning.InUse(DemoShelf.Car));
        var scan = DemoShelf.Shelf.At(Place).Single();
        var least = ScanChecks.Prepare(plan, [scan]).Single();
        var numbers = new SolvedCorner(plan);
        numbers.Solve();
        least.Keep(numbers, 0.005);
        CertifiedGap found = least.Found!;
        var pieces = ScanSection.Of(scan.Mesh!, found.Pose, Clock.HoursOf(found.Clearing.OnObstacle));
        var (tyre, rim) = numbers.Clearance.Sections(numbers.Read, forBody: true);
        WheelShape shape = WheelShape.Of(tyre, rim, 12);
        double nearest = double.PositiveInfinity;
        foreach (SectionPiece piece in pieces)
        {
            for (int k = 0; k <= 50; k++)
            {
                double t = k / 50.0;
                nearest = Math.Min(nearest, shape.SignedDistance(
                    piece.From.A + (t * (piece.To.A - piece.From.A)), piece.From.R + (t * (piece.To.R - piece.From.R)), out _,
                    out _, out _));
            }
        }

        output.WriteLine($"{pieces.Count} pieces, nearest {1000 * nearest:0.000} mm, certified {1000 * found.Upper:0.000} mm");
        Assert.InRange(pieces.Count, 20, 2000);
        Assert.Equal(found.Upper, nearest, 1e-4);
    }
}
