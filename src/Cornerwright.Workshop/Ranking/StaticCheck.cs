using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Ranking;

/// <summary>What the quick evaluation of a spring-and-damper station checks, cheapest first: the order in which a choice is refused.</summary>
internal enum StaticCheck
{
    FitBetween,
    FitPerch,
    FitMount,
    BodyThread,
    CollarThread,
    Rides,
    RideHeight,
    SeatedAtDroop,
    Captive,
    StopOrder,
    CoilRoom,
    SpringTravel,
    SpringStress,
    Buckling,
    Crossover,
    HelperShut,
    BumpTravel,
    DroopTravel,
    StopUse,
    DamperWindow,
    DamperMiddle,
    Camber,
    Frequency,
}

/// <summary>Words and scales of the quick checks.</summary>
internal static class StaticChecks
{
    public const int Count = (int)StaticCheck.Frequency + 1;

    /// <summary>In the judge's words where the judge has the check too.</summary>
    public static string Title(StaticCheck check) => check switch
    {
        StaticCheck.FitBetween => "Springs and sheets on each other",
        StaticCheck.FitPerch => "Spring on its perch",
        StaticCheck.FitMount => "Spring on the top mount",
        StaticCheck.BodyThread => "Body in its clamp",
        StaticCheck.CollarThread => "Collar on its thread",
        StaticCheck.Rides => "Carries the car at all",
        StaticCheck.RideHeight => "Ride height",
        StaticCheck.SeatedAtDroop => "Seated at full droop",
        StaticCheck.Captive => "Adapter stays in its spring",
        StaticCheck.StopOrder => "Bump stop ends the travel",
        StaticCheck.CoilRoom => "Coil room",
        StaticCheck.SpringTravel => "Working travel of the spring",
        StaticCheck.SpringStress => "Stress in the spring",
        StaticCheck.Buckling => "Buckling of the spring",
        StaticCheck.Crossover => "Crossover of the tender",
        StaticCheck.HelperShut => "Helper shut at ride",
        StaticCheck.BumpTravel => "Free bump travel",
        StaticCheck.DroopTravel => "Droop travel",
        StaticCheck.StopUse => "Bump stop at rest, loaded",
        StaticCheck.DamperWindow => "Damper in its maker's window",
        StaticCheck.DamperMiddle => "Damper near its middle",
        StaticCheck.Camber => "Camber wanted",
        _ => "Ride frequency wanted",
    };

    /// <summary>
    /// How much of a check's unit counts as one step away from passing, SI: so that a millimetre, a turn and 100 N can be
    /// put in one order when the nearest misses are looked for. Common practice, no source.
    /// </summary>
    public static double Step(Unit unit) => unit.Dimension switch
    {
        Dimension.Length => 1e-3,
        Dimension.Force => 100,
        Dimension.Turns => 0.5,
        Dimension.Ratio => 0.05,
        Dimension.Frequency => 0.1,
        Dimension.Angle => 0.25 * Math.PI / 180,
        _ => 1,
    };

    public static Unit UnitOf(StaticCheck check) => check switch
    {
        StaticCheck.SpringStress or StaticCheck.Crossover or StaticCheck.StopUse or StaticCheck.DamperMiddle => Units.Percent,
        StaticCheck.HelperShut => Units.Newton,
        StaticCheck.Camber => Units.Degree,
        StaticCheck.Frequency => Units.Hertz,
        _ => Units.Millimetre,
    };
}
