using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Scanned points without a surface between them (m, in B unless its holder says otherwise).</summary>
/// <remarks>
/// Floats store, doubles compute. The array is the caller's, not copied, and must not be written to afterwards.
/// Source: docs/theory/scan-clearance.md §1.
/// </remarks>
public sealed class PointCloud
{
    private readonly float[] xyz;

    private PointCloud(float[] xyz) => this.xyz = xyz;

    public int PointCount => xyz.Length / 3;

    /// <summary>x, y, z of each point, m.</summary>
    public ReadOnlySpan<float> Coordinates => xyz;

    /// <summary>A point, m. Source: layout of this type.</summary>
    public Vec3 Point(int index) => new(xyz[3 * index], xyz[(3 * index) + 1], xyz[(3 * index) + 2]);

    /// <summary>A cloud, or the first thing that is wrong with the numbers.</summary>
    /// <param name="xyz">x, y, z of each point, m, at least one; kept, not copied.</param>
    /// <param name="cloud">The cloud if the fault's kind is None, else null.</param>
    /// <remarks>Source: docs/theory/scan-clearance.md §1.</remarks>
    public static ScanFault TryFrom(float[] xyz, out PointCloud? cloud)
    {
        ArgumentNullException.ThrowIfNull(xyz);
        ScanFault fault = ScanFault.OfCoordinates(xyz);
        cloud = fault.Kind == ScanFaultKind.None ? new(xyz) : null;
        return fault;
    }

    /// <summary>A cloud from numbers that are sound. Source: <see cref="TryFrom"/>.</summary>
    /// <exception cref="ArgumentException">They are not: a caller's bug.</exception>
    public static PointCloud From(float[] xyz)
    {
        ScanFault fault = TryFrom(xyz, out PointCloud? cloud);
        return cloud ?? throw new ArgumentException($"No cloud: {fault.Kind} at {fault.Index}.", nameof(xyz));
    }
}
