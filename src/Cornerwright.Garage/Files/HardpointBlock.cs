using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Points as a block of cells, as a spreadsheet puts it on the clipboard: name, X, Y, Z and, if known, a tolerance.</summary>
/// <remarks>A block is taken whole or not at all; every cell that cannot be read is named with its row.</remarks>
public static class HardpointBlock
{
    private const int Name = 0, Tolerance = 4, MostCells = 5;

    /// <summary>Puts a block's points into a table; points the block does not name stay as they are.</summary>
    /// <param name="table">As it is now.</param>
    /// <param name="text">One point a row; cells parted by tabs, semicolons or commas. A first row of headings is passed over.</param>
    /// <param name="bare">The unit of numbers without one.</param>
    /// <param name="source">Where the numbers come from.</param>
    public static Checked<HardpointTable> Read(HardpointTable table, string text, Unit bare, ReadingSource source)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(bare);
        var problems = new List<Problem>();
        var found = new HashSet<string>(StringComparer.Ordinal);
        var rows = text.Split('\n').Select((line, i) => (Line: line.Trim('\r', ' '), Row: i + 1))
            .Where(r => r.Line.Trim().Length > 0).ToList();
        char delimiter = text.Contains('\t', StringComparison.Ordinal) ? '\t' : text.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        if (rows.Count == 0)
        {
            return Checked<HardpointTable>.Wrong(
                new Problem("block", "", "at least one row: name, X, Y, Z", "Copy the rows in the spreadsheet and paste them here."));
        }

        foreach (var (line, row) in rows.Take(DocumentReader.MostItems))
        {
            string[] cells = [.. (new CsvScanner(line, delimiter).Next() ?? [""]).Select(c => c.Trim())];
            if (row == rows[0].Row && IsHeading(cells))
            {
                continue;
            }

            if (Find(cells[Name]) is not { } field)
            {
                problems.Add(new Problem($"row {row}, name", cells[Name], "a point's name: " + string.Join(", ",
                    HardpointNeeds.Points.Select(p => p.Label)), "Write the name as it stands in the table."));
            }
            else if (cells.Length is not (MostCells - 1 or MostCells))
            {
                problems.Add(new Problem($"row {row}, {field.Label}", $"{cells.Length} cells", "4 or 5 cells: name, X, Y, Z, tolerance",
                    "Look for a missing cell, or for a decimal comma in a block parted by commas."));
            }
            else if (!found.Add(field.Name))
            {
                problems.Add(new Problem($"row {row}, name", cells[Name], "each point once", "Take out one of the two rows."));
            }
            else if (Point(cells, row, field, bare, source, problems) is { } point)
            {
                table = RecordShape.Of<HardpointTable>().With(table, field, point);
            }
        }

        if (problems.Count == 0 && found.Count == 0)
        {
            problems.Add(new Problem("block", "only headings", "at least one row: name, X, Y, Z", "Copy the rows below the headings too."));
        }

        return problems.Count > 0 ? Checked<HardpointTable>.Wrong(problems) : Checked<HardpointTable>.From(table);
    }

    /// <summary>The points given, parted by tabs, as <see cref="Read"/> takes them back.</summary>
    public static string Write(HardpointTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var rows = HardpointNeeds.Points
            .Select(f => (f.Label, Point: (BodyPoint?)f.Get(table)))
            .Where(p => p.Point is { X: not null, Y: not null, Z: not null })
            .Select(p => $"{p.Label}\t{p.Point!.X!.Typed}\t{p.Point.Y!.Typed}\t{p.Point.Z!.Typed}\t{p.Point.X.Tolerance?.Amount.Typed}\n");
        return "Point\tX\tY\tZ\tTolerance\n" + string.Concat(rows);
    }

    private static BodyPoint? Point(string[] cells, int row, FieldShape field, Unit bare, ReadingSource source, List<Problem> problems)
    {
        Tolerance? tolerance = null;
        int before = problems.Count;
        if (cells.Length == MostCells && cells[Tolerance].Length > 0)
        {
            var amount = QuantityText.ParseTolerance(cells[Tolerance], Dimension.Length, $"row {row}, {field.Label} / tolerance", bare);
            problems.AddRange(amount.Problems);
            tolerance = amount.Ok ? new Tolerance(Typed(amount.Value), ToleranceKind.TwoSigma) : null;
        }

        Reading? Axis(int column, string axis)
        {
            var shape = RecordShape.Of<BodyPoint>().ByName[axis];
            string where = $"row {row}, {field.Label} / {shape.Label}";
            var value = QuantityText.Parse(cells[column], Dimension.Length, where, bare);
            problems.AddRange(value.Problems);
            if (!value.Ok)
            {
                return null;
            }

            var reading = new Reading(Typed(value.Value), tolerance, source);
            if (shape.RangeProblem(where, reading) is { } outside)
            {
                problems.Add(outside);
            }

            return reading;
        }

        var point = new BodyPoint { X = Axis(1, "x"), Y = Axis(2, "y"), Z = Axis(3, "z") };
        return problems.Count == before ? point : null;
    }

    /// <summary>With its unit written out, so that a document keeps what a bare number meant.</summary>
    private static Quantity Typed(Quantity read) => read.UnitAssumed ? Quantity.Of(read.Number, read.Unit) : read;

    private static bool IsHeading(string[] cells) =>
        Find(cells[Name]) is null && cells.Skip(1).Any(c => c.Length > 0) && !cells.Skip(1).Any(c => c.Any(char.IsAsciiDigit));

    private static FieldShape? Find(string name) =>
        HardpointNeeds.Points.FirstOrDefault(f => Fold(f.Label) == Fold(name) || Fold(f.Name) == Fold(name));

    private static string Fold(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
