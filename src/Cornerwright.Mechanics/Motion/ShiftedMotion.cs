namespace Cornerwright.Mechanics.Motion;

/// <summary>How sliding a strut's top mount, or turning its knuckle in the clamp, moves the wheel, seen from the front.</summary>
/// <remarks>
/// Seen from the front a strut's knuckle is held at its lower ball joint and at the top mount. A top mount that goes inward by s tilts the
/// knuckle by s/h and lifts the ball joint by s tan(i), where h is the height of the top mount above the joint and i the inclination of the
/// line through both; a clamp that tilts the knuckle alone lifts no joint. Either way the hub face, which lies outboard of the joint and
/// above it, goes up and inboard with the tilt. First order in s/h. Source: docs/theory/motion.md §8.
/// </remarks>
/// <param name="Joint">The ball joint goes up against the body at the same strut length, m.</param>
/// <param name="Hub">The hub face goes up against the ball joint, m.</param>
/// <param name="Outboard">The hub face goes outboard, m; negative for a top that goes inward.</param>
public readonly record struct TopMountShift(double Joint, double Hub, double Outboard)
{
    /// <summary>First order in slide over lever. Source: docs/theory/motion.md §8.</summary>
    /// <param name="slide">Of the top mount, inward positive, m.</param>
    /// <param name="clampTilt">Of the knuckle in its clamp, top inward positive, rad.</param>
    /// <param name="lever">Ball joint to top mount, along their line, m.</param>
    /// <param name="inclination">Of that line seen from the front, top inward positive, rad.</param>
    /// <param name="across">Ball joint to hub face, outboard positive, m.</param>
    /// <param name="above">Ball joint up to the hub centre, m.</param>
    public static TopMountShift Of(double slide, double clampTilt, double lever, double inclination, double across, double above)
    {
        double tilt = Math.Atan2(slide, lever) + clampTilt;
        return new(slide * Math.Tan(inclination), tilt * across, -tilt * above);
    }
}

/// <summary>A motion known with its top mount at one place, after the mount was slid or the knuckle turned in its clamp.</summary>
/// <remarks>Camber is the inner motion's own: whoever makes it adds what the tilt changes. Source: docs/theory/motion.md §8.</remarks>
public sealed class ShiftedMotion(CornerMotion inner, TopMountShift shift) : CornerMotion
{
    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        var reach = inner.WheelAt(travel - shift.Hub, out wheel);
        wheel = reach.IsUsable() ? wheel with { LateralShift = wheel.LateralShift + shift.Outboard } : wheel;
        return reach;
    }

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state) =>
        inner.StationAt(travel - shift.Hub - shift.Joint, station, out state);
}
