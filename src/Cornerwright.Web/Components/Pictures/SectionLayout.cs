using System.Text;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>An outline as a path of the drawing.</summary>
public sealed record PlacedOutline(string Kind, string Name, string Path);

/// <summary>A gap in the drawing: both of its ends, and its label in the left or right margin.</summary>
public sealed record PlacedGap(char Letter, SectionGap Gap, double X1, double Y1, double X2, double Y2, double LabelX, double LabelY,
    bool AtLeft);

/// <summary>The section through wheel and arch in drawing units: the street to the right, the spindle below.</summary>
public sealed class SectionLayout
{
    public const double Width = 390;
    private const double LabelColumn = 62;
    private const double MostHeight = 400;
    private const double LabelHeight = 19;

    /// <summary>Room round what matters, m.</summary>
    private const double Round = 0.018;

    /// <summary>Things farther off than this do not stretch the drawing, m.</summary>
    private const double Near = 0.12;

    /// <summary>Gaps wider than this stand only in the table, unless they are among the least three, m.</summary>
    private const double Telling = 0.060;

    private double _axialLow;
    private double _radiusHigh;

    private SectionLayout()
    {
    }

    public double PerMetre { get; private set; }
    public double Height { get; private set; } = 120;
    public IReadOnlyList<PlacedOutline> Outlines { get; private set; } = [];
    public IReadOnlyList<PlacedGap> Gaps { get; private set; } = [];

    /// <summary>Where the hub face stands, in the drawing.</summary>
    public double HubFace => X(0);

    /// <param name="section">Of one wheel.</param>
    /// <param name="state">A state's name, or null for the worst of every obstacle.</param>
    public static SectionLayout Of(WheelSection section, string? state)
    {
        ArgumentNullException.ThrowIfNull(section);
        var layout = new SectionLayout();
        var outlines = section.Outlines.Where(o =>
            o.Points.Count > 1 && o.Points.All(p => double.IsFinite(p.Axial) && double.IsFinite(p.Radius))).ToArray();
        var wheel = outlines.Where(o => OfWheel(o.Kind)).SelectMany(o => o.Points).ToArray();
        if (wheel.Length == 0)
        {
            return layout;
        }

        layout.Fit(wheel, outlines, section.Gaps);
        layout.Outlines = [.. outlines.Select(o => new PlacedOutline(o.Kind, o.Name, layout.PathOf(o.Points)))];
        layout.Gaps = layout.Label(Shown(section.Gaps, state), wheel.Average(p => p.Axial));
        return layout;
    }

    /// <summary>One gap an obstacle: the least of the state, or the least of all.</summary>
    public static IReadOnlyList<SectionGap> Shown(IEnumerable<SectionGap> gaps, string? state) =>
        [.. gaps.Where(g => double.IsFinite(g.Gap) && (state is null || (!g.Worst && g.State == state)))
            .GroupBy(g => g.Obstacle)
            .Select(g => g.MinBy(x => x.Gap)!)
            .OrderBy(g => g.Gap)];

    /// <summary>The mark of the i-th gap, least first.</summary>
    public static char Letter(int i) => (char)('A' + Math.Min(i, 25));

    public double X(double axial) => LabelColumn + ((axial - _axialLow) * PerMetre);

    public double Y(double radius) => (_radiusHigh - radius) * PerMetre;

    private static bool OfWheel(string kind) => kind is "tyre" or "tyre now" or "rim" or "rim now";

    private void Fit(SectionPoint[] wheel, SectionOutline[] outlines, IReadOnlyList<SectionGap> gaps)
    {
        var near = gaps.Where(g => Math.Abs(g.Gap) < Near).Select(g => g.OnObstacle)
            .Where(p => double.IsFinite(p.Axial) && double.IsFinite(p.Radius)).ToArray();
        double wheelTop = wheel.Max(p => p.Radius);
        _radiusHigh = Math.Min(wheelTop + Near, near.Select(p => p.Radius).Append(wheelTop).Max() + Round);

        // The middle of the wheel is air and spokes: the drawing ends below the rim's well.
        double rim = outlines.Where(o => o.Kind is "rim" or "rim now").SelectMany(o => o.Points).Select(p => p.Radius)
            .DefaultIfEmpty(wheel.Min(p => p.Radius)).Min();
        double radiusLow = Math.Max(rim - Round, wheelTop * 0.35);

        var beside = outlines.Where(o => !OfWheel(o.Kind)).SelectMany(o => o.Points)
            .Where(p => p.Radius > radiusLow && p.Radius < _radiusHigh);
        double[] axial = [.. wheel.Concat(near).Concat(beside).Select(p => p.Axial)];
        double wheelLow = wheel.Min(p => p.Axial), wheelHigh = wheel.Max(p => p.Axial);
        _axialLow = Math.Max(axial.Min(), wheelLow - Near) - Round;
        double axialHigh = Math.Min(axial.Max(), wheelHigh + Near) + Round;
        PerMetre = Math.Min((Width - (2 * LabelColumn)) / (axialHigh - _axialLow), MostHeight / (_radiusHigh - radiusLow));

        // Whatever width is left over goes to both sides.
        _axialLow -= (((Width - (2 * LabelColumn)) / PerMetre) - (axialHigh - _axialLow)) / 2;
        Height = (_radiusHigh - radiusLow) * PerMetre;
    }

    private string PathOf(IReadOnlyList<SectionPoint> points)
    {
        var path = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
        {
            path.Append(i == 0 ? 'M' : 'L').Append(Px.Of(X(points[i].Axial))).Append(' ').Append(Px.Of(Y(points[i].Radius)));
        }

        return path.Append('Z').ToString();
    }

    private List<PlacedGap> Label(IReadOnlyList<SectionGap> gaps, double middle)
    {
        var placed = new List<PlacedGap>();
        foreach (bool left in (bool[])[true, false])
        {
            var side = gaps.Select((g, i) => (Gap: g, Letter: Letter(i)))
                .Where((g, i) => (i < 3 || g.Gap.Gap < Telling) && g.Gap.OnObstacle.Axial < middle == left).ToArray();
            double[] wanted = [.. side.Select(g => Math.Clamp(Y(g.Gap.OnObstacle.Radius), 0, Height))];
            double[] at = LabelSpread.Place(wanted, [.. side.Select(_ => LabelHeight)], 0, Height);
            placed.AddRange(side.Select((g, i) => new PlacedGap(
                g.Letter, g.Gap,
                X(g.Gap.OnObstacle.Axial), Y(g.Gap.OnObstacle.Radius), X(g.Gap.OnWheel.Axial), Y(g.Gap.OnWheel.Radius),
                left ? 2 : Width - LabelColumn + 6, at[i], left)));
        }

        return [.. placed.OrderBy(p => p.Letter)];
    }
}
