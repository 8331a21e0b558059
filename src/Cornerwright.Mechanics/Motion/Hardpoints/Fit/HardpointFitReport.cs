using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Fit;

/// <summary>What a fit tells: places, doubt that is left, residuals, the odd one out.</summary>
/// <remarks>Source: docs/theory/fit.md §4.</remarks>
internal static class FitReport
{
    /// <summary>A reading that decides a point by itself has no residual left to judge it by; below this share none is judged.</summary>
    private const double LeastRedundancy = 1e-6;

    public static HardpointFitResult Write(
        FitProblem problem, FitStop why, int iterations, double[] u, double[] first, double[] residual, double[] jacobian, double sum,
        double oddBeyond)
    {
        int n = u.Length, rows = residual.Length;
        double[] normal = FitProblem.Normal(jacobian, n, rows), covariance = new double[n * n];
        for (int a = 0; a < n; a++)
        {
            covariance[(a * n) + a] = 1;
        }

        // JᵀJ + I has no eigenvalue below 1, so this cannot fail on finite numbers.
        if (Lu.Solve(normal, covariance, n) == 0)
        {
            throw new InvalidOperationException("The normal matrix of a fit with priors was singular.");
        }

        var readings = new FittedReading[rows];
        int? oddest = null;
        for (int i = 0; i < rows; i++)
        {
            double redundancy = 1 - Leverage(covariance, jacobian.AsSpan(i * n, n));
            double odd = redundancy > LeastRedundancy ? -residual[i] / Math.Sqrt(redundancy) : 0;
            double deviation = problem.Readings[i].Deviation;
            readings[i] = new(problem.Readings[i], -first[i] * deviation, -residual[i] * deviation, odd);
            oddest = oddest is not { } o || Math.Abs(odd) > Math.Abs(readings[o].Oddness) ? i : oddest;
        }

        var joints = problem.Rough.Joints.Select((joint, i) => new FittedJoint(
            joint.Name, problem.Moved(u, i), problem.PerAxis(i, k => Math.Sqrt(covariance[(k * n) + k]) * problem.Deviation(k)),
            problem.Any(i, k => FitProblem.IsAtLimit(u[k]))));
        int? outlier = oddest is { } at && Math.Abs(readings[at].Oddness) > oddBeyond ? at : null;
        return new(why, problem.At(u), [.. joints], readings, outlier, sum / rows, iterations);
    }

    private static double Leverage(double[] covariance, ReadOnlySpan<double> row)
    {
        double sum = 0;
        for (int a = 0; a < row.Length; a++)
        {
            for (int b = 0; b < row.Length; b++)
            {
                sum += row[a] * covariance[(a * row.Length) + b] * row[b];
            }
        }

        return sum;
    }
}
