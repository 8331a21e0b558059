namespace Cornerwright.Mechanics.Motion;

/// <summary>A station known by its length, motion ratio and the ratio's slope at the reference state.</summary>
/// <param name="Length">D0, m.</param>
/// <param name="MotionRatio">MR at z = 0, positive when bump shortens the station.</param>
/// <param name="MotionRatioSlope">dMR/dz, 1/m, taken as constant.</param>
public readonly record struct RatioStation(double Length, double MotionRatio, double MotionRatioSlope)
{
    /// <summary>State at a travel (m): D = D0 - MR z - slope z²/2. Source: docs/theory/motion.md §2.</summary>
    public StationState At(double travel) => new(
        Length - (MotionRatio * travel) - (0.5 * MotionRatioSlope * travel * travel),
        MotionRatio + (MotionRatioSlope * travel),
        MotionRatioSlope);
}

/// <summary>How the wheel leans and shifts, as polynomials in travel. The default is a wheel that only goes up and down.</summary>
/// <param name="Camber">At the reference state, rad.</param>
/// <param name="CamberGain">dCamber/dz, rad/m; negative when bump leans the top inward.</param>
/// <param name="CamberCurve">d²Camber/dz², rad/m².</param>
/// <param name="Toe">At the reference state, rad.</param>
/// <param name="ToeGain">dToe/dz, rad/m.</param>
/// <param name="LateralGain">Outboard shift of the hub face per travel, m/m.</param>
/// <param name="LateralCurve">Its change per travel, 1/m; an arm of length R swings inboard by -1/R.</param>
public readonly record struct RatioWheel(
    double Camber, double CamberGain = 0, double CamberCurve = 0, double Toe = 0, double ToeGain = 0, double LateralGain = 0,
    double LateralCurve = 0)
{
    /// <summary>State at a travel (m). Source: docs/theory/motion.md §2.</summary>
    public WheelMotionState At(double travel) => new(
        Camber + (travel * (CamberGain + (0.5 * CamberCurve * travel))),
        Toe + (ToeGain * travel),
        travel * (LateralGain + (0.5 * LateralCurve * travel)));
}

/// <summary>The simplest level: motion ratios, camber gain and lateral gain at the reference state.</summary>
/// <remarks>Source: docs/theory/motion.md §2 (a Taylor series round the reference state).</remarks>
public sealed class RatioMotion(RatioWheel wheelShape, RatioStation spring, RatioStation damper) : CornerMotion
{
    /// <summary>A coil-over: spring and damper on one axis. Source: docs/theory/motion.md §2.</summary>
    public RatioMotion(RatioWheel wheelShape, RatioStation coilOver)
        : this(wheelShape, coilOver, coilOver)
    {
    }

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §2.</remarks>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        bool finite = double.IsFinite(travel);
        wheel = finite ? wheelShape.At(travel) : default;
        return finite ? Reach.Reached : Reach.NotFinite;
    }

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §2.</remarks>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        bool finite = double.IsFinite(travel);
        state = !finite ? default : station == Station.Spring ? spring.At(travel) : damper.At(travel);
        return finite ? Reach.Reached : Reach.NotFinite;
    }
}
