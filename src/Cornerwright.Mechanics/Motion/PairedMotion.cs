namespace Cornerwright.Mechanics.Motion;

/// <summary>
/// The motion of a wheel on an axle that carries both its wheels: where it is hangs on the other wheel's travel too. Asked with one travel
/// it answers for both wheels rising alike.
/// </summary>
/// <param name="together">Wheel, spring and damper while both wheels rise alike.</param>
/// <remarks>Source: docs/theory/rigid-axles.md §7.</remarks>
public abstract class PairedMotion(CornerMotion together) : CornerMotion
{
    /// <summary>The motion while both wheels rise alike. Source: as given.</summary>
    protected CornerMotion Together => together;

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel) => together.WheelAt(travel, out wheel);

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state) =>
        together.StationAt(travel, station, out state);

    /// <summary>This wheel while the other one travels otherwise.</summary>
    /// <param name="travel">Of this wheel's hub face, m, bump positive.</param>
    /// <param name="other">Of the other wheel's, m, bump positive.</param>
    /// <param name="wheel">Holds numbers only if the answer is usable.</param>
    /// <remarks>Source: docs/theory/rigid-axles.md §7, §8.</remarks>
    public abstract Reach WheelAt(double travel, double other, out WheelMotionState wheel);
}

/// <summary>What one wheel of an axle does against the other, where no hardpoints say it.</summary>
/// <param name="Track">Between both hub faces, m.</param>
/// <param name="Lean">
/// How much of the axle's turn against the body the wheel leans by: 1 on a rigid axle, less on a twist beam, whose arms turn about their
/// bushings as well.
/// </param>
/// <param name="Height">Of the hub centres above the axle's roll centre, m.</param>
/// <param name="Steer">Yaw of the axle for its roll, rad/rad, positive when the end that rises moves back.</param>
/// <param name="Rigid">True where one straight axle carries both hubs, so that its ends swing in and yaw moves them along the car.</param>
/// <remarks>Source: docs/theory/rigid-axles.md §7.</remarks>
public readonly record struct AxleRoll(double Track, double Lean, double Height, double Steer, bool Rigid)
{
    /// <summary>A wheel's state when the axle stands level at a mean travel, moved by how far the wheels differ.</summary>
    /// <param name="level">With both wheels at the mean of both travels.</param>
    /// <param name="more">Travel of this wheel less that of the other, m.</param>
    /// <returns>NaN where the wheels differ by more than the axle is long. Source: docs/theory/rigid-axles.md §7.</returns>
    public WheelMotionState Rolled(in WheelMotionState level, double more)
    {
        // The end that rises leans its wheel's top inboard.
        double sine = more / Track, roll = Math.Asin(sine), yaw = Steer * roll, half = Rigid ? 0.5 * Track : 0;
        return new(
            level.Camber - (Lean * roll), level.Toe - yaw, level.LateralShift - (Height * sine) - (half * (1 - Math.Cos(roll))),
            level.ForwardShift - (half * Math.Sin(yaw)));
    }
}

/// <summary>A wheel whose axle is known by its track and by how it rolls.</summary>
/// <param name="together">While both wheels rise alike.</param>
/// <param name="roll">What one wheel does against the other.</param>
/// <remarks>Source: docs/theory/rigid-axles.md §7.</remarks>
public sealed class RollingMotion(CornerMotion together, AxleRoll roll) : PairedMotion(together)
{
    /// <inheritdoc/>
    public override Reach WheelAt(double travel, double other, out WheelMotionState wheel)
    {
        Reach reach = Together.WheelAt(0.5 * (travel + other), out WheelMotionState level);
        if (reach.IsUsable() && !roll.Rigid && Together.WheelAt(travel, out WheelMotionState own).IsUsable())
        {
            // An arm swings by its own wheel's travel.
            level = level with { ForwardShift = own.ForwardShift };
        }

        wheel = reach.IsUsable() ? roll.Rolled(level, travel - other) : default;
        return !reach.IsUsable() || double.IsFinite(wheel.Camber) ? reach : Reach.LinkageCannotClose;
    }
}
