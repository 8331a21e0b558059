using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Readings;

/// <summary>One number as it was typed, with its tolerance, where it came from and when.</summary>
/// <param name="Value">Keeps the typed text; SI inside.</param>
/// <param name="Tolerance">Null when none was typed: then <see cref="DefaultTolerances"/> speaks, and says so.</param>
public sealed record Reading(Quantity Value, Tolerance? Tolerance, ReadingSource Source, DateOnly? Date = null)
{
    /// <summary>SI unit of the quantity.</summary>
    public double Si => Value.Si;

    public string Typed => Value.Typed;

    /// <summary>True when the tolerance comes from the source's habit and not from the user.</summary>
    public bool ToleranceAssumed => Tolerance is null && Source != ReadingSource.Setting;

    /// <summary>SI unit of the quantity, 0 for what is set and not measured.</summary>
    public double StandardDeviation =>
        Tolerance?.StandardDeviation ?? DefaultTolerances.StandardDeviation(Source, Value.Dimension, Value.Si);

    public ToleranceKind Spread => Tolerance?.Kind ?? ToleranceKind.TwoSigma;

    /// <summary>A reading from text; every problem with value and tolerance at once.</summary>
    public static Checked<Reading> Parse(
        string field,
        Dimension dimension,
        string value,
        string? tolerance = null,
        ToleranceKind kind = ToleranceKind.TwoSigma,
        ReadingSource source = ReadingSource.Tape,
        DateOnly? date = null)
    {
        var parsed = QuantityText.Parse(value, dimension, field);
        var problems = parsed.Problems.ToList();
        Tolerance? parsedTolerance = null;
        if (!string.IsNullOrWhiteSpace(tolerance))
        {
            var amount = QuantityText.ParseTolerance(tolerance, dimension, field + " / tolerance");
            problems.AddRange(amount.Problems);
            parsedTolerance = amount.Ok ? new Tolerance(amount.Value, kind) : null;
        }

        return problems.Count > 0
            ? Checked<Reading>.Wrong(problems)
            : Checked<Reading>.From(new Reading(parsed.Value, parsedTolerance, source, date));
    }

    /// <summary>For code that knows its text is right; the user's text goes through <see cref="Parse"/>.</summary>
    /// <exception cref="InvalidOperationException">The text is not a quantity of that dimension.</exception>
    public static Reading Of(string value, Dimension dimension, string? tolerance = null, ReadingSource source = ReadingSource.Setting) =>
        Parse(value, dimension, value, tolerance, ToleranceKind.TwoSigma, source).Value;
}
