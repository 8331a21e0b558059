using System.Globalization;
using Cornerwright.Garage.Problems;
using Cornerwright.Mechanics.Bolts;

namespace Cornerwright.Garage.Access;

/// <summary>Metric threads as stamped and written: "M12", "M12x1.5", "M12 × 1,5".</summary>
/// <remarks>Source: ISO 965-1 (designation); ISO 261 (coarse pitch where none is written).</remarks>
public static class ThreadDesignation
{
    private const double SmallestMm = 3, LargestMm = 42;

    public static Checked<MetricThread> Parse(string typed, string field)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string plain = typed.Trim().Replace(" ", "", StringComparison.Ordinal).Replace(',', '.').Replace('×', 'x').Replace('X', 'x');
        if (plain.Length < 2 || char.ToUpperInvariant(plain[0]) != 'M')
        {
            return Wrong(typed, field);
        }

        string[] pieces = plain[1..].Split('x');
        if (pieces.Length > 2 || !Number(pieces[0], out double diameterMm) || !(diameterMm >= SmallestMm && diameterMm <= LargestMm))
        {
            return Wrong(typed, field);
        }

        double pitchMm;
        if (pieces.Length == 2)
        {
            if (!Number(pieces[1], out pitchMm) || !(pitchMm >= 0.35 && pitchMm <= Math.Min(4.5, diameterMm / 3)))
            {
                return Wrong(typed, field);
            }
        }
        else if (MetricThread.CoarsePitchMm(diameterMm) is { } coarse)
        {
            pitchMm = coarse;
        }
        else
        {
            return Checked<MetricThread>.Wrong(new Problem(field, typed, "a thread with its pitch, e.g. M12x1.5",
                "This diameter has no coarse pitch on the list: write the pitch too."));
        }

        return Checked<MetricThread>.From(MetricThread.Of(diameterMm / 1000, pitchMm / 1000));
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static Checked<MetricThread> Wrong(string typed, string field) =>
        Checked<MetricThread>.Wrong(new Problem(field, typed, "a metric thread, M3 to M42, e.g. M10 or M12x1.5",
            "Write M, the diameter in mm, x and the pitch in mm; leave it empty where it is not metric."));
}
