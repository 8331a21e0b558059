using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>Writes records by their shapes: declared order, two spaces, one reading a line, what is empty left out.</summary>
internal static class DocumentWriter
{
    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    private static readonly ConcurrentDictionary<Type, object> Blanks = new();

    public static string Write(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var text = new StringBuilder();
        string version = CarFile.Version.ToString(CultureInfo.InvariantCulture);
        text.Append("{\n  \"format\": ").Append(Quote(CarFile.Format)).Append(",\n  \"version\": ").Append(version);
        WriteFields(text, car, 1, first: false);
        return text.Append("\n}\n").ToString();
    }

    private static void WriteFields(StringBuilder text, object record, int depth, bool first)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            if (field.Get(record) is not { } value || IsEmpty(record, field, value))
            {
                continue;
            }

            text.Append(first ? "\n" : ",\n").Append(' ', depth * 2).Append(Quote(field.Name)).Append(": ");
            WriteValue(text, field, value, depth);
            first = false;
        }
    }

    private static void WriteValue(StringBuilder text, FieldShape field, object value, int depth)
    {
        switch (field.Kind)
        {
            case FieldKind.Reading:
                WriteReading(text, (Reading)value);
                break;
            case FieldKind.Record:
                WriteRecord(text, value, depth);
                break;
            case FieldKind.RecordList:
                WriteList(text, (IEnumerable)value, depth);
                break;
            case FieldKind.TextList:
                text.Append('[').AppendJoin(", ", ((IEnumerable<string>)value).Select(Quote)).Append(']');
                break;
            case FieldKind.Choice:
                text.Append(Quote(Camel(value)));
                break;
            case FieldKind.Text:
                text.Append(Quote((string)value));
                break;
            case FieldKind.Date:
                text.Append(Quote(((DateOnly)value).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
                break;
            case FieldKind.YesNo:
                text.Append((bool)value ? "true" : "false");
                break;
            default:
                text.Append(((IFormattable)value).ToString(value is double ? "R" : null, CultureInfo.InvariantCulture));
                break;
        }
    }

    private static void WriteRecord(StringBuilder text, object record, int depth)
    {
        text.Append('{');
        int before = text.Length;
        WriteFields(text, record, depth + 1, first: true);
        if (text.Length > before)
        {
            text.Append('\n').Append(' ', depth * 2);
        }

        text.Append('}');
    }

    private static void WriteList(StringBuilder text, IEnumerable list, int depth)
    {
        text.Append('[');
        bool first = true;
        foreach (var item in list)
        {
            text.Append(first ? "\n" : ",\n").Append(' ', (depth + 1) * 2);
            WriteRecord(text, item, depth + 1);
            first = false;
        }

        text.Append(first ? "" : "\n" + new string(' ', depth * 2)).Append(']');
    }

    /// <summary>A bare setting is written as its text; anything else as an object on one line.</summary>
    private static void WriteReading(StringBuilder text, Reading reading)
    {
        if (reading is { Source: ReadingSource.Setting, Tolerance: null, Date: null })
        {
            text.Append(Quote(WithUnit(reading.Value)));
            return;
        }

        text.Append("{ \"value\": ").Append(Quote(WithUnit(reading.Value)));
        if (reading.Tolerance is { } tolerance)
        {
            text.Append(", \"tolerance\": ").Append(Quote(WithUnit(tolerance.Amount)));
            if (tolerance.Kind != ToleranceKind.TwoSigma)
            {
                text.Append(", \"spread\": ").Append(Quote(Camel(tolerance.Kind)));
            }
        }

        text.Append(", \"source\": ").Append(Quote(Camel(reading.Source)));
        if (reading.Date is { } date)
        {
            text.Append(", \"date\": ").Append(Quote(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        }

        text.Append(" }");
    }

    /// <summary>
    /// What was typed. A bare number gets the unit it was taken in, because a file must not depend on the form it was typed into.
    /// </summary>
    public static string WithUnit(Quantity quantity)
    {
        if (!quantity.UnitAssumed || quantity.Unit.Symbol.Length == 0)
        {
            return quantity.Typed;
        }

        string full = $"{quantity.Typed} {quantity.Unit.Symbol}";
        return QuantityText.ParseTolerance(full, quantity.Dimension, "").Try(out var same) && same.Si.Equals(Math.Abs(quantity.Si))
            || QuantityText.Parse(full, quantity.Dimension, "").Try(out same) && same.Si.Equals(quantity.Si)
            ? full
            : quantity.Understood;
    }

    private static bool IsEmpty(object owner, FieldShape field, object value) => value switch
    {
        string s => s.Length == 0,
        bool b => !b,
        Reading => false,
        IEnumerable list => !list.Cast<object>().Any(),
        _ => field.Kind == FieldKind.Record && field.Get(Blank(owner.GetType())) is { } blank && SameText(value, blank),
    };

    /// <summary>A nested record that holds nothing beyond its defaults is left out: reading makes the same defaults.</summary>
    private static bool SameText(object record, object blank)
    {
        var shape = RecordShape.Of(record.GetType());
        return shape.Fields.All(field => (field.Get(record), field.Get(blank)) switch
        {
            (null, null) => true,
            (null, _) or (_, null) => false,
            ({ } a, { } b) when field.Kind == FieldKind.Record => SameText(a, b),
            (IEnumerable a, IEnumerable b) when field.Kind is FieldKind.RecordList or FieldKind.TextList =>
                !a.Cast<object>().Any() && !b.Cast<object>().Any(),
            ({ } a, { } b) => a.Equals(b),
        });
    }

    private static object Blank(Type type) => Blanks.GetOrAdd(type, t => RecordShape.Of(t).New());

    private static string Camel(object value) => JsonNamingPolicy.CamelCase.ConvertName(value.ToString()!);

    private static string Quote(string text) => "\"" + Encoder.Encode(text) + "\"";
}
