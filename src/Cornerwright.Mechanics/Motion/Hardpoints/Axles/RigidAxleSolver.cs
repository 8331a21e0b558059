using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>Finds the axle's free numbers for given heights: exact with as many rods as free numbers, least squares with more.</summary>
/// <remarks>
/// Free: x, y, yaw and pitch where both heights are given; roll too where only their mean is. The system solved is e = 0 (lengths kept) or
/// Σ w e ∂e/∂q = 0 (weighted squares of length changes stationary).
/// Source: docs/theory/rigid-axles.md §2-3.
/// </remarks>
internal sealed class RigidAxleSolver : IPoseSystem
{
    private const double FurthestMove = 4;           // m or rad per m of a wheel's travel; usual axles stay below 1
    private static readonly int[] HeightsGiven = [PoseNumber.X, PoseNumber.Y, PoseNumber.Yaw, PoseNumber.Pitch];
    private static readonly int[] MeanGiven = [PoseNumber.X, PoseNumber.Y, PoseNumber.Yaw, PoseNumber.Roll, PoseNumber.Pitch];

    private readonly Vec3[] onBody;
    private readonly Vec3[] onAxle;
    private readonly double[] length;
    private readonly double[] weight;
    private readonly int[] free;
    private readonly bool exact;
    private readonly bool rollFree;

    private RigidAxleSolver(Vec3[] onBody, Vec3[] onAxle, double[] weight, double[] length, bool rollFree)
    {
        (this.onBody, this.onAxle, this.weight, this.length, this.rollFree) = (onBody, onAxle, weight, length, rollFree);
        free = rollFree ? MeanGiven : HeightsGiven;
        exact = onBody.Length == free.Length;
    }

    public int Rods => onBody.Length;

    public int FreeNumbers => free.Length;

    /// <param name="rods">In the body frame at the reference state.</param>
    /// <param name="toAxle">From body to axle coordinates at the reference state.</param>
    /// <param name="rollFree">True when only the mean height is given.</param>
    public static RigidAxleSolver For(IReadOnlyList<AxleRod> rods, Func<Vec3, Vec3> toAxle, bool rollFree)
    {
        double stiffest = rods.Max(rod => rod.Stiffness);
        return new(
            [.. rods.Select(rod => rod.OnBody)], [.. rods.Select(rod => toAxle(rod.OnAxle))],
            [.. rods.Select(rod => rod.Stiffness / stiffest)],
            [.. rods.Select(rod => (rod.OnAxle - rod.OnBody).Length)], rollFree);
    }

    /// <summary>From one pose to another along a straight line in the prescribed numbers.</summary>
    /// <param name="q">In: a solved pose. Out: the pose at the asked heights, if the answer is true.</param>
    /// <param name="z">Height of the midpoint of the wheel centres, m.</param>
    /// <param name="roll">rad; ignored where roll is free.</param>
    /// <param name="span">Largest travel of a wheel on the way, m.</param>
    /// <param name="keepBranch">False: whatever pose Newton finds.</param>
    public bool MoveTo(ref PoseNumbers<double> q, double z, double roll, double span, bool keepBranch = true)
    {
        var (z0, roll0) = (q[PoseNumber.Z], q[PoseNumber.Roll]);
        bool Step(double share, ref PoseNumbers<double> at, out int sign)
        {
            at[PoseNumber.Z] = z0 + ((z - z0) * share);
            at[PoseNumber.Roll] = rollFree ? at[PoseNumber.Roll] : roll0 + ((roll - roll0) * share);
            return PoseNewton.Solve(this, free, ref at, out sign);
        }

        return PoseNewton.Follow(Step, span, keepBranch, FurthestMove, ref q);
    }

    /// <summary>Change of each rod's length, m.</summary>
    public void Changes(in PoseNumbers<double> q, Span<double> changes)
    {
        var frame = new PoseFrame(PoseNewton.Still(q));
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
    public bool Derivatives(in PoseNumbers<double> q, in Jet z, in Jet roll, out PoseNumbers<Jet> moving)
    {
        moving = PoseNewton.Still(q);
        moving[PoseNumber.Z] = z;
        moving[PoseNumber.Roll] = rollFree ? moving[PoseNumber.Roll] : roll;
        return PoseNewton.Derivatives(this, free, ref moving);
    }

    /// <inheritdoc/>
    public void At(in PoseNumbers<Jet> q, Span<Jet> g)
    {
        var frame = new PoseFrame(q);
        JetPoint3 origin = frame.Origin;
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
