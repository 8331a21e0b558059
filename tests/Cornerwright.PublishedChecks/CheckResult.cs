using System.Globalization;

namespace Cornerwright.PublishedChecks;

/// <summary>What our code answers: a number in SI, or words.</summary>
public readonly record struct CheckValue(double Si, string? Words)
{
    public static implicit operator CheckValue(double si) => new(si, null);

    public static implicit operator CheckValue(string words) => new(double.NaN, words);
}

/// <summary>Expected against got.</summary>
/// <param name="Check">The row.</param>
/// <param name="Got">Our answer as printed: two digits more than the source prints, so that it is the same on every machine.</param>
/// <param name="Holds">Whether it lies within the tolerance; NaN never does.</param>
public sealed record CheckResult(Check Check, string Got, bool Holds)
{
    public static CheckResult Of(Check check)
    {
        if (!Evaluators.All.TryGetValue(check.Evaluate, out var evaluate))
        {
            throw new InvalidDataException($"{check.Id}: no evaluator \"{check.Evaluate}\".");
        }

        return Compare(check, evaluate(check, new CheckInputs(check.Inputs)));
    }

    public static CheckResult Compare(Check check, CheckValue value)
    {
        if (!double.TryParse(check.Expected, NumberStyles.Float, CultureInfo.InvariantCulture, out double expected))
        {
            return new(check, value.Words ?? "no words", value.Words == check.Expected);
        }

        double got = value.Si / CheckUnits.Factor(check.Unit);
        double allowed = Allowed(check.Tolerance, expected);
        bool holds = value.Words is null && Math.Abs(got - expected) <= allowed;
        return new(check, value.Words ?? Printed(got, check.Expected), holds);
    }

    /// <summary>Largest difference in the row's unit. "exact" leaves room for the rounding of doubles alone.</summary>
    public static double Allowed(string tolerance, double expected)
    {
        double rounding = 1e-9 * Math.Abs(expected);
        if (tolerance == "exact")
        {
            return rounding;
        }

        bool relative = tolerance.EndsWith(" %", StringComparison.Ordinal);
        string number = relative ? tolerance[1..^2] : tolerance[1..];
        if (tolerance[0] != '±' || !double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double half)
            || !(half > 0))
        {
            throw new InvalidDataException($"Not a tolerance: \"{tolerance}\".");
        }

        // A difference of exactly the tolerance holds, whatever the last bit says; that bit matters to no row finer than 1e-9.
        return relative ? half / 100 * Math.Abs(expected) : half * (1 + 1e-9);
    }

    private static string Printed(double got, string expected)
    {
        int digits = expected.TrimStart('-', '0', '.').Count(char.IsAsciiDigit);
        return got.ToString("G" + Math.Clamp(digits + 2, 4, 13), CultureInfo.InvariantCulture);
    }
}
