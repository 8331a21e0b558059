using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>What the other wheel of the axle does while this one travels.</summary>
public enum AxleMovement
{
    /// <summary>The same.</summary>
    Heave = 0,

    /// <summary>The opposite.</summary>
    Roll,

    /// <summary>Nothing.</summary>
    OneWheel,
}

/// <summary>One wheel of a rigid axle as a corner of the car.</summary>
/// <remarks>
/// The wheel centre of the points given must be the hub-face centre here, because travel and shift are those of the
/// hub face. Keeps the last answer: one instance belongs to one thread. Source: docs/theory/rigid-axles.md §7.
/// </remarks>
public sealed class RigidAxleMotion(RigidAxle axle, bool left, AxleMovement movement = AxleMovement.Heave) : CornerMotion
{
    private double at = double.NaN;
    private RigidAxleState? last;

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        RigidAxleState state = Ask(travel);
        AxleWheelState? now = left ? state.Left : state.Right;
        Vec3 from = (left ? axle.Points.Left : axle.Points.Right).WheelCentre;
        wheel = now is null ? default
            : new(now.Camber, now.Toe, (left ? 1 : -1) * (now.Centre.Y - from.Y), now.Centre.X - from.X);
        return state.Why;
    }

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        RigidAxleState axleState = Ask(travel);
        state = default;
        return (left ? axleState.Left : axleState.Right) is { } now
            ? StationReading.Read(station == Station.Spring ? now.Spring : now.Damper, movement, out state)
            : axleState.Why;
    }

    private RigidAxleState Ask(double travel)
    {
        if (last is null || at != travel)
        {
            double other = movement switch { AxleMovement.Heave => travel, AxleMovement.Roll => -travel, _ => 0 };
            last = left ? axle.At(travel, other) : axle.At(other, travel);
            at = travel;
        }

        return last;
    }
}

/// <summary>One wheel of a twist beam as a corner of the car.</summary>
/// <remarks>As <see cref="RigidAxleMotion"/>. Source: docs/theory/rigid-axles.md §7.</remarks>
public sealed class TwistBeamMotion(TwistBeam beam, AxleMovement movement = AxleMovement.Heave) : CornerMotion
{
    private double at = double.NaN;
    private TwistBeamState? last;

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        TwistBeamState now = Ask(travel);
        Vec3 from = beam.Points.Wheel.WheelCentre;
        wheel = now.Why == Reach.Reached
            ? new(now.Camber, now.Toe, beam.Side * (now.Centre.Y - from.Y), now.Centre.X - from.X) : default;
        return now.Why;
    }

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        TwistBeamState now = Ask(travel);
        state = default;
        return now.Why == Reach.Reached
            ? StationReading.Read(station == Station.Spring ? now.Spring : now.Damper, movement, out state)
            : now.Why;
    }

    private TwistBeamState Ask(double travel)
    {
        if (last is null || at != travel)
        {
            double share = movement switch { AxleMovement.Heave => 1, AxleMovement.Roll => 0, _ => 0.5 };
            last = beam.At(share * travel, (1 - share) * travel);
            at = travel;
        }

        return last;
    }
}

/// <summary>Reads a station of an axle for one movement.</summary>
internal static class StationReading
{
    public static Reach Read(AxleStationState? given, AxleMovement movement, out StationState state)
    {
        state = given is { } s ? new(s.Length, s.MotionRatio.For(movement), s.MotionRatioSlope.For(movement)) : default;
        return given is null ? Reach.NotGiven : Reach.Reached;
    }
}
