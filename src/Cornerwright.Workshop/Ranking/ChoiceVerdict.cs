using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A check that a choice breaks at the best estimate.</summary>
/// <param name="Check">Its name in files.</param>
/// <param name="ShortBy">Positive.</param>
/// <param name="Clearance">Place of the thing near the wheel among the corner's items; -1 for every other check.</param>
internal sealed record BrokenCheck(string Check, string Title, string Where, CornerPlace? Corner, Measure ShortBy, int Clearance = -1);

/// <summary>What the full judge says of one choice.</summary>
internal sealed record ChoiceVerdict
{
    /// <summary>In the order in which the judge asks; empty for a choice that holds. Then doubt was not worked out.</summary>
    public IReadOnlyList<BrokenCheck> Broken { get; init; } = [];

    /// <summary>That every check holds at once.</summary>
    public double Probability { get; init; }

    /// <summary>
    /// The same, however the margins hang together: 1 less all chances of failing, and the least single chance of holding.
    /// </summary>
    public (double Low, double High) Bounds { get; init; }

    /// <summary>Checks that lack a reading.</summary>
    public int Unknown { get; init; }

    /// <summary>The check most likely to fail; null where all are certain.</summary>
    public TightestCheck? Tightest { get; init; }

    /// <summary>Hz, mean of both sides; NaN where it cannot be said.</summary>
    public double Frequency { get; init; } = double.NaN;

    /// <summary>Larger miss of the height wanted of the two sides, m; NaN where it cannot be said.</summary>
    public double HeightMiss { get; init; } = double.NaN;

    public bool Holds => Broken.Count == 0;
}

/// <summary>The check of a choice that is most likely to fail.</summary>
/// <param name="Margin">Distance from the limit, and its doubt (two sigma).</param>
public sealed record TightestCheck(string Check, string Title, string Where, Measure Margin, Measure Doubt, double Probability);
