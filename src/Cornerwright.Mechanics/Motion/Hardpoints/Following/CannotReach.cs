using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>Why a linkage cannot follow.</summary>
/// <param name="Reached">How far it got on the straight way, to 1e-6 m.</param>
/// <param name="Tie">The rod, strut or hinge that gives first, after its joints: "arm front - ball".</param>
/// <param name="TieNumber">Its place in the list of ties.</param>
/// <param name="Missing">
/// m; how much longer a rod would have to be (negative: shorter) for a pose 1 mm further, or how far a strut or hinge is off its line, when
/// what is missing is shared in least squares. 0 at a dead centre beyond which the linkage only goes on assembled in another way; then the
/// tie is the one that carries most there.
/// </param>
/// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
public sealed record CannotReach(LinkagePlace Reached, string Tie, int TieNumber, double Missing)
{
    /// <summary>m beyond the furthest pose at which the linkage is looked at: enough for the miss to stand out of rounding.</summary>
    internal const double Forced = 1e-3;
}

/// <summary>The pose nearest to meeting all conditions where none meets them.</summary>
/// <remarks>
/// Source: docs/theory/hardpoints.md §3 (Levenberg-Marquardt, Nocedal and Wright, Numerical Optimization, 2nd ed. (2006), §10.3).
/// </remarks>
internal static class ForcedPose
{
    private const int StepLimit = 60;
    private const double AnotherWay = 1e-7;      // m: a pose that misses less than this is met, on another branch

    /// <summary>The tie missed most, and by how much (m, signed).</summary>
    public static (int Tie, double Missing) LargestMiss(KnuckleLinkage linkage, in KnucklePose start, in LinkagePlace forced)
    {
        var values = new ConditionValues(linkage);
        var normal = new FiveEquations();
        Span<double> x = stackalloc double[KnuckleLinkage.Conditions];
        double z = linkage.Origin.Z + forced.Travel, damping = 1e-4;
        KnucklePose pose = start with { Origin = new(start.Origin.X, start.Origin.Y, z) };
        values.Evaluate(pose, forced);
        double squares = Squares(values.Missed);
        for (int i = 0; i < StepLimit && values.DampedStep(damping, normal, x); i++)
        {
            KnucklePose next = pose.MovedBy(x[0], x[1], x[2], new Vec3(pose.Origin.X + x[3], pose.Origin.Y + x[4], z));
            values.Evaluate(next, forced);
            double smaller = Squares(values.Missed);
            bool better = smaller < squares;
            damping *= better ? 0.3 : 8;
            if (better)
            {
                bool settled = squares - smaller <= 1e-9 * squares;
                (pose, squares) = (next, smaller);
                if (settled)
                {
                    break;
                }
            }
            else
            {
                values.Evaluate(pose, forced);
            }
        }

        values.Evaluate(pose, forced);
        int worst = 0;
        for (int i = 1; i < KnuckleLinkage.Conditions; i++)
        {
            worst = Math.Abs(values.Missed[i]) > Math.Abs(values.Missed[worst]) ? i : worst;
        }

        return Math.Abs(values.Missed[worst]) > AnotherWay
            ? (linkage.All[worst].Tie, values.Missed[worst]) : (MostLoaded(linkage, values, normal, start, forced), 0);
    }

    private static int MostLoaded(
        KnuckleLinkage linkage, ConditionValues values, FiveEquations square, in KnucklePose start, in LinkagePlace forced)
    {
        Span<double> loads = stackalloc double[KnuckleLinkage.Conditions];
        values.Evaluate(start, forced);
        values.LoadsAtDeadCentre(square, loads);
        int most = 0;
        for (int i = 1; i < loads.Length; i++)
        {
            most = Math.Abs(loads[i]) > Math.Abs(loads[most]) ? i : most;
        }

        return linkage.All[most].Tie;
    }

    private static double Squares(ReadOnlySpan<double> missed)
    {
        double sum = 0;
        foreach (double m in missed)
        {
            sum += m * m;
        }

        return sum;
    }
}
