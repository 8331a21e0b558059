namespace Cornerwright.Garage.Designations;

/// <summary>Rim diameter and width codes and the lengths they stand for.</summary>
public static class RimCodes
{
    /// <summary>Smallest and largest diameter code taken; half codes (16.5) lie between.</summary>
    public const double SmallestDiameterCode = 10;

    public const double LargestDiameterCode = 30;

    /// <summary>Smallest and largest width code taken.</summary>
    public const double SmallestWidthCode = 2.5;

    public const double LargestWidthCode = 14;

    /// <summary>One width code, m. Source: UN Regulation No. 30, para 6.1.1.1, footnote 5: code times 25.4 mm.</summary>
    public const double WidthCodeMetres = 0.0254;

    /// <summary>Whole and half codes from 10 to 30.</summary>
    public static bool IsDiameterCode(double code) =>
        code >= SmallestDiameterCode && code <= LargestDiameterCode && Math.Floor(code * 2) == code * 2;

    /// <summary>The nominal rim diameter d of a code, m, as the regulation's table rounds it (17 is 0.432).</summary>
    /// <remarks>
    /// Source: UN Regulation No. 30, definition of "nominal rim diameter", and No. 54 for half codes; both tables equal
    /// the code times 25.4 mm rounded to the whole millimetre, halves up. Not the bead-seat diameter of the rim:
    /// see <see cref="SpecifiedDiameter"/>.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Not a code (<see cref="IsDiameterCode"/>).</exception>
    public static double NominalDiameter(double code) => IsDiameterCode(code)
        ? TyreSize.WholeMillimetres(code * WidthCodeMetres)
        : throw new ArgumentOutOfRangeException(nameof(code), code, "A diameter code is a whole or half number from 10 to 30.");

    /// <summary>Rim width between the flanges of a width code, m.</summary>
    public static double Width(double code) => code * WidthCodeMetres;

    /// <summary>The specified (bead-seat) diameter of a 5° rim, m.</summary>
    /// <remarks>
    /// Source: ISO 4000-2, Table 4, from memory: code · 25.4 - 0.8 mm up to code 16 (405.6), code · 25.4 + 4.8 mm from
    /// code 17 (436.6). Tolerance of the diameter 0.4 mm. Half codes (15° rims of trucks) are not covered: null.
    /// </remarks>
    public static double? SpecifiedDiameter(double code) =>
        !IsDiameterCode(code) || Math.Floor(code) != code ? null
        : ((code * 25.4) + (code <= 16 ? -0.8 : 4.8)) / 1000;
}
