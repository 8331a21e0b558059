using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Entry;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>A hardpoint table as cells: a row a point, three columns of coordinates, one of how far all three may be off.</summary>
public static class PointCells
{
    /// <summary>X, Y, Z and the tolerance.</summary>
    public const int Columns = 4;

    /// <summary>The column that holds for all three coordinates.</summary>
    public const int ToleranceColumn = 3;

    private const int MostCells = 400;

    private static readonly FieldShape[] Axes = [.. RecordShape.Of<BodyPoint>().Fields];

    /// <summary>"X, forward" and so on.</summary>
    public static string Title(int column) => column == ToleranceColumn ? "± each" : Axes[column].Label;

    /// <summary>Of a coordinate in the document: "x".</summary>
    public static string Name(int column) => column == ToleranceColumn ? "tolerance" : Axes[column].Name;

    /// <summary>What stands in a cell: as typed, without the unit where it is the column's own.</summary>
    public static string Text(HardpointTable table, FieldShape point, int column)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(point);
        var at = (BodyPoint?)point.Get(table);
        if (column != ToleranceColumn)
        {
            return Bare(Of(at, column)?.Typed);
        }

        string[] all = [.. Given(at).Select(r => Bare(r.Tolerance?.Amount.Typed)).Distinct(StringComparer.Ordinal)];
        return all.Length > 1 ? "differ" : all.Length == 1 ? all[0] : "";
    }

    /// <summary>The tolerance that is assumed where none was typed, mm as text; empty where nothing is given.</summary>
    public static string Assumed(HardpointTable table, FieldShape point)
    {
        ArgumentNullException.ThrowIfNull(point);
        return Given((BodyPoint?)point.Get(table)).FirstOrDefault() is { ToleranceAssumed: true } r
            ? (2000 * r.StandardDeviation).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture) : "";
    }

    /// <summary>The table with one cell typed anew, or every problem with the text.</summary>
    /// <param name="table">As it is.</param>
    /// <param name="point">The row.</param>
    /// <param name="column">0 to 3.</param>
    /// <param name="text">As typed; a bare number is millimetres; empty takes the number out.</param>
    /// <param name="where">The corner, in words.</param>
    public static Checked<HardpointTable> Type(HardpointTable table, FieldShape point, int column, string text, string where)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(text);
        var at = (BodyPoint?)point.Get(table) ?? new BodyPoint();
        string name = $"{point.Label} / {Title(column)}";
        if (column == ToleranceColumn)
        {
            return Tolerate(table, point, at, text, name);
        }

        Reading? reading = null;
        if (!string.IsNullOrWhiteSpace(text))
        {
            var before = Of(at, column) ?? Given(at).FirstOrDefault();
            var draft = ReadingDraft.Of(before, ReadingSource.Tape) with { Value = text, Date = null };
            var read = draft.Read(Axes[column], name);
            if (!read.Try(out reading))
            {
                return Checked<HardpointTable>.Wrong(read.Problems);
            }
        }

        return Checked<HardpointTable>.From(Put(table, point, RecordShape.Of<BodyPoint>().With(at, Axes[column], reading)));
    }

    /// <summary>A block of cells put down from one cell to the right and downward; taken whole or not at all.</summary>
    /// <param name="table">As it is.</param>
    /// <param name="rows">Points in the order in which they are shown.</param>
    /// <param name="row">Of the cell in which the cursor stands.</param>
    /// <param name="column">Likewise.</param>
    /// <param name="block">Rows parted by line ends, cells by tabs (or
    /// semicolons); a block whose rows begin with names is taken by name.</param>
    public static Checked<HardpointTable> Paste(HardpointTable table, IReadOnlyList<FieldShape> rows, int row, int column, string block)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(block);
        string[] lines = [.. block.Split('\n').Select(l => l.TrimEnd('\r')).Where(l => l.Trim().Length > 0)];
        if (lines.Length == 0)
        {
            return Checked<HardpointTable>.From(table);
        }

        if (lines.Any(l => l.TrimStart() is [{ } c, ..] && char.IsLetter(c)))
        {
            return HardpointBlock.Read(table, block, Units.Millimetre, ReadingSource.Tape);
        }

        char delimiter = block.Contains('\t', StringComparison.Ordinal) ? '\t' : ';';
        var problems = new List<Problem>();
        int cells = 0;
        for (int i = 0; i < lines.Length; i++)
        {
            string[] texts = lines[i].Split(delimiter);
            if (row + i >= rows.Count || column + texts.Length > Columns || (cells += texts.Length) > MostCells)
            {
                problems.Add(new Problem(
                    $"pasted row {i + 1}", lines[i].Trim(), $"{rows.Count - row} rows of at most {Columns - column} cells from here on",
                    "Put the cursor into the first point's X and paste again, or copy fewer cells."));
                break;
            }

            for (int j = 0; j < texts.Length; j++)
            {
                var typed = Type(table, rows[row + i], column + j, texts[j].Trim(), "");
                problems.AddRange(typed.Problems);
                table = typed.Ok ? typed.Value : table;
            }
        }

        return problems.Count > 0 ? Checked<HardpointTable>.Wrong(problems) : Checked<HardpointTable>.From(table);
    }

    private static Checked<HardpointTable> Tolerate(HardpointTable table, FieldShape point, BodyPoint at, string text, string name)
    {
        Tolerance? tolerance = null;
        if (!string.IsNullOrWhiteSpace(text))
        {
            var read = QuantityText.ParseTolerance(text, Dimension.Length, name, Units.Millimetre);
            if (!read.Try(out var amount))
            {
                return Checked<HardpointTable>.Wrong(read.Problems);
            }

            if (!Given(at).Any())
            {
                return Checked<HardpointTable>.Wrong(
                    new Problem(name, text, "a tolerance of coordinates that are given", "Type X, Y and Z first."));
            }

            tolerance = new Tolerance(amount.UnitAssumed ? Quantity.Of(amount.Number, amount.Unit) : amount, ToleranceKind.TwoSigma);
        }

        Reading? With(Reading? reading) => reading is null ? null : reading with { Tolerance = tolerance };
        return Checked<HardpointTable>.From(Put(table, point, new BodyPoint { X = With(at.X), Y = With(at.Y), Z = With(at.Z) }));
    }

    private static HardpointTable Put(HardpointTable table, FieldShape point, BodyPoint at) =>
        RecordShape.Of<HardpointTable>().With(table, point, Given(at).Any() ? at : null);

    private static Reading? Of(BodyPoint? at, int column) => column switch { 0 => at?.X, 1 => at?.Y, _ => at?.Z };

    private static IEnumerable<Reading> Given(BodyPoint? at) => new[] { at?.X, at?.Y, at?.Z }.OfType<Reading>();

    private static string Bare(string? typed) => typed is null ? "" : typed.EndsWith(" mm", StringComparison.Ordinal) ? typed[..^3] : typed;
}
