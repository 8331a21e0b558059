namespace Cornerwright.Mechanics.Clearance;

/// <summary>A rim's cross-section, m.</summary>
/// <param name="AxialCentre">a of the centre plane: spacer minus offset.</param>
/// <param name="Width">Width code in m, between the flanges' inner faces.</param>
/// <param name="SeatRadius">Half the specified rim diameter D.</param>
/// <param name="FlangeHeight">From the seat to the top of the lip.</param>
/// <param name="FlangeThickness">Outside of one lip to its inner face; overall width is the code plus two of these.</param>
/// <param name="BarrelDepth">From the seat inward to the inner barrel's surface (what a calliper or a strut sees).</param>
/// <remarks>The default is no rim. Source: docs/theory/clearance.md §2.</remarks>
public readonly record struct RimSection(
    double AxialCentre, double Width, double SeatRadius, double FlangeHeight, double FlangeThickness, double BarrelDepth)
{
    /// <summary>
    /// Height of a J flange, m. From memory of the rim standards (17.3 to 17.5 mm): low confidence; measured values override it.
    /// </summary>
    public const double FlangeHeightEstimate = 0.0175;

    /// <summary>Lip thickness, m: about half an inch a side. Common practice, no source.</summary>
    public const double FlangeThicknessEstimate = 0.0125;

    /// <summary>Seat to inner barrel, m, away from the drop centre. Common practice, no source.</summary>
    public const double BarrelDepthEstimate = 0.010;

    public double LipRadius => SeatRadius + FlangeHeight;
    public double InnerRadius => SeatRadius - BarrelDepth;
    public double OverallWidth => Width + (2 * FlangeThickness);

    /// <summary>A rim with estimated flange and barrel: the caller lists them as assumptions. Source: the three estimates above.</summary>
    public static RimSection WithEstimates(double axialCentre, double width, double seatRadius) =>
        new(axialCentre, width, seatRadius, FlangeHeightEstimate, FlangeThicknessEstimate, BarrelDepthEstimate);

    /// <summary>True when the numbers make a rim. Source: docs/theory/clearance.md §2.</summary>
    public bool IsSound =>
        double.IsFinite(AxialCentre) && Width > 0 && double.IsFinite(Width) && SeatRadius > 0 && double.IsFinite(SeatRadius)
        && FlangeHeight > 0 && FlangeThickness > 0 && BarrelDepth > 0 && BarrelDepth < SeatRadius
        && double.IsFinite(FlangeHeight) && double.IsFinite(FlangeThickness);
}

/// <summary>The rim's cross-section as a polygon: two lips and a straight barrel between them.</summary>
/// <remarks>No drop centre and no spokes: what stands inside the barrel is another matter. Source: docs/theory/clearance.md §2.</remarks>
public static class RimProfile
{
    /// <summary>Corners of the rim polygon.</summary>
    public const int PointCount = 8;

    /// <summary>
    /// Writes the corners counter-clockwise (a to the right, r up) into <paramref name="into"/>. Source: docs/theory/clearance.md §2.
    /// </summary>
    public static int Write(in RimSection rim, Span<ProfilePoint> into)
    {
        double c = rim.AxialCentre, code = rim.Width / 2, lip = rim.OverallWidth / 2;
        into[0] = new(c - lip, rim.InnerRadius);
        into[1] = new(c + lip, rim.InnerRadius);
        into[2] = new(c + lip, rim.LipRadius);
        into[3] = new(c + code, rim.LipRadius);
        into[4] = new(c + code, rim.SeatRadius);
        into[5] = new(c - code, rim.SeatRadius);
        into[6] = new(c - code, rim.LipRadius);
        into[7] = new(c - lip, rim.LipRadius);
        return PointCount;
    }

    /// <summary>Writes one of the three convex pieces the rim is made of (0 outer lip, 1 inner lip, 2 barrel), four corners.</summary>
    /// <remarks>
    /// Each lip reaches down to the inner barrel, and the barrel runs under both, so no inner face is taken for a
    /// surface. Source: docs/theory/clearance.md §2.
    /// </remarks>
    internal static void WritePiece(in RimSection rim, int piece, Span<ProfilePoint> into)
    {
        double c = rim.AxialCentre, code = rim.Width / 2, lip = rim.OverallWidth / 2;
        var (from, to, top) = piece switch
        {
            0 => (c + code, c + lip, rim.LipRadius),
            1 => (c - lip, c - code, rim.LipRadius),
            _ => (c - lip, c + lip, rim.SeatRadius),
        };
        into[0] = new(from, rim.InnerRadius);
        into[1] = new(to, rim.InnerRadius);
        into[2] = new(to, top);
        into[3] = new(from, top);
    }
}
