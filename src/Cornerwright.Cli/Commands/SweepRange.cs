using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Cli.Commands;

/// <summary>Values as a person types them for a sweep: "-60..60/5", "0, 10, 20", "15 mm".</summary>
internal static class SweepRange
{
    private const int MostValues = 10_000;

    /// <summary>SI values in the order typed.</summary>
    /// <param name="typed">Values with commas between, or from..to/step; null gives the fallback.</param>
    /// <param name="fallback">What is taken when nothing is typed; null for no values.</param>
    /// <param name="unit">Of bare numbers.</param>
    /// <param name="option">The option's name.</param>
    /// <param name="least">Smallest allowed, in the unit.</param>
    /// <param name="most">Largest allowed, in the unit.</param>
    public static Checked<IReadOnlyList<double>> Parse(string? typed, string? fallback, Unit unit, string option, double least, double most)
    {
        string? text = string.IsNullOrWhiteSpace(typed) ? fallback : typed;
        if (text is null)
        {
            return Checked<IReadOnlyList<double>>.From([]);
        }

        var problems = new List<Problem>();
        var values = new List<double>();
        foreach (string part in text.Split(','))
        {
            Add(values, problems, part.Trim(), unit, option);
        }

        var (low, high) = (unit.ToSi(least), unit.ToSi(most));
        const double Slack = 1e-9;
        if (problems.Count == 0 && values.Find(v => !(v >= low - Slack && v <= high + Slack)) is var outside
            && values.Exists(v => !(v >= low - Slack && v <= high + Slack)))
        {
            problems.Add(new Problem(option, FormattableString.Invariant($"{unit.FromSi(outside):0.###} {unit.Symbol}"),
                FormattableString.Invariant($"{least} to {most} {unit.Symbol}"), "Choose a smaller range."));
        }

        return problems.Count > 0 ? Checked<IReadOnlyList<double>>.Wrong(problems) : Checked<IReadOnlyList<double>>.From(values);
    }

    private static void Add(List<double> values, List<Problem> problems, string part, Unit unit, string option)
    {
        string[] ends = part.Split("..");
        if (ends.Length == 1)
        {
            if (Number(part, unit, option, problems) is { } single)
            {
                values.Add(single);
            }

            return;
        }

        string[] toAndStep = ends[1].Split('/');
        if (ends.Length != 2 || toAndStep.Length != 2)
        {
            problems.Add(new Problem(option, part, "from..to/step, as -60..60/5", "Write both ends and the step."));
            return;
        }

        double? from = Number(ends[0], unit, option, problems), to = Number(toAndStep[0], unit, option, problems),
            step = Number(toAndStep[1], unit, option, problems);
        if (from is not { } a || to is not { } b || step is not { } s)
        {
            return;
        }

        // A whole number of steps, so that both directions and decimal steps give the values that were meant.
        double count = Math.Abs(b - a) / Math.Abs(s);
        if (!(Math.Abs(s) > 0) || !(count <= MostValues))
        {
            problems.Add(new Problem(option, part, $"a step above 0, and at most {MostValues} values", "Choose a longer step."));
            return;
        }

        int steps = (int)Math.Floor(count + 1e-6);
        for (int i = 0; i <= steps; i++)
        {
            double value = a + (Math.Sign(b - a) * Math.Abs(s) * i);
            values.Add(Math.Abs(value) < 1e-12 ? 0 : value);
        }
    }

    private static double? Number(string text, Unit unit, string option, List<Problem> problems)
    {
        var read = QuantityText.Parse(text, unit.Dimension, option, unit);
        problems.AddRange(read.Problems);
        return read.Ok ? read.Value.Si : null;
    }
}
