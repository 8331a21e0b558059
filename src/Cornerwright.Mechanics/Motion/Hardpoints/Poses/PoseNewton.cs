using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>As many equations as a pose has free numbers, in arithmetic that carries derivatives along.</summary>
internal interface IPoseSystem
{
    void At(in PoseNumbers<Jet> q, Span<Jet> g);
}

/// <summary>One step of a path: sets what is prescribed at a share (0 to 1) of the way and solves for the rest.</summary>
/// <param name="sign">Sign of the determinant of the equations.</param>
internal delegate bool PoseStep(double share, ref PoseNumbers<double> q, out int sign);

/// <summary>Newton on a pose of at most six free numbers, following its branch, and its exact derivatives.</summary>
/// <remarks>Source: docs/theory/rigid-axles.md §3.</remarks>
internal static class PoseNewton
{
    private const int Most = 6;
    private const int IterationLimit = 60;
    private const double LargestStep = 0.02;         // m of movement between poses of the path; a wheel's full travel is 0.1 m
    private const double LargestTurn = 0.2;          // rad or m a Newton step; keeps the iteration near the pose it came from
    private const double LeastStep = 1e-4;           // m; a branch that needs shorter steps is taken for ended
    private const int StepLimit = 2000;
    private const double StepTolerance = 2e-14;      // m or rad; positions of 1 m round at 1e-16
    private const double StallTolerance = 1e-11;     // m or rad; a step that no longer shrinks below this is rounding

    /// <summary>Follows a path from a solved pose in short steps, halved where the branch is about to be lost.</summary>
    /// <param name="span">Length of the path, m of the largest prescribed movement.</param>
    /// <param name="keepBranch">False: whatever pose Newton finds.</param>
    /// <param name="furthestMove">How much a number may change in a step, m or rad per m of the step; beyond it a fold is near.</param>
    /// <returns>False when the branch ends before the path; <paramref name="q"/> is then the last pose on it.</returns>
    public static bool Follow(PoseStep to, double span, bool keepBranch, double furthestMove, ref PoseNumbers<double> q)
    {
        if (!to(0, ref q, out int branch) && keepBranch)
        {
            return false;
        }

        double reached = 0, step = 1 / Math.Max(1, Math.Ceiling(Math.Min(span / LargestStep, 200)));
        for (int tries = 0; tries < StepLimit && reached < 1; tries++)
        {
            double next = Math.Min(1, reached + step);
            PoseNumbers<double> q1 = q;

            // The branch is kept while the determinant keeps its sign and no step carries the pose much further than
            // what is prescribed went.
            double far = furthestMove * Math.Max((next - reached) * span, LeastStep);
            if (to(next, ref q1, out int sign) && (!keepBranch || (sign == branch && Move(q, q1) <= far)))
            {
                (q, reached) = (q1, next);
            }
            else if ((step *= 0.5) * span < LeastStep)
            {
                return false;
            }
        }

        return reached >= 1;
    }

    /// <summary>Solves the system for its free numbers from where they are.</summary>
    public static bool Solve<T>(in T system, ReadOnlySpan<int> free, ref PoseNumbers<double> q, out int sign)
        where T : IPoseSystem
    {
        int n = free.Length;
        Span<double> matrix = stackalloc double[Most * Most], step = stackalloc double[Most];
        Span<Jet> g = stackalloc Jet[Most];
        double last = double.PositiveInfinity;
        sign = 0;
        for (int iteration = 0; iteration < IterationLimit; iteration++)
        {
            system.At(Still(q), g);
            for (int a = 0; a < n; a++)
            {
                step[a] = -g[a].V;
            }

            Matrix(system, free, q, matrix);
            sign = Lu.Solve(matrix, step[..n], n);
            if (sign == 0)
            {
                return false;
            }

            double size = 0;
            for (int a = 0; a < n; a++)
            {
                size = Math.Max(size, Math.Abs(step[a]));
            }

            if (!double.IsFinite(size))
            {
                return false;
            }

            double shortened = size > LargestTurn ? LargestTurn / size : 1;
            for (int a = 0; a < n; a++)
            {
                q[free[a]] += step[a] * shortened;
            }

            if (size <= StepTolerance || (size <= StallTolerance && size >= 0.5 * last))
            {
                return true;
            }

            last = size;
        }

        return false;
    }

    /// <summary>First and second derivative of the free numbers while everything else moves as given.</summary>
    /// <param name="system">Holds what moves outside the six numbers.</param>
    /// <param name="q">In: a solved pose, prescribed numbers with their derivatives. Out: all with theirs.</param>
    public static bool Derivatives<T>(in T system, ReadOnlySpan<int> free, ref PoseNumbers<Jet> q)
        where T : IPoseSystem
    {
        int n = free.Length;
        Span<double> matrix = stackalloc double[Most * Most], copy = stackalloc double[Most * Most], right = stackalloc double[Most];
        Span<Jet> g = stackalloc Jet[Most];
        PoseNumbers<double> still = default;
        for (int a = 0; a < Most; a++)
        {
            still[a] = q[a].V;
        }

        Matrix(system, free, still, matrix, moving: true);
        foreach (int a in free)
        {
            q[a] = new(q[a].V, 0, 0);
        }

        // g(q(t), t) = 0 twice differentiated: H q' = -g', then H q'' = -(g'' with q'' left out).
        for (int order = 1; order <= 2; order++)
        {
            system.At(q, g);
            for (int a = 0; a < n; a++)
            {
                right[a] = order == 1 ? -g[a].D : -g[a].DD;
            }

            matrix.CopyTo(copy);
            if (Lu.Solve(copy, right[..n], n) == 0)
            {
                return false;
            }

            for (int a = 0; a < n; a++)
            {
                Jet old = q[free[a]];
                q[free[a]] = order == 1 ? old with { D = right[a] } : old with { DD = right[a] };
            }
        }

        return true;
    }

    public static PoseNumbers<Jet> Still(in PoseNumbers<double> q)
    {
        PoseNumbers<Jet> still = default;
        for (int a = 0; a < Most; a++)
        {
            still[a] = new(q[a], 0, 0);
        }

        return still;
    }

    /// <summary>Derivative of the system by each free number, one sweep of Taylor arithmetic a column.</summary>
    /// <param name="moving">True when the system itself moves with the parameter: its own share is taken off.</param>
    private static void Matrix<T>(in T system, ReadOnlySpan<int> free, in PoseNumbers<double> q, Span<double> matrix, bool moving = false)
        where T : IPoseSystem
    {
        int n = free.Length;
        Span<Jet> g = stackalloc Jet[Most], own = stackalloc Jet[Most];
        own.Clear();
        if (moving)
        {
            system.At(Still(q), own);
        }

        for (int b = 0; b < n; b++)
        {
            PoseNumbers<Jet> along = Still(q);
            along[free[b]] = along[free[b]] with { D = 1 };
            system.At(along, g);
            for (int a = 0; a < n; a++)
            {
                matrix[(a * n) + b] = g[a].D - own[a].D;
            }
        }
    }

    private static double Move(in PoseNumbers<double> from, in PoseNumbers<double> to)
    {
        double move = 0;
        for (int a = 0; a < Most; a++)
        {
            move = Math.Max(move, Math.Abs(to[a] - from[a]));
        }

        return move;
    }
}
