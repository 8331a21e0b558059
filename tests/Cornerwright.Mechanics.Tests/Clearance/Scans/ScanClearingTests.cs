using System.Runtime.Intrinsics;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

/// <summary>Wheel against meshes and clouds: exact against sampling, bounds that bound, and nothing allocated.</summary>
public class ScanClearingTests(ITestOutputHelper output)
{
    /// <summary>
    /// Meshes of about 2,000 triangles: the invented arch shifted and turned, and heaps of random triangles round and in the wheel.
    /// Sampling can only be too large, so ours may not be above it; and the point that ours names must be on its triangle and, by
    /// the general polygon, that far from the wheel. Where they do not overlap, sampling alone must come within a
    /// hundredth of a millimetre.
    /// (In an overlap the deepest place often lies in a sharp valley, where sampling sticks: 0.03 mm was met.)
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_gap_to_a_mesh_is_that_of_brute_force(int seed)
    {
        var random = new Random(seed);
        double above = 0, below = 0;
        int overlaps = 0;
        for (int i = 0; i < 100; i++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelShape shape = WheelShape.Of(tyre, rim, 4);
            WheelPose pose = RandomCorner.Pose(random);
            TriangleMesh mesh = i % 2 == 0 ? ShiftedArch(random, pose, tyre.OuterDiameter / 2) : Heap(random, pose, 2000);
            Clearing ours = ScanClearing.Of(BoundTree.Of(mesh), shape, pose);
            double sampled = SampledScanGap.Of(mesh, shape, pose);
            Assert.True(ours.Certified, $"seed {seed} case {i}");
            double stated = ScanClearing.StatedError + (1e-4 * Math.Max(0, -sampled));
            Assert.True(
                ours.Gap < sampled + stated && stated < 1e-5 + ScanClearing.StatedError,
                $"seed {seed} case {i}: {ours.Gap} above {sampled}");
            if (sampled >= 0)
            {
                Assert.True(sampled < ours.Gap + 1e-5, $"seed {seed} case {i}: {ours.Gap}, sampled {sampled}");
                below = Math.Max(below, sampled - ours.Gap);
            }

            IsAttained(mesh, shape, pose, ours);
            above = Math.Max(above, ours.Gap - sampled);
            overlaps += ours.Gap < 0 ? 1 : 0;
        }

        output.WriteLine(
            $"seed {seed}: ours above sampled {above * 1e6:F3} µm, sampled above ours {below * 1e6:F3} µm where apart, "
            + $"{overlaps} overlaps");
        Assert.InRange(overlaps, 5, 80);
    }

    private static void IsAttained(TriangleMesh mesh, WheelShape shape, in WheelPose pose, in Clearing c)
    {
        var (p, q, r) = mesh.Triangle((int)c.Along);
        Vec3 x = SpindleFrame.Of(pose).ToBody(c.OnObstacle), n = (q - p).Cross(r - p);
        double u = (q - x).Cross(r - x).Dot(n), v = (r - x).Cross(p - x).Dot(n), w = (p - x).Cross(q - x).Dot(n), sum = n.LengthSquared;
        Assert.True(
            (x - (((p * u) + (q * v) + (r * w)) / sum)).Length < 1e-8 && Math.Min(u, Math.Min(v, w)) >= -1e-6 * sum,
            $"{x} is not in its triangle");
        Assert.Equal(c.Gap, new SampledScanGap.Wheel(shape, pose).Gap(x), 1e-8);
        Assert.Equal(Math.Abs(c.Gap), (c.OnWheel - c.OnObstacle).Length, 1e-9);
    }

    [Fact]
    public void A_cloud_is_its_nearest_point()
    {
        var random = new Random(5);
        for (int i = 0; i < 40; i++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelShape shape = WheelShape.Of(tyre, rim, 4);
            WheelPose pose = RandomCorner.Pose(random);
            float[] xyz = [.. Enumerable.Range(0, random.Next(1, 3000)).SelectMany(_ => Floats(RandomCorner.Near(random, pose, 0.4)))];
            PointCloud cloud = PointCloud.From(xyz);
            double all = Enumerable.Range(0, cloud.PointCount).Min(k => shape.SignedDistance(pose, cloud.Point(k)));
            Clearing c = ScanClearing.Of(BoundTree.Of(cloud), shape, pose);
            Assert.Equal(all, c.Gap, ScanClearing.StatedError);
            Assert.Equal(c.Gap, shape.SignedDistance(pose, cloud.Point((int)c.Along)), 1e-9);
        }
    }

