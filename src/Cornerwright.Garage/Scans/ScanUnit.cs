using System.Globalization;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Scans;

/// <summary>The unit in which a scan file's numbers stand. Most kinds of file do not say.</summary>
public enum ScanUnit
{
    Millimetre,
    Centimetre,
    Metre,
    Inch,
}

/// <summary>What a file would be in one unit.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Size">Edges of the box round the scan, m.</param>
/// <param name="Likely">The size is that of a wheel arch, a car's side or a whole car.</param>
public readonly record struct UnitCandidate(ScanUnit Unit, Vec3 Size, bool Likely);

/// <summary>Guesses the unit from the size of the thing; the user confirms it, since a guess that is wrong is wrong tenfold.</summary>
public static class ScanUnits
{
    /// <summary>Longest edge of a scan of one corner, m: from a bare wheel's half to a whole car. Common practice, no source.</summary>
    private const double Smallest = 0.35, Largest = 6;

    /// <summary>Longest edge of a usual scan of a wheel arch, m. Common practice, no source.</summary>
    private const double Usual = 1.0;

    public static double Metres(this ScanUnit unit) => unit switch
    {
        ScanUnit.Millimetre => 1e-3,
        ScanUnit.Centimetre => 1e-2,
        ScanUnit.Inch => 0.0254,
        _ => 1,
    };

    public static string Words(this ScanUnit unit) => unit switch
    {
        ScanUnit.Millimetre => "millimetres",
        ScanUnit.Centimetre => "centimetres",
        ScanUnit.Inch => "inches",
        _ => "metres",
    };

    /// <summary>"1.30 × 0.94 × 1.30 m": edges of a box as people say them.</summary>
    public static string SizeWords(Vec3 metres)
    {
        double longest = Math.Max(metres.X, Math.Max(metres.Y, metres.Z));
        var (scale, unit, form) = longest >= 1000 ? (0.001, "km", "0.##") : longest < 0.1 ? (1000.0, "mm", "0.##") : (1.0, "m", "0.00");
        string Number(double v) => (v * scale).ToString(form, CultureInfo.InvariantCulture);
        return $"{Number(metres.X)} × {Number(metres.Y)} × {Number(metres.Z)} {unit}";
    }

    /// <summary>
    /// All four units, the likeliest first: GLB is in metres by its standard;
    /// for others the one whose longest edge is nearest to a wheel arch's.
    /// </summary>
    public static IReadOnlyList<UnitCandidate> Candidates(RawScan scan)
    {
        ArgumentNullException.ThrowIfNull(scan);
        return Candidates(scan.Greatest - scan.Least, scan.Format == ScanFormat.Glb);
    }

    /// <inheritdoc cref="Candidates(RawScan)"/>
    /// <param name="size">Edges of the box round the scan, in the file's unit.</param>
    /// <param name="metresByStandard">The kind of file says metres.</param>
    public static IReadOnlyList<UnitCandidate> Candidates(Vec3 size, bool metresByStandard)
    {
        double longest = Math.Max(size.X, Math.Max(size.Y, size.Z));
        return [.. Enum.GetValues<ScanUnit>()
            .Select(unit => (Unit: unit, Longest: longest * unit.Metres()))
            .OrderBy(c => metresByStandard && c.Unit == ScanUnit.Metre && IsLikely(c.Longest) ? -1 : Math.Abs(Math.Log(c.Longest / Usual)))
            .Select(c => new UnitCandidate(c.Unit, size * c.Unit.Metres(), IsLikely(c.Longest)))];
    }

    private static bool IsLikely(double longest) => longest is >= Smallest and <= Largest;
}
