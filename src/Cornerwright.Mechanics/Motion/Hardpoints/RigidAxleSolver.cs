using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints;

/// <summary>Finds the axle's free numbers for given heights: exact with as many rods as free numbers, least squares with more.</summary>
/// <remarks>
/// Free: x, y, yaw and pitch where both heights are given; roll too where only their mean is. The system solved is e = 0 (lengths kept) or
/// Σ w e ∂e/∂q = 0 (weighted squares of length changes stationary); its matrix comes from truncated Taylor series, exactly.
/// Source: docs/theory/rigid-axles.md §2-3.
/// </remarks>
internal sealed class RigidAxleSolver
{
    private const int IterationLimit = 60;
    private const double LargestStep = 0.02;         // m of travel between poses of the continuation; a wheel's full travel is 0.1 m
    private const double LargestTurn = 0.2;          // rad or m a Newton step; keeps the iteration near the pose it came from
    private const double FurthestMove = 4;           // times the wheels' step, m or rad a m; beyond it the axle is near a fold
    private const double LeastStep = 1e-4;           // m; a branch that needs shorter steps is taken for ended
    private const int StepLimit = 2000;
    private const double StepTolerance = 2e-14;      // m or rad; positions of 1 m round at 1e-16
    private const double StallTolerance = 1e-11;     // m or rad; a step that no longer shrinks below this is rounding

    private static readonly int[] HeightsGiven = [AxleNumber.X, AxleNumber.Y, AxleNumber.Yaw, AxleNumber.Pitch];
    private static readonly int[] MeanGiven = [AxleNumber.X, AxleNumber.Y, AxleNumber.Yaw, AxleNumber.Roll, AxleNumber.Pitch];

    private readonly Vec3[] onBody;
    private readonly Vec3[] onAxle;
    private readonly double[] length;
    private readonly double[] weight;
    private readonly int[] free;
    private readonly bool exact;

    private RigidAxleSolver(Vec3[] onBody, Vec3[] onAxle, double[] weight, double[] length, int[] free) =>
        (this.onBody, this.onAxle, this.weight, this.length, this.free, exact) =
        (onBody, onAxle, weight, length, free, onBody.Length == free.Length);

    public int Rods => onBody.Length;

    public int FreeNumbers => free.Length;

    /// <param name="rods">In the body frame at the reference state.</param>
    /// <param name="reference">The axle at the reference state.</param>
    /// <param name="toAxle">From body to axle coordinates at the reference state.</param>
    /// <param name="rollFree">True when only the mean height is given.</param>
    public static RigidAxleSolver For(IReadOnlyList<AxleRod> rods, Func<Vec3, Vec3> toAxle, bool rollFree)
    {
        double stiffest = rods.Max(rod => rod.Stiffness);
        return new(
            [.. rods.Select(rod => rod.OnBody)], [.. rods.Select(rod => toAxle(rod.OnAxle))], [.. rods.Select(rod => rod.Stiffness / stiffest)],
            [.. rods.Select(rod => (rod.OnAxle - rod.OnBody).Length)], rollFree ? MeanGiven : HeightsGiven);
    }

