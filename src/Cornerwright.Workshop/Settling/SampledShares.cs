using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Settling;

/// <summary>Shares of variance of one corner's check by sampling, with everything solved at every point.</summary>
/// <remarks>Source: docs/theory/doubt.md §6.</remarks>
internal static class SampledShares
{
    /// <summary>Inputs asked apart; what is left is drawn together, as one.</summary>
    private const int Apart = 10;

    /// <summary>
    /// How far an input is moved to see whether it matters, in standard
    /// deviations: far enough to cross a kink that the judge's one step does not.
    /// </summary>
    private const double Look = 2;

    /// <summary>
    /// Sampled shares by input of the corner's table (only the weightiest have one), and the sampled chance to lie within the limits.
    /// </summary>
    public static (IReadOnlyDictionary<int, VarianceShare> ByInput, double Within) Of(CornerResult corner, int check)
    {
        var inputs = corner.Plan.Inputs.Inputs;
        double[] deviations = new double[inputs.Count];
        int[] order = [.. Enumerable.Range(0, inputs.Count).Where(i => inputs[i].Sigma > 0)
            .Select(i => (Index: i, Size: Size(corner, check, i, deviations))).OrderByDescending(x => x.Size).ThenBy(x => x.Index)
            .Where(x => x.Size > 0).Select(x => x.Index)];
        int[] asked = [.. order.Take(Apart)], rest = [.. order.Skip(Apart)];
        bool[] uniform = [.. asked.Select(i => Uniform(inputs[i])), .. rest.Length > 0 ? [false] : Array.Empty<bool>()];
        var shares = VarianceShares.Of(
            point =>
            {
                for (int k = 0; k < asked.Length; k++)
                {
                    deviations[asked[k]] = point[k];
                }

                // The rest is one input to the sampling: its coordinate stands for a whole row, always the same one.
                ulong state = rest.Length > 0 ? BitConverter.DoubleToUInt64Bits(point[^1]) : 0;
                foreach (int i in rest)
                {
                    double u = Next(ref state);
                    deviations[i] = Uniform(inputs[i]) ? Math.Sqrt(3) * ((2 * u) - 1) : NormalDistribution.Quantile(u);
                }

                return corner.ValueAt(check, deviations);
            },
            uniform, corner.Checks[check].Low, corner.Checks[check].High);
        return (asked.Select((input, k) => (input, k)).ToDictionary(x => x.input, x => shares.ByInput[x.k]), shares.Within);
    }

    private static double Size(CornerResult corner, int check, int input, double[] deviations)
    {
        double up = At(+Look), down = At(-Look), size = Math.Max(Math.Abs(up - corner.Value(check)), Math.Abs(down - corner.Value(check)));
        return double.IsFinite(size) ? size : double.IsFinite(up) != double.IsFinite(down) ? double.MaxValue : 0;

        double At(double deviation)
        {
            deviations[input] = deviation;
            double value = corner.ValueAt(check, deviations);
            deviations[input] = 0;
            return value;
        }
    }

    private static bool Uniform(in Input input) => input.Spread == ToleranceKind.HalfRange;

    /// <summary>
    /// A number between 0 and 1, both excluded. Source: S. Vigna, splitmix64 (2015), after Steele, Lea and Flood, OOPSLA 2014.
    /// </summary>
    private static double Next(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        z ^= z >> 31;
        return ((z >> 12) + 0.5) / (1UL << 52);
    }
}
