using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Cures;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Ranking;

/// <summary>Says of a near miss what binds it and what would make it hold: judged in full, its cures solved as for any build.</summary>
internal static class MissExplainer
{
    /// <returns>Null where the full judge finds nothing broken: then the quick word was about a wish that needs no cure.</returns>
    public static NearMiss? Explain(SearchSpace space, ChoiceJudge judge, in SuspensionCandidate suspension, WheelSet wheels)
    {
        var build = space.Make(suspension.Choice, wheels.Choice, suspension.Perch.Left, suspension.Perch.Right);
        var verdict = judge.Judge(build);
        if (verdict.Holds)
        {
            return null;
        }

        // Of checks that both sides break alike, the worse side speaks.
        var binding = verdict.Broken[0];
        binding = verdict.Broken.Where(b => b.Check == binding.Check).MaxBy(b => b.ShortBy.Si)!;
        List<string> others = [.. verdict.Broken.Where(b => b.Check != binding.Check).Select(b => b.Title).Distinct()];
        return new NearMiss(
            space.PartsOf(suspension.Choice, wheels.Choice), build, binding.Title, binding.Where, binding.Corner, binding.ShortBy, others,
            Cures(space, build, binding));
    }

    private static IReadOnlyList<Cure> Cures(SearchSpace space, Garage.Builds.Build build, BrokenCheck binding)
    {
        if (binding.Corner is not { } place)
        {
            return [];
        }

        var corner = CornerResult.Of(CornerPlan.Compile(space.Car, build, place, CarLearning.InUse(space.Car)), space.Scans.At(place));
        int check = corner.Find(binding.Check);
        return check < 0 || !corner.Checks[check].Curable ? [] : CureFinder.Find(corner, check, space.Certainty);
    }
}
