using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Parts lists as CSV: a table, a choice of columns, and all parts or all problems.</summary>
public static class PartsCsv
{
    /// <summary>Guesses the columns and imports: for a list whose header speaks for itself.</summary>
    /// <inheritdoc cref="Import(CsvTable, PartKind, IReadOnlyList{ColumnChoice}, PartsShelf, ReadingSource)"/>
    public static Checked<PartsShelf> Import(CsvTable table, PartKind kind, PartsShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(table);
        return Import(table, kind, ColumnChoice.Guess(table.Header, kind), shelf);
    }

    /// <summary>Parts from a table. Either every row is good, or nothing is imported and every problem is told.</summary>
    /// <param name="table">As read by <see cref="CsvTable.Read(string)"/>.</param>
    /// <param name="kind">What the rows are.</param>
    /// <param name="columns">One choice a column, in the order of the header.</param>
    /// <param name="shelf">Where the parts will go: its ids are taken.</param>
    /// <param name="source">Where readings come from whose row does not say it.</param>
    /// <returns>A shelf with the new parts only; <see cref="Put"/> adds them.</returns>
    public static Checked<PartsShelf> Import(
        CsvTable table, PartKind kind, IReadOnlyList<ColumnChoice> columns, PartsShelf shelf,
        ReadingSource source = ReadingSource.DataSheet)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(kind);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(shelf);
        if (columns.Count != table.Header.Count)
        {
            throw new ArgumentException("There must be one choice a column.", nameof(columns));
        }

        var problems = ColumnProblems(table, kind, columns);
        if (problems.Count > 0)
        {
            return Checked<PartsShelf>.Wrong(problems);
        }

        var parts = new List<Part>();
        var taken = TakenIds(kind, shelf);
        foreach (var row in table.Rows)
        {
            if (problems.Count >= DocumentReader.MostProblems)
            {
                problems.Add(new Problem("file", "more problems", $"{DocumentReader.MostProblems} are shown",
                    "Mend these first, then import again."));
                break;
            }

            int before = problems.Count;
            var part = new PartRow(table, row, columns, source, problems).Read(kind);
            if (part.Id.Length > 0 && !taken.TryAdd(part.Id, row.Line))
            {
                string where = taken[part.Id] > 0 ? $"line {taken[part.Id]} has it too" : "a part on the shelf has it already";
                problems.Add(new Problem($"line {row.Line}, column \"{Column(table, columns, "id")}\"", part.Id, "each id once",
                    $"Give it another id: {where}."));
            }

            if (problems.Count == before)
            {
                problems.AddRange(Consistency.Check(kind.With(new PartsShelf(), [part]))
                    .Select(x => x with { Field = $"line {row.Line} / {x.Field}" }));
            }

            parts.Add(part);
        }

        return problems.Count > 0 ? Checked<PartsShelf>.Wrong(problems) : Checked<PartsShelf>.From(kind.With(new PartsShelf(), parts));
    }

    /// <summary>The shelf with the imported parts behind those it had.</summary>
    public static PartsShelf Put(PartsShelf shelf, PartsShelf imported) =>
        PartKind.All.Aggregate(shelf, (all, kind) => kind.With(all, [.. kind.On(all), .. kind.On(imported)]));

    private static List<Problem> ColumnProblems(CsvTable table, PartKind kind, IReadOnlyList<ColumnChoice> columns)
    {
        var problems = new List<Problem>();
        foreach (var (column, name) in columns.Zip(table.Header).Where(x => x.First.Field is not null))
        {
            if (!ColumnChoice.FieldsOf(kind).Contains(column.Field!))
            {
                problems.Add(new Problem($"column \"{name}\"", column.Field!.Label,
                    string.Join(", ", ColumnChoice.FieldsOf(kind).Select(x => x.Label)), "Choose a field of this kind of part."));
            }

            if (column.DefaultUnit is { } unit && unit.Dimension != column.Field!.Words.Dimension)
            {
                problems.Add(
                    new Problem($"column \"{name}\"", unit.Symbol, column.Field.Allowed, "Choose a unit that measures this field."));
            }
        }

        foreach (var twice in columns.Where(x => x.Field is not null).GroupBy(x => (x.Field, x.Piece)).Where(g => g.Count() > 1))
        {
            problems.Add(
                new Problem("columns", twice.Key.Field!.Label, "one column for each field", "Leave all but one of its columns out."));
        }

        foreach (var field in kind.Shape.Fields.Where(x =>
            x.Words.Needed && !columns.Any(c => c.Field == x && c.Piece == ColumnPiece.Value)))
        {
            problems.Add(new Problem("columns", string.Join(", ", table.Header), $"a column for \"{field.Label}\"",
                $"Choose the column that holds it, or name one \"{field.Name}\"."));
        }

        foreach (var field in columns.Where(x => x.Piece != ColumnPiece.Value).Select(x => x.Field!).Distinct()
            .Where(x => !columns.Any(c => c.Field == x && c.Piece == ColumnPiece.Value)))
        {
            problems.Add(new Problem("columns", field.Label, "a value beside its tolerance, spread, source or date",
                "Choose the column with the value too."));
        }

        return problems;
    }

    /// <summary>Ids on the shelf, each with 0; kinds that stand in one stack share their ids.</summary>
    private static Dictionary<string, int> TakenIds(PartKind kind, PartsShelf shelf)
    {
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var part in CornerSlot.SharingIds(kind).SelectMany(x => x.On(shelf)))
        {
            taken.TryAdd(part.Id, 0);
        }

        return taken;
    }

    private static string Column(CsvTable table, IReadOnlyList<ColumnChoice> columns, string field) =>
        columns.Zip(table.Header).First(x => x.First.Field?.Name == field).Second;
}
