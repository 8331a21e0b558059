using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>How a quantity of a wheel changes with its travel, by what the other wheel of the axle does meanwhile.</summary>
/// <param name="Heave">Per m of travel that both wheels make.</param>
/// <param name="Roll">Per m of this side's travel while the other side makes the opposite travel.</param>
/// <param name="OneWheel">Per m of this side's travel while the other side stays.</param>
public readonly record struct AxleRates(double Heave, double Roll, double OneWheel)
{
    /// <summary>The rate for one movement. Source: definition of <see cref="AxleMovement"/>.</summary>
    public double For(AxleMovement movement) =>
        movement switch { AxleMovement.Heave => Heave, AxleMovement.Roll => Roll, _ => OneWheel };
}

/// <summary>A spring or damper of a rigid axle at one pose.</summary>
/// <param name="Length">m.</param>
/// <param name="MotionRatio">-d(length)/d(travel), positive when bump shortens it.</param>
/// <param name="MotionRatioSlope">d(motion ratio)/d(travel), 1/m, along the same movement.</param>
public readonly record struct AxleStationState(double Length, AxleRates MotionRatio, AxleRates MotionRatioSlope);

/// <summary>One wheel of a rigid axle at one pose, in the body frame.</summary>
/// <param name="Centre">Wheel centre, m.</param>
/// <param name="Spindle">Length 1, to the street side.</param>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="Contact">Lowest point of the tyre's disc, m.</param>
/// <param name="ContactShiftY">Along +Y (left), m, of the contact from its place at the reference state.</param>
/// <param name="CentreRecession">Slope dx/dz of the wheel centre's path in heave, forward positive.</param>
/// <param name="ContactRecession">
/// Slope dx/dz in heave of the path of the axle's point that is the contact now (wheel locked to the axle).
/// </param>
/// <param name="Spring">Null when none was given.</param>
/// <param name="Damper">Null when none was given.</param>
public sealed record AxleWheelState(
    Vec3 Centre, Vec3 Spindle, double Camber, double Toe, Vec3 Contact, double ContactShiftY,
    double CentreRecession, double ContactRecession, AxleStationState? Spring, AxleStationState? Damper);

/// <summary>A rigid axle at one pose, in the body frame.</summary>
/// <param name="Why">Everything else but <paramref name="Heave"/> and the rods holds numbers only if this is Reached.</param>
/// <param name="Centre">Midpoint between the wheel centres, m.</param>
/// <param name="Heave">Mean travel, m.</param>
/// <param name="Roll">rad, of the line of wheel centres, positive when the left end is higher.</param>
/// <param name="Yaw">rad, of the line of wheel centres, positive when the left end is behind: the axle then steers to the left.</param>
/// <param name="Pitch">rad, of the axle about the line of wheel centres, 0 at the reference state, positive nose down.</param>
/// <param name="RodChanges">Change of each rod's length, m, in the order given, positive longer.</param>
/// <param name="WorstRod">Name of the rod that changes most.</param>
/// <param name="SteerInHeave">d(yaw)/d(heave), rad/m.</param>
/// <param name="RollSteer">d(yaw)/d(roll), rad/rad.</param>
/// <param name="CentreRecession">Slope dx/dz of the wheel centres' paths in heave, mean of both wheels, forward positive.</param>
/// <param name="ContactRecession">The same for the axle's points that are the contacts now (wheels locked to the axle).</param>
/// <param name="RollCentre">
/// Where the normals of both contacts' paths in roll meet in the plane Y-Z, m; its X is that of the axle's centre.
/// </param>
/// <param name="RollCentreZ">
/// Height, m, straight above or below the axle's centre where the axle, turning in roll, has no side motion. The two definitions agree
/// where the axle is level and straight.
/// </param>
/// <param name="RollCentreHeight">m, of <paramref name="RollCentreZ"/> above the mean of both contacts.</param>
public sealed record RigidAxleState(
    Reach Why, Vec3 Centre, double Heave, double Roll, double Yaw, double Pitch, IReadOnlyList<double> RodChanges, string WorstRod,
    double SteerInHeave, double RollSteer, double CentreRecession, double ContactRecession,
    Vec3 RollCentre, double RollCentreZ, double RollCentreHeight,
    AxleWheelState? Left, AxleWheelState? Right);
