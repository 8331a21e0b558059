using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Sweeps;

/// <summary>One corner at one pose of a sweep; null is what the corner's level does not know.</summary>
/// <param name="Corner">Which.</param>
/// <param name="Travel">Of the hub's face, m.</param>
/// <param name="Rack">m along +Y; null where no rack is known.</param>
/// <param name="Slide">Of the top plate, m inward from its middle.</param>
/// <param name="Why">Empty where the pose is reached; else what keeps it from being.</param>
/// <param name="Motion">What every level knows: camber, toe, the hub's sideways move.</param>
/// <param name="Spring">Length, motion ratio and its slope.</param>
/// <param name="Damper">Likewise.</param>
/// <param name="BarRatio">Travel of the bar's end along its link per wheel travel.</param>
/// <param name="Wheel">What only hardpoints know.</param>
/// <param name="Steer">Of the wheel from straight ahead, rad, left positive.</param>
/// <param name="AntiBrake">Share of the pitching moment of braking, 1 for all.</param>
/// <param name="AntiDrive">Likewise for driving on this axle.</param>
/// <param name="Ackermann">Both wheels of the axle at this travel and rack.</param>
public sealed record SweepRow(
    CornerPlace Corner, double Travel, double? Rack, double Slide, string Why, WheelMotionState? Motion, StationState? Spring,
    StationState? Damper,
    double? BarRatio, WheelGeometry? Wheel, double? Steer, double? AntiBrake, double? AntiDrive, AckermannReading? Ackermann);
