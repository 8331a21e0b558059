using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// How a wheel moves along the car as it rises, where no hardpoints say it: read at each step of a cycled wheel, or by its slope and the
/// length of the swing arm, or taken for granted with the doubt that belongs to the layout.
/// </summary>
/// <remarks>
/// Seen from the side a wheel swings about a pivot: forward by `slope z + z²/(2 L)` at a travel z, L from the hub forward to the pivot.
/// What is taken for granted is a span over invented linkages of usual sizes (docs/theory/motion.md §9); common practice has no figures.
/// </remarks>
internal sealed class ForePath
{
    /// <summary>Mean and standard deviation of the bend, 1/m, and standard deviation of the slope about 0.</summary>
    private readonly record struct Usual(double Bend, double BendSigma, double SlopeSigma, string Words);

    /// <summary>A swing arm shorter than this is none, m.</summary>
    private const double ShortestArm = 0.1;

    private readonly Handle _slope, _bend, _arm;

    private ForePath(InputTable table, string path, WheelMotion motion, Usual usual)
    {
        _slope = motion.ForwardPerTravel is not null
            ? table.Add(path + "/forwardPerTravel", "fore-and-aft move per travel", motion.ForwardPerTravel)
            : table.Assume(path + "/forwardPerTravel", "fore-and-aft move per travel", 0, usual.SlopeSigma, FormattableString.Invariant(
                $"wheel forward with bump: not measured, taken as 0 ± {200 * usual.SlopeSigma:0.#} mm per 100 mm ({usual.Words})"));
        (_arm, _bend) = motion.SwingArm is not null
            ? (table.Add(path + "/swingArm", "swing arm seen from the side", motion.SwingArm), Handle.None)
            : (Handle.None, table.Assume(path + "/foreBend", "bend of the wheel's path along the car", usual.Bend, usual.BendSigma,
                FormattableString.Invariant($"bend of the wheel's path forward: not measured, taken as {5 * usual.Bend:0.#} ± {10
                    * usual.BendSigma:0.#} mm at 100 mm of travel ({usual.Words})")));
    }

    /// <summary>Null where hardpoints or the steps of a cycled wheel say it.</summary>
    public static ForePath? Compile(InputTable table, string path, Car car, CornerPlace place)
    {
        var (corner, axle) = (car.At(place), car.At(place.Axle()));
        var motion = corner.Motion;
        bool cycled = motion.Level == MotionLevel.Cycled && motion.Steps.Count(s => s.Travel is not null && s.Forward is not null) > 1;
        return motion.Level == MotionLevel.Hardpoints || cycled ? null
            : new ForePath(table, path, motion, UsualOf(Axles.KindOf(car, place.Axle()), motion.Level, corner, axle));
    }

    /// <summary>m, forward positive, at a travel of the arm.</summary>
    public double At(Reader x, double travel)
    {
        double bend = _bend.IsGiven ? x[_bend] : OneOver(x[_arm]);
        return travel * (x[_slope] + (0.5 * bend * travel));
    }

    private static double OneOver(double arm) => Math.Abs(arm) > ShortestArm ? 1 / arm : Math.Sign(arm) / ShortestArm;

    private static Usual UsualOf(AxleKind kind, MotionLevel level, Corner corner, Axle axle) => kind switch
    {
        AxleKind.RigidAxle => new(1.8, 0.4, 0.05, "links or springs of 0.4 to 1 m"),
        AxleKind.TwistBeam => new(2.3, 0.3, 0.05, "trailing arms of 0.35 to 0.6 m"),
        _ when axle.Steered || corner.Strut is not null || level is MotionLevel.PlanarStrut or MotionLevel.PlanarWishbone =>
            new(0, 0.2, 0.04, "strut or arms across the car"),
        _ => new(1.1, 0.7, 0.05, "arms along or across the car"),
    };
}
