using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion;

/// <summary>Which axis: where the spring sits or where the damper sits. On a coil-over both are the same line.</summary>
public enum Station
{
    Spring = 0,
    Damper = 1,
}

/// <summary>What the wheel does at one travel. The default is an upright, straight, unshifted wheel.</summary>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="LateralShift">m, outboard positive, of the hub-face centre from its place at the reference state.</param>
/// <param name="ForwardShift">m, forward positive, likewise.</param>
public readonly record struct WheelMotionState(double Camber, double Toe, double LateralShift, double ForwardShift = 0);

/// <summary>What a station (spring axis or damper axis) does at one travel. The default is no station at all.</summary>
/// <param name="Length">D, m, from the body mount plane to the lower reference, along the axis.</param>
/// <param name="MotionRatio">-dD/dz, spring travel per wheel travel, positive when bump shortens it.</param>
/// <param name="MotionRatioSlope">dMR/dz, 1/m, positive when the ratio grows in bump.</param>
public readonly record struct StationState(double Length, double MotionRatio, double MotionRatioSlope);

/// <summary>How one wheel moves with its travel z: every level of knowledge gives the same two answers.</summary>
/// <remarks>
/// Travel is that of the hub-face centre, m, bump positive, 0 at the reference state. The hub face is fixed to the knuckle, so the
/// motion does not change when another wheel is bolted on. Nothing here allocates or throws after construction.
/// Source: docs/theory/motion.md §1.
/// </remarks>
public abstract class CornerMotion
{
    /// <summary>Camber, toe and lateral shift at a travel (m). Source: docs/theory/motion.md, the section of the level.</summary>
    /// <returns>Why; <paramref name="wheel"/> holds numbers only if it is usable, else the default.</returns>
    public abstract Reach WheelAt(double travel, out WheelMotionState wheel);

    /// <summary>
    /// Length, motion ratio and its slope of a station at a travel (m). Source: docs/theory/motion.md, the section of the level.
    /// </summary>
    /// <returns>Why; <paramref name="state"/> holds numbers only if it is usable, else the default.</returns>
    public abstract Reach StationAt(double travel, Station station, out StationState state);

    /// <summary>True when the wheel's pose at this travel needs no extrapolation. Source: definition of <see cref="Reach"/>.</summary>
    public bool InDomain(double travel) => WheelAt(travel, out _) == Reach.Reached;

    /// <summary>The unbroken range of travel round the reference state in which the wheel's pose is usable, m, to 1e-5 m.</summary>
    /// <param name="bumpLimit">Where to stop looking upward, m, positive.</param>
    /// <param name="droopLimit">Where to stop looking downward, m, positive number.</param>
    /// <remarks>Marches in 40 steps, then halves the failing step; a gap narrower than a step can be missed. Source: bisection.</remarks>
    public (double Droop, double Bump) ReachableTravel(double droopLimit = 0.3, double bumpLimit = 0.3) =>
        (Edge(-droopLimit), Edge(bumpLimit));

    private double Edge(double limit) => LastGood.Before(travel => WheelAt(travel, out _).IsUsable(), limit, 40, 1e-5);
}
