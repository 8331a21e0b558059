using System.Globalization;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Clearance.Scans;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>
/// 200 random boxes of poses with random obstacles of every kind, against dense sampling: half the poses anywhere in
/// the box, a quarter near the place named, a quarter on its edges. 400,000 poses in the suite;
/// CORNERWRIGHT_POSES=10000000 for the long run.
/// </summary>
public class RandomBoxTests(ITestOutputHelper output)
{
    private const int Boxes = 50;

    [Theory]
    [InlineData(31)]
    [InlineData(32)]
    [InlineData(33)]
    [InlineData(34)]
    public void The_interval_always_holds_the_least_gap_and_is_narrow(int seed)
    {
        long all = long.Parse(Environment.GetEnvironmentVariable("CORNERWRIGHT_POSES") ?? "400000", CultureInfo.InvariantCulture);
        int each = (int)(all / (4 * Boxes));
        var random = new Random(seed);
        int mostCells = 0, touching = 0, inside = 0, deep = 0;
        double closest = double.PositiveInfinity, widest = 0;
        for (int i = 0, found = 0; found < Boxes && i < 10 * Boxes; i++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelShape shape = WheelShape.Of(tyre, i % 3 == 0 ? default : rim, 4);
            WheelSide side = random.Next(2) == 0 ? WheelSide.Left : WheelSide.Right;
            Vec3 hub = new(0.02, side == WheelSide.Left ? 0.75 : -0.75, 0.31);
            var field = new RandomField(random, hub, side);
            PoseBox box = RandomBox(random, i);
            ClearanceObstacle[] obstacles =
                [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ => RandomObstacle(random, hub, side, tyre))];
            CertifiedGap gap = Certify(shape, obstacles, field, box);
            string where = $"seed {seed}, box {i}: {gap}";
            if (gap.Why == CertifyingStop.DeepOverlap)
            {
                // Enough is known: a real pose with a deep overlap. Draw another.
                field.TryPose(gap.Place, out WheelPose deepPose);
                Assert.True(LeastOf(obstacles, shape, deepPose) < -0.003, where);
                deep++;
                continue;
            }

            found++;
            Assert.True(gap.Why == CertifyingStop.Closed, where);
            Assert.True(gap.Width <= 1e-4 + 1e-9, where);

            // The pose named is allowed, and has the gap named.
            Assert.True(field.TryPose(gap.Place, out WheelPose pose) && Allowed(box, gap.Place), where);
            Assert.Equal(gap.Upper, LeastOf(obstacles, shape, pose) + obstacles[gap.Obstacle].Excess, 6e-6);

            // No sampled pose lies below the interval.
            for (int k = 0; k < each; k++)
            {
                PosePlace at = Sampled(random, box, gap.Place, k);
                field.TryPose(at, out WheelPose sampled);
                double below = LeastOf(obstacles, shape, sampled, gap.Upper);
                closest = Math.Min(closest, below - gap.Lower);
                Assert.True(below >= gap.Lower, $"{where}: {below} at {at}");
            }

            mostCells = Math.Max(mostCells, gap.Cells);
            touching += gap.Upper < 0 ? 1 : 0;
            inside += IsInside(box, gap.Place) ? 1 : 0;
            widest = Math.Max(widest, gap.Width);
        }

