using System.Text;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>The room round a wheel to scale, with the build's tyre in it: the spindle lies below, the street to the right.</summary>
public sealed class RoomLayout
{
    public const double Width = 560;
    private const double MostHeight = 420;
    private const double Margin = 26;

    private readonly double _axialLow, _radiusHigh, _perMetre;

    /// <param name="answer">With an envelope.</param>
    public RoomLayout(WidestAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ProfilePoint[] all = [.. answer.Envelope, .. answer.Present, new(0, answer.Present.Min(p => p.R))];
        double low = all.Min(p => p.A), high = all.Max(p => p.A), bottom = all.Min(p => p.R);
        _radiusHigh = all.Max(p => p.R);
        _perMetre = Math.Min((Width - (2 * Margin)) / (high - low), MostHeight / (_radiusHigh - bottom));
        _axialLow = low - (0.5 * (((Width - (2 * Margin)) / _perMetre) - (high - low)));
        Height = ((_radiusHigh - bottom) * _perMetre) + (2 * Margin);
        (Envelope, Tyre, HubX) = (PathOf(answer.Envelope), PathOf(answer.Present), X(0));
    }

    public double Height { get; }

    public string Envelope { get; }

    public string Tyre { get; }

    public double HubX { get; }

    private double X(double axial) => Margin + ((axial - _axialLow) * _perMetre);

    private string PathOf(IReadOnlyList<ProfilePoint> points)
    {
        var path = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
        {
            path.Append(i == 0 ? 'M' : 'L').Append(Px.Of(X(points[i].A))).Append(' ')
                .Append(Px.Of(Margin + ((_radiusHigh - points[i].R) * _perMetre)));
        }

        return path.Append('Z').ToString();
    }
}
