using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

public class ScanThinningTests
{
    private const int Seed = 20260924;

    /// <summary>Both ways: samples of the old surface against the new one, and of the new one against the old.</summary>
    [Fact]
    public void Neither_surface_leaves_the_other_by_more_than_the_bound()
    {
        var random = new Random(Seed);
        for (int run = 0; run < 20; run++)
        {
            double cell = 0.012 + (0.05 * random.NextDouble());
            var (xyz, corners) = Sheet(random);
            var thin = ScanThinning.Thin(xyz, corners, cell);
            Assert.InRange(thin.Bound, 0, (cell * Math.Sqrt(3)) + 1e-6);
            Assert.True(thin.Coordinates.Length < xyz.Length);
            AssertNear(random, (xyz, corners), (thin.Coordinates, thin.Corners), thin.Bound, $"seed {Seed}, run {run}, old from new");
            AssertNear(random, (thin.Coordinates, thin.Corners), (xyz, corners), thin.Bound, $"seed {Seed}, run {run}, new from old");
        }
    }

    [Fact]
    public void A_sliver_that_shrinks_to_a_line_or_a_point_does_not_vanish()
    {
        // A needle across four cells, and a speck in one, far apart.
        float[] xyz = [
            0.001f, 0.001f, 0, 0.034f, 0.001f, 0, 0.0341f, 0.0011f, 0, 1.002f, 1.002f, 1.002f, 1.003f, 1.002f, 1.002f, 1.002f, 1.003f,
            1.002f];
        var thin = ScanThinning.Thin(xyz, [0, 1, 2, 3, 4, 5], 0.01);
        Assert.Equal(3, thin.Coordinates.Length / 3);
        Assert.Equal([0, 1, 1, 2, 2, 2], thin.Corners);
    }

    [Fact]
    public void A_cloud_keeps_every_point_near()
    {
        var random = new Random(Seed + 1);
        var (xyz, _) = Sheet(random);
        var thin = ScanThinning.Thin(xyz, [], 0.03);
        for (int i = 0; i < xyz.Length / 3; i++)
        {
            Vec3 p = At(xyz, i);
            double least = Enumerable.Range(0, thin.Coordinates.Length / 3).Min(k => (At(thin.Coordinates, k) - p).Length);
            Assert.InRange(least, 0, thin.Bound + 1e-9);
        }
    }

    [Fact]
    public void Cutting_keeps_what_reaches_across_a_border_or_takes_it_as_told()
    {
        float[] xyz = [0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0, 5, 5, 5];
        int[] corners = [0, 1, 2, 1, 3, 2];
        bool[] gone = [true, false, false, false, false];
        var (wide, both) = ScanCut.Without(xyz, corners, gone, wholly: true);
        Assert.Equal((4, 2), (wide.Length / 3, both.Length / 3));   // the loose fifth point goes
        var (narrow, one) = ScanCut.Without(xyz, corners, gone, wholly: false);
        Assert.Equal([1, 0, 0, 0, 1, 0, 1, 1, 0], narrow);
        Assert.Equal([0, 2, 1], one);
        Assert.Equal(4, ScanCut.Without(xyz, [], gone, wholly: false).Coordinates.Length / 3);
    }

    private static (float[] Xyz, int[] Corners) Sheet(Random random)
    {
        const int N = 14;
        float[] xyz = new float[3 * N * N];
        for (int i = 0; i < N * N; i++)
        {
            xyz[3 * i] = (float)((0.01 * (i % N)) + (0.002 * random.NextDouble()));
            xyz[(3 * i) + 1] = (float)((0.01 * (i / N)) + (0.002 * random.NextDouble()));
            xyz[(3 * i) + 2] = (float)(0.02 * Math.Sin(i % N) * random.NextDouble());
        }

        var corners = new List<int>();
        for (int i = 0; i < N - 1; i++)
        {
            for (int k = 0; k < N - 1; k++)
            {
                int a = (k * N) + i;
                corners.AddRange([a, a + 1, a + N, a + 1, a + N + 1, a + N]);
            }
        }

        return (xyz, [.. corners]);
    }

    private static void AssertNear(
        Random random, (float[] Xyz, int[] Corners) of, (float[] Xyz, int[] Corners) from, double bound, string words)
    {
        for (int k = 0; k < 100; k++)
        {
            int t = 3 * random.Next(of.Corners.Length / 3);
            double u = random.NextDouble(), v = random.NextDouble();
            (u, v) = u + v > 1 ? (1 - u, 1 - v) : (u, v);
            Vec3 a = At(of.Xyz, of.Corners[t]), b = At(of.Xyz, of.Corners[t + 1]), c = At(of.Xyz, of.Corners[t + 2]);
            Vec3 p = a + ((b - a) * u) + ((c - a) * v);
            double least = double.PositiveInfinity;
            for (int i = 0; i < from.Corners.Length; i += 3)
            {
                least = Math.Min(
                    least,
                    Distance(p, At(from.Xyz, from.Corners[i]), At(from.Xyz, from.Corners[i + 1]), At(from.Xyz, from.Corners[i + 2])));
            }

            Assert.True(least <= bound + 1e-7, $"{words}: {least} above {bound}");
        }
    }

    // Inside: the plane's distance; else the nearest of three edges.
    private static double Distance(Vec3 p, Vec3 a, Vec3 b, Vec3 c)
    {
        Vec3 n = (b - a).Cross(c - a);
        double edges = Math.Min(Edge(p, a, b), Math.Min(Edge(p, b, c), Edge(p, c, a)));
        if (!(n.Length > 1e-14))
        {
            return edges;
        }

        n = n.Unit();
        Vec3 q = p - (n * n.Dot(p - a));
        bool inside = (b - a).Cross(q - a).Dot(n) >= 0 && (c - b).Cross(q - b).Dot(n) >= 0 && (a - c).Cross(q - c).Dot(n) >= 0;
        return inside ? Math.Abs(n.Dot(p - a)) : edges;
    }

    private static double Edge(Vec3 p, Vec3 a, Vec3 b)
    {
        Vec3 d = b - a;
        double t = d.LengthSquared > 0 ? Math.Clamp((p - a).Dot(d) / d.LengthSquared, 0, 1) : 0;
        return (p - a - (d * t)).Length;
    }

    private static Vec3 At(float[] xyz, int i) => new(xyz[3 * i], xyz[(3 * i) + 1], xyz[(3 * i) + 2]);
}
