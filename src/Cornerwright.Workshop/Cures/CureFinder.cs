using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Cures;

/// <summary>
/// Solves, for one check that does not hold, how far each lever would have to move until it does; every answer is
/// worked out again in full, so that what it does to the other checks is known.
/// </summary>
internal static class CureFinder
{
    private const int MostCures = 4;
    private const int SolveSteps = 14;
    private const int StepsOn = 6;

    public static IReadOnlyList<Cure> Find(CornerResult corner, int index, double certainty)
    {
        var check = corner.Checks[index];
        double now = MarginOf(check, corner.Value(index));
        if (!double.IsFinite(now))
        {
            return [];
        }

        // Wanted: as much margin as makes the check sure, at the doubt it has now.
        double sigma = corner.Doubtful(index).Doubt.StandardDeviation;
        double wanted = Math.Max(sigma * NormalDistribution.Quantile(Math.Min(certainty, 0.999)), 1e-9);
        wanted = double.IsFinite(check.Low) && double.IsFinite(check.High) ? Math.Min(wanted, (check.High - check.Low) / 2 * 0.9) : wanted;
        var numbers = new SolvedCorner(corner.Plan);
        var found = new List<(Cure Cure, int Broken, double Effort)>();
        foreach (var lever in Lever.Of(corner.Plan))
        {
            if (Solve(corner, index, numbers, lever, now, wanted) is { } solved
                && Proved(corner, check, numbers, lever, solved, now, wanted) is { } amount)
            {
                found.Add(Describe(corner, index, numbers, lever, amount, now));
            }
        }

        if (check.OwnCure is { } own)
        {
            found.Add((own(corner.Value(index), wanted), 0, 1));
        }

        return [.. found.Where(f => f.Cure.MarginAfter.Si > now + 1e-9 && f.Cure.MarginAfter.Si >= 0)
            .OrderBy(f => f.Broken).ThenBy(f => f.Cure.Setting.Length == 0).ThenBy(f => f.Effort)
            .ThenBy(f => f.Cure.Sentence, StringComparer.Ordinal)
            .Select(f => f.Cure).Take(MostCures)];
    }

    /// <returns>The smallest amount, in whole quanta, that reaches the wanted margin
    /// or, failing that, the limit itself; null where the lever cannot.</returns>
    private static double? Solve(CornerResult corner, int index, SolvedCorner numbers, Lever lever, double now, double wanted)
    {
        var check = corner.Checks[index];
        var moved = new ReadSet();
        foreach (var (input, _) in lever.Moves)
        {
            moved.Add(input.Index);
        }

        var reads = corner.ReadsOf(index);
        if (!reads.Meets(moved))
        {
            return null;
        }

        // Which way does it help? One quantum either way tells.
        double up = lever.Most >= lever.Quantum ? Try(lever.Quantum)
            : double.NaN, down = lever.Least <= -lever.Quantum ? Try(-lever.Quantum) : double.NaN;
        bool upHelps = up > now + 1e-12, downHelps = down > now + 1e-12;
        if (!upHelps && !downHelps)
        {
            return null;
        }

        double direction = upHelps && (!downHelps || up >= down) ? 1
            : -1, range = Math.Floor(((direction > 0 ? lever.Most : -lever.Least) / lever.Quantum) + 1e-9) * lever.Quantum;

        // Far enough? Double the step until it is, then halve the bracket down to a quantum.
        double low = 0, high = Math.Min(lever.Quantum, range), best = double.NaN;
        for (int i = 0; i < SolveSteps; i++)
        {
            double margin = Try(direction * high);
            best = margin >= 0 && double.IsNaN(best) ? high : best;
            if (margin >= wanted)
            {
                return direction * Halve(lever, low, high, amount => Try(direction * amount) >= wanted);
            }

            if (high >= range)
            {
                break;
            }

            (low, high) = (high, Math.Min(2 * high, range));
        }

        return double.IsNaN(best) ? null : direction * Halve(lever, 0, best, amount => Try(direction * amount) >= 0);

        double Try(double amount)
        {
            Apply(numbers, corner.Plan, lever, amount);
            numbers.Follow(corner.Numbers, moved, reads);
            double margin = MarginOf(check, check.Value(numbers.Read));
            Apply(numbers, corner.Plan, lever, 0);
            return margin;
        }
    }

