using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// What one wheel of a rigid axle or a twist beam does against the other where no hardpoints say it: from the track, and from how such
/// axles roll, taken for granted with the doubt that belongs to it (docs/theory/rigid-axles.md §7).
/// </summary>
internal sealed class AxleRollPlan
{
    /// <summary>Of an axle whose track nobody measured, m: road cars lie within 100 mm of it. Common practice, no source.</summary>
    private const double UsualTrack = 1.5, UsualTrackSigma = 0.05;

    /// <summary>
    /// Hub centres above the roll centre, m: lateral rods and the eyes of leaf springs lie within 100 mm of the hubs' height, and so do
    /// the bushings of a twist beam. Common practice, no source.
    /// </summary>
    private const double HeightSigma = 0.05;

    /// <summary>
    /// How much of the axle's turn the wheel of a twist beam leans by: the cross member stands at a third of the arm or a little behind it.
    /// Common practice, no source; the invented beam of the independent rows has 0.31.
    /// </summary>
    private const double BeamLean = 0.35, BeamLeanSigma = 0.1;

    /// <summary>Yaw for roll, rad/rad, either way. Common practice, no source.</summary>
    private const double SteerSigma = 0.05;

    private readonly bool _rigid;
    private readonly Handle _track, _height, _lean, _steer;

    private AxleRollPlan(InputTable table, string path, AxleKind kind, Axle axle)
    {
        _rigid = kind == AxleKind.RigidAxle;
        string words = _rigid ? "rigid axle" : "twist beam";
        _track = axle.Track is not null ? table.Add(path + "/track", "track", axle.Track)
            : table.Assume(path + "/track", "track", UsualTrack, UsualTrackSigma, "track: not measured, taken as 1500 ± 100 mm");
        _height = table.Assume(path + "/rollCentre", "roll centre", 0, HeightSigma, $"{words}: roll centre taken at hub height ± 100 mm");
        _lean = _rigid ? Handle.None : table.Assume(path + "/leanInRoll", "lean of the wheels in roll", BeamLean, BeamLeanSigma,
            "twist beam: its wheels taken to lean by 35 ± 20 % of the roll");
        _steer = table.Assume(path + "/rollSteer", "roll steer", 0, SteerSigma, $"{words}: roll steer taken as 0 ± 0.1 deg per deg");
    }

    /// <summary>The wheel on the car now, which says how far inside the track the hubs stand; null where it is not known.</summary>
    public WheelPlan? WheelNow { get; set; }

    /// <summary>Null for wheels on links of their own.</summary>
    public static AxleRollPlan? Compile(InputTable table, Car car, AxlePlace place) =>
        Axles.KindOf(car, place) is not AxleKind.Independent and var kind
            ? new AxleRollPlan(table, place == AxlePlace.Front ? "front" : "rear", kind, car.At(place)) : null;

    /// <summary>The axle's roll with these numbers.</summary>
    public AxleRoll Roll(Reader x) => new(
        x[_track] - (2 * (WheelNow?.AxialCentre(x) ?? 0)), _rigid ? 1 : x[_lean], x[_height], x[_steer], _rigid);
}
