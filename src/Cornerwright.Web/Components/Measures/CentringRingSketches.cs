using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(CentringRing))]
internal static class CentringRingSketches
{
    public static Sketch OuterDiameter { get; } = new("RingOuter", pen => Ring(pen).Dim(38, 56, 122, 56).Tool("M36 42v28M124 42v28"));

    public static Sketch InnerDiameter { get; } = new("RingInner", pen => Ring(pen).Dim(48, 56, 112, 56).Tool("M50 46v20M110 46v20"));

    private static Pen Ring(Pen pen) => pen.Circle(80, 56, 42, "thick").Circle(80, 56, 32, "thick");
}
