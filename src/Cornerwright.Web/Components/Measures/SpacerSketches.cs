using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(Spacer))]
internal static class SpacerSketches
{
    public static Sketch Thickness { get; } = new("SpacerThickness", pen => Face(pen).Solid("M118 14h18v84h-18z").Dim(118, 56, 136, 56));

    public static Sketch Bore { get; } = new("SpacerBore", pen => Face(pen).Dim(40, 56, 68, 56).Tool("M42 44v24M66 44v24"));

    public static Sketch Collar { get; } = new("SpacerCollar", pen => Section(pen).Dashed("M104 38h44M104 74h44").Dim(140, 38, 140, 74));

    public static Sketch BoltCircle { get; } = new("SpacerBoltCircle", pen => Face(pen).Dashed("M54 28h76M54 84h76").Dim(122, 28, 122, 84));

    public static Sketch StudLength { get; } = new("SpacerStud", pen => Section(pen)
        .Solid("M90 18h46v8H90zM90 86h46v8H90z").Dashed("M90 30V4M136 18V4").Dim(90, 8, 136, 8));

    public static Sketch HubEngagement { get; } = new("SpacerEngagement", pen => Section(pen)
        .Thin("M20 10h46v92H20z").Solid("M40 30h44v9H40zM40 73h44v9H40z").Dashed("M40 39v66M66 102v6").Dim(40, 100, 66, 100));

    private static Pen Face(Pen pen) => pen.Circle(54, 56, 42, "thick").Circle(54, 56, 14)
        .Circle(54, 28, 4).Circle(54, 84, 4).Circle(26, 56, 4).Circle(82, 56, 4);

    /// <summary>From the side, the hub at the left, a collar toward the wheel at the right.</summary>
    private static Pen Section(Pen pen) => pen.Solid("M66 10h24v28h14v36H90v28H66z").Dashed("M10 56h140");
}
