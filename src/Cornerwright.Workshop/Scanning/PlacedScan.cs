using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Clearance.Scans;

namespace Cornerwright.Workshop.Scanning;

/// <summary>A scan where it belongs: aligned, cropped, without the wheel that was on the car, thinned.</summary>
public sealed record PlacedScan
{
    public required Scan Scan { get; init; }

    /// <summary>The corner it stands at: the scan's own, or the one across the axle when it was mirrored.</summary>
    public required CornerPlace Corner { get; init; }

    /// <summary>
    /// m. Of the body: from the corner's hub face at the reference state, on the body's axes (X forward, Y left, Z up). Of the knuckle: in
    /// S (a, 12, 3 o'clock). Null for a cloud.
    /// </summary>
    public TriangleMesh? Mesh { get; init; }

    /// <summary>As <see cref="Mesh"/>; null where there is one.</summary>
    public PointCloud? Cloud { get; init; }

    /// <summary>Standard deviation of a distance to it from alignment, roughness and mirroring together, m.</summary>
    public required double Deviation { get; init; }

    /// <summary>Furthest that thinning moved anything, m: comes off every distance in full.</summary>
    public required double Bound { get; init; }

    /// <summary>What was left out and why, as sentences.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    public bool Mirrored => Corner != Scan.Corner;

    public int PointCount => Mesh?.PointCount ?? Cloud!.PointCount;

    public int TriangleCount => Mesh?.TriangleCount ?? 0;
}
