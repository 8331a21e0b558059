using System.Globalization;
using System.Text.Json;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Readings: a text for a setting, an object on one line for what was measured.</summary>
internal sealed partial class DocumentReader
{
    private const string DateForm = "yyyy-MM-dd";

    private static readonly string Sources =
        string.Join(", ", Enum.GetNames<ReadingSource>().Select(JsonNamingPolicy.CamelCase.ConvertName));

    private static readonly string Spreads =
        string.Join(", ", Enum.GetNames<ToleranceKind>().Select(JsonNamingPolicy.CamelCase.ConvertName));

    private Reading? ReadReading(JsonElement element, FieldShape field, string path)
    {
        int before = Problems.Count;
        var typed = new TypedReading();
        switch (element.ValueKind)
        {
            case JsonValueKind.String:
                typed.Value = Text(element, path);
                break;
            case JsonValueKind.Object:
                ReadPieces(element, path, typed);
                break;
            default:
                Report(path, element, field.Allowed, "Write a reading as text with its unit, in quotes.");
                break;
        }

        if (Problems.Count > before)
        {
            return null;
        }

        var parsed = Reading.Parse(path, field.Words.Dimension, typed.Value ?? "", typed.Tolerance, typed.Spread ?? ToleranceKind.TwoSigma,
            typed.Source, typed.Date);
        Problems.AddRange(parsed.Problems);
        if (parsed.Ok && field.RangeProblem(path, parsed.Value) is { } problem)
        {
            Problems.Add(problem);
        }

        return Problems.Count > before ? null : parsed.Value;
    }

    private DateOnly? ReadDate(JsonElement element, string path)
    {
        if (element.ValueKind == JsonValueKind.String
            && DateOnly.TryParseExact(Text(element, path), DateForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        Report(path, element, "a date such as 2026-05-31", "Write year, month and day, in quotes.");
        return null;
    }

    private void ReadPieces(JsonElement element, string path, TypedReading typed)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var piece in element.EnumerateObject())
        {
            if (Full)
            {
                return;
            }

            string name = NameOf(piece);
            string inner = Join(path, Shown(name));
            if (!seen.Add(name))
            {
                Report(inner, piece.Value, "once", "The field stands here twice: keep one.");
            }
            else
            {
                ReadPiece(name, piece.Value, inner, typed);
            }
        }

        if (typed.Spread is not null && string.IsNullOrWhiteSpace(typed.Tolerance))
        {
            Problems.Add(new Problem(Join(path, "tolerance"), typed.Tolerance ?? "", "an amount beside every spread, e.g. 0.5 mm",
                "Add the tolerance, or take the spread out."));
        }
    }

    private void ReadPiece(string name, JsonElement value, string path, TypedReading typed)
    {
        bool isText = value.ValueKind == JsonValueKind.String;
        switch (name)
        {
            case "value" when isText:
                typed.Value = Text(value, path);
                break;
            case "tolerance" when isText:
                typed.Tolerance = Text(value, path);
                if (string.IsNullOrWhiteSpace(typed.Tolerance))
                {
                    Report(path, value, "an amount, e.g. 0.5 mm", "Fill it in, or take it out: then the source's habit counts.");
                }

                break;
            case "spread":
                typed.Spread = ReadChoice(value, typeof(ToleranceKind), path, Spreads) as ToleranceKind?;
                break;
            case "source":
                typed.Source = ReadChoice(value, typeof(ReadingSource), path, Sources) as ReadingSource? ?? typed.Source;
                break;
            case "date" when isText
                && DateOnly.TryParseExact(Text(value, path), DateForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date):
                typed.Date = date;
                break;
            default:
                Report(path, value, "value, tolerance and date as text (date as 2026-05-31), spread, source",
                    "Correct the name or the kind of the value.");
                break;
        }
    }

    /// <summary>The pieces of one reading while they are gathered.</summary>
    private sealed class TypedReading
    {
        public string? Value { get; set; }
        public string? Tolerance { get; set; }
        public ToleranceKind? Spread { get; set; }
        public ReadingSource Source { get; set; } = ReadingSource.Setting;
        public DateOnly? Date { get; set; }
    }
}
