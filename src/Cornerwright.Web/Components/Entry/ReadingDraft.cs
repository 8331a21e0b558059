using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Entry;

/// <summary>A reading while it is being typed: texts as they stand in the boxes.</summary>
public sealed record ReadingDraft
{
    public string Value { get; init; } = "";
    public string Tolerance { get; init; } = "";
    public ToleranceKind Spread { get; init; } = ToleranceKind.TwoSigma;
    public ReadingSource Source { get; init; } = ReadingSource.Tape;
    public DateOnly? Date { get; init; }

    /// <summary>Nothing typed: the reading is taken out.</summary>
    public bool Empty => string.IsNullOrWhiteSpace(Value);

    public static ReadingDraft Of(Reading? reading, ReadingSource usual) => reading is null
        ? new ReadingDraft { Source = usual }
        : new ReadingDraft
        {
            Value = reading.Typed,
            Tolerance = reading.Tolerance?.Amount.Typed ?? "",
            Spread = reading.Spread,
            Source = reading.Source,
            Date = reading.Date,
        };

    /// <summary>
    /// The reading, or every problem with it. A bare number gets the unit that stands beside the field, visibly: the unit
    /// becomes part of the text.
    /// </summary>
    public Checked<Reading> Read(FieldShape field, string path)
    {
        ArgumentNullException.ThrowIfNull(field);
        var dimension = field.Words.Dimension;
        string value = WithUnit(Value, field, text => QuantityText.Parse(text, dimension, path, field.Unit!));
        string tolerance = WithUnit(Tolerance, field, text =>
            QuantityText.ParseTolerance(text, dimension, path + " / tolerance", field.Unit));
        var read = Reading.Parse(path, dimension, value, tolerance, Spread, Source, Date);
        if (read.Ok && field.RangeProblem(path, read.Value) is { } problem)
        {
            return Checked<Reading>.Wrong(value == Value
                ? problem
                : problem with { Given = Value,
                    Cure = $"No unit was typed, so it was taken as {value}: check the number, or type its unit." });
        }

        return read;
    }

    /// <summary>"341 mm ± 2 mm", in the field's own unit: the number that is used, and its doubt.</summary>
    public static string Used(FieldShape field, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(reading);
        string number = Plain(field.Unit!.FromSi(reading.Si));
        string unit = field.Unit.Symbol;
        double amount = reading.Tolerance?.Amount.Si ?? (2 * reading.StandardDeviation);
        return With(number, unit) + (amount > 0 ? " ± " + With(Plain(field.Unit.FromSi(amount)), unit) : "");
    }

    /// <summary>Degrees and per cent stand at the number, other units behind a blank.</summary>
    private static string With(string number, string unit) => unit is "" or "°" or "%" ? number + unit : number + " " + unit;

    /// <summary>Six significant digits, no trailing zeros, never "-0".</summary>
    private static string Plain(double number)
    {
        string text = number.ToString("G6", System.Globalization.CultureInfo.InvariantCulture);
        return decimal.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture,
            out decimal plain)
            ? plain.ToString("0.##########", System.Globalization.CultureInfo.InvariantCulture)
            : text;
    }

    private static string WithUnit(string text, FieldShape field, Func<string, Checked<Quantity>> parse) =>
        !string.IsNullOrWhiteSpace(text) && field.Unit is { Symbol.Length: > 0 } unit
            && parse(text) is { Ok: true, Value.UnitAssumed: true }
            ? text.Trim() + " " + unit.Symbol
            : text;
}
