using System.Globalization;
using System.Text;

namespace Cornerwright.Web.Components.Measures;

/// <summary>Draws the sketches: thin ink for the car, thick ink for what matters, the accent for what is measured.</summary>
internal sealed class Pen
{
    private readonly StringBuilder _svg = new();

    /// <summary>How many dimensions were drawn: every sketch has at least one.</summary>
    public int Dimensions { get; private set; }

    public string Svg => _svg.ToString();

    /// <summary>A path in thin ink.</summary>
    public Pen Thin(string path) => Path("thin", path);

    /// <summary>A path in thick ink.</summary>
    public Pen Thick(string path) => Path("thick", path);

    /// <summary>A filled piece with its outline.</summary>
    public Pen Solid(string path) => Path("solid", path);

    /// <summary>A centre line or an extension line.</summary>
    public Pen Dashed(string path) => Path("dashed", path);

    /// <summary>The tool: straight edge, calliper, gauge.</summary>
    public Pen Tool(string path) => Path("tool", path);

    public Pen Circle(double x, double y, double r, string kind = "thin")
    {
        _svg.Append(CultureInfo.InvariantCulture, $"<circle class='{kind}' cx='{x:0.##}' cy='{y:0.##}' r='{r:0.##}'/>");
        return this;
    }

    public Pen Text(double x, double y, string words, string kind = "words")
    {
        _svg.Append(CultureInfo.InvariantCulture, $"<text class='{kind}' x='{x:0.##}' y='{y:0.##}'>{words}</text>");
        return this;
    }

    /// <summary>The measured distance, with an arrow at each end; arrows stand outside when there is no room between.</summary>
    public Pen Dim(double x1, double y1, double x2, double y2)
    {
        Dimensions++;
        double length = Math.Sqrt(((x2 - x1) * (x2 - x1)) + ((y2 - y1) * (y2 - y1)));
        double ux = (x2 - x1) / length, uy = (y2 - y1) / length;
        bool outside = length < 18;
        double reach = outside ? 11 : 0;
        _svg.Append(CultureInfo.InvariantCulture, $"<path class='dim' d='M{x1 - (ux * reach):0.##} "
            + $"{y1 - (uy * reach):0.##}L{x2 + (ux * reach):0.##} {y2 + (uy * reach):0.##}'/>");
        Arrow(x1, y1, outside ? ux : -ux, outside ? uy : -uy);
        Arrow(x2, y2, outside ? -ux : ux, outside ? -uy : uy);
        return this;
    }

    /// <summary>A measured angle: an arc from one direction to another, degrees clockwise from the right.</summary>
    public Pen Arc(double x, double y, double r, double fromDeg, double toDeg)
    {
        Dimensions++;
        var (ax, ay) = At(x, y, r, fromDeg);
        var (bx, by) = At(x, y, r, toDeg);
        int sweep = toDeg > fromDeg ? 1 : 0;
        _svg.Append(CultureInfo.InvariantCulture, $"<path class='dim' d='M{ax:0.##} {ay:0.##}A{r} {r} 0 0 {sweep} {bx:0.##} {by:0.##}'/>");
        double turn = sweep == 1 ? 1 : -1, rad = Math.PI / 180;
        Arrow(bx, by, -Math.Sin(toDeg * rad) * turn, Math.Cos(toDeg * rad) * turn);
        return this;
    }

    /// <summary>A coil spring from y1 down to y2 about an axis at x.</summary>
    public Pen Coils(double x, double y1, double y2, double half, int turns, string kind = "thick")
    {
        var path = new StringBuilder();
        double pitch = (y2 - y1) / turns;
        for (int i = 0; i <= turns; i++)
        {
            double y = y1 + (i * pitch);
            path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "M" : "L")}{x - half:0.##} {Math.Min(y + (pitch * 0.1), y2):0.##}");
            if (i < turns)
            {
                path.Append(CultureInfo.InvariantCulture, $"L{x + half:0.##} {y + (pitch / 2):0.##}");
            }
        }

        return Path(kind, path.ToString());
    }

    private static (double X, double Y) At(double x, double y, double r, double deg) =>
        (x + (r * Math.Cos(deg * Math.PI / 180)), y + (r * Math.Sin(deg * Math.PI / 180)));

    /// <summary>An arrowhead whose tip lies at (x, y) and points along (ux, uy).</summary>
    private void Arrow(double x, double y, double ux, double uy)
    {
        const double Length = 7.5, Half = 2.7;
        double bx = x - (ux * Length), by = y - (uy * Length);
        _svg.Append(CultureInfo.InvariantCulture, $"<path class='head' d='M{x:0.##} {y:0.##}L{bx - (uy * Half):0.##} "
            + $"{by + (ux * Half):0.##}L{bx + (uy * Half):0.##} {by - (ux * Half):0.##}Z'/>");
    }

    private Pen Path(string kind, string path)
    {
        _svg.Append("<path class='").Append(kind).Append("' d='").Append(path).Append("'/>");
        return this;
    }
}
