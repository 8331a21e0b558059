namespace Cornerwright.Web.Components.Measures;

/// <summary>Draws a sketch into a field of 160 by 112.</summary>
public static class Sketches
{
    /// <param name="sketch">Which.</param>
    /// <param name="clock">Clock position of a gap, hours; other sketches take no notice.</param>
    /// <param name="mirrored">Seen for a wheel on the other side.</param>
    /// <returns>The inside of an svg element.</returns>
    public static string Draw(Sketch sketch, double clock = 12, bool mirrored = false) =>
        mirrored && Turns(sketch) ? $"<g transform='matrix(-1 0 0 1 160 0)'>{Pen(sketch, clock).Svg}</g>" : Pen(sketch, clock).Svg;

    /// <summary>The distances a sketch measures.</summary>
    public static int DimensionsOf(Sketch sketch) => Pen(sketch, 12).Dimensions;

    /// <summary>Views from the front carry no words and can be turned for the other side of the car.</summary>
    private static bool Turns(Sketch sketch) => sketch.Name is nameof(Sketch.Camber) or nameof(Sketch.CamberGain)
        or nameof(Sketch.Sideways) or nameof(Sketch.PointInboard) or nameof(Sketch.PointAbove) or nameof(Sketch.TyreToTube)
        or nameof(Sketch.LowerReference) or nameof(Sketch.StrutLean) or nameof(Sketch.Kingpin) or nameof(Sketch.HubOffset);

    private static Pen Pen(Sketch sketch, double clock)
    {
        var pen = new Pen();
        if (sketch.Drawing is { } own)
        {
            own(pen);
        }
        else if (!CarSketches.Draw(pen, sketch, clock) && !StrutSketches.Draw(pen, sketch))
        {
            PartSketches.Draw(pen, sketch);
        }

        return pen;
    }
}
