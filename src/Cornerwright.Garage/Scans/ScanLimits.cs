namespace Cornerwright.Garage.Scans;

/// <summary>How much a scan file may hold. More than this no machine at home can turn in its hands, and no corner needs.</summary>
public static class ScanLimits
{
    /// <summary>Largest file, bytes: 1 GB. A phone scan of a wheel arch has 5 to 100 MB.</summary>
    public const long MostBytes = 1L << 30;

    /// <summary>Most points: 360 MB once read.</summary>
    public const int MostPoints = 30_000_000;

    /// <summary>Most triangles: 360 MB once read.</summary>
    public const int MostTriangles = 30_000_000;

    /// <summary>Most corners of one face. Scans are made of triangles; drawing programs write polygons of a few dozen.</summary>
    public const int MostFaceCorners = 1000;

    /// <summary>Largest coordinate, in the file's unit: a kilometre in mm. Beyond it the file is in another unit or damaged.</summary>
    public const double MostCoordinate = 1e6;
}
