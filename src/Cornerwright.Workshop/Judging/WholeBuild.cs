using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Judging;

/// <summary>How surely all that is known of a build holds at once: the sum of small risks is not small.</summary>
/// <remarks>Source: docs/theory/ranking.md §4; inputs that checks and corners share hang them together.</remarks>
internal static class WholeBuild
{
    /// <summary>What is to be said of a build none of whose checks fails or is tight.</summary>
    /// <param name="probability">That all that is known holds at once; null where nothing is known.</param>
    /// <param name="unknown">Checks that cannot be answered.</param>
    /// <param name="certainty">From which on it counts as holding.</param>
    public static Verdict Verdict(double? probability, int unknown, double certainty) =>
        probability is not { } all ? Findings.Verdict.Unknown
        : !(all >= certainty) ? Findings.Verdict.Tight
        : unknown > 0 ? Findings.Verdict.Unknown : Findings.Verdict.Holds;

    /// <summary>Null where nothing is known.</summary>
    public static double? Probability(IReadOnlyList<CornerResult> corners, IReadOnlyList<Finding> findings)
    {
        var told = findings.Where(f => f.Probability is not null).ToList();
        if (told.Count == 0)
        {
            return null;
        }

        var joint = new JointMargins();
        foreach (var corner in corners)
        {
            Add(joint, corner);
        }

        foreach (var (left, right) in new[] { (corners[0], corners[1]), (corners[2], corners[3]) })
        {
            if (WholeCarChecks.SideDifference(left, right) is { Missing.Count: 0 } side)
            {
                double limit = Say.Limit(left.Plan.Limits.SideDifference);
                joint.Add(side.Value, -limit, limit, side.Doubt(), side.Parts, suspension: true);
            }
        }

        // All at once is never surer than the least sure of them, whole-car checks and those known one way included.
        return Math.Min(joint.Probability(), told.Min(f => f.Probability!.Value));
    }

    private static void Add(JointMargins joint, CornerResult corner)
    {
        for (int i = 0; i < corner.Checks.Count; i++)
        {
            var check = corner.Checks[i];
            if (double.IsFinite(corner.Value(i)) && check.CanSpeak && !check.UnknownInPart(corner.Value(i)) && corner.TooWide(i) is null)
            {
                joint.Add(corner.Value(i), check.Low, check.High, corner.Doubtful(i).Doubt, Parts(corner, i), suspension: false);
            }
        }
    }

    private static IEnumerable<(Input Input, double Contribution)> Parts(CornerResult corner, int check)
    {
        for (int i = 0; i < corner.Plan.Inputs.Count; i++)
        {
            yield return (corner.Plan.Inputs.Inputs[i], corner.Contributions(check)[i]);
        }
    }
}
