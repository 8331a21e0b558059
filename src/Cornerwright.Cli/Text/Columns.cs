using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>Columns under headings, as wide as their widest cell.</summary>
public static class Columns
{
    private const string Between = "  ";

    /// <param name="headings">A heading that begins with '>' stands over a column of numbers, set to the right.</param>
    /// <param name="rows">As many cells as headings.</param>
    public static void Table(this IAnsiConsole console, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows,
        int indent = 0)
    {
        ArgumentNullException.ThrowIfNull(headings);
        var all = rows.ToList();
        bool[] right = [.. headings.Select(h => h.StartsWith('>'))];
        string[] titles = [.. headings.Select(h => h.TrimStart('>'))];
        int[] widths = [.. titles.Select((t, i) => all.Select(r => r[i].Length).Append(t.Length).Max())];
        foreach (var row in all.Prepend(titles))
        {
            var cells = row.Select((cell, i) => right[i] ? cell.PadLeft(widths[i]) : cell.PadRight(widths[i]));
            console.Line((new string(' ', indent) + string.Join(Between, cells)).TrimEnd());
        }
    }
}
