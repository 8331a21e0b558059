using System.Globalization;
using System.Text;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Designations;

/// <summary>A tyre size as marked on the sidewall, metric (205/55R16 91V) or flotation (31x10.50R15LT 109Q).</summary>
/// <remarks>Which forms are read: docs/quantities.md, "Tyres". Made by <see cref="Parse"/>, so every number is in range.</remarks>
public sealed record TyreDesignation
{
    internal TyreDesignation(string typed) => Typed = typed;

    /// <summary>Exactly what was typed.</summary>
    public string Typed { get; }

    public TyrePrefix Prefix { get; internal init; }

    /// <summary>Nominal section width, mm, of a metric size; 0 for flotation.</summary>
    public int WidthMm { get; internal init; }

    /// <summary>Aspect ratio, percent, of a metric size; 0 for flotation.</summary>
    public int AspectPercent { get; internal init; }

    /// <summary>Nominal outer diameter, inches, of a flotation size; 0 for metric.</summary>
    public double FlotationDiameterIn { get; internal init; }

    /// <summary>Nominal section width, inches, of a flotation size; 0 for metric.</summary>
    public double FlotationWidthIn { get; internal init; }

    public TyreConstruction Construction { get; internal init; }

    /// <summary>ZR in the size: for more than 240 km/h.</summary>
    public bool Z { get; internal init; }

    /// <summary>RF in the size: runs without pressure.</summary>
    public bool RunFlat { get; internal init; }

    public double RimCode { get; internal init; }

    /// <summary>LT behind a flotation size.</summary>
    public bool LightTruckSuffix { get; internal init; }

    /// <summary>C behind the size: commercial.</summary>
    public bool Commercial { get; internal init; }

    /// <summary>B to N, if marked.</summary>
    public char? LoadRange { get; internal init; }

    public ServiceDescription? Service { get; internal init; }

    /// <summary>Extra load if marked XL, EXTRA LOAD, REINFORCED or REINF; the prefix HL is <see cref="TyreLoadClass.HighLoad"/>.</summary>
    public TyreLoadClass LoadClass { get; internal init; }

    /// <summary>M+S.</summary>
    public bool MudAndSnow { get; internal init; }

    public bool IsFlotation => FlotationDiameterIn > 0;

    /// <summary>Nominal section width S1, m.</summary>
    public double NominalWidth => IsFlotation ? FlotationWidthIn * 0.0254 : WidthMm / 1000.0;

    /// <summary>Nominal rim diameter d, m.</summary>
    public double RimDiameter => RimCodes.NominalDiameter(RimCode);

    /// <summary>Design outer diameter D, m; of a flotation size the nominal one of its code.</summary>
    /// <remarks>Tables of flotation sizes may print up to some 15 mm less than the code says.</remarks>
    public double OuterDiameter => IsFlotation ? FlotationDiameterIn * 0.0254 : RimDiameter + (2 * SectionHeight);

    /// <summary>Section height H, m.</summary>
    public double SectionHeight => IsFlotation
        ? (OuterDiameter - RimDiameter) / 2
        : TyreSize.SectionHeight(NominalWidth, AspectPercent);

    /// <summary>Aspect ratio, percent: as marked, or of a flotation size worked out from its height and width.</summary>
    public double EffectiveAspectPercent => IsFlotation ? 100 * SectionHeight / NominalWidth : AspectPercent;

    /// <summary>Width code of the measuring rim by rule (<see cref="RimFit.MeasuringRimCode"/>).</summary>
    public double MeasuringRimCode => IsFlotation
        ? RimFit.FlotationMeasuringRimCode(NominalWidth)
        : RimFit.MeasuringRimCode(NominalWidth, AspectPercent);

    /// <summary>Section width on a rim, m.</summary>
    /// <param name="rimWidth">m between the flanges.</param>
    /// <remarks>A flotation size is as wide as its code on the measuring rim, and 0.4 of any difference of rim width more.</remarks>
    public double SectionWidthOn(double rimWidth) => IsFlotation
        ? TyreSize.SectionWidthOnOtherRim(NominalWidth, RimCodes.Width(MeasuringRimCode), rimWidth)
        : TyreSize.SectionWidth(NominalWidth, AspectPercent, rimWidth);

    /// <summary>Greatest section width on a rim, m, that the regulation lets a tyre of this size have.</summary>
    /// <param name="rimWidth">m between the flanges.</param>
    public double GreatestWidthOn(double rimWidth) => TyreSize.GreatestOverallWidth(SectionWidthOn(rimWidth), Construction);

    public double LeastOuterDiameter => TyreSize.LeastOuterDiameter(RimDiameter, SectionHeight);

    public double GreatestOuterDiameter => TyreSize.GreatestOuterDiameter(RimDiameter, SectionHeight, Construction, MudAndSnow);

    public double RollingCircumference => TyreSize.RollingCircumference(OuterDiameter);

    /// <summary>Least and greatest rim width code usually permitted (<see cref="RimFit.PermittedRimCodes"/>).</summary>
    public (double Least, double Greatest) PermittedRimCodes => IsFlotation
        ? RimFit.FlotationPermittedRimCodes(NominalWidth)
        : RimFit.PermittedRimCodes(NominalWidth, AspectPercent);

    /// <summary>Estimated vertical stiffness, N/m, at a pressure in Pa (<see cref="TyreSize.VerticalStiffness"/>).</summary>
    public double VerticalStiffness(double pressure) =>
        TyreSize.VerticalStiffness(pressure, NominalWidth, EffectiveAspectPercent, RimDiameter);

    /// <summary>Load of the load index, N; null if none is marked.</summary>
    public double? GreatestLoad => Service is null ? null : Designations.LoadIndex.Newtons(Service.LoadIndex);

    /// <summary>At which pressure it carries the load index's load, and how the load falls below that.</summary>
    public TyreInflation Inflation => TyreLoad.Inflation(this);

    public static Checked<TyreDesignation> Parse(string? text, string field) => TyreReader.Parse(text, field);

    /// <summary>The usual way to write it: "205/55R16 91V", "225/45ZR17 (94Y) XL", "31x10.50R15LT 109Q".</summary>
    public string Write()
    {
        var text = new StringBuilder(32);
        CultureInfo plain = CultureInfo.InvariantCulture;
        string structure = (Z ? "Z" : "") + Construction switch
        {
            TyreConstruction.Radial => "R",
            TyreConstruction.Diagonal => "D",
            _ => "B",
        } + (RunFlat ? "F" : "");
        if (IsFlotation)
        {
            text.Append(plain, $"{FlotationDiameterIn:0.##}x{FlotationWidthIn:0.00}{structure}{RimCode:0.#}");
        }
        else
        {
            text.Append(plain, $"{(Prefix == TyrePrefix.None ? "" : Prefix.ToString())}{WidthMm}/{AspectPercent}{structure}{RimCode:0.#}");
        }

        text.Append(LightTruckSuffix ? "LT" : "").Append(Commercial ? "C" : "");
        if (LoadRange is { } range)
        {
            text.Append('/').Append(range);
        }

        if (Service is { } service)
        {
            string pair = service.DualLoadIndex is { } dual ? string.Create(plain, $"/{dual}") : "";
            string inner = string.Create(plain, $"{service.LoadIndex}{pair}{service.SpeedSymbol}");
            text.Append(service.Bracketed ? $" ({inner})" : $" {inner}");
        }

        text.Append(LoadClass == TyreLoadClass.ExtraLoad ? " XL" : "").Append(MudAndSnow ? " M+S" : "");
        return text.ToString();
    }

    public override string ToString() => Write();
}
