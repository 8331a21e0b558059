using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Checks;

/// <summary>Every kind of check there is. A new check is a line here and the function that works it out.</summary>
internal static class CheckCatalogue
{
    public static CheckKind SeatedAtDroop { get; } =
        new("seated-at-droop", "Seated at full droop", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind HelperShut { get; } =
        new("helper-shut", "{0} shut at ride", "Helper shut at ride", CheckScope.Suspension, Units.Newton, 0);
    public static CheckKind Crossover { get; } =
        new("crossover", "Crossover of {0}", "Crossover of the tender", CheckScope.Suspension, Units.Percent);
    public static CheckKind CoilRoom { get; } = new("coil-room", "Coil room of {0}", "Coil room", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind SpringTravel { get; } =
        new("spring-travel", "Working travel of {0}", "Working travel of the spring", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind SpringStress { get; } =
        new("spring-stress", "Stress in {0}", "Stress in the spring", CheckScope.Suspension, Units.Percent, 0);
    public static CheckKind Buckling { get; } =
        new("buckling", "Buckling of {0}", "Buckling of the spring", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind StopOrder { get; } = new("stop-order", "Bump stop ends the travel", CheckScope.WheelInCar, Units.Millimetre);
    public static CheckKind BumpTravel { get; } = new("bump-travel", "Free bump travel", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind DroopTravel { get; } = new("droop-travel", "Droop travel", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind StopUse { get; } = new("stop-use", "Bump stop at rest, loaded", CheckScope.Suspension, Units.Percent, 0);
    public static CheckKind LinkageReach { get; } =
        new("linkage-reach", "Links reach both ends of travel", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind DamperWindow { get; } =
        new("damper-window", "Damper in its maker's window", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind DamperMiddle { get; } = new("damper-middle", "Damper near its middle", CheckScope.Suspension, Units.Percent, 0);
    public static CheckKind CollarThread { get; } = new("collar-thread", "Collar on its thread", CheckScope.Fit, Units.Millimetre);
    public static CheckKind BodyThread { get; } = new("body-thread", "Body in its clamp", CheckScope.Fit, Units.Millimetre);
    public static CheckKind Fit { get; } = new("fit", "{0}", "Spring on its seat", CheckScope.Fit, Units.Millimetre);
    public static CheckKind FitBare { get; } = new("fit-bare", "{0}", "Springs and sheets on each other", CheckScope.Fit, Units.Millimetre);
    public static CheckKind Captive { get; } =
        new("captive", "{0} stays in its spring", "Adapter stays in its spring", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind RideHeight { get; } = new("ride-height", "Ride height", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind ReadingsAgree { get; } =
        new("readings-agree", "Readings agree with the springs", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind BoltCircle { get; } = new("bolt-circle", "Bolt circle", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind CentreBore { get; } = new("centre-bore", "Centre bore", CheckScope.Wheel, Units.Millimetre, 2);
    public static CheckKind BoltEngagement { get; } = new("bolt-engagement", "Wheel bolts' engagement", CheckScope.Wheel, Units.One, 2);
    public static CheckKind CentringRing { get; } = new("centring-ring", "Centring ring", CheckScope.Wheel, Units.Millimetre, 2);
    public static CheckKind SpacerOnHub { get; } = new("spacer-on-hub", "Spacer on the hub", CheckScope.Wheel, Units.Millimetre, 2);
    public static CheckKind CentringReach { get; } =
        new("centring-reach", "Hub's collar through the spacer", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind StudRoom { get; } = new("stud-room", "Hub's studs under the spacer", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind SpacerEngagement { get; } =
        new("spacer-engagement", "Thread that holds the spacer", CheckScope.Wheel, Units.One, 2);
    public static CheckKind BoltDepth { get; } = new("bolt-depth", "Depth of the wheel bolts", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind BoltSeat { get; } = new("bolt-seat", "Seat of bolts and wheel", CheckScope.Wheel, Units.One, 0);
    public static CheckKind BoltThread { get; } = new("bolt-thread", "Thread of bolts and hub", CheckScope.Wheel, Units.One, 0);
    public static CheckKind BoltClass { get; } = new("bolt-class", "Property class of the bolts", CheckScope.Wheel, Units.Percent, 0);
    public static CheckKind Poke { get; } = new("poke", "Tyre and the wing's edge", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind CalliperBarrel { get; } = new("calliper-barrel", "Calliper to barrel", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind CalliperSpokes { get; } = new("calliper-spokes", "Calliper to spokes", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind WheelLoad { get; } = new("wheel-load", "Load rating of the wheel", CheckScope.Wheel, Units.Percent, 0);
    public static CheckKind RimDiameter { get; } = new("rim-diameter", "Tyre and rim diameter", CheckScope.Wheel, Units.Inch, 0);
    public static CheckKind RimWidth { get; } = new("rim-width", "Rim width for the tyre", CheckScope.Wheel, Units.Inch);
    public static CheckKind TyreLoad { get; } = new("tyre-load", "Load index", CheckScope.Wheel, Units.Percent, 0);
    public static CheckKind TyreSpeed { get; } = new("tyre-speed", "Speed symbol", CheckScope.Wheel, Units.KilometrePerHour, 0);
    public static CheckKind RollingCircumference { get; } =
        new("rolling-circumference", "Rolling circumference", CheckScope.Wheel, Units.Percent);
    public static CheckKind ScrubChange { get; } = new("scrub-change", "{0}", "Scrub radius", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind Clear { get; } =
        new("clear", "{0}", "Wheel clear of what stands near it", CheckScope.WheelInCar, Units.Millimetre);
    public static CheckKind Scan { get; } = new("scan", "{0}", "Wheel clear of scans", CheckScope.WheelInCar, Units.Millimetre);
    public static CheckKind SideDifference { get; } =
        new("side-difference", "Left and right height", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind TrackChange { get; } = new("track-change", "Track", CheckScope.Wheel, Units.Millimetre);
    public static CheckKind EqualRolling { get; } = new("equal-rolling", "Left and right roll alike", CheckScope.Wheel, Units.Percent, 2);
    public static CheckKind GroundClearance { get; } =
        new("ground-clearance", "Ground clearance", CheckScope.WheelInCar, Units.Millimetre, 0);
    public static CheckKind Carries { get; } = new("rides", "Carries the car at all", CheckScope.Suspension, Units.Millimetre);
    public static CheckKind WishedCamber { get; } = new("wished-camber", "Camber wanted", CheckScope.Suspension, Units.Degree, 2);
    public static CheckKind WishedFrequency { get; } =
        new("wished-frequency", "Ride frequency wanted", CheckScope.Suspension, Units.Hertz, 2);

    /// <summary>All of them, in the order of this page.</summary>
    public static IReadOnlyList<CheckKind> All { get; } =
    [
        SeatedAtDroop, HelperShut, Crossover, CoilRoom, SpringTravel, SpringStress, Buckling, StopOrder, BumpTravel,
        DroopTravel, StopUse, LinkageReach, DamperWindow, DamperMiddle, CollarThread, BodyThread, Fit, FitBare, Captive,
        RideHeight, ReadingsAgree, BoltCircle, CentreBore, BoltEngagement,
        CentringRing, SpacerOnHub, CentringReach, StudRoom, SpacerEngagement, BoltDepth, BoltSeat, BoltThread, BoltClass, Poke,
        CalliperBarrel, CalliperSpokes, WheelLoad,
        RimDiameter, RimWidth, TyreLoad, TyreSpeed, RollingCircumference, ScrubChange, Clear, Scan, SideDifference,
        TrackChange, EqualRolling, GroundClearance, Carries, WishedCamber, WishedFrequency,
    ];
}
