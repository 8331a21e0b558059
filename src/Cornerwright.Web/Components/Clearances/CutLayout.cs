using System.Text;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Pictures;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>Where everything of a cut lies in its drawing: the spindle lies below, the street to the right; to scale.</summary>
public sealed class CutLayout
{
    public const double Width = 620;
    private const double MostHeight = 470;
    private const double Margin = 14;

    /// <summary>Room kept round the wheel, m.</summary>
    private const double Beside = 0.075;

    /// <summary>More pieces of outline than this are too fine to be seen.</summary>
    private const int MostPieces = 6000;

    private readonly double _axialLow, _radiusHigh, _perMetre;

    public CutLayout(WheelCut cut)
    {
        ArgumentNullException.ThrowIfNull(cut);
        var wheel = cut.Outlines.SelectMany(o => o.Points).Where(p => double.IsFinite(p.Axial + p.Radius)).ToList();
        double least = wheel.Min(p => p.Axial), most = wheel.Max(p => p.Axial), top = wheel.Max(p => p.Radius);
        double bottom = wheel.Min(p => p.Radius) - 0.03;
        _axialLow = Math.Min(least, cut.OnThing.A) - Beside;
        double axialHigh = Math.Max(most, cut.OnThing.A) + Beside;
        _radiusHigh = Math.Max(top, cut.OnThing.R) + Beside;
        double radiusLow = Math.Min(bottom, cut.OnThing.R - 0.03);
        _perMetre = Math.Min((Width - (2 * Margin)) / (axialHigh - _axialLow), MostHeight / (_radiusHigh - radiusLow));
        _axialLow -= 0.5 * (((Width - (2 * Margin)) / _perMetre) - (axialHigh - _axialLow));
        Height = ((_radiusHigh - radiusLow) * _perMetre) + (2 * Margin);
        Outlines = [.. cut.Outlines.Select(o => (o.Kind, PathOf(o.Points)))];
        Things = [.. cut.Things.Select(t =>
            (t.Thing, PathOf(t.Lines), t.Dots.Where(Inside).Take(MostPieces).Select(d => (X(d.A), Y(d.R))).ToList()))];
        (FromX, FromY, ToX, ToY) = (X(cut.OnWheel.A), Y(cut.OnWheel.R), X(cut.OnThing.A), Y(cut.OnThing.R));

        // The number stands beside the gap, on the side that has room.
        double length = Math.Sqrt(((ToX - FromX) * (ToX - FromX)) + ((ToY - FromY) * (ToY - FromY)));
        (double dx, double dy) = length > 1e-6 ? ((ToX - FromX) / length, (ToY - FromY) / length) : (0, -1);
        (double mx, double my) = (0.5 * (FromX + ToX), 0.5 * (FromY + ToY));
        double side = mx > Width / 2 ? -1 : 1;
        (LabelX, LabelY) = Math.Abs(dx) > 0.7
            ? (Math.Clamp(mx, 70, Width - 70), Math.Clamp(my - 34, 22, Height - 12))
            : (Math.Clamp(mx + (side * 62), 70, Width - 70), Math.Clamp(my - (10 * Math.Sign(dy)), 22, Height - 12));
        HubX = X(0);
    }

    public double Height { get; }

    public IReadOnlyList<(string Kind, string Path)> Outlines { get; }

    public IReadOnlyList<(NearThing Thing, string Path, List<(double X, double Y)> Dots)> Things { get; }

    public double FromX { get; }

    public double FromY { get; }

    public double ToX { get; }

    public double ToY { get; }

    public double LabelX { get; }

    public double LabelY { get; }

    /// <summary>Where the hub's face lies.</summary>
    public double HubX { get; }

    private double X(double axial) => Margin + ((axial - _axialLow) * _perMetre);

    private double Y(double radius) => Margin + ((_radiusHigh - radius) * _perMetre);

    private bool Inside(ProfilePoint p) => X(p.A) > -40 && X(p.A) < Width + 40 && Y(p.R) > -40 && Y(p.R) < Height + 40;

    // A long piece may pass through the drawing with both its ends outside.
    private bool Passes(SectionPiece p) =>
        Math.Max(X(p.From.A), X(p.To.A)) > 0 && Math.Min(X(p.From.A), X(p.To.A)) < Width && Math.Max(Y(p.From.R), Y(p.To.R)) > 0
            && Math.Min(Y(p.From.R), Y(p.To.R)) < Height;

    private string PathOf(IReadOnlyList<SectionPoint> points)
    {
        var path = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
        {
            path.Append(i == 0 ? 'M' : 'L').Append(Px.Of(X(points[i].Axial))).Append(' ').Append(Px.Of(Y(points[i].Radius)));
        }

        return path.Append('Z').ToString();
    }

    private string PathOf(IReadOnlyList<SectionPiece> pieces)
    {
        var path = new StringBuilder();
        int count = 0;
        foreach (SectionPiece piece in pieces)
        {
            if (count < MostPieces && Passes(piece))
            {
                path.Append('M').Append(Px.Of(X(piece.From.A))).Append(' ').Append(Px.Of(Y(piece.From.R))).Append('L')
                    .Append(Px.Of(X(piece.To.A))).Append(' ').Append(Px.Of(Y(piece.To.R)));
                count++;
            }
        }

        return path.ToString();
    }
}
