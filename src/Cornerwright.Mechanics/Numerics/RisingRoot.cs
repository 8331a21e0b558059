namespace Cornerwright.Mechanics.Numerics;

/// <summary>A function of one variable that never falls, with its slope.</summary>
public interface IRisingFunction
{
    /// <summary>Value and slope at <paramref name="x"/>, both finite.</summary>
    /// <remarks>Source: definition.</remarks>
    double ValueAt(double x, out double slope);
}

/// <summary>Why a search stopped.</summary>
public enum RootStop
{
    Converged,

    /// <summary>Even at the lower end the function lies above the target.</summary>
    BelowRange,

    /// <summary>Even at the upper end the function lies below the target.</summary>
    AboveRange,

    IterationLimit,

    /// <summary>The function gave no number somewhere in the range.</summary>
    NotFinite,
}

/// <summary>
/// Where a rising function reaches a target. X is the root only if Why is Converged; otherwise the nearer end or the last try.
/// </summary>
public readonly record struct RisingRoot(double X, int Iterations, RootStop Why)
{
    /// <summary>
    /// Newton with a bracket settles in 5 to 8 steps on our curves; bisection alone would need about 45 for 1e-13 m of 1 m.
    /// </summary>
    private const int MostIterations = 100;

    /// <summary>Newton's method inside a shrinking bracket, with bisection where a step would leave it or gains too little.</summary>
    /// <param name="function">Never falls between <paramref name="low"/> and <paramref name="high"/>; may have corners.</param>
    /// <param name="target">The value looked for.</param>
    /// <param name="low">Lower end of the range searched.</param>
    /// <param name="high">Upper end of the range searched.</param>
    /// <param name="guess">Where to begin; put inside the bracket if it is not.</param>
    /// <param name="accuracy">Of x, in its unit.</param>
    /// <remarks>Source: Press et al., Numerical Recipes, 3rd ed. (2007), §9.4 (rtsafe).</remarks>
    public static RisingRoot Find<T>(in T function, double target, double low, double high, double guess, double accuracy)
        where T : IRisingFunction
    {
        // The ends first: an answer outside the range is an answer too.
        double x = guess > low && guess < high ? guess : 0.5 * (low + high);
        double value = function.ValueAt(x, out double slope);
        double lastStep = high - low;
        bool lowSeen = false, highSeen = false;
        for (int i = 1; i <= MostIterations; i++)
        {
            if (!double.IsFinite(value))
            {
                return new(x, i, RootStop.NotFinite);
            }

            if (value == target && slope > 0)
            {
                return new(x, i, RootStop.Converged);
            }

            // Tighten the bracket by the sign at x.
            if (value < target)
            {
                (low, lowSeen) = (x, true);
            }
            else
            {
                (high, highSeen) = (x, true);
            }

            // A Newton step if it stays inside and at least halves the last step, else the middle.
            double step = slope > 0 ? (target - value) / slope : double.PositiveInfinity;
            double next = x + step;
            bool newton = next > low && next < high && Math.Abs(step) <= 0.5 * Math.Abs(lastStep);
            if (!newton)
            {
                next = lowSeen && highSeen || high - low <= accuracy
                    ? 0.5 * (low + high) : value < target ? 0.5 * (x + high) : 0.5 * (low + x);
                step = next - x;
            }

            (lastStep, x) = (step, next);
            if (newton && Math.Abs(step) <= accuracy)
            {
                return new(x, i, RootStop.Converged);
            }

            if (Math.Abs(step) <= accuracy || high - low <= accuracy)
            {
                // An end that was never crossed is not a root.
                if (!highSeen && function.ValueAt(high, out _) < target)
                {
                    return new(high, i, RootStop.AboveRange);
                }

                return !lowSeen && function.ValueAt(low, out _) > target ? new(low, i, RootStop.BelowRange) : new(x, i, RootStop.Converged);
            }

            value = function.ValueAt(x, out slope);
        }

        return new(x, MostIterations, RootStop.IterationLimit);
    }
}
