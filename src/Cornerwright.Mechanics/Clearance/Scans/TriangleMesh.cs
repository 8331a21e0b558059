using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>
/// Triangles of a scanned surface: points (m, in B unless its holder says otherwise) and three corner indices a triangle.
/// </summary>
/// <remarks>
/// Floats store, doubles compute. A soup: neither closed nor oriented nor free of holes need it be, and the order of corners means
/// nothing. Triangles without area are kept and counted: they are lines or points, and clear as such. The arrays are the caller's, not
/// copied, and must not be written to afterwards. Source: docs/theory/scan-clearance.md §1.
/// </remarks>
public sealed class TriangleMesh
{
    private readonly float[] xyz;
    private readonly int[] corners;

    private TriangleMesh(float[] xyz, int[] corners, int degenerate) =>
        (this.xyz, this.corners, DegenerateCount) = (xyz, corners, degenerate);

    public int PointCount => xyz.Length / 3;
    public int TriangleCount => corners.Length / 3;

    /// <summary>Triangles with two like corners or no area (a height below 1e-9 m).</summary>
    public int DegenerateCount { get; }

    /// <summary>x, y, z of each point, m.</summary>
    public ReadOnlySpan<float> Coordinates => xyz;

    /// <summary>Three point numbers a triangle, each from 0.</summary>
    public ReadOnlySpan<int> Corners => corners;

    /// <summary>A point, m. Source: layout of this type.</summary>
    public Vec3 Point(int index) => new(xyz[3 * index], xyz[(3 * index) + 1], xyz[(3 * index) + 2]);

    /// <summary>The corners of a triangle, m. Source: layout of this type.</summary>
    public (Vec3 A, Vec3 B, Vec3 C) Triangle(int index) =>
        (Point(corners[3 * index]), Point(corners[(3 * index) + 1]), Point(corners[(3 * index) + 2]));

    /// <summary>A mesh, or the first thing that is wrong with the numbers.</summary>
    /// <param name="xyz">x, y, z of each point, m, at least one; kept, not copied.</param>
    /// <param name="corners">Three point numbers a triangle, at least one triangle with an area; kept, not copied.</param>
    /// <param name="mesh">The mesh if the fault's kind is None, else null.</param>
    /// <remarks>Source: docs/theory/scan-clearance.md §1.</remarks>
    public static ScanFault TryFrom(float[] xyz, int[] corners, out TriangleMesh? mesh)
    {
        ArgumentNullException.ThrowIfNull(xyz);
        ArgumentNullException.ThrowIfNull(corners);
        mesh = null;
        ScanFault fault = ScanFault.OfCoordinates(xyz);
        if (fault.Kind != ScanFaultKind.None)
        {
            return fault;
        }

        if (corners.Length == 0)
        {
            return new(ScanFaultKind.Empty, 0);
        }

        if (corners.Length % 3 != 0)
        {
            return new(ScanFaultKind.NotThrees, corners.Length);
        }

        int points = xyz.Length / 3;
        for (int i = 0; i < corners.Length; i++)
        {
            if ((uint)corners[i] >= (uint)points)
            {
                return new(ScanFaultKind.NoSuchPoint, i);
            }
        }

        var made = new TriangleMesh(xyz, corners, 0);
        int degenerate = 0;
        for (int t = 0; t < made.TriangleCount; t++)
        {
            degenerate += made.IsDegenerate(t) ? 1 : 0;
        }

        if (degenerate == made.TriangleCount)
        {
            return new(ScanFaultKind.OnlyDegenerate, degenerate);
        }

        mesh = new(xyz, corners, degenerate);
        return default;
    }

    /// <summary>A mesh from numbers that are sound. Source: <see cref="TryFrom"/>.</summary>
    /// <exception cref="ArgumentException">They are not: a caller's bug.</exception>
    public static TriangleMesh From(float[] xyz, int[] corners)
    {
        ScanFault fault = TryFrom(xyz, corners, out TriangleMesh? mesh);
        return mesh ?? throw new ArgumentException($"No mesh: {fault.Kind} at {fault.Index}.", nameof(xyz));
    }

    private bool IsDegenerate(int t)
    {
        var (a, b, c) = Triangle(t);
        Vec3 ab = b - a, ac = c - a, bc = c - b;
        double longest = Math.Max(ab.LengthSquared, Math.Max(ac.LengthSquared, bc.LengthSquared));
        return !(ab.Cross(ac).LengthSquared > 1e-18 * longest);
    }
}
