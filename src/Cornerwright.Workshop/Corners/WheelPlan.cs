using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where the numbers of one wheel with its tyre and spacer stand in the corner's row of inputs.</summary>
internal sealed class WheelPlan
{
    private readonly Handle _offset, _spacer, _flange, _outerDiameter, _sectionWidth, _treadShare, _treadWidth, _shoulderDrop,
        _otherRim, _runoutRadial, _runoutSideways;
    private readonly double _rimWidth, _beadRadius, _seatRadius;

    /// <summary>
    /// Of the share of a change of rim width that a section follows: source of the share itself UN Regulation No. 30, 6.1.1.1;
    /// tyres keep to it within this, from memory.
    /// </summary>
    private const double OtherRimSigma = 0.05;

    /// <summary>
    /// A tyre of which nobody said on what rim it was measured may have been on one an inch wider or narrower, m of section.
    /// </summary>
    private const double UnknownRimSigma = 0.4 * 0.0254 / 2;

    private WheelPlan(InputTable table, string path, CornerParts parts, bool tallest, double? measuredRim,
        string corner, CornerAllowances? allowed)
    {
        var (rim, tyre, size) = (parts.Rim!, parts.Tyre!, parts.TyreSize!);
        string wheelPath = "parts/wheels/" + parts.Wheel!.Id, tyrePath = "parts/tyres/" + tyre.Id;
        string suffix = tallest ? "/greatest" : "";
        _rimWidth = RimCodes.Width(rim.WidthCode);
        _beadRadius = size.RimDiameter / 2;
        _seatRadius = (RimCodes.SpecifiedDiameter(rim.DiameterCode) ?? size.RimDiameter) / 2;
        _offset = table.Define(wheelPath + "/offset", "offset of the wheel", (rim.OffsetMm ?? 0) / 1000.0);
        _spacer = parts.Spacer is null ? table.Define(path + "/spacer", "spacer", 0)
            : table.Add("parts/spacers/" + parts.Spacer.Id + "/thickness", "thickness of the spacer", parts.Spacer.Thickness);
        _flange = parts.Wheel.FlangeThickness is not null
            ? table.Add(wheelPath + "/flangeThickness", "rim flange thickness", parts.Wheel.FlangeThickness)
            : table.Assume(wheelPath + "/flangeThickness", "rim flange thickness", RimSection.FlangeThicknessEstimate, 0.001,
                $"rim flange of {parts.Wheel.Name}: taken as 12.5 mm thick");

        // A measured tyre is what it is. By its size, the wheel to come gets the greatest tyre that the regulation lets carry
        // that size; the wheel on the car now gets the design size with the regulation's spread.
        double design = size.SectionWidthOn(_rimWidth);
        double outer = tallest ? size.GreatestOuterDiameter
            : size.OuterDiameter, width = tallest ? size.GreatestWidthOn(_rimWidth) : design;
        double outerSigma = tallest ? 0 : (size.GreatestOuterDiameter - size.OuterDiameter) / 2,
            widthSigma = tallest ? 0 : (size.GreatestWidthOn(_rimWidth) - design) / 2;
        string how = tallest ? "taken as large as its size may be" : "taken at its design size";
        _outerDiameter = tyre.OuterDiameter is not null
            ? table.Add(tyrePath + "/outerDiameter", $"outer diameter of {tyre.Name}", tyre.OuterDiameter)
            : table.Assume(tyrePath + "/outerDiameter" + suffix, $"outer diameter of {tyre.Name}", outer, outerSigma,
                $"outer diameter of {tyre.Name}: not measured, {how}");
        _sectionWidth = tyre.SectionWidth is not null
            ? table.Add(tyrePath + "/sectionWidth", $"section width of {tyre.Name}", tyre.SectionWidth)
            : table.Assume(tyrePath + "/sectionWidth" + suffix, $"section width of {tyre.Name}", width, widthSigma,
                $"section width of {tyre.Name}: not measured, {how}");
        _otherRim = tyre.SectionWidth is null ? Handle.None : OtherRim(table, tyrePath, tyre, size, measuredRim);
        _treadWidth = table.Add(tyrePath + "/treadWidth", $"tread width of {tyre.Name}", tyre.TreadWidth);
        _treadShare = _treadWidth.IsGiven ? Handle.None
            : table.Assume(tyrePath + "/treadShare", $"tread width of {tyre.Name}", TyreSection.TreadShareEstimate, 0.025,
                $"tread width of {tyre.Name}: not measured, taken as 85 % of the section width");
        _shoulderDrop = tyre.ShoulderDrop is not null
            ? table.Add(tyrePath + "/shoulderDrop", $"shoulder drop of {tyre.Name}", tyre.ShoulderDrop)
            : table.Assume(tyrePath + "/shoulderDrop", $"shoulder drop of {tyre.Name}",
                TyreSection.ShoulderDropShareEstimate * size.SectionHeight, 0.001,
                $"shoulder drop of {tyre.Name}: not measured, taken as 7 % of the section height");
        _runoutRadial = Runout(table, corner, "radius", "Radial", allowed?.RunoutRadial ?? 0);
        _runoutSideways = Runout(table, corner, "sides", "Sideways", allowed?.RunoutSideways ?? 0);
    }

