namespace Cornerwright.PublishedChecks;

/// <summary>The tables in checks/, read once.</summary>
public static class CheckFiles
{
    public static readonly IReadOnlyList<string> Subjects = ["units", "tyres", "wheels", "springs", "bars", "bolts", "ride"];

    private static readonly Lazy<IReadOnlyDictionary<string, IReadOnlyList<Check>>> Read = new(() =>
        Subjects.ToDictionary(subject => subject, subject => (IReadOnlyList<Check>)[.. Rows(subject, FromRow)]));

    public static IReadOnlyDictionary<string, IReadOnlyList<Check>> BySubject => Read.Value;

    public static IEnumerable<Check> All => Subjects.SelectMany(subject => BySubject[subject]);

    public static IReadOnlyList<CheckNotRun> NotRun { get; } = [.. Rows(
        "not-run",
        at => new CheckNotRun(at("id"), at("check"), at("expected"), at("unit"), at("source"), at("locator"), at("why")))];

    private static Check FromRow(Func<string, string> at) => new(
        at("id"),
        at("check"),
        at("evaluate"),
        at("inputs"),
        at("expected"),
        at("unit"),
        at("tolerance"),
        at("source"),
        at("locator"),
        at("provenance"),
        at("confidence"));

    private static IEnumerable<T> Rows<T>(string name, Func<Func<string, string>, T> make)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "checks", name + ".csv"));
        var header = Cells(lines[0]);
        foreach (string line in lines.Skip(1))
        {
            var cells = Cells(line);
            if (cells.Count != header.Count)
            {
                throw new InvalidDataException($"{name}.csv: {cells.Count} cells under {header.Count} headings in \"{line}\".");
            }

            yield return make(column => cells[header.IndexOf(column)]);
        }
    }

    // Commas part cells; quotes hold a cell together, and two of them inside stand for one. No line breaks in cells.
    private static List<string> Cells(string line)
    {
        var cells = new List<string> { "" };
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cells[^1] += '"';
                i++;
            }
            else if (line[i] == '"')
            {
                quoted = !quoted;
            }
            else if (line[i] == ',' && !quoted)
            {
                cells.Add("");
            }
            else
            {
                cells[^1] += line[i];
            }
        }

        return cells;
    }
}
