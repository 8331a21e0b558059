using System.Globalization;
using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Binds a JSON document to records by their shapes, and collects every problem on the way.</summary>
internal sealed partial class DocumentReader
{
    /// <summary>More than this many and the file is something else: the rest would not help anyone.</summary>
    public const int MostProblems = 200;

    /// <summary>Longest list. A shelf of thousands of parts of one kind is a catalogue, and every check would crawl.</summary>
    public const int MostItems = 2000;

    /// <summary>Longest text, characters: some pages of a note.</summary>
    public const int LongestText = 20_000;

    /// <summary>Longest id, characters: it is typed and shown in rows.</summary>
    public const int LongestId = 100;

    public List<Problem> Problems { get; } = [];

    private bool Full => Problems.Count >= MostProblems;

    public Car? ReadCar(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            Report("file", root, "an object", "A car file starts with { and ends with }.");
            return null;
        }

        var format = Only(root, "format");
        if (format is not { ValueKind: JsonValueKind.String } || Text(format.Value, "format") != CarFile.Format)
        {
            Problems.Add(new Problem("format", Shorten(format), CarFile.Format, "This is not a car file, or its first lines were lost."));
        }

        var version = Only(root, "version");
        if (version is not { ValueKind: JsonValueKind.Number }
            || version.Value.GetRawText() != CarFile.Version.ToString(CultureInfo.InvariantCulture))
        {
            Problems.Add(new Problem("version", Shorten(version), CarFile.Version.ToString(CultureInfo.InvariantCulture),
                "Open it with the program version that wrote it, or update this one."));
        }

