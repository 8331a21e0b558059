using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(Hub))]
internal static class HubSketches
{
    public static Sketch SpigotLength { get; } = new("SpigotLength", pen => Flange(pen).Solid("M76 36h26l6 4v32l-6 4H76z")
        .Dashed("M76 90v18M102 72v36").Tool("M112 20v72").Dim(76, 102, 102, 102));

    public static Sketch StudLength { get; } = new("StudLength", pen => Flange(pen).Solid("M76 20h44v9H76zM76 83h44v9H76z")
        .Thin("M90 20l3 9M98 20l3 9M106 20l3 9M114 20l3 9").Dashed("M76 12V2M120 20V2").Dim(76, 7, 120, 7));

    public static Sketch BoltDepth { get; } = new("BoltDepth", pen => Flange(pen).Thin("M16 8v96M10 8v96").Dashed("M56 78h20M56 90h20")
        .Tool("M17 84h106l8-6").Dashed("M16 96v14M76 90v20").Dim(16, 104, 76, 104));

    /// <summary>The hub's flange from the side, its face to the right.</summary>
    private static Pen Flange(Pen pen) => pen.Solid("M56 10h20v92H56z").Solid("M22 40h34v32H22z").Dashed("M4 56h150");
}

[SketchesOf(typeof(Corner))]
internal static class CornerSketches
{
    /// <summary>From the front: the wing at the top, the tyre under it, the street at the right.</summary>
    public static Sketch WingEdge { get; } = new("WingEdge", pen => pen.Thick("M20 14C60 10 110 14 118 22c4 4 4 8 4 14")
        .Solid("M50 44c0-8 6-12 14-12h22c8 0 14 4 14 12v50c0 8-6 12-14 12H64c-8 0-14-4-14-12z").Dashed("M122 36v72M100 60v44")
        .Tool("M122 36v50l-3 8h6z").Dim(100, 98, 122, 98));
}