    /// <summary>From one pose to another along a straight line in the prescribed numbers, warm-starting each step.</summary>
    /// <param name="q">In: a solved pose. Out: the pose at the asked heights, if the answer is true.</param>
    /// <param name="z">Height of the midpoint of the wheel centres, m.</param>
    /// <param name="roll">rad; ignored where roll is free.</param>
    /// <param name="keepBranch">False: whatever pose Newton finds.</param>
    /// <param name="span">Largest travel of a wheel on the way, m: sets the number of steps.</param>
    public bool MoveTo(ref AxleNumbers<double> q, double z, double roll, double span, bool keepBranch = true)
    {
        int steps = Math.Max(1, (int)Math.Ceiling(Math.Min(span / LargestStep, 200)));
        var (z0, roll0, reached, step) = (q[AxleNumber.Z], q[AxleNumber.Roll], 0.0, 1.0 / steps);
        if (!Newton(ref q, out int branch) && keepBranch)
        {
            return false;
        }

        for (int tries = 0; tries < StepLimit && reached < 1; tries++)
        {
            double next = Math.Min(1, reached + step);
            AxleNumbers<double> q1 = q;
            q1[AxleNumber.Z] = z0 + ((z - z0) * next);
            if (free.Length == HeightsGiven.Length)
            {
                q1[AxleNumber.Roll] = roll0 + ((roll - roll0) * next);
            }

            // The branch is kept while the determinant keeps its sign and no step carries the axle much further than the wheels went.
            double far = FurthestMove * Math.Max((next - reached) * span, LeastStep);
            if (Newton(ref q1, out int sign) && (!keepBranch || (sign == branch && Move(q, q1) <= far)))
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

    private static double Move(in AxleNumbers<double> from, in AxleNumbers<double> to)
    {
        double move = 0;
        for (int a = 0; a < 6; a++)
        {
            move = Math.Max(move, Math.Abs(to[a] - from[a]));
        }

        return move;
    }

    /// <summary>Change of each rod's length, m.</summary>
    public void Changes(in AxleNumbers<double> q, Span<double> changes)
    {
        var frame = new AxleFrame(Still(q));
        for (int i = 0; i < onBody.Length; i++)
        {
            changes[i] = (frame.Point(onAxle[i]) - JetPoint3.Fixed(onBody[i])).Length().V - length[i];
        }
    }

    /// <summary>The numbers with their first and second derivative while the prescribed ones move.</summary>
    /// <param name="q">A solved pose.</param>
    /// <param name="z">Height, with its derivatives by the parameter.</param>
    /// <param name="roll">Roll, likewise; ignored where roll is free.</param>
    /// <param name="moving">All six with derivatives.</param>
    public bool Derivatives(in AxleNumbers<double> q, in Jet z, in Jet roll, out AxleNumbers<Jet> moving)
    {
        int n = free.Length;
        Span<double> matrix = stackalloc double[25], copy = stackalloc double[25], right = stackalloc double[5];
        Matrix(q, matrix);
        moving = Still(q);
        moving[AxleNumber.Z] = z;
        if (n == HeightsGiven.Length)
        {
            moving[AxleNumber.Roll] = roll;
        }

        // g(q(t), t) = 0 twice differentiated: H q' = -g', then H q'' = -(g'' with q'' left out).
        Span<Jet> g = stackalloc Jet[5];
        for (int order = 1; order <= 2; order++)
        {
            System(moving, g);
            for (int a = 0; a < n; a++)
            {
                right[a] = order == 1 ? -g[a].D : -g[a].DD;
            }

            matrix.CopyTo(copy);
            if (!DenseSquare.Solve(copy, right[..n], n))
            {
                return false;
            }

            for (int a = 0; a < n; a++)
            {
                Jet old = moving[free[a]];
                moving[free[a]] = order == 1 ? old with { D = right[a] } : old with { DD = right[a] };
            }
        }

        return true;
    }

    private bool Newton(ref AxleNumbers<double> q, out int sign)
    {
        sign = 0;
        int n = free.Length;
        Span<double> matrix = stackalloc double[25], step = stackalloc double[5];
        Span<Jet> g = stackalloc Jet[5];
        double last = double.PositiveInfinity;
        for (int iteration = 0; iteration < IterationLimit; iteration++)
        {
            System(Still(q), g);
            for (int a = 0; a < n; a++)
            {
                step[a] = -g[a].V;
            }

            Matrix(q, matrix);
            if (!DenseSquare.Solve(matrix, step[..n], n, out sign))
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

    private static AxleNumbers<Jet> Still(in AxleNumbers<double> q)
    {
        AxleNumbers<Jet> still = default;
        for (int a = 0; a < 6; a++)
        {
            still[a] = new(q[a], 0, 0);
        }

        return still;
    }

    /// <summary>Derivative of the system by each free number, one sweep of Taylor arithmetic a column.</summary>
    private void Matrix(in AxleNumbers<double> q, Span<double> matrix)
    {
        int n = free.Length;
        Span<Jet> g = stackalloc Jet[5];
        for (int b = 0; b < n; b++)
        {
            var along = Still(q);
            along[free[b]] = along[free[b]] with { D = 1 };
            System(along, g);
            for (int a = 0; a < n; a++)
            {
                matrix[(a * n) + b] = g[a].D;
            }
        }
    }

    private void System(in AxleNumbers<Jet> q, Span<Jet> g)
    {
        var frame = new AxleFrame(q);
        JetPoint3 origin = frame.Point(default);
        g.Clear();
        for (int i = 0; i < onBody.Length; i++)
        {
            JetPoint3 joint = frame.Point(onAxle[i]), rod = joint - JetPoint3.Fixed(onBody[i]);
            Jet now = rod.Length(), change = now + -length[i];
            if (exact)
            {
                g[i] = change;
                continue;
            }

            Jet pull = change * now.Inverse() * weight[i];
            JetPoint3 arm = joint - origin;
            for (int a = 0; a < free.Length; a++)
            {
                g[a] += rod.Dot(frame.Along(free[a], arm)) * pull;
            }
        }
    }
}
