using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// What a motion known by ratios or from the front does not say, taken for granted with the doubt that belongs to it: how the wheel's path
/// bends, how its camber gain changes, how it steers by itself.
/// </summary>
/// <remarks>
/// The figures are spans over invented linkages of usual sizes, not readings (docs/theory/motion.md §7; common practice has no figures).
/// Each is an input, so that a finding that hangs on it says so and by how much.
/// </remarks>
internal sealed class TapeUnknowns
{
    private const double Degree = Math.PI / 180, PerMillimetre = 1000;

    /// <summary>Steered wheels stand on links across the car, 0.27 m to very long: the hub's path bends inboard as theirs, 1/m.</summary>
    internal const double Arc = 1.9, ArcSigma = 0.95;

    /// <summary>Wheels that do not steer may stand on arms along the car instead, whose path hardly bends sideways, 1/m.</summary>
    internal const double ArcUnsteered = 0.8, ArcUnsteeredSigma = 0.6;

    /// <summary>Change of the camber gain, rad/m².</summary>
    internal const double CamberBendSigma = 0.00018 * Degree * PerMillimetre * PerMillimetre;

    /// <summary>Bump steer, rad/m.</summary>
    private const double BumpSteerSigma = 0.002 * Degree * PerMillimetre;

    private readonly Handle _arc, _camberBend, _bumpSteer;

    private TapeUnknowns(InputTable table, string path, WheelMotion motion, bool steered)
    {
        var (arc, sigma) = steered ? (Arc, ArcSigma) : (ArcUnsteered, ArcUnsteeredSigma);
        string links = steered ? "taken as that of links between 0.27 m and very long" : "taken as 0.8 ± 1.2 mm at 45 mm of travel";
        bool ratios = motion.Level == MotionLevel.Ratios;
        bool toe = motion.Level != MotionLevel.Cycled || motion.Steps.All(s => s.Toe is null);
        _arc = ratios ? table.Assume(path + "/arc", "bend of the wheel's path", -arc, sigma,
            $"bend of the wheel's path inboard: not measured, {links}") : Handle.None;
        _camberBend = ratios ? table.Assume(path + "/camberBend", "change of the camber gain", 0, CamberBendSigma,
            "camber gain: taken as the same through travel, ± 0.00036 deg/mm per mm") : Handle.None;
        _bumpSteer = toe ? table.Assume(path + "/bumpSteer", "toe through travel", 0, BumpSteerSigma,
            "toe through travel: not measured, taken as the same ± 0.004 deg/mm") : Handle.None;
    }

    /// <summary>Null where the linkage itself says it all.</summary>
    public static TapeUnknowns? Compile(InputTable table, string path, WheelMotion motion, bool steered) =>
        motion.Level == MotionLevel.Hardpoints ? null : new TapeUnknowns(table, path, motion, steered);

    /// <summary>Second derivative of the hub's sideways move, 1/m.</summary>
    public double PathBend(Reader x) => x.Or(_arc, 0);

    /// <summary>rad/m².</summary>
    public double CamberBend(Reader x) => x.Or(_camberBend, 0);

    /// <summary>rad/m; 0 where toe was read at each step.</summary>
    public double BumpSteer(Reader x) => x.Or(_bumpSteer, 0);

}
