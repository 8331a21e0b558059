using Cornerwright.Garage.Designations;
using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Workshop.Clearances;

/// <summary>A tyre size on a rim width, and the offsets with which it clears everything by the wanted gaps.</summary>
/// <param name="Size">"205/50 R16".</param>
/// <param name="WidthMm">Of the size.</param>
/// <param name="AspectPercent">Of the size.</param>
/// <param name="RimCode">Diameter code.</param>
/// <param name="RimWidthCode">Width code of the measuring rim, or the nearest permitted.</param>
/// <param name="LeastOffsetMm">With the build's spacer; whole millimetres, inside the window.</param>
/// <param name="MostOffsetMm">Likewise.</param>
/// <param name="OuterDiameter">Design value, m.</param>
/// <param name="Rolls">Of the present rolling circumference, less 1.</param>
public sealed record SizeWindow(
    string Size, int WidthMm, int AspectPercent, double RimCode, double RimWidthCode, int LeastOffsetMm, int MostOffsetMm,
    double OuterDiameter, double Rolls)
{
    /// <summary>The greatest tyre that the regulation lets carry the size, on its rim, centred at a (m).</summary>
    internal static (TyreSection Tyre, RimSection Rim) Sections(int widthMm, int aspect, double rimCode, double rimWidthCode,
        double axialCentre)
    {
        double width = widthMm / 1000.0, rim = RimCodes.Width(rimWidthCode), bead = RimCodes.NominalDiameter(rimCode) / 2;
        double outer = TyreSize.GreatestOuterDiameter(2 * bead, TyreSize.SectionHeight(width, aspect), TyreConstruction.Radial);
        double section = TyreSize.GreatestOverallWidth(TyreSize.SectionWidth(width, aspect, rim), TyreConstruction.Radial);
        double seat = (RimCodes.SpecifiedDiameter(rimCode) ?? (2 * bead)) / 2;
        return (TyreSection.WithEstimates(axialCentre, bead, rim, outer, section), RimSection.WithEstimates(axialCentre, rim, seat));
    }
}
