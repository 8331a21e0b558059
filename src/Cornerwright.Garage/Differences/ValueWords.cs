using System.Globalization;
using System.Text;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Differences;

/// <summary>A field's value as people read it in a list of changes.</summary>
internal static class ValueWords
{
    /// <summary>Empty for a value that is not there.</summary>
    public static string Of(FieldShape field, object? value) => (field.Kind, value) switch
    {
        (_, null) => "",
        (FieldKind.YesNo, bool yes) => yes ? "yes" : "no",
        (FieldKind.Choice, _) => Spaced(value.ToString()!),
        (FieldKind.TextList, IEnumerable<string> texts) => string.Join(", ", texts),
        (FieldKind.Reading, Reading reading) => Full(reading),
        (FieldKind.Date, DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        (FieldKind.Number, double number) => number.ToString("R", CultureInfo.InvariantCulture),
        (_, IFormattable number) => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    /// <summary>Both readings, with tolerance, source and date only where those differ.</summary>
    public static (string Before, string After) OfBoth(Reading before, Reading after) =>
        before.Typed != after.Typed && Rest(before) == Rest(after) ? (before.Typed, after.Typed) : (Full(before), Full(after));

    private static string Full(Reading reading) => reading.Typed + Rest(reading);

    private static string Rest(Reading reading)
    {
        var text = new StringBuilder();
        if (reading.Tolerance is { } tolerance)
        {
            string amount = tolerance.Amount.Typed;
            text.Append(amount.StartsWith('±') ? " " : " ±").Append(amount);
            text.Append(tolerance.Kind == ToleranceKind.HalfRange ? " at most" : "");
        }

        text.Append(" (").Append(Spaced(reading.Source.ToString()));
        if (reading.Date is { } date)
        {
            text.Append(", ").Append(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }

        return text.Append(')').ToString();
    }

    /// <summary>"ClosedAndGround" becomes "closed and ground".</summary>
    private static string Spaced(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        foreach (char c in name)
        {
            text.Append(char.IsUpper(c) && text.Length > 0 ? " " : "").Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }
}
