using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Fit;

/// <summary>One reading of a cycled wheel.</summary>
/// <param name="Quantity">Camber, Toe, Outboard, SpringLength or DamperLength; a ratio cannot be read.</param>
/// <param name="Travel">m, bump positive, as prescribed: its own doubt belongs into the deviation.</param>
/// <param name="Value">rad or m.</param>
/// <param name="Deviation">Standard deviation, rad or m, above 0.</param>
/// <param name="Rack">m along +Y.</param>
public readonly record struct FitReading(TraceQuantity Quantity, double Travel, double Value, double Deviation, double Rack = 0);

/// <summary>Why a fit ended.</summary>
public enum FitStop
{
    /// <summary>A step no longer changes anything: the numbers are the least-squares answer within the tolerances.</summary>
    Converged = 0,

    /// <summary>No step lowers the sum, though the last one was not small; the numbers are the best found.</summary>
    NoFurtherDown,

    /// <summary>The limit of iterations; the numbers are the best found.</summary>
    IterationLimit,

    /// <summary>The rough linkage cannot reach a reading's pose; nothing was fitted.</summary>
    RoughCannotReach,

    /// <summary>Nothing to fit: no reading, or no coordinate with a tolerance.</summary>
    NothingToFit,
}

/// <summary>A joint after the fit.</summary>
/// <param name="Joint">Name.</param>
/// <param name="Moved">m, from the rough place, body frame.</param>
/// <param name="Deviation">Standard deviation that is left, m, coordinate by coordinate; 0 for one that was not free.</param>
/// <param name="AtLimit">True when a coordinate ended at its tolerance: the tolerance or a reading is doubtful.</param>
public readonly record struct FittedJoint(string Joint, Vec3 Moved, Vec3 Deviation, bool AtLimit);

/// <summary>A reading after the fit.</summary>
/// <param name="Reading">As given.</param>
/// <param name="Before">Reading minus rough linkage, rad or m.</param>
/// <param name="After">Reading minus fitted linkage, rad or m.</param>
/// <param name="Oddness">After, over the standard deviation that such a difference should have: usually within ±2.</param>
public readonly record struct FittedReading(FitReading Reading, double Before, double After, double Oddness);

/// <summary>A fitted linkage.</summary>
/// <param name="Why">How it ended.</param>
/// <param name="Linkage">Fitted; the rough one where nothing was fitted.</param>
/// <param name="Joints">In the linkage's order; empty where nothing was fitted.</param>
/// <param name="Readings">In the order given; empty where nothing was fitted.</param>
/// <param name="Outlier">Place of the oddest reading if it is odder than chance allows, else null.</param>
/// <param name="MisfitPerReading">
/// Sum of squares of readings and joints over their deviations, divided by the number of readings: near 1 when the stated deviations are
/// true, well above when a reading or the model is wrong.
/// </param>
/// <param name="Iterations">Steps tried.</param>
public sealed record HardpointFitResult(
    FitStop Why, CornerLinkage Linkage, IReadOnlyList<FittedJoint> Joints, IReadOnlyList<FittedReading> Readings,
    int? Outlier, double MisfitPerReading, int Iterations);

/// <summary>Moves rough hardpoints within their tolerances until the wheel follows its cycled readings.</summary>
/// <remarks>
/// Weighted least squares with the rough points as further readings (Bayes with normal priors); Levenberg's damping, exact Jacobian by
/// implicit differentiation; coordinates that reach their tolerance stay there as long as the slope holds them.
/// Source: Madsen, Nielsen and Tingleff, Methods for Non-Linear Least Squares Problems (2004), §3.2; docs/theory/fit.md §3.
/// </remarks>
public static class HardpointFit
{
    private const int IterationLimit = 60;
    private const double SmallStep = 1e-6;       // standard deviations: far below what can be read
    private const double LevelSum = 1e-11;       // relative change of the sum that is taken for rounding: poses are solved to some 1e-14 m
    private const double LargestDamping = 1e12;

    /// <summary>Standard deviations beyond which a reading is named: chance passes it once in a thousand readings.</summary>
    /// <remarks>Source: W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968), critical value 3.29 (from memory).</remarks>
    private const double OddBeyond = 3.29;