        return Problems.Count > 0 ? null : (Car)ReadRecord(root, RecordShape.Of<Car>(), "", isRoot: true);
    }

    /// <summary>Null if the document has no such field; a second one is a problem.</summary>
    private JsonElement? Only(JsonElement root, string name)
    {
        JsonElement? found = null;
        foreach (var property in root.EnumerateObject().Where(x => NameOf(x) == name))
        {
            if (found is not null)
            {
                Report(name, property.Value, "once", "The field stands here twice: keep one.");
                break;
            }

            found = property.Value;
        }

        return found;
    }

    public object ReadRecord(JsonElement element, RecordShape shape, string path, bool isRoot = false)
    {
        var record = shape.New();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (Full)
            {
                break;
            }

            string name = NameOf(property);
            if (isRoot && (name is "format" or "version"))
            {
                continue;
            }

            if (!shape.ByName.TryGetValue(name, out var field))
            {
                Problems.Add(new Problem(Join(path, Shown(name)), Shorten(property.Value),
                    string.Join(", ", shape.Fields.Select(x => x.Name)), "Correct the name, or take the line out."));
                continue;
            }

            if (!seen.Add(name))
            {
                Problems.Add(
                    new Problem(Join(path, field.Label), Shorten(property.Value), "once", "The field stands here twice: keep one."));
                continue;
            }

            if (ReadValue(property.Value, field, Join(path, field.Label)) is { } value)
            {
                field.Set(record, value);
            }
        }

        foreach (var field in shape.Fields.Where(x => x.Words.Needed))
        {
            if (!seen.Contains(field.Name) && !Full)
            {
                Problems.Add(
                    new Problem(Join(path, field.Label), "", field.Allowed.Length > 0 ? field.Allowed : "some text", "Fill it in."));
            }
        }

        return record;
    }

    private object? ReadValue(JsonElement element, FieldShape field, string path)
    {
        switch (field.Kind)
        {
            case FieldKind.Text:
                return ReadText(element, field, path);
            case FieldKind.YesNo:
                return element.ValueKind is JsonValueKind.True or JsonValueKind.False ? element.GetBoolean()
                    : Report(path, element, "true or false", "Write true or false without quotes.");
            case FieldKind.Whole:
                return element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out int whole) && whole is >= 0 and <= 1000 ? whole
                    : Report(path, element, "0 to 1000", "Write a whole number without quotes.");
            case FieldKind.Number:
                return element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double number) && double.IsFinite(number)
                    ? number : Report(path, element, "a number", "Write a number without quotes.");
            case FieldKind.Money:
                return element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out decimal money) && money is >= 0 and
                    <= 1_000_000_000 ? money : Report(path, element, "0 to 1000000000", "Write the price as a number without quotes.");
            case FieldKind.Choice:
                return ReadChoice(element, field.ElementType, path, field.Allowed);
            case FieldKind.Date:
                return ReadDate(element, path);
            case FieldKind.Reading:
                return ReadReading(element, field, path);
            case FieldKind.Record:
                return element.ValueKind == JsonValueKind.Object ? ReadRecord(element, RecordShape.Of(field.ElementType), path)
                    : Report(path, element, "an object", "Write { ... } here.");
            default:
                return element.ValueKind == JsonValueKind.Array ? ReadList(element, field, path)
                    : Report(path, element, "a list", "Write [ ... ] here.");
        }
    }

    private object ReadList(JsonElement element, FieldShape field, string path)
    {
        int count = element.GetArrayLength();
        if (count > MostItems)
        {
            Problems.Add(new Problem(path, $"{count} entries", $"at most {MostItems} entries", "Take out what no build uses."));
            return Array.CreateInstance(field.ElementType, 0);
        }

        var list = Array.CreateInstance(field.ElementType, count);
        int i = 0;
        foreach (var item in element.EnumerateArray())
        {
            if (Full)
            {
                break;
            }

            string itemPath = $"{path} {i + 1}";
            object? value = field.Kind == FieldKind.TextList
                ? ReadText(item, field, itemPath)
                : item.ValueKind == JsonValueKind.Object ? ReadRecord(item, RecordShape.Of(field.ElementType), itemPath)
                : Report(itemPath, item, "an object", "Write { ... } here.");
            list.SetValue(value, i++);
        }

        return list;
    }

    /// <summary>Text without characters that cannot be seen; an id or a name that is needed has something to see.</summary>
    private object? ReadText(JsonElement element, FieldShape field, string path)
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            return Report(path, element, "text in quotes", "Put it in quotes.");
        }

        if (Text(element, path) is not { } text)
        {
            return null;
        }

        bool isId = field.Name == "id";
        if (text.Length > (isId ? LongestId : LongestText))
        {
            return Report(path, element, $"at most {(isId ? LongestId : LongestText)} characters", "Shorten it.");
        }

        if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')))
        {
            return Report(path, element, "text without control characters", "Type it anew.");
        }

        if (field.Words.Needed && string.IsNullOrWhiteSpace(text))
        {
            return Report(path, element, "some text", "Fill it in.");
        }

        return isId && text != text.Trim() ? Report(path, element, "no blanks before and behind it", "Take the blanks out.") : text;
    }

    private object? ReadChoice(JsonElement element, Type type, string path, string allowed)
    {
        if (element.ValueKind == JsonValueKind.String)
        {
            string? text = Text(element, path);
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

    private object? Report(string path, JsonElement given, string allowed, string cure)
    {
        Problems.Add(new Problem(path, Shorten(given), allowed, cure));
        return null;
    }

    private static string Join(string path, string name) => path.Length == 0 ? name : path + " / " + name;

    private static string Shorten(JsonElement? element) => element is { } there ? Shorten(there.GetRawText()) : "";

    private static string Shorten(string raw) => raw.Length <= 60 ? raw : string.Concat(raw.AsSpan(0, 57), "...");

    /// <summary>An unknown name for a message, which must show something even for an empty one.</summary>
    private static string Shown(string name) => string.IsNullOrWhiteSpace(name) ? $"\"{Shorten(name)}\"" : Shorten(name);

    /// <summary>A name that no field has stands for one that JSON can spell but text cannot hold.</summary>
    private static string NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return "\uFFFD";
        }
    }

    /// <summary>
    /// Text of a JSON string; null, with a problem, for half a character pair, which JSON can spell but text cannot hold.
    /// </summary>
    private string? Text(JsonElement element, string path)
    {
        try
        {
            return element.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            Report(path, element, "whole characters", "A \\uD800 to \\uDFFF stands alone: type the text anew.");
            return null;
        }
    }
}
