using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Weighing;

/// <summary>
/// By how much a probability stated in first order is off, because the value bends within its doubt. To first order in the
/// bend: the limit seems shifted by what the value gains on the way to it beyond the straight line, and by the mean of
/// what it gains sideways.
/// </summary>
/// <remarks>Source: docs/theory/doubt.md §3; expansion of the probability of a quadratic form of normal numbers.</remarks>
internal static class BentProbability
{
    /// <summary>
    /// Above this the judge says that first order is not enough. The promise is 2 points; what is expected here is itself right
    /// to about a quarter (docs/theory/doubt.md §4), so that much is taken off.
    /// </summary>
    public const double Noticeable = 0.015;

    /// <summary>A limit further away than this many standard deviations is reached too rarely to matter.</summary>
    private const double FarAway = 3.5;

    /// <summary>
    /// The way to a limit nearer than this is too short to show a bend; it is looked for this far out, in standard deviations.
    /// </summary>
    private const double NearBy = 0.5;

    /// <summary>The share by which the probability between two limits is off, about; 0 to 1.</summary>
    /// <param name="value">Best estimate.</param>
    /// <param name="sigma">Standard deviation of the value.</param>
    /// <param name="low">Lower limit, may be minus infinity.</param>
    /// <param name="high">Upper limit, may be infinity.</param>
    /// <param name="meanShift">By how much the value's mean lies above the best
    /// estimate: half of what both moves of every input leave, summed.</param>
    /// <param name="blind">What of sigma comes from inputs that can be moved only one way.</param>
    /// <param name="along">The value when all inputs move together so that
    /// first order promises a change of this many standard deviations.</param>
    public static double Off(double value, double sigma, double low, double high, double meanShift, double blind,
        Func<double, double> along)
    {
        if (!(sigma > 0))
        {
            return 0;
        }

        double off = Shifted(value, sigma, high, meanShift, along) - Shifted(value, sigma, low, meanShift, along);
        return Math.Min(Math.Abs(off) + (blind / sigma), 1);
    }

    /// <summary>Change of the probability to lie below a limit.</summary>
    private static double Shifted(double value, double sigma, double limit, double meanShift, Func<double, double> along)
    {
        double b = (limit - value) / sigma;
        if (!(Math.Abs(b) <= FarAway))
        {
            return 0;
        }

        // The way to the limit and as far the other way: how much it bends along the way, and what of it is even.
        double t = Math.Abs(b) < NearBy ? NearBy : b;
        double there = along(t) - value - (t * sigma), back = along(-t) - value + (t * sigma);
        if (!double.IsFinite(there) || !double.IsFinite(back))
        {
            return 1;
        }

        double even = (there + back) / 2 / (t * t);
        double onTheWay = t == b ? there : even * b * b;
        return -NormalDistribution.Density(b) * (onTheWay + meanShift - even) / sigma;
    }
}