    /// <summary>Fits. Source: docs/theory/fit.md §3-4.</summary>
    /// <param name="rough">Joints as they were measured.</param>
    /// <param name="tolerances">
    /// For each joint, m, two standard deviations of its coordinates and at the same time as far as they may move; 0 keeps a coordinate.
    /// </param>
    /// <param name="readings">Any number, at any travels, in any order.</param>
    /// <param name="angleTolerance">
    /// Two standard deviations, rad, of camber and toe at the reference state, fitted along; 0 keeps them.
    /// </param>
    /// <exception cref="ArgumentException">Not one tolerance a joint, a negative or non-finite number, or a ratio as a reading.</exception>
    public static HardpointFitResult Fit(
        CornerLinkage rough, IReadOnlyList<Vec3> tolerances, IReadOnlyList<FitReading> readings, double angleTolerance = 0)
    {
        FitProblem problem = FitProblem.For(rough, tolerances, readings, angleTolerance);
        int n = problem.Unknowns;
        double[] u = new double[n];
        if (n == 0 || readings.Count == 0)
        {
            return Unfitted(FitStop.NothingToFit, rough);
        }

        if (!problem.Evaluate(u, out double[] first, out double[] jacobian))
        {
            return Unfitted(FitStop.RoughCannotReach, rough);
        }

        double[] residual = first;
        double sum = Sum(residual, u), damping = 1e-3;
        var (why, iteration) = (FitStop.IterationLimit, 0);
        for (; iteration < IterationLimit; iteration++)
        {
            double[] next = Step(residual, jacobian, u, damping);
            double size = Largest(next, u);
            if (size <= SmallStep)
            {
                // Small because the damping made it so is not the same as small at the foot of the slope.
                why = damping <= 1 ? FitStop.Converged : FitStop.NoFurtherDown;
                break;
            }

            bool reached = problem.Evaluate(next, out double[] r1, out double[] j1);
            double s1 = reached ? Sum(r1, next) : double.PositiveInfinity;
            bool level = damping <= 1 && Math.Abs(sum - s1) <= LevelSum * sum;
            if (s1 <= sum)
            {
                (u, residual, jacobian, sum, damping) = (next, r1, j1, s1, Math.Max(damping * 0.1, 1e-15));
            }

            if (level)
            {
                why = FitStop.Converged;
                break;
            }

            if (!(s1 <= sum) && (damping *= 10) > LargestDamping)
            {
                why = FitStop.NoFurtherDown;
                break;
            }
        }

        return FitReport.Write(problem, why, iteration, u, first, residual, jacobian, sum, OddBeyond);
    }

    private static HardpointFitResult Unfitted(FitStop why, CornerLinkage rough) => new(why, rough, [], [], null, 0, 0);

    /// <summary>Readings and joints, each in its standard deviations.</summary>
    private static double Sum(double[] residual, double[] u) => residual.Sum(r => r * r) + u.Sum(x => x * x);

    private static double Largest(double[] next, double[] u) => next.Zip(u, (a, b) => Math.Abs(a - b)).Max();

    /// <summary>(JᵀJ + I + damping) step = -(Jᵀr + u), for the coordinates that are not held at a tolerance.</summary>
    private static double[] Step(double[] residual, double[] jacobian, double[] u, double damping)
    {
        int n = u.Length;
        double[] slope = FitProblem.Slope(residual, jacobian, u), normal = FitProblem.Normal(jacobian, n, residual.Length);
        double[] next = [.. u];
        bool[] held = [.. u.Select((x, a) => FitProblem.IsAtLimit(x) && x * slope[a] < 0)];

        // Hold what the step would carry past its tolerance, solve again for the others; every round holds one more at least.
        for (int round = 0; round <= n; round++)
        {
            double[] step = [.. slope.Select(s => -s)], matrix = [.. normal];
            for (int a = 0; a < n; a++)
            {
                matrix[(a * n) + a] *= 1 + damping;
                for (int b = 0; held[a] && b < n; b++)
                {
                    (matrix[(a * n) + b], matrix[(b * n) + a]) = (a == b ? 1 : 0, a == b ? 1 : 0);
                }

                step[a] = held[a] ? next[a] - u[a] : step[a];
            }

            // Held ones moved to their limit already: their share goes to the right-hand side.
            for (int a = 0; a < n; a++)
            {
                for (int b = 0; !held[a] && b < n; b++)
                {
                    step[a] -= held[b] ? normal[(a * n) + b] * (next[b] - u[b]) : 0;
                }
            }

            if (Lu.Solve(matrix, step, n) == 0)
            {
                return u;
            }

            bool more = false;
            for (int a = 0; a < n; a++)
            {
                double x = u[a] + step[a];
                if (!held[a] && !(Math.Abs(x) <= FitProblem.Limit))
                {
                    (held[a], next[a], more) = (true, Math.CopySign(FitProblem.Limit, x), true);
                }
                else if (!held[a])
                {
                    next[a] = x;
                }
            }

            if (!more)
            {
                break;
            }
        }

        return next;
    }
}
