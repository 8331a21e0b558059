namespace Cornerwright.Garage.Designations;

/// <summary>Which rims go with a tyre size, where the maker's table is not at hand. What the user enters overrides both.</summary>
public static class RimFit
{
    /// <summary>Width code of the measuring rim.</summary>
    /// <param name="nominalWidth">S1, m.</param>
    /// <param name="aspectPercent">Aspect ratio, percent.</param>
    /// <remarks>
    /// K2·S1 to the nearest half code. Source: ISO 4000-1, from memory: K2 = 0.70 for aspect ratios 75 and up, 0.75 for
    /// 60 to 70, 0.80 for 50 and 55, 0.85 for 45, 0.90 for 30 to 40, 0.92 below. Agrees with the size tables for the
    /// sizes in TyreSizeTests.
    /// </remarks>
    public static double MeasuringRimCode(double nominalWidth, double aspectPercent) =>
        NearestHalf(nominalWidth * MeasuringRatio(aspectPercent) / RimCodes.WidthCodeMetres);

    /// <summary>Least and greatest rim width code usually permitted for a size.</summary>
    /// <param name="nominalWidth">S1, m.</param>
    /// <param name="aspectPercent">Aspect ratio, percent.</param>
    /// <remarks>
    /// Common practice, no source: a share of the nominal width by aspect band, to the nearest half code. Recalled
    /// ranges of common sizes (RimFitTests) come out right; a maker's table decides, and may be half a code
    /// narrower, at aspect ratios of 30 and below more.
    /// </remarks>
    public static (double Least, double Greatest) PermittedRimCodes(double nominalWidth, double aspectPercent)
    {
        (double low, double high) = aspectPercent switch
        {
            >= 75 => (0.65, 0.85),
            >= 60 => (0.70, 0.90),
            >= 50 => (0.70, 0.92),
            >= 45 => (0.80, 0.95),
            _ => (0.85, 1.00),
        };
        return (NearestHalf(nominalWidth * low / RimCodes.WidthCodeMetres), NearestHalf(nominalWidth * high / RimCodes.WidthCodeMetres));
    }

    /// <summary>Width code of the measuring rim of a flotation size (31x10.50R15LT): 0.8 of the section width, to half codes.</summary>
    /// <param name="nominalWidth">m.</param>
    /// <remarks>Source: agrees with the rows of UN Regulation No. 54, Annex 5, recalled in TyreSizeTests; from memory.</remarks>
    public static double FlotationMeasuringRimCode(double nominalWidth) =>
        NearestHalf(nominalWidth * 0.80 / RimCodes.WidthCodeMetres);

    /// <summary>Least and greatest rim width code usually permitted for a flotation size.</summary>
    /// <param name="nominalWidth">m.</param>
    /// <remarks>Common practice, no source: 0.68 to 0.87 of the section width, to half codes.</remarks>
    public static (double Least, double Greatest) FlotationPermittedRimCodes(double nominalWidth) =>
        (NearestHalf(nominalWidth * 0.68 / RimCodes.WidthCodeMetres), NearestHalf(nominalWidth * 0.87 / RimCodes.WidthCodeMetres));

    private static double MeasuringRatio(double aspectPercent) => aspectPercent switch
    {
        >= 75 => 0.70,
        >= 60 => 0.75,
        >= 50 => 0.80,
        >= 45 => 0.85,
        >= 30 => 0.90,
        _ => 0.92,
    };

    private static double NearestHalf(double code) => Math.Round(code * 2, MidpointRounding.AwayFromZero) / 2;
}
