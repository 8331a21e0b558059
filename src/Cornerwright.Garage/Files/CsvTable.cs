using System.Text;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Files;

/// <summary>One row of a table and the line of the file where it begins, from 1.</summary>
public sealed record CsvRow(int Line, IReadOnlyList<string> Cells);

/// <summary>A table as it stands in a file: first row the header, every row as long as the header.</summary>
public sealed record CsvTable(char Delimiter, IReadOnlyList<string> Header, IReadOnlyList<CsvRow> Rows)
{
    /// <summary>A list of a thousand parts has some 200 kB.</summary>
    public const int GreatestBytes = 4 * 1024 * 1024;

    /// <summary>As many parts of a kind as a shelf takes.</summary>
    public const int MostRows = DocumentReader.MostItems;

    public const int MostColumns = 100;

    private static readonly char[] Delimiters = [',', ';', '\t'];

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a file; every problem at once. A mark of UTF-8 at the beginning is skipped.</summary>
    public static Checked<CsvTable> Read(ReadOnlyMemory<byte> file)
    {
        if (file.Length > GreatestBytes)
        {
            return Wrong("file", $"{file.Length} bytes", $"at most {GreatestBytes} bytes", "Split the list.");
        }

        try
        {
            return Read(Strict.GetString(file.Span));
        }
        catch (DecoderFallbackException)
        {
            return Wrong("file", "bytes that are no text", "UTF-8 text", "Save the list again as \"CSV UTF-8\".");
        }
    }

    /// <inheritdoc cref="Read(ReadOnlyMemory{byte})"/>
    /// <remarks>
    /// The delimiter is the one of comma, semicolon and tab that stands most often in the first line, quoted text apart;
    /// if two stand there equally often, it is not guessed. A table without any has one column.
    /// </remarks>
    public static Checked<CsvTable> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > GreatestBytes)
        {
            return Wrong("file", $"{text.Length} characters", $"at most {GreatestBytes} characters", "Split the list.");
        }

        text = text.TrimStart('\uFEFF');
        int bad = text.AsSpan().IndexOfAnyInRange('\0', '\b');
        if (bad >= 0)
        {
            return Wrong($"line {LineAt(text, bad)}", "a character that is no text", "text",
                "This is not a CSV file, or not UTF-8: save it again as \"CSV UTF-8\".");
        }

        if (OpenQuote(text) is { } open)
        {
            return Wrong($"line {open}", "\"", "quotes in pairs",
                "A quote that opens here is never closed: close it, or write a quote inside a cell as \"\" with the whole cell in quotes.");
        }

        if (FindDelimiter(text) is not { } delimiter)
        {
            return Wrong("line 1", Shown(FirstLine(text)), "columns parted by commas, by semicolons or by tabs",
                "Two of them stand equally often in the first line: put names that contain one into quotes.");
        }

        return ReadRows(text, delimiter);
    }

    private static Checked<CsvTable> ReadRows(string text, char delimiter)
    {
        var problems = new List<Problem>();
        var rows = new List<CsvRow>();
        var scanner = new CsvScanner(text, delimiter);
        while (problems.Count < DocumentReader.MostProblems)
        {
            int line = scanner.Line;
            if (scanner.Next() is not { } cells)
            {
                break;
            }

            int width = rows.Count == 0 ? cells.Count : rows[0].Cells.Count;
            if (scanner.StrayQuote)
            {
                problems.Add(new Problem($"line {line}", Shown(string.Join(delimiter, cells)), "a cell with quotes wholly in quotes",
                    "Write a quote inside a cell as \"\", with the whole cell in quotes."));
            }
            else if (cells.All(string.IsNullOrWhiteSpace))
            {
                continue;
            }
            else if (cells.Count != width || cells.Count > MostColumns)
            {
                string allowed = cells.Count != width ? $"{width} cells as in the header" : $"at most {MostColumns} cells";
                problems.Add(new Problem($"line {line}", $"{cells.Count} cells", allowed,
                    "Look for a missing or additional delimiter, or put cells that contain one into quotes."));
            }
            else if (rows.Count > MostRows)
            {
                problems.Add(new Problem($"line {line}", $"more than {MostRows} rows", $"at most {MostRows} rows", "Split the list."));
                break;
            }
            else
            {
                rows.Add(new CsvRow(line, cells));
            }
        }

        if (problems.Count == 0 && rows.Count < 2)
        {
            problems.Add(new Problem("file", $"{rows.Count} rows", "a header and at least one row",
                "Put the names of the columns into the first line and the parts below."));
        }

        return problems.Count > 0
            ? Checked<CsvTable>.Wrong(problems)
            : Checked<CsvTable>.From(new CsvTable(delimiter, [.. rows[0].Cells.Select(x => x.Trim())], rows[1..]));
    }

    private static char? FindDelimiter(string text)
    {
        int[] counts = new int[Delimiters.Length];
        bool quoted = false;
        foreach (char c in text)
        {
            quoted ^= c == '"';
            if (!quoted && c is '\n' or '\r')
            {
                break;
            }

            int which = Array.IndexOf(Delimiters, c);
            if (!quoted && which >= 0)
            {
                counts[which]++;
            }
        }

        int most = counts.Max();
        return most > 0 && counts.Count(x => x == most) > 1 ? null : Delimiters[Array.IndexOf(counts, most)];
    }

    /// <summary>The line of a quote that is never closed; null if all are.</summary>
    private static int? OpenQuote(string text)
    {
        int last = -1;
        for (int i = 0; i < text.Length; i++)
        {
            last = text[i] != '"' ? last : last < 0 ? i : -1;
        }

        return last < 0 ? null : LineAt(text, last);
    }

    private static int LineAt(string text, int at) => 1 + text.AsSpan(0, at).Count('\n');

    private static string FirstLine(string text) => text.Split('\n', 2)[0].TrimEnd('\r');

    private static string Shown(string text) => text.Length <= 60 ? text : string.Concat(text.AsSpan(0, 59), "…");

    private static Checked<CsvTable> Wrong(string field, string given, string allowed, string cure) =>
        Checked<CsvTable>.Wrong(new Problem(field, given, allowed, cure));
}