    /// <summary>Bounds of nodes and triangles, for a pose and for cells of poses, against random points and poses inside.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public void No_bound_is_above_anything_it_bounds(int seed)
    {
        var random = new Random(seed);
        double closest = double.PositiveInfinity;
        for (int i = 0; i < 40; i++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelShape shape = WheelShape.Of(tyre, rim, 4);
            WheelPose pose = RandomCorner.Pose(random);
            BoundTree tree = BoundTree.Of(i % 2 == 0 ? ShiftedArch(random, pose, tyre.OuterDiameter / 2) : Heap(random, pose, 700));
            var cell = new RandomCell(random, pose, i % 3 == 0 ? 0 : Math.Pow(10, random.Between(-5, -1.3)));
            for (int n = 0; n < 120; n++)
            {
                int level = random.Next(-1, tree.Levels.Length);
                double bound = Bound(tree, shape, cell.Coarse, level, random, out int from, out int to);
                for (int k = 0; k < 20; k++)
                {
                    int place = random.Next(from, to);
                    double gap = shape.SignedDistance(cell.Any(random), Inside(tree, place, random));
                    closest = Math.Min(closest, gap - bound);
                    Assert.True(bound <= gap, $"seed {seed} case {i}.{n}: bound {bound} above {gap} at level {level}");
                }
            }
        }

        output.WriteLine($"closest bound {closest * 1e6:F3} µm below");
    }

    [Fact]
    public void A_sweep_that_starts_warm_finds_the_same_and_allocates_nothing()
    {
        WheelShape shape = WheelShape.Of(
            TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233), RimSection.WithEstimates(-0.040, 0.2032, 0.2285), 6);
        BoundTree tree = BoundTree.Of(InventedArch.Mesh(20000));
        var poses = new WheelPose[64];
        for (int i = 0; i < poses.Length; i++)
        {
            poses[i] = WheelPose.StraightAhead(InventedArch.Hub, WheelSide.Left, new(-0.02, 0.01, 0), -0.08 + (0.002 * i));
        }

