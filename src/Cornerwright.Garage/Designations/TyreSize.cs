namespace Cornerwright.Garage.Designations;

/// <summary>A tyre's dimensions from the numbers of its size. SI in and out; aspect ratio in percent, as written.</summary>
/// <remarks>
/// Source: UN Regulation No. 30 (02 series), paras 6.1.1 to 6.1.5, unless a function names another.
/// Arguments are the code's numbers and so are positive; NaN gives NaN, callers hold parsed designations.
/// </remarks>
public static class TyreSize
{
    /// <summary>Change of section width per change of rim width, K. Source: R30, para 6.1.1.1.</summary>
    public const double SectionPerRimWidth = 0.4;

    /// <summary>Nominal section height H, m, to the whole millimetre, halves up (205/50 is 0.103). Source: R30, para 6.1.2.</summary>
    public static double SectionHeight(double nominalWidth, double aspectPercent) =>
        WholeMillimetres(nominalWidth * aspectPercent / 100);

    /// <summary>Design outer diameter D = d + 2H, m. Source: R30, para 6.1.2.1.</summary>
    public static double OuterDiameter(double nominalWidth, double aspectPercent, double rimCode) =>
        RimCodes.NominalDiameter(rimCode) + (2 * SectionHeight(nominalWidth, aspectPercent));

    /// <summary>Width of the theoretical rim A1, m: the rim on which the section is as wide as its nominal width.</summary>
    /// <remarks>Source: A1 = x·S1, R30 para 6.1.1.1; x = 0.70 from aspect 50 up, 0.85 below, ISO 4000-1 (from memory).</remarks>
    public static double TheoreticalRimWidth(double nominalWidth, double aspectPercent) =>
        nominalWidth * (aspectPercent >= 50 ? 0.70 : 0.85);

    /// <summary>Section width S on a rim, m, not rounded: S1 + 0.4·(A - A1). Source: R30, para 6.1.1.1.</summary>
    /// <param name="nominalWidth">S1, m.</param>
    /// <param name="aspectPercent">Aspect ratio, percent.</param>
    /// <param name="rimWidth">A, m between the flanges.</param>
    public static double SectionWidth(double nominalWidth, double aspectPercent, double rimWidth) =>
        nominalWidth + (SectionPerRimWidth * (rimWidth - TheoreticalRimWidth(nominalWidth, aspectPercent)));

    /// <summary>Section width on the measuring rim, m, to the whole millimetre as the size tables print it.</summary>
    public static double DesignSectionWidth(double nominalWidth, double aspectPercent) =>
        WholeMillimetres(SectionWidth(nominalWidth, aspectPercent, RimCodes.Width(RimFit.MeasuringRimCode(nominalWidth, aspectPercent))));

    /// <summary>The section width of a tyre measured or tabulated on one rim, on another rim, m.</summary>
    public static double SectionWidthOnOtherRim(double sectionWidth, double rimWidth, double otherRimWidth) =>
        sectionWidth + (SectionPerRimWidth * (otherRimWidth - rimWidth));

    /// <summary>Greatest overall width the regulation lets a new tyre have, m.</summary>
    /// <remarks>Source: R30, para 6.1.4.2: +4 % radial, +6 % diagonal and bias-belted; 8 mm more with a rim protector.</remarks>
    public static double GreatestOverallWidth(double sectionWidth, TyreConstruction construction, bool rimProtector = false) =>
        (sectionWidth * (construction == TyreConstruction.Radial ? 1.04 : 1.06)) + (rimProtector ? 0.008 : 0);

    /// <summary>Least outer diameter, m: d + 2H·0.97. Source: R30, para 6.1.5.</summary>
    public static double LeastOuterDiameter(double rimDiameter, double sectionHeight) =>
        rimDiameter + (2 * sectionHeight * 0.97);

    /// <summary>Greatest outer diameter, m: d + 2H·b, b = 1.04 radial, 1.08 otherwise; snow tyres 1 % more.</summary>
    /// <remarks>Source: R30, para 6.1.5.</remarks>
    public static double GreatestOuterDiameter(
        double rimDiameter, double sectionHeight, TyreConstruction construction, bool snow = false) =>
        (rimDiameter + (2 * sectionHeight * (construction == TyreConstruction.Radial ? 1.04 : 1.08))) * (snow ? 1.01 : 1);

    /// <summary>Rolling circumference of a radial car tyre at 60 km/h, m: 3.05·D.</summary>
    /// <remarks>Source: ETRTO Standards Manual, general formulae (factor from memory).</remarks>
    public static double RollingCircumference(double outerDiameter) => 3.05 * outerDiameter;

    /// <summary>Vertical stiffness of a belted radial tyre, N/m: an estimate from its size, within some 10 % (from memory).</summary>
    /// <param name="pressure">Inflation, Pa above the air's own.</param>
    /// <param name="nominalWidth">m.</param>
    /// <param name="aspectPercent">percent.</param>
    /// <param name="rimDiameter">Nominal rim diameter, m.</param>
    /// <remarks>
    /// Source: T. B. Rhyne, Tire Science and Technology 33(3), 2005, 136-155, final simplified formula:
    /// 0.00028·p·sqrt((1.03 - 0.004·AR)·SN·(SN·AR/50 + DR)) + 3.45, in kgf/mm with p in kPa and mm.
    /// </remarks>
    public static double VerticalStiffness(double pressure, double nominalWidth, double aspectPercent, double rimDiameter)
    {
        (double pressureKpa, double widthMm, double rimMm) = (pressure / 1000, nominalWidth * 1000, rimDiameter * 1000);
        double perMillimetre = (0.00028 * pressureKpa
            * Math.Sqrt((1.03 - (0.004 * aspectPercent)) * widthMm * ((widthMm * aspectPercent / 50) + rimMm))) + 3.45;
        return perMillimetre * 9806.65;
    }

    /// <summary>Rounds a length to whole millimetres, halves away from zero, past the noise of binary fractions.</summary>
    internal static double WholeMillimetres(double metres) =>
        Math.Round(Math.Round(metres * 1000, 6), MidpointRounding.AwayFromZero) / 1000;
}
