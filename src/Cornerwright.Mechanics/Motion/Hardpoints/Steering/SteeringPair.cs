using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Steering;

/// <summary>Both front wheels at one place of the rack.</summary>
/// <param name="Why">The rest holds numbers only if this is Reached.</param>
/// <param name="Side">"left", "right" or empty: whose linkage cannot follow.</param>
/// <param name="Left">Left wheel.</param>
/// <param name="Right">Right wheel.</param>
public readonly record struct SteeringPairState(Reach Why, string Side, SteeredWheel Left, SteeredWheel Right);

/// <summary>One rack that steers two wheels, whose linkages need not be alike.</summary>
/// <param name="Left">With its tie rod marked as steered.</param>
/// <param name="Right">Likewise; <see cref="CornerLinkage.Mirrored"/> of the left where nothing else is known.</param>
/// <remarks>The rack carries both inner joints along +Y. Steer contains static toe. Source: docs/theory/steering.md §1.</remarks>
public sealed record SteeringPair(CornerLinkage Left, CornerLinkage Right)
{
    /// <summary>Both wheels. Source: docs/theory/steering.md §1.</summary>
    /// <param name="rack">Along +Y, m, 0 at the reference state.</param>
    /// <param name="travelLeft">m, bump positive.</param>
    /// <param name="travelRight">m, bump positive.</param>
    public SteeringPairState At(double rack, double travelLeft = 0, double travelRight = 0)
    {
        TraceState left = LinkageTrace.At(Left, travelLeft, rack), right = LinkageTrace.At(Right, travelRight, rack);
        if (left.Why != Reach.Reached || right.Why != Reach.Reached)
        {
            return left.Why != Reach.Reached ? new(left.Why, "left", default, default) : new(right.Why, "right", default, default);
        }

        // Toe-in turns the left wheel to the right.
        return new(Reach.Reached, "", new(-left.Toe, left.Contact), new(right.Toe, right.Contact));
    }

    /// <summary>
    /// How far the rack can go to a side before a linkage cannot follow, m, to 1e-6 m. Source: bisection, after marching in 64 steps.
    /// </summary>
    /// <param name="limit">Where to stop looking, m along +Y, either sign.</param>
    /// <param name="travelLeft">m, bump positive.</param>
    /// <param name="travelRight">m, bump positive.</param>
    public double ReachOfRack(double limit, double travelLeft = 0, double travelRight = 0)
    {
        Require.Finite(limit);
        return LastGood.Before(rack => At(rack, travelLeft, travelRight).Why == Reach.Reached, limit, 64, 1e-6);
    }
}
