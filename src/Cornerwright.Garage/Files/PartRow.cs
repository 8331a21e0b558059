using System.Globalization;
using System.Text.Json;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>One row of a parts list on its way to a part; problems name line, column and cell.</summary>
internal sealed class PartRow(CsvTable table, CsvRow row, IReadOnlyList<ColumnChoice> columns, ReadingSource source, List<Problem> problems)
{
    public Part Read(PartKind kind)
    {
        var part = (Part)kind.Shape.New();
        for (int i = 0; i < columns.Count; i++)
        {
            if (columns[i] is not { Field: { } field, Piece: ColumnPiece.Value } column)
            {
                continue;
            }

            string cell = row.Cells[i];
            string where = Where(i);
            if (string.IsNullOrWhiteSpace(cell))
            {
                if (field.Words.Needed)
                {
                    problems.Add(new Problem(where, cell, field.Allowed.Length > 0 ? field.Allowed : "some text", "Fill it in."));
                }

                continue;
            }

            object? value = field.Kind switch
            {
                FieldKind.Reading => ReadReading(cell, column, where),
                FieldKind.YesNo => ReadYesNo(cell, where),
                FieldKind.Choice => ReadChoice(cell, field.ElementType, field.Allowed, where),
                FieldKind.Money => ReadMoney(cell, where),
                _ => ReadText(cell, field, where),
            };
            if (value is not null)
            {
                field.Set(part, value);
            }
        }

        NoOrphans();
        return part;
    }

    private string Where(int column) => $"line {row.Line}, column \"{table.Header[column]}\"";

    private Reading? ReadReading(string cell, ColumnChoice column, string where)
    {
        var field = column.Field!;
        int before = problems.Count;
        var spread = Piece(field, ColumnPiece.Spread) is { } s
            ? ReadChoice(s.Cell, typeof(ToleranceKind), Names<ToleranceKind>(), s.Where) as ToleranceKind? : null;
        var from = Piece(field, ColumnPiece.Source) is { } f
            ? ReadChoice(f.Cell, typeof(ReadingSource), Names<ReadingSource>(), f.Where) as ReadingSource? : null;
        var date = Piece(field, ColumnPiece.Date) is { } d ? ReadDate(d.Cell, d.Where) : null;
        var value = column.DefaultUnit is { } unit
            ? QuantityText.Parse(cell, field.Words.Dimension, where, unit)
            : QuantityText.Parse(cell, field.Words.Dimension, where);
        problems.AddRange(value.Problems);
        Tolerance? tolerance = null;
        if (Piece(field, ColumnPiece.Tolerance) is { } t)
        {
            var amount = QuantityText.ParseTolerance(t.Cell, field.Words.Dimension, t.Where, t.Column.DefaultUnit ?? column.DefaultUnit);
            problems.AddRange(amount.Problems);
            tolerance = amount.Ok ? new Tolerance(amount.Value, spread ?? ToleranceKind.TwoSigma) : null;
        }
        else if (Piece(field, ColumnPiece.Spread) is { } lone)
        {
            problems.Add(new Problem(lone.Where, lone.Cell, "an amount beside every spread", "Add the tolerance, or empty this cell."));
        }

        if (problems.Count > before)
        {
            return null;
        }

        var reading = new Reading(value.Value, tolerance, from ?? source, date);
        if (field.RangeProblem(where, reading) is { } problem)
        {
            problems.Add(problem);
        }

        return reading;
    }

    /// <summary>A tolerance, source or date beside an empty value would be lost: it is told instead.</summary>
    private void NoOrphans()
    {
        for (int i = 0; i < columns.Count; i++)
        {
            if (columns[i] is { Field: { } field, Piece: not ColumnPiece.Value } && !string.IsNullOrWhiteSpace(row.Cells[i])
                && Piece(field, ColumnPiece.Value) is null)
            {
                problems.Add(new Problem(Where(i), row.Cells[i], $"a value in \"{field.Label}\" beside it",
                    "Fill the value in, or empty this cell."));
            }
        }
    }

    private (string Cell, string Where, ColumnChoice Column)? Piece(FieldShape field, ColumnPiece piece)
    {
        for (int i = 0; i < columns.Count; i++)
        {
            if (columns[i].Field == field && columns[i].Piece == piece && !string.IsNullOrWhiteSpace(row.Cells[i]))
            {
                return (row.Cells[i], Where(i), columns[i]);
            }
        }

        return null;
    }

    private string? ReadText(string cell, FieldShape field, string where)
    {
        bool isId = field.Name == "id";
        string text = isId ? cell.Trim() : cell;
        int longest = isId ? DocumentReader.LongestId : DocumentReader.LongestText;
        return text.Length > longest ? Wrong(where, cell, $"at most {longest} characters", "Shorten it.")
            : text.Any(c => (char.IsControl(c) && c is not ('\n' or '\r' or '\t')) || c == '\uFFFD') || HasLoneHalf(text)
            ? Wrong(where, cell, "text without control characters", "Type it anew.")
            : text;
    }

    private object? ReadYesNo(string cell, string where) => cell.Trim().ToLowerInvariant() switch
    {
        "yes" or "true" => true,
        "no" or "false" => false,
        _ => Wrong(where, cell, "yes or no", "Write yes, no, or nothing for no."),
    };

    /// <summary>By name as in files or in words: "closedAndGround", "closed and ground".</summary>
    private object? ReadChoice(string cell, Type type, string allowed, string where)
    {
        string folded = string.Concat(cell.Where(c => !char.IsWhiteSpace(c)));
        foreach (object value in Enum.GetValues(type))
        {
            if (string.Equals(value.ToString(), folded, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        return Wrong(where, cell, allowed, "Choose one of these.");
    }

    /// <summary>Digits with one point, or with one comma and not three digits behind it: 1,250 could be either.</summary>
    private object? ReadMoney(string cell, string where)
    {
        const int MostDecimals = 4;
        string text = cell.Trim();
        int mark = text.IndexOfAny(['.', ',']);
        string whole = mark < 0 ? text : text[..mark];
        string rest = mark < 0 ? "" : text[(mark + 1)..];
        bool digits = whole.Length is > 0 and <= 9 && whole.All(char.IsAsciiDigit) && rest.All(char.IsAsciiDigit)
            && (mark < 0 || rest.Length is > 0 and <= MostDecimals);
        return !digits ? Wrong(where, cell, "0 to 999999999 with a point before the decimals",
            "Write the price as plain digits, without currency and thousands marks.")
            : mark >= 0 && text[mark] == ',' && rest.Length == 3
            ? Wrong(where, cell, "digits with one meaning", $"Write {whole}{rest} or {whole}.{rest}.")
            : decimal.Parse(mark < 0 ? whole : $"{whole}.{rest}", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    private DateOnly? ReadDate(string cell, string where)
    {
        if (DateOnly.TryParseExact(cell.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        Wrong(where, cell, "a date as 2026-05-31", "Write year, month and day with dashes.");
        return null;
    }

    private string? Wrong(string where, string given, string allowed, string cure)
    {
        problems.Add(new Problem(where, given.Length <= 60 ? given : string.Concat(given.AsSpan(0, 59), "…"), allowed, cure));
        return null;
    }

    private static string Names<T>()
        where T : struct, Enum => string.Join(", ", Enum.GetNames<T>().Select(JsonNamingPolicy.CamelCase.ConvertName));

    private static bool HasLoneHalf(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                return true;
            }
        }

        return false;
    }
}
