using System.Globalization;
using System.Text;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Sweeps;

namespace Cornerwright.Cli.Text;

/// <summary>A sweep as comma-separated values: a header with units, a line a pose, empty cells for what is not known.</summary>
internal static class SweepText
{
    public static string Csv(IReadOnlyList<SweepRow> rows)
    {
        var text = new StringBuilder("corner,");
        text.AppendJoin(',', SweepColumns.All.Select(c => c.Name)).Append(",not_reached\n");
        foreach (var row in rows)
        {
            text.Append(row.Corner.Name()).Append(',');
            text.AppendJoin(',', SweepColumns.All.Select(c => c.Written(row)?.ToString("0.#########", CultureInfo.InvariantCulture) ?? ""));
            text.Append(',').Append(row.Why.AsSpan().IndexOfAny(",\"\n") < 0 ? row.Why
                : "\"" + row.Why.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"").Append('\n');
        }

        return text.ToString();
    }
}
