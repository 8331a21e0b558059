using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Builds a <see cref="BoundTree"/>: order, groups of eight, then a disc round each node from the lowest level up.</summary>
/// <remarks>Source: docs/theory/scan-clearance.md §2.</remarks>
internal static class BoundTreeBuild
{
    private const int Lanes = BoundTree.Lanes;

    /// <summary>
    /// A relative and an absolute (m) margin on radius and thickness for rounding in single precision within some metres.
    /// </summary>
    private const float Margin = 4e-6f, MarginMetres = 4e-7f;

    public static BoundTree From(ReadOnlySpan<float> xyz, ReadOnlySpan<int> corners, int vertices, double inflation)
    {
        int count = vertices == 3 ? corners.Length / 3 : xyz.Length / 3;
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, BoundTree.MostPrimitives, nameof(xyz));
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1, nameof(xyz));

        Placed[] places = GC.AllocateUninitializedArray<Placed>(count);
        for (int i = 0; i < count; i++)
        {
            places[i] = vertices == 3
                ? Middle(xyz, corners, i) : new() { X = xyz[3 * i], Y = xyz[(3 * i) + 1], Z = xyz[(3 * i) + 2], Number = i };
        }

        MedianOrder.Arrange(places);
        int groups = (count + Lanes - 1) / Lanes;
        float[] leaves = GC.AllocateUninitializedArray<float>(groups * 3 * vertices * Lanes);
        int[] source = GC.AllocateUninitializedArray<int>(groups * Lanes);
        FillLeaves(xyz, corners, vertices, places, leaves, source);

        // Level by level; moments add up from children to parents.
        List<float[]> levels = [];
        List<int> counts = [];
        PointMoments[] moments = OfGroups(leaves, vertices, groups);
        for (int nodes = groups, span = 1; ; span *= Lanes)
        {
            levels.Add(Level(leaves, vertices, moments, nodes, span, groups));
            counts.Add(nodes);
            if (nodes <= Lanes)
            {
                break;
            }

            var parents = new PointMoments[(nodes + Lanes - 1) / Lanes];
            for (int i = 0; i < nodes; i++)
            {
                parents[i / Lanes].Add(moments[i]);
            }

            (moments, nodes) = (parents, parents.Length);
        }

        return new(count, vertices, leaves, source, [.. levels], [.. counts], inflation);
    }

    private static Placed Middle(ReadOnlySpan<float> xyz, ReadOnlySpan<int> corners, int i)
    {
        int a = 3 * corners[3 * i], b = 3 * corners[(3 * i) + 1], c = 3 * corners[(3 * i) + 2];
        return new()
        {
            X = xyz[a] + xyz[b] + xyz[c],
            Y = xyz[a + 1] + xyz[b + 1] + xyz[c + 1],
            Z = xyz[a + 2] + xyz[b + 2] + xyz[c + 2],
            Number = i,
        };
    }

    private static void FillLeaves(
        ReadOnlySpan<float> xyz, ReadOnlySpan<int> corners, int vertices, ReadOnlySpan<Placed> places, Span<float> leaves, Span<int> source)
    {
        int group = 3 * vertices * Lanes;
        for (int i = 0; i < source.Length; i++)
        {
            // The last group is filled up with its last primitive.
            int number = places[Math.Min(i, places.Length - 1)].Number;
            source[i] = number;
            for (int v = 0; v < vertices; v++)
            {
                int from = 3 * (vertices == 3 ? corners[(3 * number) + v] : number);
                int to = (i / Lanes * group) + (v * 3 * Lanes) + (i % Lanes);
                (leaves[to], leaves[to + Lanes], leaves[to + (2 * Lanes)]) = (xyz[from], xyz[from + 1], xyz[from + 2]);
            }
        }
    }

    private static PointMoments[] OfGroups(ReadOnlySpan<float> leaves, int vertices, int groups)
    {
        var all = new PointMoments[groups];
        int stride = 3 * Lanes, at = 0;
        for (int g = 0; g < groups; g++)
        {
            ref PointMoments sum = ref all[g];
            for (int v = 0; v < vertices; v++, at += stride)
            {
                for (int k = 0; k < Lanes; k++)
                {
                    sum.Add(leaves[at + k], leaves[at + Lanes + k], leaves[at + (2 * Lanes) + k]);
                }
            }
        }

        return all;
    }

    private static float[] Level(float[] leaves, int vertices, PointMoments[] moments, int nodes, int span, int groups)
    {
        float[] blocks = new float[(nodes + Lanes - 1) / Lanes * BoundTree.BlockFloats];
        int group = 3 * vertices * Lanes;
        for (int i = 0; i < nodes; i++)
        {
            int from = i * span, to = Math.Min(groups, from + span);
            var disc = Round(leaves.AsSpan(from * group, (to - from) * group), moments[i].Normal());
            Span<float> into = blocks.AsSpan(i / Lanes * BoundTree.BlockFloats);
            int lane = i % Lanes;
            (into[lane], into[8 + lane], into[16 + lane]) = ((float)disc.Centre.X, (float)disc.Centre.Y, (float)disc.Centre.Z);
            (into[24 + lane], into[32 + lane], into[40 + lane]) = ((float)disc.Normal.X, (float)disc.Normal.Y, (float)disc.Normal.Z);
            (into[48 + lane], into[56 + lane]) = (disc.Radius, disc.HalfThickness);
        }

        return blocks;
    }

    /// <summary>
    /// The disc round all points of some groups with a given normal: middle of the extents, then the furthest point from it.
    /// </summary>
    private static (Vec3 Centre, Vec3 Normal, float Radius, float HalfThickness) Round(ReadOnlySpan<float> points, Vec3 normal)
    {
        Vec3 u = normal.Cross(Math.Abs(normal.X) < 0.7 ? Vec3.UnitX : Vec3.UnitY).Unit(), v = normal.Cross(u);
        ref float start = ref MemoryMarshal.GetReference(points);
        var (x0, y0, z0) = (Vector256.Create(points[0]), Vector256.Create(points[Lanes]), Vector256.Create(points[2 * Lanes]));
        var axes = new Axes(normal, u, v);
        var far = Vector256.Create(float.PositiveInfinity);
        var (lowN, highN, lowU, highU, lowV, highV) = (far, -far, far, -far, far, -far);
        for (int i = 0; i < points.Length; i += 3 * Lanes)
        {
            var (n, p, q) = axes.Of(
                Vector256.LoadUnsafe(ref start, (nuint)i) - x0,
                Vector256.LoadUnsafe(ref start, (nuint)(i + Lanes)) - y0,
                Vector256.LoadUnsafe(ref start, (nuint)(i + (2 * Lanes))) - z0);
            (lowN, highN) = (Vector256.Min(lowN, n), Vector256.Max(highN, n));
            (lowU, highU) = (Vector256.Min(lowU, p), Vector256.Max(highU, p));
            (lowV, highV) = (Vector256.Min(lowV, q), Vector256.Max(highV, q));
        }

        Vec3 middle = new Vec3(points[0], points[Lanes], points[2 * Lanes])
            + (normal * Half(lowN, highN)) + (u * Half(lowU, highU)) + (v * Half(lowV, highV));
        Vec3 centre = new((float)middle.X, (float)middle.Y, (float)middle.Z);
        var (cx, cy, cz) = (Vector256.Create((float)centre.X), Vector256.Create((float)centre.Y), Vector256.Create((float)centre.Z));
        var (radius, thick) = (Vector256<float>.Zero, Vector256<float>.Zero);
        for (int i = 0; i < points.Length; i += 3 * Lanes)
        {
            var (n, p, q) = axes.Of(
                Vector256.LoadUnsafe(ref start, (nuint)i) - cx,
                Vector256.LoadUnsafe(ref start, (nuint)(i + Lanes)) - cy,
                Vector256.LoadUnsafe(ref start, (nuint)(i + (2 * Lanes))) - cz);
            thick = Vector256.Max(thick, Vector256.Abs(n));
            radius = Vector256.Max(radius, (p * p) + (q * q));
        }

        return (centre, normal, (MathF.Sqrt(Most(radius)) * (1 + Margin)) + MarginMetres, (Most(thick) * (1 + Margin)) + MarginMetres);
    }

    private static double Half(Vector256<float> low, Vector256<float> high) => 0.5 * (Most(high) - Most(-low));

    private static float Most(Vector256<float> x)
    {
        float most = x[0];
        for (int k = 1; k < Lanes; k++)
        {
            most = MathF.Max(most, x[k]);
        }

        return most;
    }

    /// <summary>Three unit directions, each number eight times.</summary>
    private readonly struct Axes(Vec3 n, Vec3 u, Vec3 v)
    {
        private readonly Vector256<float> nx = Wide(n.X), ny = Wide(n.Y), nz = Wide(n.Z);
        private readonly Vector256<float> ux = Wide(u.X), uy = Wide(u.Y), uz = Wide(u.Z);
        private readonly Vector256<float> vx = Wide(v.X), vy = Wide(v.Y), vz = Wide(v.Z);

        public (Vector256<float> N, Vector256<float> U, Vector256<float> V) Of(
            Vector256<float> x, Vector256<float> y, Vector256<float> z) =>
            ((x * nx) + (y * ny) + (z * nz), (x * ux) + (y * uy) + (z * uz), (x * vx) + (y * vy) + (z * vz));

        private static Vector256<float> Wide(double value) => Vector256.Create((float)value);
    }
}
