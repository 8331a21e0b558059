using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A finding's value, limits and doubt on one line of drawing units.</summary>
public sealed record MarginScale(double? Value, double? Low, double? High, double WhiskerFrom, double WhiskerTo)
{
    public const double Width = 180;
    private const double Inset = 12;

    /// <summary>Null where there is nothing to draw: no value, or no limit to draw it against.</summary>
    public static MarginScale? Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Value is not { } value || !double.IsFinite(value.Si) || (finding.Low is null && finding.High is null))
        {
            return null;
        }

        double doubt = finding.Doubt is { } d && double.IsFinite(d.Si) ? Math.Abs(d.Si) : 0;
        double?[] limits = [finding.Low?.Si, finding.High?.Si];
        double[] all = [value.Si - doubt, value.Si + doubt, .. limits.OfType<double>().Where(double.IsFinite)];
        double from = all.Min(), to = all.Max();

        // One limit and no distance to it would have no width; a tenth of the value stands in.
        double width = Math.Max(to - from, Math.Max(Math.Abs(value.Si) * 0.1, 1e-9));
        double middle = (from + to) / 2;
        double start = middle - (width * 0.62), span = width * 1.24;
        return new(At(value.Si), Place(finding.Low), Place(finding.High), At(value.Si - doubt), At(value.Si + doubt));

        double At(double x) => Inset + ((x - start) / span * (Width - (2 * Inset)));
        double? Place(Measure? limit) => limit is { } l && double.IsFinite(l.Si) ? At(l.Si) : null;
    }
}
