using System.Globalization;
using Cornerwright.Garage.Designations;

namespace Cornerwright.PublishedChecks;

/// <summary>Tyre sizes, loads and speeds.</summary>
internal static class TyreEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["rim.nominal-diameter"] = (_, x) => RimCodes.NominalDiameter(x["code"]),
        ["rim.width"] = (_, x) => RimCodes.Width(x["code"]),
        ["tyre.section-width"] = (_, x) => Size(x).SectionWidthOn(RimCodes.Width(x["rim"])),
        ["tyre.outer-diameter"] = (_, x) => Size(x).OuterDiameter,
        ["tyre.section-height"] = (_, x) => TyreSize.SectionHeight(x["width"], x["aspect"]),
        ["tyre.section-gain"] = (_, x) => TyreSize.SectionWidthOnOtherRim(0.2, x["rim"], x["other"]) - 0.2,
        ["tyre.greatest-width"] = (_, x) => TyreSize.GreatestOverallWidth(x["S"], x.Choice<TyreConstruction>("construction")),
        ["tyre.least-diameter"] = (_, x) => TyreSize.LeastOuterDiameter(x["d"], x["H"]),
        ["tyre.greatest-diameter"] = (_, x) => TyreSize.GreatestOuterDiameter(x["d"], x["H"], x.Choice<TyreConstruction>("construction")),
        ["tyre.load-index"] = (_, x) => LoadIndex.Kilograms((int)x["index"]),
        ["tyre.speed"] = (_, x) => SpeedSymbol.MetresPerSecond(x.Text("symbol"))!.Value,
        ["tyre.load-share"] = (_, x) => SpeedSymbol.LoadShare(x.Text("symbol"), x["v"])!.Value,
        ["tyre.load-at-pressure"] = (_, x) => TyreLoad.AtPressure(x["Lmax"], x["p"], Reference(x)),
        ["tyre.pressure-for"] = (_, x) => TyreLoad.PressureFor(x["L"], x["Lmax"], Reference(x))!.Value,
        ["tyre.vertical-stiffness"] = (_, x) => TyreSize.VerticalStiffness(x["p"], x["width"], x["aspect"], x["d"]),
        ["tyre.rolling-circumference"] = (_, x) => Size(x).RollingCircumference,
        ["tyre.flotation"] = (_, x) => string.Create(
            CultureInfo.InvariantCulture, $"{Size(x).OuterDiameter * 1000:0.0##} / {Size(x).NominalWidth * 1000:0.0##}"),
        ["tyre.zr"] = (_, x) => OpenEndedSpeed(Size(x), x.Text("symbol")),
    };

    private static TyreDesignation Size(CheckInputs x) => TyreDesignation.Parse(x.Text("size"), "check").Value;

    private static double Reference(CheckInputs x) => TyreLoad.ReferencePressure(x.Choice<TyreLoadClass>("class"));

    // A size marked ZR is read as such, may come without a service description, and means faster than the symbol given.
    private static string OpenEndedSpeed(TyreDesignation tyre, string symbol) =>
        tyre is { Z: true, Service: null }
            ? string.Create(CultureInfo.InvariantCulture, $"above {SpeedSymbol.Kmh(symbol)}")
            : "not read as ZR without a symbol";
}
