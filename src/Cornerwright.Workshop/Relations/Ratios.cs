using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.Relations;

/// <summary>Motion ratios at the measured height, as ratios or cycled readings give them.</summary>
internal readonly record struct Ratios(double Spring, double Damper, Num[] Ties)
{
    /// <summary>Null where neither was given, or no wheel could have it.</summary>
    public static Ratios? Of(Corner corner, string path)
    {
        if (corner.Motion.Level == MotionLevel.Cycled)
        {
            double spring = -CycledRelations.SlopeAtRide(corner.Motion.Steps, s => s.SpringLength);
            double damper = -CycledRelations.SlopeAtRide(corner.Motion.Steps, s => s.DamperLength);
            return spring > 0.03 ? new(spring, damper > 0.03 ? damper : spring, []) : null;
        }

        var given = Num.Of(path + "/motion/springRatio", "motion ratio of the spring", corner.Motion.SpringRatio);
        return given.Si > 0.03 ? new(given.Si, corner.Motion.DamperRatio is { Si: > 0.03 } own ? own.Si : given.Si, [given]) : null;
    }
}
