using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>A parts list as CSV text, and what a flat table could not hold.</summary>
/// <param name="Text">Comma separated, a header of field names, lines ended by a line feed.</param>
/// <param name="LeftOut">"s60 / Force curve" and so on: curves belong to the car file.</param>
public sealed record PartsCsvText(string Text, IReadOnlyList<string> LeftOut);

/// <summary>Writes one kind of part so that <see cref="PartsCsv"/> reads it back.</summary>
public static class PartsCsvWriter
{
    private static readonly SearchValues<char> Special = SearchValues.Create(",;\t\"\r\n");

    /// <summary>Columns that no part fills are left out; tolerance, spread, source and date stand behind their value.</summary>
    public static PartsCsvText Write(PartsShelf shelf, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var parts = kind.On(shelf);
        var columns = new List<(string Name, Func<Part, string> Cell)>();
        foreach (var field in ColumnChoice.FieldsOf(kind))
        {
            columns.Add((field.Name, part => Cell(field, part)));
            if (field.Kind == FieldKind.Reading)
            {
                columns.Add((field.Name + ".tolerance", part =>
                    Of(field, part)?.Tolerance is { } t ? DocumentWriter.WithUnit(t.Amount) : ""));
                columns.Add((field.Name + ".spread", part =>
                    Of(field, part)?.Tolerance is { Kind: not ToleranceKind.TwoSigma } t ? Camel(t.Kind) : ""));
                columns.Add((field.Name + ".source", part =>
                    Of(field, part) is { Source: not ReadingSource.DataSheet } r ? Camel(r.Source) : ""));
                columns.Add((field.Name + ".date", part =>
                    Of(field, part)?.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""));
            }
        }

        columns.RemoveAll(c => c.Name is not ("id" or "name") && parts.All(p => c.Cell(p).Length == 0));
        var text = new StringBuilder().AppendJoin(',', columns.Select(c => c.Name)).Append('\n');
        foreach (var part in parts)
        {
            text.AppendJoin(',', columns.Select(c => Quoted(c.Cell(part)))).Append('\n');
        }

        var lists = kind.Shape.Fields.Where(x => x.Kind is FieldKind.RecordList or FieldKind.TextList or FieldKind.Record);
        return new PartsCsvText(text.ToString(), [.. lists.SelectMany(field => parts
            .Where(part => field.Get(part) is System.Collections.IEnumerable list && list.Cast<object>().Any())
            .Select(part => $"{part.Id} / {field.Label}"))]);
    }

    private static Reading? Of(FieldShape field, Part part) => field.Get(part) as Reading;

    private static string Cell(FieldShape field, Part part) => field.Get(part) switch
    {
        null => "",
        bool yes => yes ? "yes" : "",
        Reading reading => DocumentWriter.WithUnit(reading.Value),
        Enum choice => Camel(choice),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        var text => text.ToString() ?? "",
    };

    private static string Camel(Enum value) => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private static string Quoted(string cell) =>
        !cell.AsSpan().ContainsAny(Special) && cell.Trim() == cell ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
