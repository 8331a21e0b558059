using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Fitted;

namespace Cornerwright.Workshop.Relations;

/// <summary>The wheel that was on when the gaps were read, as far as relations need it; m.</summary>
/// <param name="Radius">Of the tyre.</param>
/// <param name="RimRadius">Of the bead seat.</param>
/// <param name="Section">Section width.</param>
/// <param name="Tread">Tread width; NaN where it is not known.</param>
/// <param name="Drop">Of the shoulder.</param>
/// <param name="Offset">Offset less spacer; NaN where it is not known.</param>
/// <param name="Ties">The numbers it stands on.</param>
internal readonly record struct WheelNow(
    double Radius, double RimRadius, double Section, double Tread, double Drop, double Offset, Num[] Ties)
{
    /// <summary>Drop of a shoulder that nobody measured, m. Common practice, no source.</summary>
    private const double UsualDrop = 0.008;

    public static WheelNow? Of(CornerParts? parts)
    {
        if (parts is not { Tyre: { } tyre, TyreSize: { } size })
        {
            return null;
        }

        var outer = Num.Of($"parts/tyres/{tyre.Id}/outerDiameter", "outer diameter of the present tyre", tyre.OuterDiameter);
        var marked = new Num($"parts/tyres/{tyre.Id}/designation", "size of the present tyre", tyre.Designation, 0);
        return new WheelNow(
            (outer.Given ? outer.Si : size.OuterDiameter) / 2, size.RimDiameter / 2, tyre.SectionWidth?.Si ?? size.NominalWidth,
            tyre.TreadWidth?.Si ?? double.NaN, tyre.ShoulderDrop?.Si ?? UsualDrop,
            parts.Rim?.Offset is { } offset ? offset - WheelRelations.Thick(parts) : double.NaN, [outer.Given ? outer : marked]);
    }

    /// <summary>How far from the axle a gap that was read from there begins; null where it tells nothing.</summary>
    public double? RadiusAt(GapFrom from) => from switch
    {
        GapFrom.Crown => Radius,
        GapFrom.OuterShoulder or GapFrom.InnerShoulder => Radius - Drop,
        GapFrom.OuterSidewall or GapFrom.InnerSidewall => (Radius + RimRadius) / 2,
        GapFrom.RimOuterLip or GapFrom.RimInnerLip => RimRadius + Garage.Designations.RimGeometry.JFlangeHeight,
        _ => null,
    };
}
