using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A build that holds, as the search found it.</summary>
public sealed record RankedBuild
{
    /// <summary>1 for the first; 0 for one that stands on the front but not in the list.</summary>
    public required int Rank { get; init; }

    /// <summary>Parts and solved settings; its limits carry the wishes.</summary>
    public required Build Build { get; init; }

    /// <summary>The parts of one side, from the perch upward, then what holds them, then the wheel.</summary>
    public required IReadOnlyList<Part> Parts { get; init; }

    /// <summary>That every check and wish holds at once.</summary>
    public required double Probability { get; init; }

    /// <summary>The probability as it is ordered by and printed: whole per cent, rounded down; "over 99 %" above that.</summary>
    public string Sure => RankKey.DoubtOf(Probability) is var doubt && doubt == 0 ? "over 99 %" : $"{100 - doubt} %";

    /// <summary>What the probability lies between however the margins hang together.</summary>
    public required (double Low, double High) Bounds { get; init; }

    /// <summary>Checks that lack a reading.</summary>
    public required int Unknown { get; init; }

    /// <summary>Of the whole build, as the judge says it: a build each of whose checks holds need not be sure enough.</summary>
    public required Verdict Verdict { get; init; }

    public required TightestCheck? Tightest { get; init; }

    /// <summary>Still to be paid for this axle.</summary>
    public required decimal Cost { get; init; }

    /// <summary>Parts that are not owned and bear no price.</summary>
    public required IReadOnlyList<Part> Unpriced { get; init; }

    /// <summary>Null where it cannot be said.</summary>
    public required Measure? Frequency { get; init; }

    public required Measure? HeightMiss { get; init; }

    /// <summary>Of the perch, left and right; null where nothing turns or the height is not known.</summary>
    public required (Measure Left, Measure Right)? PerchHeight { get; init; }

    /// <summary>No other build of the search is as good in cost, certainty, height and stiffness at once.</summary>
    public required bool OnFront { get; init; }
}

/// <summary>How many combinations a check refused first.</summary>
public sealed record RefusalCount(string Title, long Count);

/// <summary>A combination that nearly holds, and what would make it hold.</summary>
/// <param name="Parts">Of one side.</param>
/// <param name="Check">The check that binds.</param>
/// <param name="ShortBy">Positive.</param>
/// <param name="Others">Other checks that it breaks, in words; empty where it breaks one alone.</param>
/// <param name="Cures">Solved: each brings the binding check to hold; those that break nothing else first.</param>
public sealed record NearMiss(IReadOnlyList<Part> Parts, Build Build, string Check, string Where, CornerPlace? Corner, Measure ShortBy,
    IReadOnlyList<string> Others, IReadOnlyList<Cure> Cures)
{
    /// <summary>Single changes with which the whole corner would hold.</summary>
    public IEnumerable<Cure> WouldHold => Cures.Where(c => c.CornerHolds);
}

/// <summary>What a search has found so far.</summary>
public sealed record RankingResult
{
    public required Wishes Wishes { get; init; }

    /// <summary>Every combination of the parts taken into account.</summary>
    public required long Combinations { get; init; }

    /// <summary>Combinations judged in full that hold.</summary>
    public required long Held { get; init; }

    /// <summary>
    /// Combinations that pass the quick checks but could come neither into the list nor on the front, and were not judged further.
    /// </summary>
    public required long SetAside { get; init; }

    /// <summary>
    /// Combinations that pass the quick checks but were not looked at, because there were too many; 0 but for huge searches.
    /// </summary>
    public required long LeftOut { get; init; }

    /// <summary>Combinations that went through the whole judge, clearance included.</summary>
    public required long JudgedInFull { get; init; }

    /// <summary>Most first.</summary>
    public required IReadOnlyList<RefusalCount> Refused { get; init; }

    /// <summary>Best first.</summary>
    public required IReadOnlyList<RankedBuild> Listed { get; init; }

    /// <summary>Cheapest first.</summary>
    public required IReadOnlyList<RankedBuild> Front { get; init; }

    /// <summary>Those that one change would mend first, then the nearest; empty until the search is done.</summary>
    public required IReadOnlyList<NearMiss> NearMisses { get; init; }

    /// <summary>False while the search can go on.</summary>
    public required bool Done { get; init; }
}

/// <summary>How far a search is.</summary>
/// <param name="Share">0 to 1, of the whole work as far as it can be foreseen.</param>
/// <param name="Words">What is being done.</param>
public readonly record struct SearchProgress(double Share, string Words, long Judged, long Held);
