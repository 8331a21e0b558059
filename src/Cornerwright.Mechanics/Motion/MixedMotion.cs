namespace Cornerwright.Mechanics.Motion;

/// <summary>Wheel, spring and damper known at different levels, put together for one corner.</summary>
/// <remarks>Each answer comes unchanged from its own level. Source: docs/theory/motion.md §1.</remarks>
public sealed class MixedMotion(CornerMotion wheelSource, CornerMotion spring, CornerMotion damper) : CornerMotion
{
    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §1.</remarks>
    public override Reach WheelAt(double travel, out WheelMotionState wheel) => wheelSource.WheelAt(travel, out wheel);

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §1.</remarks>
    public override Reach StationAt(double travel, Station station, out StationState state) =>
        (station == Station.Spring ? spring : damper).StationAt(travel, station, out state);
}
