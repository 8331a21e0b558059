using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Geometry;

/// <summary>How points spread about their middle: the axes of the spread and the root mean square along each, falling.</summary>
/// <param name="Middle">Mean of the points, m.</param>
/// <param name="Longest">Unit direction of the widest spread.</param>
/// <param name="Second">Unit, square to it.</param>
/// <param name="Thinnest">Unit, square to both: the normal of the plane nearest to the points.</param>
/// <param name="Along">Root mean square along each, m.</param>
/// <remarks>Source: Pearson, "On lines and planes of closest fit to systems of points in space", Phil. Mag. 2 (1901) 559.</remarks>
public readonly record struct PointSpread(Vec3 Middle, Vec3 Longest, Vec3 Second, Vec3 Thinnest, Vec3 Along)
{
    /// <summary>The spread of points with weights of at least 0, not all 0.</summary>
    /// <param name="points">m.</param>
    /// <param name="weights">One each; empty for all 1.</param>
    /// <remarks>Source: Pearson (1901); eigenvectors of the second moments.</remarks>
    public static PointSpread Of(ReadOnlySpan<Vec3> points, ReadOnlySpan<double> weights = default)
    {
        double total = 0;
        Vec3 middle = default;
        for (int i = 0; i < points.Length; i++)
        {
            double w = weights.IsEmpty ? 1 : weights[i];
            total += w;
            middle += points[i] * w;
        }

        middle /= total;
        Span<double> m = stackalloc double[9], v = stackalloc double[9];
        m.Clear();
        for (int i = 0; i < points.Length; i++)
        {
            double w = (weights.IsEmpty ? 1 : weights[i]) / total;
            Vec3 d = points[i] - middle;
            m[0] += w * d.X * d.X;
            m[1] += w * d.X * d.Y;
            m[2] += w * d.X * d.Z;
            m[4] += w * d.Y * d.Y;
            m[5] += w * d.Y * d.Z;
            m[8] += w * d.Z * d.Z;
        }

        (m[3], m[6], m[7]) = (m[1], m[2], m[5]);
        SymmetricEigen.Decompose(m, v, 3);
        Span<int> order = stackalloc int[3];
        SymmetricEigen.Order(m, 3, order);
        Vec3 longest = Column(v, order[0]), second = Column(v, order[1]);
        return new(middle, longest, second, longest.Cross(second), new(Root(m, order[0]), Root(m, order[1]), Root(m, order[2])));
    }

    private static Vec3 Column(ReadOnlySpan<double> v, int k) => new(v[k], v[3 + k], v[6 + k]);

    private static double Root(ReadOnlySpan<double> m, int k) => Math.Sqrt(Math.Max(0, m[(k * 3) + k]));
}
