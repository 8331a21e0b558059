using System.Globalization;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Designations;

/// <summary>A wheel as it is named in the trade: 8.5Jx18 H2 ET35 5x112 CB57.1.</summary>
/// <remarks>Which forms are read: docs/quantities.md, "Rims". Made by <see cref="Parse"/>, so every number is in range.</remarks>
public sealed record RimDesignation
{
    internal RimDesignation(string typed) => Typed = typed;

    /// <summary>Exactly what was typed.</summary>
    public string Typed { get; }

    public double WidthCode { get; internal init; }

    public double DiameterCode { get; internal init; }

    /// <summary>Flange letters (J, JJ, JK, K, B), if given.</summary>
    public string? Flange { get; internal init; }

    /// <summary>Hump letters (H, H2, FH, FH2, CH, EH, EH2, EH2+), if given.</summary>
    public string? Hump { get; internal init; }

    /// <summary>Offset ET, mm, positive with the mounting face toward the street side; null if not given.</summary>
    public double? OffsetMm { get; internal init; }

    public int? BoltCount { get; internal init; }

    public double? BoltCircleMm { get; internal init; }

    public double? CentreBoreMm { get; internal init; }

    /// <summary>Width between the flanges, m.</summary>
    public double Width => RimCodes.Width(WidthCode);

    /// <summary>Nominal diameter, m, for tyre sizes.</summary>
    public double NominalDiameter => RimCodes.NominalDiameter(DiameterCode);

    /// <summary>Offset, m; null if not given.</summary>
    public double? Offset => OffsetMm / 1000;

    /// <summary>Bolt circle diameter, m; null if not given.</summary>
    public double? BoltCircle => BoltCircleMm / 1000;

    /// <summary>Centre bore diameter, m; null if not given.</summary>
    public double? CentreBore => CentreBoreMm / 1000;

    public static Checked<RimDesignation> Parse(string? text, string field) => RimReader.Parse(text, field);

    /// <summary>The usual way to write it: "8.5Jx18 H2 ET35 5x112 CB57.1", what is not known left out.</summary>
    public string Write()
    {
        CultureInfo plain = CultureInfo.InvariantCulture;
        string size = string.Create(plain, $"{WidthCode:0.###}{Flange}x{DiameterCode:0.#}");
        string hump = Hump is null ? "" : " " + Hump;
        string offset = OffsetMm is { } et ? string.Create(plain, $" ET{et:0.###}") : "";
        string bolts = BoltCount is { } count ? string.Create(plain, $" {count}x{BoltCircleMm:0.###}") : "";
        string bore = CentreBoreMm is { } cb ? string.Create(plain, $" CB{cb:0.###}") : "";
        return size + hump + offset + bolts + bore;
    }

    public override string ToString() => Write();
}