        Span<double> warm = stackalloc double[poses.Length];
        Sweep(tree, shape, poses, warm);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Sweep(tree, shape, poses, warm);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        for (int i = 0; i < poses.Length; i++)
        {
            Assert.Equal(ScanClearing.Of(tree, shape, poses[i]).Gap, warm[i], 5e-6);
        }
    }

    [Fact]
    public void A_gap_above_the_limit_is_not_looked_for()
    {
        WheelShape shape = WheelShape.Of(TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233), default, 6);
        BoundTree tree = BoundTree.Of(InventedArch.Mesh(2000));
        WheelPose pose = WheelPose.StraightAhead(InventedArch.Hub, WheelSide.Left, default, 0);
        double gap = ScanClearing.Of(tree, shape, pose).Gap;
        int nearest = -1;
        Assert.False(ScanClearing.TryBelow(tree, shape, pose, ref nearest, out _, gap - 1e-6));
        Assert.True(ScanClearing.TryBelow(tree, shape, pose, ref nearest, out Clearing c, gap + 1e-5));
        Assert.Equal(gap, c.Gap, 1e-6);
        Assert.Throws<ArgumentException>(() => ScanClearing.Of(tree, shape, new(new(double.NaN, 0, 0), Vec3.UnitY)));
        Assert.Throws<ArgumentException>(() => ScanClearing.Of(tree, shape, default));
    }

    /// <summary>By hand: a triangle square to the spindle beside a cylinder-like tyre, and a line and a point made of triangles.</summary>
    [Fact]
    public void Plain_cases_by_hand()
    {
        WheelShape disc = WheelShape.Of([new WheelOutline(WheelPart.Tyre, [new(-0.1, 0.2), new(0.1, 0.2), new(0.1, 0.3), new(-0.1, 0.3)])]);
        WheelPose pose = new(default, Vec3.UnitX);
        TriangleMesh beside = TriangleMesh.From([0.125f, 0.25f, -1, 0.125f, 0.25f, 1, 0.125f, 2, 0], [0, 1, 2]);
        Assert.Equal(0.025, ScanClearing.Of(BoundTree.Of(beside), disc, pose).Gap, 1e-6);
        TriangleMesh above = TriangleMesh.From([-1, 0.375f, -1, 1, 0.375f, -1, 0, 0.375f, 2], [0, 1, 2]);
        Assert.Equal(0.075, ScanClearing.Of(BoundTree.Of(above), disc, pose).Gap, 1e-6);

        // A mesh of a real triangle far away with a line and a point near: both count.
        TriangleMesh odd = TriangleMesh.From(
            [9, 9, 9, 9, 9.5f, 9, 9, 9, 9.5f, 0, 0.35f, -0.5f, 0, 0.35f, 0.5f, 0.14f, 0, 0.25f], [0, 1, 2, 3, 4, 4, 5, 5, 5]);
        Assert.Equal(2, odd.DegenerateCount);
        Clearing c = ScanClearing.Of(BoundTree.Of(odd), disc, pose);
        Assert.Equal(0.04, c.Gap, 1e-6);
        Assert.Equal(2, c.Along);
    }

    private static void Sweep(BoundTree tree, WheelShape shape, WheelPose[] poses, Span<double> into)
    {
        int nearest = -1;
        for (int i = 0; i < poses.Length; i++)
        {
            into[i] = ScanClearing.TryBelow(tree, shape, poses[i], ref nearest, out Clearing c) ? c.Gap : double.NaN;
        }
    }

    private static double Bound(BoundTree tree, WheelShape shape, in CoarsePose pose, int level, Random random, out int from, out int to)
    {
        int span = 1, count = tree.PrimitiveCount;
        for (int l = 0; l <= level; l++)
        {
            span *= BoundTree.Lanes;
        }

        int node = random.Next((count + span - 1) / span), lane = node % BoundTree.Lanes, block = node / BoundTree.Lanes;
        (from, to) = (node * span, Math.Min(count, (node + 1) * span));
        var bounds = level >= 0
            ? EightBounds.OfNodes(
                tree.Levels[level].AsSpan(block * BoundTree.BlockFloats, BoundTree.BlockFloats), shape, pose, float.PositiveInfinity)
            : EightBounds.OfTriangles(tree.Leaves.AsSpan(block * tree.GroupFloats, tree.GroupFloats), shape, pose, float.PositiveInfinity);
        return bounds.GetElement(lane);
    }

    private static Vec3 Inside(BoundTree tree, int place, Random random)
    {
        double u = random.NextDouble(), v = random.NextDouble();
        (u, v) = random.Next(4) == 0 ? (Math.Round(u), Math.Round(v)) : (u, v);
        (u, v) = u + v > 1 ? (1 - u, 1 - v) : (u, v);
        Vec3 a = tree.Corner(place, 0);
        return a + ((tree.Corner(place, 1) - a) * u) + ((tree.Corner(place, 2) - a) * v);
    }

    private static TriangleMesh ShiftedArch(Random random, in WheelPose pose, double radius)
    {
        TriangleMesh arch = InventedArch.Mesh(2000, radius - 0.317 + random.Between(-0.01, 0.05));
        Vec3 axis = RandomCorner.Direction(random),
            shift = new(random.Between(-0.03, 0.03), random.Between(-0.03, 0.03), random.Between(-0.02, 0.04));
        double angle = random.Between(-0.2, 0.2), side = Math.Sign(pose.Spindle.Y);
        var xyz = new float[arch.Coordinates.Length];
        for (int i = 0; i < arch.PointCount; i++)
        {
            Vec3 p = arch.Point(i) - InventedArch.Hub;
            Vec3 q = pose.HubFace + new Vec3(p.X, side * p.Y, p.Z).RotatedAbout(axis, angle) + shift;
            Floats(q).CopyTo(xyz, 3 * i);
        }

        return TriangleMesh.From(xyz, arch.Corners.ToArray());
    }

    private static TriangleMesh Heap(Random random, in WheelPose pose, int count)
    {
        List<float> xyz = [];
        double away = random.Between(0, 0.45);
        while (xyz.Count < 9 * count)
        {
            Vec3 at = RandomCorner.Near(random, pose, 0.28 + away);
            double size = Math.Pow(10, random.Between(-3, -0.8));
            if ((at - pose.HubFace).Length > away)
            {
                for (int k = 0; k < 3; k++)
                {
                    xyz.AddRange(Floats(at + (RandomCorner.Direction(random) * (size * random.NextDouble()))));
                }
            }
        }

        return TriangleMesh.From([.. xyz], [.. Enumerable.Range(0, 3 * count)]);
    }

    private static float[] Floats(in Vec3 p) => [(float)p.X, (float)p.Y, (float)p.Z];

    /// <summary>Poses round a pose: straight-line changes of hub and spindle plus a remainder, as a cell promises.</summary>
    private sealed class RandomCell
    {
        private readonly WheelPose pose;
        private readonly PoseChange[] ways;
        private readonly double hubRest, spindleRest;

        public RandomCell(Random random, in WheelPose pose, double size)
        {
            this.pose = pose;
            ways = [.. Enumerable.Range(0, 3).Select(_ => new PoseChange(
                RandomCorner.Direction(random) * (size * random.NextDouble()),
                RandomCorner.Direction(random) * (3 * size * random.NextDouble())))];
            // Straight on, a unit vector grows: the remainder holds at least that.
            double turn = ways.Sum(w => w.Spindle.Length);
            (hubRest, spindleRest) = (0.1 * size * random.NextDouble(), (0.75 * turn * turn) + turn * turn * turn);
            Coarse = size == 0 ? new(pose) : new(pose, ways[0], ways[1], ways[2], hubRest, spindleRest + Along(turn));
            Still = size == 0;
        }

        public CoarsePose Coarse { get; }

        private bool Still { get; }

        public WheelPose Any(Random random)
        {
            if (Still)
            {
                return pose;
            }

            Vec3 hub = pose.HubFace, spindle = pose.Spindle;
            foreach (PoseChange way in ways)
            {
                double t = random.Next(3) == 0 ? random.Next(2) * 2 - 1 : random.Between(-1, 1);
                hub += way.Hub * t;
                spindle += way.Spindle * t;
            }

            return new(hub + (RandomCorner.Direction(random) * (hubRest * random.NextDouble())), spindle.Unit());
        }

        /// <summary>The random changes do not stand square to the spindle: making it a unit again takes off what runs along it.</summary>
        private static double Along(double turn) => turn;
    }
}
