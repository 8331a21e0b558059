using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>
/// Draws all inputs of a corner at random and counts how often each of its checks holds: what first order only estimates.
/// </summary>
internal static class RandomCorner
{
    /// <param name="corner">Judged; gives checks, limits and the best estimates.</param>
    /// <param name="build">Name of the build, for the answer.</param>
    /// <param name="draws">How many rows of inputs.</param>
    /// <param name="seed">Of the generator; the same seed draws the same rows.</param>
    /// <param name="search">True to search the worst state of every clearance anew in
    /// each draw; false to read it in the states found at the best estimate.</param>
    public static IReadOnlyList<DrawnShare> Draw(CornerResult corner, string build, int draws, int seed, bool search)
    {
        var numbers = new SolvedCorner(corner.Plan);
        int[] speaking =
            [.. Enumerable.Range(0, corner.Checks.Count).Where(c => corner.Checks[c].CanSpeak && double.IsFinite(corner.Value(c)))];
        int[] holds = new int[speaking.Length], unsolved = new int[speaking.Length];
        var random = new Random(seed);
        for (int d = 0; d < draws; d++)
        {
            Fill(corner.Plan.Inputs.Inputs, random, numbers.Values);
            if (search)
            {
                numbers.Solve();
            }
            else
            {
                numbers.Follow(corner.Numbers, ReadSet.All(numbers.Values.Length), null);
            }

            for (int s = 0; s < speaking.Length; s++)
            {
                var check = corner.Checks[speaking[s]];
                double value = check.Value(numbers.Read);
                holds[s] += value >= check.Low && value <= check.High ? 1 : 0;
                unsolved[s] += double.IsNaN(value) ? 1 : 0;
            }
        }

        return [.. speaking.Select((c, s) => Share(corner, build, c, holds[s] / (double)draws, unsolved[s] / (double)draws))];
    }

    /// <summary>One row: normal where the tolerance is two sigma, uniform where it is a half range.</summary>
    public static void Fill(IReadOnlyList<Input> inputs, Random random, double[] row)
    {
        for (int i = 0; i < row.Length; i++)
        {
            row[i] = inputs[i].Sigma > 0 ? One(inputs[i], random) : inputs[i].Value;
        }
    }

    public static double One(in Input input, Random random) => input.Spread == ToleranceKind.HalfRange
        ? input.Value + (input.Sigma * Math.Sqrt(3) * ((2 * random.NextDouble()) - 1))
        : input.Value + (input.Sigma * NormalDistribution.Quantile((random.Next() + 0.5) / int.MaxValue));

    private static DrawnShare Share(CornerResult corner, string build, int index, double drawn, double unsolved)
    {
        var (check, doubtful) = (corner.Checks[index], corner.Doubtful(index));
        double off = corner.ProbabilityOff(index);
        return new DrawnShare(
            $"{build} {Garage.Chassis.Places.Words(corner.Plan.Place)} {check.Id}",
            doubtful.Doubt.Within(doubtful.Value, check.Low, check.High), drawn, off > BentProbability.Noticeable, unsolved, off);
    }
}
