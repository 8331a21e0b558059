using System.Globalization;
using System.Text;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>Charts as rows of numbers: for screen readers, and as a file.</summary>
public static class SweepTable
{
    /// <summary>Column titles: the place, then every quantity with every line, "camber, ° (now)".</summary>
    public static IReadOnlyList<string> Titles(IReadOnlyList<CurveSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return sheets.Count == 0 ? []
            : [sheets[0].Along == SweepAlong.Travel ? "travel, mm" : "rack, mm",
               .. sheets.SelectMany(s =>
                   s.Lines.Select(l => s.Lines.Count > 1 ? $"{s.Quantity.TitleWithUnit} ({l.Name})" : s.Quantity.TitleWithUnit))];
    }

    /// <summary>One row for every place, or for every <paramref name="each"/>th; numbers as text, empty where there is none.</summary>
    /// <param name="sheets">All of one sweep.</param>
    /// <param name="each">1 for all.</param>
    /// <param name="more">Decimals beyond those shown.</param>
    public static IEnumerable<IReadOnlyList<string>> Rows(IReadOnlyList<CurveSheet> sheets, int each, int more = 0)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentOutOfRangeException.ThrowIfLessThan(each, 1);
        for (int i = 0; sheets.Count > 0 && i < sheets[0].PlacesMm.Count; i += each)
        {
            yield return [Number(sheets[0].PlacesMm[i], 1 + more),
                .. sheets.SelectMany(s => s.Lines.Select(l => l.Values[i] is { } v ? Number(v, s.Quantity.Decimals + more) : ""))];
        }
    }

    /// <summary>Comma-separated, quoted where needed, first row the titles.</summary>
    /// <remarks>Source: RFC 4180.</remarks>
    public static string Csv(IReadOnlyList<CurveSheet> sheets)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', Titles(sheets).Select(Quoted)).Append("\r\n");
        foreach (var row in Rows(sheets, 1, 3))
        {
            text.AppendJoin(',', row).Append("\r\n");
        }

        return text.ToString();
    }

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text
        : "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static string Number(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }
}
