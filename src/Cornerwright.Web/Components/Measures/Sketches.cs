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
    private static bool Turns(Sketch sketch) => sketch is Sketch.Camber or Sketch.CamberGain or Sketch.Sideways or Sketch.PointInboard
        or Sketch.PointAbove or Sketch.TyreToTube or Sketch.LowerReference or Sketch.StrutLean or Sketch.Kingpin or Sketch.HubOffset;

    private static Pen Pen(Sketch sketch, double clock)
    {
        var pen = new Pen();
        if (!CarSketches.Draw(pen, sketch, clock) && !StrutSketches.Draw(pen, sketch))
        {
            PartSketches.Draw(pen, sketch);
        }

        return pen;
    }
}
