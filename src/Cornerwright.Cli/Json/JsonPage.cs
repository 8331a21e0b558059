using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Cli.Json;

/// <summary>The one way in which documents for scripts are laid out, and numbers in them rounded.</summary>
/// <remarks>
/// Platforms differ in the last digits of a computed number, so none is printed with all of them: the shown value is rounded as for
/// people, the SI value to nine significant digits.
/// </remarks>
internal static class JsonPage
{
    private const int SignificantDigits = 9;

    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <param name="kind">Stands in "format", so that a script can tell documents apart.</param>
    public static string Write(string kind, Action<Utf8JsonWriter> fields)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Layout))
        {
            writer.WriteStartObject();
            writer.WriteString("format", "cornerwright-" + kind);
            writer.WriteNumber("version", 1);
            fields(writer);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    public static void List<T>(this Utf8JsonWriter writer, string name, IEnumerable<T> items, Action<T> each)
    {
        writer.WriteStartArray(name);
        foreach (var item in items)
        {
            each(item);
        }

        writer.WriteEndArray();
    }

    public static void Objects<T>(this Utf8JsonWriter writer, string name, IEnumerable<T> items, Action<T> fields) =>
        writer.List(name, items, item =>
        {
            writer.WriteStartObject();
            fields(item);
            writer.WriteEndObject();
        });

    public static void Texts(this Utf8JsonWriter writer, string name, IEnumerable<string> items) =>
        writer.List(name, items, writer.WriteStringValue);

    /// <summary>{ "value": 4.1, "unit": "mm", "si": 0.00412345678 } or null.</summary>
    public static void Measure(this Utf8JsonWriter writer, string name, Measure? measure)
    {
        if (measure is not { } m)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.WritePropertyName("value");
        writer.WriteRawValue(m.Number);
        writer.WriteString("unit", m.Unit.Symbol);
        writer.Number("si", m.Si);
        writer.WriteEndObject();
    }

    /// <summary>A number to nine significant digits; null where there is none.</summary>
    public static void Number(this Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, Rounded(number));
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    public static void Text(this Utf8JsonWriter writer, string name, string? value)
    {
        if (value is null)
        {
            writer.WriteNull(name);
        }
        else
        {
            writer.WriteString(name, value);
        }
    }

    private static double Rounded(double number)
    {
        if (number == 0 || !double.IsFinite(number))
        {
            // Not finite is our own bug: the writer throws, rather than a script reading nonsense.
            return number == 0 ? 0 : number;
        }

        return double.Parse(number.ToString("E" + (SignificantDigits - 1), System.Globalization.CultureInfo.InvariantCulture),
            System.Globalization.CultureInfo.InvariantCulture);
    }
}
