using System.Globalization;
using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Binds a JSON document to records by their shapes, and collects every problem on the way.</summary>
internal sealed class DocumentReader
{
    /// <summary>More than this many and the file is something else: the rest would not help anyone.</summary>
    private const int MostProblems = 200;

    public List<Problem> Problems { get; } = [];

    public Car? ReadCar(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            Report("file", root, "an object", "A car file starts with { and ends with }.");
            return null;
        }

        string format = root.TryGetProperty("format", out var f) && f.ValueKind == JsonValueKind.String ? Text(f) : "";
        int version = root.TryGetProperty("version", out var v) && v.ValueKind == JsonValueKind.Number && v.TryGetInt32(out int n) ? n : 0;
        if (format != CarFile.Format)
        {
            Problems.Add(new Problem("format", format, CarFile.Format, "This is not a car file, or its first lines were lost."));
        }

        if (version != CarFile.Version)
        {
            Problems.Add(new Problem("version", version.ToString(CultureInfo.InvariantCulture), CarFile.Version.ToString(CultureInfo.InvariantCulture), "Open it with the program version that wrote it, or update this one."));
        }

        return Problems.Count > 0 ? null : (Car)ReadRecord(root, RecordShape.Of<Car>(), "", isRoot: true);
    }

    public object ReadRecord(JsonElement element, RecordShape shape, string path, bool isRoot = false)
    {
        var record = shape.New();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (Problems.Count >= MostProblems)
            {
                break;
            }

            string name = property.Name;
            if (isRoot && (name is "format" or "version"))
            {
                continue;
            }

            if (!shape.ByName.TryGetValue(name, out var field))
            {
                Problems.Add(new Problem(Join(path, name), Shorten(property.Value), string.Join(", ", shape.Fields.Select(x => x.Name)), "Correct the name, or take the line out."));
                continue;
            }

            if (!seen.Add(name))
            {
                Problems.Add(new Problem(Join(path, field.Label), Shorten(property.Value), "once", "The field stands here twice: keep one."));
                continue;
            }

            if (ReadValue(property.Value, field, Join(path, field.Label)) is { } value)
            {
                field.Set(record, value);
            }
        }

        foreach (var field in shape.Fields.Where(x => x.Words.Needed))
        {
            if (field.Get(record) is null or "" && Problems.Count < MostProblems)
            {
                Problems.Add(new Problem(Join(path, field.Label), "", field.Allowed.Length > 0 ? field.Allowed : "some text", "Fill it in."));
            }
        }

        return record;
    }

    private object? ReadValue(JsonElement element, FieldShape field, string path)
    {
        switch (field.Kind)
        {
            case FieldKind.Text:
                return element.ValueKind == JsonValueKind.String ? Text(element) : Report(path, element, "text in quotes", "Put it in quotes.");
            case FieldKind.YesNo:
                return element.ValueKind is JsonValueKind.True or JsonValueKind.False ? element.GetBoolean() : Report(path, element, "true or false", "Write true or false without quotes.");
            case FieldKind.Whole:
                return element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out int whole) && whole is >= 0 and <= 1000 ? whole : Report(path, element, "0 to 1000", "Write a whole number without quotes.");
            case FieldKind.Number:
                return element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double number) && double.IsFinite(number) ? number : Report(path, element, "a number", "Write a number without quotes.");
            case FieldKind.Money:
                return element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out decimal money) && money is >= 0 and <= 1_000_000_000 ? money : Report(path, element, "0 to 1000000000", "Write the price as a number without quotes.");
            case FieldKind.Choice:
                return ReadChoice(element, field.ElementType, path, field.Allowed);
            case FieldKind.Reading:
                return ReadReading(element, field, path);
            case FieldKind.Record:
                return element.ValueKind == JsonValueKind.Object ? ReadRecord(element, RecordShape.Of(field.ElementType), path) : Report(path, element, "an object", "Write { ... } here.");
            default:
                return element.ValueKind == JsonValueKind.Array ? ReadList(element, field, path) : Report(path, element, "a list", "Write [ ... ] here.");
        }
    }

    private object ReadList(JsonElement element, FieldShape field, string path)
    {
        int count = element.GetArrayLength();
        var list = Array.CreateInstance(field.ElementType, count);
        int i = 0;
        foreach (var item in element.EnumerateArray())
        {
            if (Problems.Count >= MostProblems)
            {
                break;
            }

            string itemPath = $"{path} {i + 1}";
            object? value = field.Kind == FieldKind.TextList
                ? item.ValueKind == JsonValueKind.String ? Text(item) : Report(itemPath, item, "text in quotes", "Put it in quotes.")
                : item.ValueKind == JsonValueKind.Object ? ReadRecord(item, RecordShape.Of(field.ElementType), itemPath) : Report(itemPath, item, "an object", "Write { ... } here.");
            list.SetValue(value, i++);
        }

        return list;
    }

    private object? ReadChoice(JsonElement element, Type type, string path, string allowed)
    {
        if (element.ValueKind == JsonValueKind.String)
        {
            string text = Text(element);
            foreach (var value in Enum.GetValues(type))
            {
                if (string.Equals(JsonNamingPolicy.CamelCase.ConvertName(value.ToString()!), text, StringComparison.Ordinal))
                {
                    return value;
                }
            }
        }

        return Report(path, element, allowed, "Choose one of these.");
    }

    private Reading? ReadReading(JsonElement element, FieldShape field, string path)
    {
        string value = "", tolerance = "";
        var spread = ToleranceKind.TwoSigma;
        var source = ReadingSource.Setting;
        DateOnly? date = null;
        int before = Problems.Count;
        if (element.ValueKind == JsonValueKind.String)
        {
            value = Text(element);
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var p in element.EnumerateObject())
            {
                string inner = Join(path, p.Name);
                if (!seen.Add(p.Name))
                {
                    Report(inner, p.Value, "once", "The field stands here twice: keep one.");
                    continue;
                }

                switch (p.Name)
                {
                    case "value" when p.Value.ValueKind == JsonValueKind.String: value = Text(p.Value); break;
                    case "tolerance" when p.Value.ValueKind == JsonValueKind.String: tolerance = Text(p.Value); break;
                    case "spread": spread = ReadChoice(p.Value, typeof(ToleranceKind), inner, "twoSigma, halfRange") is ToleranceKind k ? k : spread; break;
                    case "source": source = ReadChoice(p.Value, typeof(ReadingSource), inner, string.Join(", ", Enum.GetNames<ReadingSource>().Select(JsonNamingPolicy.CamelCase.ConvertName))) is ReadingSource s ? s : source; break;
                    case "date" when p.Value.ValueKind == JsonValueKind.String && DateOnly.TryParseExact(Text(p.Value), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var d): date = d; break;
                    default: Report(inner, p.Value, "value, tolerance and date as text (date as 2026-05-31), spread, source", "Correct the name or the kind of the value."); break;
                }
            }
        }
        else
        {
            Report(path, element, field.Allowed, "Write a reading as text with its unit, in quotes.");
        }

        if (Problems.Count > before)
        {
            return null;
        }

        if (Reading.Parse(path, field.Words.Dimension, value, tolerance, spread, source, date) is not { Ok: true } parsed)
        {
            Problems.AddRange(Reading.Parse(path, field.Words.Dimension, value, tolerance, spread, source, date).Problems);
            return null;
        }

        if (field.RangeProblem(path, parsed.Value) is { } problem)
        {
            Problems.Add(problem);
            return null;
        }

        return parsed.Value;
    }

    private object? Report(string path, JsonElement given, string allowed, string cure)
    {
        Problems.Add(new Problem(path, Shorten(given), allowed, cure));
        return null;
    }

    private static string Join(string path, string name) => path.Length == 0 ? name : path + " / " + name;

    private static string Shorten(JsonElement element)
    {
        string raw = element.GetRawText();
        return raw.Length <= 60 ? raw : raw[..57] + "...";
    }

    /// <summary>Text of a JSON string; lone surrogates, which JSON can spell but text cannot hold, become the replacement mark.</summary>
    private static string Text(JsonElement element)
    {
        try
        {
            return element.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            return "\uFFFD";
        }
    }
}