        output.WriteLine(
            $"seed {seed}: {Boxes} boxes of {each} poses, {touching} touching ({deep} more deeply), "
            + $"least inside the box in {inside}; at most {mostCells} cells; sampled at least {closest * 1e6:F1} µm above the lower end; "
            + $"widest {widest * 1e6:F2} µm");
        Assert.InRange(touching, 1, Boxes - 1);
    }

    private static CertifiedGap Certify(WheelShape shape, ClearanceObstacle[] obstacles, RandomField field, PoseBox box) =>
        Cornerwright.Mechanics.Clearance.Certifying.Certifying.Least(shape, obstacles, field, box);

    private static double LeastOf(ClearanceObstacle[] obstacles, WheelShape shape, in WheelPose pose, double upTo = double.PositiveInfinity)
    {
        double least = upTo;
        foreach (ClearanceObstacle o in obstacles)
        {
            int nearest = -1;
            WheelPose seen = o.Frame == ObstacleFrame.Body ? pose : new(default, Vec3.UnitX);
            least = ScanClearing.TryBelow(o.Tree, shape, seen, ref nearest, out Clearing c, least) ? c.Gap : least;
        }

        return least;
    }

    private static PoseBox RandomBox(Random random, int i)
    {
        double droop = random.Between(-0.09, -0.01), bump = droop + random.Between(0.01, 0.15);
        double right = random.Between(-0.6, 0), left = right + random.Between(0.02, 0.6);
        var plate = i % 4 == 0 ? (-random.Between(0, 0.01), random.Between(0, 0.01)) : (0, 0);
        BumpAtSteer[]? limit = i % 5 == 0
            ? [new(right, droop + (0.3 * (bump - droop))), new(0.5 * (right + left), bump), new(left, droop + (0.1 * (bump - droop)))]
            : null;
        return i % 7 == 0
            ? new(new(droop, 0, 0), new(bump, 0, 0))
            : new(new(droop, right, plate.Item1), new(bump, left, plate.Item2), limit);
    }

    private static bool Allowed(PoseBox box, in PosePlace at) =>
        at.Travel >= box.Least.Travel && at.Travel <= Math.Min(box.Most.Travel, box.AllowedBump(at.Steer) + 1e-12)
        && at.Steer >= box.Least.Steer && at.Steer <= box.Most.Steer && at.Third >= box.Least.Third && at.Third <= box.Most.Third;

    private static bool IsInside(PoseBox box, in PosePlace at) =>
        at.Travel > box.Least.Travel && at.Travel < Math.Min(box.Most.Travel, box.AllowedBump(at.Steer) - 1e-9)
        && (box.Least.Steer == box.Most.Steer || (at.Steer > box.Least.Steer && at.Steer < box.Most.Steer));

    private static PosePlace Sampled(Random random, PoseBox box, in PosePlace worst, int k)
    {
        PosePlace at = default;
        for (int way = 0; way < 3; way++)
        {
            double low = Way(box.Least, way), high = Way(box.Most, way), width = high - low;
            double value = k % 4 == 0 ? Way(worst, way) + (width * Math.Pow(10, random.Between(-4, -1)) * random.Between(-1, 1))
                : k % 4 == 1 && random.Next(2) == 0 ? (random.Next(2) == 0 ? low : high)
                : random.Between(low, high);
            value = Math.Clamp(value, low, high);
            at = way == 0 ? at with { Travel = value } : way == 1 ? at with { Steer = value } : at with { Third = value };
        }

        return at with { Travel = Math.Max(box.Least.Travel, Math.Min(at.Travel, box.AllowedBump(at.Steer))) };
    }

    private static double Way(in PosePlace at, int way) => way == 0 ? at.Travel : way == 1 ? at.Steer : at.Third;

    private static ClearanceObstacle RandomObstacle(Random random, Vec3 hub, WheelSide side, in TyreSection tyre)
    {
        double out_ = side == WheelSide.Left ? 1 : -1, radius = tyre.OuterDiameter / 2;
        WheelPose about = new(hub, new(0, out_, 0));

        // Mostly outside the wheel at rest: over the tread or inboard of the wall.
        Vec3 Near() => SpindleFrame.Of(about).ToBody(random.Next(2) == 0
            ? Clock.PointAt(random.Between(-0.2, 0.1), radius + random.Between(0.01, 0.2), random.Between(8, 16))
            : Clock.PointAt(random.Between(-0.45, -0.2), random.Between(0.05, radius), random.Between(0, 12)));

        switch (random.Next(8))
        {
            case 0 or 1:
                TriangleMesh arch = InventedArch.Mesh(2000, radius - 0.317 + random.Between(0, 0.06));
                float[] xyz = arch.Coordinates.ToArray();
                for (int i = 0; i < xyz.Length; i += 3)
                {
                    (xyz[i], xyz[i + 1], xyz[i + 2]) = ((float)(xyz[i] + hub.X), (float)(out_ * xyz[i + 1]), (float)(xyz[i + 2] + 0.03));
                }

                return ClearanceObstacle.Of(TriangleMesh.From(xyz, arch.Corners.ToArray()));
            case 2:
                return ClearanceObstacle.OfPoints([.. Enumerable.Range(0, random.Next(1, 200)).Select(_ => Near())]);
            case 3:
                Vec3 start = Near();
                return ClearanceObstacle.OfBar(
                    [start, start + (RandomCorner.Direction(random) * 0.1), start + (RandomCorner.Direction(random) * 0.15)],
                    random.Between(0, 0.015));
            case 4:
                return ClearanceObstacle.OfCylinder(
                    new(Near(), RandomCorner.Direction(random), random.Between(0.002, 0.3), random.Between(0.005, 0.07)));
            case 5:
                Vec3 first = RandomCorner.Direction(random);
                Vec3 second = first.Cross(RandomCorner.Direction(random)).Unit();
                return ClearanceObstacle.OfBox(
                    Near(), first, second, random.Between(0.002, 0.05), random.Between(0.002, 0.05), random.Between(0.002, 0.05));
            case 6:
                float[] heap = new float[9 * 200];
                for (int t = 0; t < 200; t++)
                {
                    Vec3 at = Near();
                    for (int k = 0; k < 3; k++)
                    {
                        Vec3 p = at + (RandomCorner.Direction(random) * random.Between(0, 0.02));
                        (heap[(9 * t) + (3 * k)], heap[(9 * t) + (3 * k) + 1], heap[(9 * t) + (3 * k) + 2]) =
                            ((float)p.X, (float)p.Y, (float)p.Z);
                    }
                }

                return ClearanceObstacle.Of(TriangleMesh.From(heap, [.. Enumerable.Range(0, 600)]));
            default:
                return ClearanceObstacle.OfCylinder(
                    new(Clock.PointAt(random.Between(-0.35, -0.25), random.Between(0, 0.2), 12), new(0, 1, 0), 0.3, 0.025),
                    ObstacleFrame.Knuckle);
        }
    }
}
