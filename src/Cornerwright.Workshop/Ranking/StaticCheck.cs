using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Checks;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// What the quick evaluation of a spring-and-damper station checks, cheapest first: the order in which a choice is refused.
/// </summary>
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

    /// <summary>The judge's own kind, which the quick evaluation shares.</summary>
    public static CheckKind KindOf(StaticCheck check) => check switch
    {
        StaticCheck.FitBetween => CheckCatalogue.FitBare,
        StaticCheck.FitPerch or StaticCheck.FitMount => CheckCatalogue.Fit,
        StaticCheck.BodyThread => CheckCatalogue.BodyThread,
        StaticCheck.CollarThread => CheckCatalogue.CollarThread,
        StaticCheck.Rides => CheckCatalogue.Carries,
        StaticCheck.RideHeight => CheckCatalogue.RideHeight,
        StaticCheck.SeatedAtDroop => CheckCatalogue.SeatedAtDroop,
        StaticCheck.Captive => CheckCatalogue.Captive,
        StaticCheck.StopOrder => CheckCatalogue.StopOrder,
        StaticCheck.CoilRoom => CheckCatalogue.CoilRoom,
        StaticCheck.SpringTravel => CheckCatalogue.SpringTravel,
        StaticCheck.SpringStress => CheckCatalogue.SpringStress,
        StaticCheck.Buckling => CheckCatalogue.Buckling,
        StaticCheck.Crossover => CheckCatalogue.Crossover,
        StaticCheck.HelperShut => CheckCatalogue.HelperShut,
        StaticCheck.BumpTravel => CheckCatalogue.BumpTravel,
        StaticCheck.DroopTravel => CheckCatalogue.DroopTravel,
        StaticCheck.StopUse => CheckCatalogue.StopUse,
        StaticCheck.DamperWindow => CheckCatalogue.DamperWindow,
        StaticCheck.DamperMiddle => CheckCatalogue.DamperMiddle,
        StaticCheck.Camber => CheckCatalogue.WishedCamber,
        _ => CheckCatalogue.WishedFrequency,
    };

    /// <summary>For people; which of a spring's two seats it is where the kind does not say.</summary>
    public static string Title(StaticCheck check) => check switch
    {
        StaticCheck.FitPerch => "Spring on its perch",
        StaticCheck.FitMount => "Spring on the top mount",
        _ => KindOf(check).General,
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

    public static Unit UnitOf(StaticCheck check) => KindOf(check).Unit;
}
