using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>The JSON Schema of the file format, made from the same shapes that read and write it.</summary>
/// <remarks>
/// It says what kind of value stands where. What only arithmetic shows (a range, an id that must exist) is in the
/// descriptions and is checked by <see cref="CarFile.Read(string)"/>.
/// Source: JSON Schema, draft 2020-12, https://json-schema.org/draft/2020-12.
/// </remarks>
public static class CarSchema
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The whole schema; docs/cornerwright-car.schema.json is this text.</summary>
    public static string Write()
    {
        var definitions = new SortedDictionary<string, JsonObject>(StringComparer.Ordinal) { ["reading"] = ReadingDefinition() };
        var properties = new JsonObject
        {
            ["format"] = new JsonObject { ["const"] = CarFile.Format },
            ["version"] = new JsonObject { ["const"] = CarFile.Version },
        };
        var root = Record(RecordShape.Of<Car>(), properties, ["format", "version"], definitions);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "A car with its readings, parts and builds",
        };
        foreach (var (name, value) in root)
        {
            schema[name] = value?.DeepClone();
        }

        schema["$defs"] = new JsonObject(definitions.Select(x => KeyValuePair.Create<string, JsonNode?>(x.Key, x.Value)));
        return schema.ToJsonString(Layout) + "\n";
    }

    private static JsonObject Record(
        RecordShape shape, JsonObject properties, List<string> required, SortedDictionary<string, JsonObject> definitions)
    {
        foreach (var field in shape.Fields)
        {
            properties[field.Name] = Field(field, definitions);
        }

        required.AddRange(shape.Fields.Where(x => x.Words.Needed).Select(x => x.Name));
        var record = new JsonObject { ["type"] = "object", ["properties"] = properties };
        if (required.Count > 0)
        {
            record["required"] = new JsonArray([.. required.Select(x => JsonValue.Create(x))]);
        }

        record["additionalProperties"] = false;
        return record;
    }

    private static JsonObject Field(FieldShape field, SortedDictionary<string, JsonObject> definitions)
    {
        var schema = field.Kind switch
        {
            FieldKind.Text => Text(field),
            FieldKind.TextList => List(new JsonObject { ["type"] = "string", ["maxLength"] = DocumentReader.LongestText }),
            FieldKind.YesNo => new JsonObject { ["type"] = "boolean" },
            FieldKind.Whole => new JsonObject { ["type"] = "integer", ["minimum"] = 0, ["maximum"] = 1000 },
            FieldKind.Number => new JsonObject { ["type"] = "number" },
            FieldKind.Money => new JsonObject { ["type"] = "number", ["minimum"] = 0, ["maximum"] = 1_000_000_000 },
            FieldKind.Choice => Choice(field.ElementType),
            FieldKind.Date => new JsonObject { ["type"] = "string", ["format"] = "date", ["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" },
            FieldKind.Reading => Reference("reading"),
            FieldKind.Record => Reference(Define(field.ElementType, definitions)),
            _ => List(Reference(Define(field.ElementType, definitions))),
        };
        schema["title"] = field.Label;
        if (Description(field) is { Length: > 0 } words)
        {
            schema["description"] = words;
        }

        return schema;
    }

    private static JsonObject Text(FieldShape field)
    {
        var text = new JsonObject { ["type"] = "string",
            ["maxLength"] = field.Name == "id" ? DocumentReader.LongestId : DocumentReader.LongestText };
        if (field.Words.Needed)
        {
            text["pattern"] = "\\S";
        }

        return text;
    }

    private static JsonObject List(JsonObject items) =>
        new() { ["type"] = "array", ["items"] = items, ["maxItems"] = DocumentReader.MostItems };

    private static JsonObject Reference(string name) => new() { ["$ref"] = "#/$defs/" + name };

    private static JsonObject Choice(Type type) =>
        new() { ["enum"] = new JsonArray(
            [.. Enum.GetNames(type).Select(x => JsonValue.Create(JsonNamingPolicy.CamelCase.ConvertName(x)))]) };

    private static string Define(Type type, SortedDictionary<string, JsonObject> definitions)
    {
        string name = JsonNamingPolicy.CamelCase.ConvertName(type.Name);
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = [];   // taken before going down, so that a type that holds itself would end
            definitions[name] = Record(RecordShape.Of(type), [], [], definitions);
        }

        return name;
    }

    private static string Description(FieldShape field)
    {
        string range = field.Kind == FieldKind.Reading
            ? $"{field.Words.Dimension.ToString().ToLower(CultureInfo.InvariantCulture)}, {field.Allowed}."
            : "";
        string refers = field.Words.RefersTo.Length > 0
            ? $"An id of {field.Words.RefersTo.Replace(",", " or ", StringComparison.Ordinal)}." : "";
        return string.Join(" ", new[] { range, refers, field.Words.How }.Where(x => x.Length > 0));
    }

    private static JsonObject ReadingDefinition() => new()
    {
        ["title"] = "A reading as it was typed, with its unit",
        ["description"] = "A text alone is a setting; an object says where the reading comes from and how far it may be off.",
        ["oneOf"] = new JsonArray(
            Typed(),
            new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject
                {
                    ["value"] = Typed(),
                    ["tolerance"] = Typed(),
                    ["spread"] = Choice(typeof(ToleranceKind)),
                    ["source"] = Choice(typeof(ReadingSource)),
                    ["date"] = new JsonObject { ["type"] = "string", ["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" },
                },
                ["required"] = new JsonArray("value"),
                ["dependentRequired"] = new JsonObject { ["spread"] = new JsonArray("tolerance") },
                ["additionalProperties"] = false,
            }),
    };

    private static JsonObject Typed() => new() { ["type"] = "string", ["pattern"] = "[0-9½¼¾⅛⅜⅝⅞⅓⅔⅙⅚⅕⅖⅗⅘]", ["maxLength"] = 64 };
}
