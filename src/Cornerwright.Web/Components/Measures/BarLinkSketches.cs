using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(BarLink))]
internal static class BarLinkSketches
{
    public static Sketch Length { get; } = new("LinkLength", pen => pen
        .Thick("M50 20v72").Circle(50, 18, 8, "solid").Circle(50, 94, 8, "solid").Dashed("M50 18h62M50 94h62").Dim(104, 18, 104, 94));

    public static Sketch Thickness { get; } = new("LinkThickness", pen => pen
        .Solid("M70 4h20v104H70z").Dashed("M70 56H40M90 56h30").Tool("M68 44v24M92 44v24").Dim(70, 100, 90, 100));
}
