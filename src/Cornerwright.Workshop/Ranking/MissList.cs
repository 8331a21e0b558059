using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A choice that was refused, and how far it is from passing.</summary>
/// <param name="Kind">Misses of one kind differ in what matters little: only the nearest of them is kept.</param>
/// <param name="Suspension">Null where the wheel set is refused whatever springs it stands on.</param>
/// <param name="WheelSet">-1 where the suspension is refused whatever wheels it carries.</param>
/// <param name="Broken">How many checks it breaks.</param>
/// <param name="Steps">Short by this many steps of the check that refused it.</param>
internal sealed record Miss(string Kind, SuspensionCandidate? Suspension, int WheelSet, int Broken, double Steps)
{
    /// <summary>One more broken check counts as much as this many steps. Common practice, no source.</summary>
    private const double StepsACheck = 5;

    public double Distance => DistanceOf(Steps, Broken);

    public static double DistanceOf(double steps, int broken) => steps + (StepsACheck * (broken - 1));
}

/// <summary>The nearest miss of every kind that a search came upon. Of equals the first stays.</summary>
internal sealed class MissList
{
    /// <summary>Further away than this is no near miss: 30 mm, 15 turns, 3 kN.</summary>
    private const double Far = 30;

    private readonly SortedDictionary<string, Miss> _byKind = new(StringComparer.Ordinal);

    /// <summary>False if a miss so far away could not be kept even if it breaks nothing else.</summary>
    public bool Wants(string kind, double steps) =>
        steps <= Far && (!_byKind.TryGetValue(kind, out var kept) || steps < kept.Distance);

    public void Add(Miss miss)
    {
        if (miss.Distance <= Far && (!_byKind.TryGetValue(miss.Kind, out var kept) || miss.Distance < kept.Distance))
        {
            _byKind[miss.Kind] = miss;
        }
    }

    public void Add(MissList other)
    {
        foreach (var miss in other._byKind.Values)
        {
            Add(miss);
        }
    }

    /// <summary>Nearest first.</summary>
    public IReadOnlyList<Miss> Nearest(int most) => [.. _byKind.Values.OrderBy(m => m.Distance).Take(most)];

    /// <summary>How far a broken check is from passing, in steps of its unit.</summary>
    public static double StepsOf(BrokenCheck check) => Math.Abs(check.ShortBy.Si) / StaticChecks.Step(check.ShortBy.Unit);
}
