using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Files;

/// <summary>What of a field a column holds; all but the value are for readings only.</summary>
public enum ColumnPiece
{
    Value,
    Tolerance,
    Spread,
    Source,
    Date,
}

/// <summary>Where the cells of a column go.</summary>
/// <param name="Field">The part's field; null: the column is left out.</param>
/// <param name="Piece">What of it.</param>
/// <param name="DefaultUnit">The unit of bare numbers; null: every cell must have its unit.</param>
public sealed record ColumnChoice(FieldShape? Field, ColumnPiece Piece = ColumnPiece.Value, Unit? DefaultUnit = null)
{
    public static ColumnChoice LeftOut { get; } = new((FieldShape?)null);

    /// <summary>The fields a column can hold: all but curves and other lists.</summary>
    public static IReadOnlyList<FieldShape> FieldsOf(PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return [.. kind.Shape.Fields.Where(x => x.Kind is not (FieldKind.Record or FieldKind.RecordList or FieldKind.TextList))];
    }

    /// <summary>
    /// Guesses from the header, to be looked at before importing: a column is the field whose name in files or label it
    /// has, blanks, capitals and signs aside; "(N/mm)" or "[N/mm]" behind it is its default unit, and "tolerance",
    /// "spread", "source" or "date" behind a point or a blank is that piece. Two columns for one field are both left out.
    /// </summary>
    public static IReadOnlyList<ColumnChoice> Guess(IReadOnlyList<string> header, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(header);
        var fields = FieldsOf(kind);
        ColumnChoice[] choices = [.. header.Select(x => GuessOne(x, fields))];
        var twice = choices.Where(x => x.Field is not null).GroupBy(x => (x.Field, x.Piece)).Where(g => g.Count() > 1).Select(g => g.Key)
            .ToHashSet();
        return [.. choices.Select(x => twice.Contains((x.Field, x.Piece)) ? LeftOut : x)];
    }

    private static ColumnChoice GuessOne(string column, IReadOnlyList<FieldShape> fields)
    {
        (string name, string? unit) = SplitUnit(column);
        if (Match(name, fields) is { } field)
        {
            return Choose(field, ColumnPiece.Value, unit);
        }

        foreach (var piece in Enum.GetValues<ColumnPiece>().Where(x => x != ColumnPiece.Value))
        {
            string ending = piece.ToString();
            if (name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)
                && Match(name[..^ending.Length], fields) is { Kind: FieldKind.Reading } reading)
            {
                return Choose(reading, piece, unit);
            }
        }

        return LeftOut;
    }

    /// <summary>A unit that does not measure the field is no guess: such a column is left out.</summary>
    private static ColumnChoice Choose(FieldShape field, ColumnPiece piece, string? unit)
    {
        if (unit is null)
        {
            return new(field, piece);
        }

        bool takesUnit = field.Kind == FieldKind.Reading && piece is ColumnPiece.Value or ColumnPiece.Tolerance;
        return takesUnit && Units.Find(unit, field.Words.Dimension) is { } found ? new(field, piece, found) : LeftOut;
    }

    private static FieldShape? Match(string name, IReadOnlyList<FieldShape> fields)
    {
        string folded = Folded(name);
        return folded.Length == 0 ? null : fields.FirstOrDefault(x => Folded(x.Name) == folded || Folded(x.Label) == folded);
    }

    private static string Folded(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static (string Name, string? Unit) SplitUnit(string column)
    {
        string text = column.Trim();
        int open = text.Length == 0 ? -1 : text[^1] switch
        {
            ')' => text.LastIndexOf('('),
            ']' => text.LastIndexOf('['),
            _ => -1,
        };
        return open > 0 ? (text[..open], text[(open + 1)..^1].Trim()) : (text, null);
    }
}
