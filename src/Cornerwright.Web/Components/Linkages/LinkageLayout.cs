using Cornerwright.Mechanics.Geometry;
using Cornerwright.Web.Components.Pictures;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>From where a linkage is looked at.</summary>
public enum LinkageSide
{
    Front,
    Street,
    Above,
}

/// <summary>One line of a linkage on the sheet, in drawing units.</summary>
public readonly record struct LinkageLine(MemberKind Kind, string Name, double X1, double Y1, double X2, double Y2);

/// <summary>One joint on the sheet, in drawing units.</summary>
public readonly record struct LinkageDot(string Property, string Name, double X, double Y);

/// <summary>A linkage's points and links laid out for one view; what is not given is left out.</summary>
/// <param name="Lines">Links, arms, strut, wheel carrier.</param>
/// <param name="Dots">Joints.</param>
/// <param name="Tyre">Outline of the tyre as an SVG path; empty where it is not known.</param>
public sealed record LinkageLayout(IReadOnlyList<LinkageLine> Lines, IReadOnlyList<LinkageDot> Dots, string Tyre)
{
    /// <summary>Width and height of the sheet, drawing units.</summary>
    public const double Size = 300;

    private const double Border = 18, SmallestSpread = 0.05;

    /// <param name="drawing">Points in the body frame.</param>
    /// <param name="side">
    /// From the front (left of the car on the right), from the wheel's own street side, from above (forward up).
    /// </param>
    public static LinkageLayout Of(LinkageDrawing drawing, LinkageSide side)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        if (drawing.Fixed.Count == 0)
        {
            return new LinkageLayout([], [], "");
        }

        (double Across, double Up) Seen(Vec3 p) => side switch
        {
            LinkageSide.Front => (p.Y, p.Z),
            LinkageSide.Street => (drawing.Left ? -p.X : p.X, p.Z),
            _ => (-p.Y, p.X),
        };
        var fixedPoints = drawing.Fixed.Select(Seen).ToList();
        double left = fixedPoints.Min(p => p.Across), right = fixedPoints.Max(p => p.Across);
        double low = fixedPoints.Min(p => p.Up), high = fixedPoints.Max(p => p.Up);
        double scale = (Size - (2 * Border)) / Math.Max(SmallestSpread, Math.Max(right - left, high - low));
        (double X, double Y) On(Vec3 p)
        {
            var (across, up) = Seen(p);
            return ((Size / 2) + ((across - (0.5 * (left + right))) * scale), (Size / 2) - ((up - (0.5 * (low + high))) * scale));
        }

        var lines = new List<LinkageLine>();
        foreach (var member in drawing.Members)
        {
            if (drawing.Points.TryGetValue(member.From, out var from) && drawing.Points.TryGetValue(member.To, out var to))
            {
                var (a, b) = (On(from + ((to - from) * member.Share)), On(to));
                lines.Add(new(member.Kind, member.Name, a.X, a.Y, b.X, b.Y));
            }
        }

        return new LinkageLayout(
            lines, [.. drawing.Points.Select(p => new LinkageDot(p.Key, LinkageDrawing.Label(p.Key), On(p.Value).X, On(p.Value).Y))],
            drawing.Wheel is { } wheel ? Outline(wheel, side, On, scale) : "");
    }

    // Seen along the spindle a tyre is a circle; seen across it, its section twice, mirrored at the spindle.
    private static string Outline(DrawnWheel wheel, LinkageSide side, Func<Vec3, (double X, double Y)> on, double scale)
    {
        if (side == LinkageSide.Street)
        {
            double r = wheel.Outline.Max(p => p[1]), a = wheel.Outline.Average(p => p[0]);
            var (x, y) = on(wheel.HubFace + (wheel.Spindle * a));
            string radius = Px.Of(r * scale);
            return $"M{Px.Of(x - (r * scale))} {Px.Of(y)}a{radius} {radius} 0 1 0 {Px.Of(2 * r * scale)} 0a{radius} {radius} 0 1 0 "
                + $"{Px.Of(-2 * r * scale)} 0Z";
        }

        Vec3 seen = side == LinkageSide.Front ? Vec3.UnitZ : Vec3.UnitX, radial = seen - (wheel.Spindle * wheel.Spindle.Dot(seen));
        if (!(radial.Length > 1e-6))
        {
            return "";
        }

        radial = radial.Unit();
        return string.Concat(new[] { 1, -1 }.Select(sign =>
            "M" + string.Join('L', wheel.Outline.Select(p => on(wheel.HubFace + (wheel.Spindle * p[0]) + (radial * (sign * p[1]))))
                .Select(p => $"{Px.Of(p.X)} {Px.Of(p.Y)}")) + "Z"));
    }
}