    /// <summary>
    /// A clearance over all poses is solved at the place where it is least now; whether that is enough everywhere shows only when
    /// the corner is worked out whole. Steps on by what is still missing until it is; null where it never is.
    /// </summary>
    private static double? Proved(CornerResult corner, CornerCheck check, SolvedCorner numbers, Lever lever, double amount, double now,
        double wanted)
    {
        if (!check.Proved)
        {
            return amount;
        }

        for (int i = 0; i < StepsOn; i++)
        {
            Apply(numbers, corner.Plan, lever, amount);
            numbers.Solve();
            double margin = MarginOf(check, check.Value(numbers.Read));
            Apply(numbers, corner.Plan, lever, 0);
            double target = i < StepsOn / 2 ? wanted : 0;
            if (margin >= target)
            {
                return amount;
            }

            double slope = (margin - now) / Math.Abs(amount);
            if (!(slope > 0))
            {
                return null;
            }

            double further = Math.Max(1, Math.Ceiling((target - margin) / slope / lever.Quantum)) * lever.Quantum;
            amount += Math.CopySign(further, amount);
            if (!(amount <= lever.Most + 1e-9 && amount >= lever.Least - 1e-9))
            {
                return null;
            }
        }

        return null;
    }

    private static double Halve(Lever lever, double low, double high, Func<double, bool> enough)
    {
        for (int i = 0; i < SolveSteps && high - low > 1.01 * lever.Quantum; i++)
        {
            double middle = Math.Round((low + high) / 2 / lever.Quantum) * lever.Quantum;
            if (middle <= low || middle >= high)
            {
                break;
            }

            (low, high) = enough(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static (Cure Cure, int Broken, double Effort) Describe(CornerResult corner, int index, SolvedCorner numbers, Lever lever,
        double amount, double now)
    {
        Apply(numbers, corner.Plan, lever, amount);
        numbers.Solve();
        var check = corner.Checks[index];
        double after = MarginOf(check, check.Value(numbers.Read));
        var broken = new List<string>();
        var thinner = new List<string>();
        bool cornerHolds = after >= 0;
        for (int c = 0; c < corner.Checks.Count; c++)
        {
            var other = corner.Checks[c];
            if (c == index || !other.CanSpeak)
            {
                continue;
            }

            double before = MarginOf(other, corner.Value(c)), then = MarginOf(other, other.Value(numbers.Read));
            cornerHolds &= !(then < 0);
            if (before >= 0 && !(then >= 0))
            {
                broken.Add(Lower(other.Title));
            }
            else if (before >= 0 && then < 0.7 * before)
            {
                thinner.Add($"{Lower(other.Title)} to {new Measure(other.Value(numbers.Read), other.Unit, other.Decimals).Text}");
            }
        }

        string setting = "", text = "";
        if (lever is { NewValue: { } write, Setting.Length: > 0 })
        {
            (setting, text) = (lever.Setting, write(numbers.Read.X[lever.Moves[0].Input]));
        }

        Apply(numbers, corner.Plan, lever, 0);
        string side = string.Join(" ", new[]
        {
            broken.Count > 0 ? $"Then this no longer holds: {string.Join(", ", broken)}." : "",
            thinner.Count > 0 ? $"Changes {string.Join(", ", thinner.Take(3))}." : "",
        }.Where(s => s.Length > 0));
        var unit = new Measure(0, check.Unit, check.Decimals);
        var cure = new Cure(lever.Order(amount), unit.With(double.IsFinite(after) ? after - now : 0),
            unit.With(double.IsFinite(after) ? after : now), side, setting, text) { CornerHolds = cornerHolds };
        return (cure, broken.Count, Math.Abs(amount) / Math.Max(Math.Abs(lever.Most), Math.Abs(lever.Least)));
    }

    private static void Apply(SolvedCorner numbers, CornerPlan plan, Lever lever, double amount)
    {
        foreach (var (input, factor) in lever.Moves)
        {
            numbers.Set(input, plan.Inputs[input].Value + (amount * factor));
        }
    }

    private static double MarginOf(CornerCheck check, double value) => Math.Min(value - check.Low, check.High - value);

    private static string Lower(string title) => title.Length > 1 && char.IsUpper(title[0]) && char.IsLower(title[1])
        ? char.ToLowerInvariant(title[0]) + title[1..] : title;
}
