using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(DropLinkPlace))]
internal static class DropLinkSketches
{
    /// <summary>From the side, the front of the car at the left: the bar's arm from its bushes to the link's end.</summary>
    public static Sketch BushesAhead { get; } = new("BushesAhead", pen => Arm(pen).Dashed("M40 70v36M112 84v22").Dim(40, 100, 112, 100));

    public static Sketch BushesAbove { get; } = new("BushesAbove", pen => Arm(pen).Dashed("M46 62h98M118 78h26").Dim(138, 62, 138, 78));

    private static Pen Arm(Pen pen) => pen.Thick("M40 62 112 78").Circle(40, 62, 7, "solid").Thin("M112 74V14")
        .Circle(112, 78, 5, "solid").Circle(112, 12, 5, "solid");
}

[SketchesOf(typeof(HubPoint))]
internal static class HubPointSketches
{
    /// <summary>From the front: the hub face at the right, the point inboard of it.</summary>
    public static Sketch Inboard { get; } = new("HubInboard", pen => Front(pen).Dashed("M56 36v68M118 92v12").Dim(56, 98, 118, 98));

    /// <summary>From the side, the front of the car at the left.</summary>
    public static Sketch Ahead { get; } = new("HubAhead", pen => pen.Circle(92, 64, 38, "thick").Circle(92, 64, 4, "solid")
        .Circle(48, 40, 4, "solid").Dashed("M48 44v64M92 68v40").Dim(48, 106, 92, 106));

    public static Sketch Above { get; } = new("HubAbove", pen => Front(pen).Dashed("M60 32h86M122 64h24").Dim(138, 32, 138, 64));

    private static Pen Front(Pen pen) => pen.Solid("M118 36h8v56h-8z").Dashed("M96 64h50").Circle(56, 32, 4, "solid").Thin("M56 36v60");
}
