using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Comparing;

/// <summary>The same check of the same place in two builds; one side is null where only the other build has it.</summary>
public sealed record FindingPair(string Key, Finding? Left, Finding? Right)
{
    /// <summary>By how much the margin grows from left to right; null where either is unknown.</summary>
    public Measure? MarginGain =>
        Left?.Margin is { } before && Right?.Margin is { } after ? after.With(after.Si - before.Si) : null;

    /// <summary>By how much the probability grows, -1 to 1; null where either is unknown.</summary>
    public double? ProbabilityGain => Right?.Probability - Left?.Probability;

    public bool VerdictChanges => Left?.Verdict != Right?.Verdict;

    /// <summary>The one to show when there is room for one.</summary>
    public Finding Either => Right ?? Left ?? throw new InvalidOperationException("A pair has at least one side.");
}

/// <summary>The same figure of two builds.</summary>
public sealed record FigurePair(string Key, Figure? Left, Figure? Right)
{
    /// <summary>Right minus left; null where either is missing.</summary>
    public Measure? Change =>
        Left is { } before && Right is { } after ? after.Value.With(after.Value.Si - before.Value.Si) : null;

    public Figure Either => Right ?? Left ?? throw new InvalidOperationException("A pair has at least one side.");
}

/// <summary>Two builds of one car, check beside check.</summary>
public sealed record BuildComparison
{
    public required Judgement Left { get; init; }
    public required Judgement Right { get; init; }

    /// <summary>In the right build's order (worst first), then what only the left has.</summary>
    public required IReadOnlyList<FindingPair> Findings { get; init; }

    public required IReadOnlyList<FigurePair> Figures { get; init; }

    public required IReadOnlyList<PartSwap> Swaps { get; init; }

    public required BuildPrice LeftPrice { get; init; }
    public required BuildPrice RightPrice { get; init; }

    public static BuildComparison Between(Judgement left, Judgement right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        return new BuildComparison
        {
            Left = left,
            Right = right,
            Findings = Pair(left.Findings, right.Findings, f => f.Key, (key, a, b) => new FindingPair(key, a, b)),
            Figures = Pair(left.Figures, right.Figures, f => f.Key, (key, a, b) => new FigurePair(key, a, b)),
            Swaps = PartSwap.Between(left.Car, left.Build, right.Build),
            LeftPrice = BuildPrice.Of(left.Car, left.Build),
            RightPrice = BuildPrice.Of(right.Car, right.Build),
        };
    }

    // Keys need not be unique (two load cases of one check): the n-th of a key meets the n-th.
    private static List<TPair> Pair<T, TPair>(IReadOnlyList<T> left, IReadOnlyList<T> right, Func<T, string> key,
        Func<string, T?, T?, TPair> make)
        where T : class
    {
        var waiting = left.GroupBy(key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => new Queue<T>(g), StringComparer.Ordinal);
        var pairs = new List<TPair>(right.Count);
        foreach (var item in right)
        {
            var before = waiting.TryGetValue(key(item), out var queue) && queue.TryDequeue(out var first) ? first : null;
            pairs.Add(make(key(item), before, item));
        }

        pairs.AddRange(waiting.SelectMany(w => w.Value.Select(item => make(w.Key, item, null))));
        return pairs;
    }
}