    // A tape reads one place of the tyre; another turns up.
    private static Handle Runout(InputTable table, string corner, string what, string name, double sigma) => !(sigma > 0) ? Handle.None
        : table.Assume($"{corner}/allowances/runout{name}", $"run-out of the tyre's {what}", 0, sigma,
            $"run-out of the tyre's {what}: ± {Say.Mm(2 * sigma)}");

    // How much wider a measured tyre is on this rim than on the one that it was measured on.
    private Handle OtherRim(InputTable table, string path, Tyre tyre, TyreDesignation size, double? measuredRim)
    {
        path += FormattableString.Invariant($"/onRim/{_rimWidth / RimCodes.WidthCodeMetres:0.##}");
        string label = $"section width of {tyre.Name} on another rim";
        if ((tyre.MeasuredOnRim?.Si ?? measuredRim) is { } known)
        {
            double change = TyreSize.SectionWidthOnOtherRim(0, known, _rimWidth);
            return Math.Abs(change) < 1e-9 ? Handle.None : table.Assume(path, label, change, OtherRimSigma * Math.Abs(_rimWidth - known),
                FormattableString.Invariant($"section width of {tyre.Name}: measured on a {known / RimCodes.WidthCodeMetres:0.##} in rim, ")
                + FormattableString.Invariant($"taken as {1000 * change:+0;-0} mm on this one, 0.4 of the change of rim width"));
        }

        double usual = RimCodes.Width(size.MeasuringRimCode);
        return table.Assume(path, label, TyreSize.SectionWidthOnOtherRim(0, usual, _rimWidth), UnknownRimSigma, FormattableString.Invariant(
            $"section width of {tyre.Name}: on which rim it was measured is not said, taken as {size.MeasuringRimCode:0.##} ± 1 in"));
    }

    /// <summary>Between the flanges, m.</summary>
    public double RimWidth => _rimWidth;

    public Handle Spacer => _spacer;

    public Handle Offset => _offset;

    public Handle SectionWidth => _sectionWidth;

    /// <summary>
    /// Null where wheel or tyre is missing or its designation does not say enough, or the spacer's thickness is not known.
    /// </summary>
    /// <param name="table">Takes the numbers.</param>
    /// <param name="path">Of the corner's build, for the spacer that is not there.</param>
    /// <param name="parts">The corner's parts.</param>
    /// <param name="tallest">True for a wheel to come: an unmeasured tyre counts as large as its size may be.</param>
    /// <param name="now">The corner as it was measured: a tyre that was on it was measured on its rim.</param>
    /// <param name="corner">Its path in the document.</param>
    /// <param name="allowed">What the tyre may do beyond what it was measured at; null for a wheel that stands still.</param>
    public static WheelPlan? Compile(InputTable table, string path, CornerParts parts, bool tallest, CornerParts? now,
        string corner = "", CornerAllowances? allowed = null) =>
        parts.Rim is { OffsetMm: not null } && parts.TyreSize is not null && (parts.Spacer is null || parts.Spacer.Thickness is not null)
            ? new WheelPlan(table, path, parts, tallest, now?.Tyre?.Id == parts.Tyre?.Id && now?.Rim is { } rim
                ? RimCodes.Width(rim.WidthCode) : null, corner, allowed)
            : null;

    /// <summary>a of the centre plane, m.</summary>
    public double AxialCentre(Reader x) => WheelPlacement.AxialCentre(x[_offset], x[_spacer]);

    /// <summary>The tyre's section, with the growth and sideways lean that the limits ask for.</summary>
    public TyreSection Tyre(Reader x, double growth, double shift)
    {
        double width = x[_sectionWidth] + x.Or(_otherRim, 0), outer = x[_outerDiameter] + (2 * x.Or(_runoutRadial, 0));
        double tread = Math.Min(_treadWidth.IsGiven ? x[_treadWidth] : x[_treadShare] * width, width);
        double side = shift + x.Or(_runoutSideways, 0);
        return new TyreSection(
            AxialCentre(x), _beadRadius, _rimWidth, outer, width + (2 * side), tread + (2 * side), x[_shoulderDrop])
        {
            Growth = growth,
        };
    }

    /// <summary>a of the outermost place of tyre or rim, m.</summary>
    public double OuterFace(Reader x) => AxialCentre(x) + (Math.Max(x[_sectionWidth], _rimWidth + (2 * x[_flange])) / 2);

    public RimSection Rim(Reader x) =>
        RimSection.WithEstimates(AxialCentre(x), _rimWidth, _seatRadius) with { FlangeThickness = x[_flange] };
}
