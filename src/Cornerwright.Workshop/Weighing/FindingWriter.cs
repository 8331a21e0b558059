using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Weighing;

/// <summary>Puts a check's numbers into the words and shape of a finding.</summary>
internal static class FindingWriter
{
    private const int MostDeciding = 5;
    private const double LeastShare = 0.02;

    /// <summary>Verdict, margin and probability of a value between limits.</summary>
    public static (Verdict Verdict, double Margin, double Probability) Weigh(double value, double low, double high, in LinearDoubt doubt,
        double certainty)
    {
        double margin = Math.Min(value - low, high - value), probability = doubt.Within(value, low, high);
        var verdict = !(margin >= 0) ? Verdict.Fails : probability >= certainty ? Verdict.Holds : Verdict.Tight;
        return (verdict, margin, probability);
    }

    public static Finding Of(CornerResult corner, int index, double certainty)
    {
        var (check, plan) = (corner.Checks[index], corner.Plan);
        double value = corner.Value(index);
        string where = plan.Place.Words();
        if (!check.CanSpeak || !double.IsFinite(value))
        {
            IReadOnlyList<MissingReading> missing = check.CanSpeak
                ? [new(plan.Path + "/motion", "motion readings that reach further: the state lies outside the travel they cover")]
                : [.. check.Missing.Distinct()];
            return Unknown(check.Id, check.Title, where, missing) with { Corner = plan.Place };
        }

        if (check.UnknownInPart(value))
        {
            return Unknown(check.Id, check.Title, where, [.. check.MissingAtLock.Union(check.MissingAtEnds)]) with
            {
                Corner = plan.Place,
                Sentence = (check.MissingAtLock.Count > 0 ? $"Not known at lock: {MissingReading.Words(check.MissingAtLock)}. " : "")
                    + (check.MissingAtEnds.Count > 0 ? $"Ends of travel not known: {MissingReading.Words(check.MissingAtEnds)}. " : "")
                    + (check.MissingAtLock.Count > 0 ? "Without steering" : "")
                    + (check.MissingAtEnds.Count == 0 ? "" : check.MissingAtLock.Count > 0 ? ", 60 mm either way" : "60 mm either way")
                    + $": {check.Sentence(corner.Numbers.Read, value)}",
                Assumptions = Assumptions(corner, index),
            };
        }

        bool within = value >= check.Low && value <= check.High;
        if (within && corner.TooWide(index) is { } wide)
        {
            return Unknown(check.Id, check.Title, where, [wide]) with { Corner = plan.Place };
        }

        var doubtful = corner.Doubtful(index);
        var (verdict, margin, probability) = Weigh(value, check.Low, check.High, doubtful.Doubt, certainty);
        bool oneWay = within && corner.TooWideOneWay(index) is not null;
        if (within)
        {
            probability = Math.Min(probability, corner.ChanceAtMost(index));
            verdict = probability >= certainty ? verdict : Verdict.Tight;
        }

        var measure = new Measure(value, check.Unit, check.Decimals);
        return new Finding
        {
            Check = check.Id,
            Title = check.Title,
            Where = where,
            Corner = plan.Place,
            Verdict = verdict,
            Value = measure,
            Low = double.IsFinite(check.Low) ? measure.With(check.Low) : null,
            High = double.IsFinite(check.High) ? measure.With(check.High) : null,
            Margin = measure.With(margin),
            Doubt = measure.With(2 * doubtful.Doubt.StandardDeviation),
            Probability = probability,
            FirstOrderEnough = !oneWay && !(corner.ProbabilityOff(index) > BentProbability.Noticeable),
            Worst = check.Worst(corner.Numbers.Read),
            Sentence = check.Sentence(corner.Numbers.Read, value),
            Deciding = Deciding(plan.Inputs.Inputs, corner.Contributions(index)),
            Assumptions = Assumptions(corner, index),
        };
    }

    public static Finding Unknown(string check, string title, string where, IReadOnlyList<MissingReading> missing) => new()
    {
        Check = check,
        Title = title,
        Where = where,
        Verdict = Verdict.Unknown,
        Sentence = "Not known: " + MissingReading.Words(missing) + ".",
        Missing = missing,
    };

    /// <summary>The inputs that make most of the variance, largest first.</summary>
    public static IReadOnlyList<DecidingReading> Deciding(IReadOnlyList<Input> inputs, ReadOnlySpan<double> contributions)
    {
        double total = 0;
        foreach (double c in contributions)
        {
            total += c * c;
        }

        if (!(total > 0))
        {
            return [];
        }

        // The few largest, by insertion; equal shares keep the order of their paths.
        var list = new List<DecidingReading>(MostDeciding + 1);
        for (int i = 0; i < contributions.Length; i++)
        {
            double share = contributions[i] * contributions[i] / total;
            if (share < LeastShare)
            {
                continue;
            }

            int at = list.Count;
            while (at > 0 && (list[at - 1].Share < share
                || (list[at - 1].Share == share && string.CompareOrdinal(inputs[i].Path, list[at - 1].Path) < 0)))
            {
                at--;
            }

            list.Insert(at, new DecidingReading(inputs[i].Path, inputs[i].Label, share));
            if (list.Count > MostDeciding)
            {
                list.RemoveAt(MostDeciding);
            }
        }

        return list;
    }

    private static List<string> Assumptions(CornerResult corner, int index)
    {
        var contributions = corner.Contributions(index);
        var (table, check) = (corner.Plan.Inputs, corner.Checks[index]);
        double total = 0;
        foreach (double c in contributions)
        {
            total += c * c;
        }

        var list = new List<string>(check.Assumptions);
        foreach (var (input, words) in table.Assumptions)
        {
            // An assumed size without doubt of its own (the greatest tyre of a size) matters to every clearance.
            bool matters = total > 0 && contributions[input] * contributions[input] >= 0.001 * total;
            bool greatest = check.Clearance >= 0 && !(table.Inputs[input].Sigma > 0);
            if (matters || greatest)
            {
                list.Add(words);
            }
        }

        return list;
    }
}
