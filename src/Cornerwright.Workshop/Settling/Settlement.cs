using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Settling;

/// <summary>A reading that decides a check, and what measuring it better would bring.</summary>
/// <param name="Path">Where it stands in the car document.</param>
/// <param name="Label">In words.</param>
/// <param name="Share">Of the margin's variance, by the straight line of the judge, 0 to 1.</param>
/// <param name="First">Share that goes when this reading is known exactly, sampled; null where it was not sampled.</param>
/// <param name="Total">Share in which it takes part, sampled; null where it was not sampled.</param>
/// <param name="Now">Its tolerance now, in words.</param>
/// <param name="Within">The tolerance proposed, in words; empty where it cannot be measured by itself.</param>
/// <param name="TwoSigma">The same, SI; 0 where nothing is proposed.</param>
/// <param name="DoubtThen">Chance to be wrong about the check with that tolerance, judged anew; null where nothing is proposed.</param>
public sealed record SettlingReading(string Path, string Label, double Share, double? First, double? Total, string Now, string Within,
    double TwoSigma, double? DoubtThen);

/// <summary>Which reading would settle a check.</summary>
/// <param name="Finding">The check as it stands.</param>
/// <param name="Doubt">Chance that what it says is wrong, 0 to 1.</param>
/// <param name="Readings">Those that decide, weightiest first.</param>
/// <param name="Chosen">The fewest readings that settle it, or the best to be had.</param>
/// <param name="DoubtThen">With all of the chosen ones measured so, judged anew.</param>
/// <param name="Settles">True when that leaves the check certain enough, one way or the other.</param>
/// <param name="Sampled">Chance that the check holds, by sampling; null where it was not sampled.</param>
/// <param name="Sentence">"Measure the perch height to within 1 mm: doubt falls from 31 % to 4 %."</param>
public sealed record Settlement(
    Finding Finding, double Doubt, IReadOnlyList<SettlingReading> Readings, IReadOnlyList<SettlingReading> Chosen, double DoubtThen,
    bool Settles, double? Sampled, string Sentence);
