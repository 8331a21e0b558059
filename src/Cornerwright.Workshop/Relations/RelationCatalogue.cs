using static Cornerwright.Workshop.Relations.RelationKind;

namespace Cornerwright.Workshop.Relations;

/// <summary>Every kind of relation there is. A new one is a line here and the function that looks at it.</summary>
public static class RelationCatalogue
{
    private const string Coil = "EN 13906-1:2013, spring rate and solid length; the band for tolerances and ends: " + Practice;

    public static RelationKind SpringWire { get; } = new("spring-wire", "The wire is half of outer less inner diameter.",
        "geometry of a coil; the band: " + Practice);
    public static RelationKind SpringRate { get; } = new("spring-rate", "Rate, wire, diameters and coils obey the spring formula.", Coil);
    public static RelationKind SpringSolid { get; } = new("spring-solid", "The solid height is the wire times the coils.", Coil);
    public static RelationKind SpringIndex { get; } = new("spring-index", "A coil is 4 to 14 wires wide.",
        "EN 13906-1:2013, field of use, index 4 to 20 (from memory); the narrower band: " + Practice);
    public static RelationKind SpringTravel { get; } = new("spring-travel", "The maker's travel ends shortly before solid.",
        "free length less solid height is all there is; the lower bound: " + Practice);
    public static RelationKind SpringStress { get; } = new("spring-stress", "Solid, the wire bears 25 to 75 % of its strength in shear.",
        "EN 13906-1:2013, 0.56 of the tensile strength at solid (from memory); the band: " + Practice);
    public static RelationKind SpringSlack { get; } = new("spring-slack", "A spring is some 1.3 to 5 times as long free as solid.",
        Practice);
    public static RelationKind SpringCurve { get; } = new("spring-curve", "A force curve rises evenly and ends before solid.", Practice);
    public static RelationKind HelperClosing { get; } = new("helper-closing", "A helper closes at 300 to 800 N.", Practice);
    public static RelationKind TenderClosing { get; } = new("tender-closing", "A tender closes near its planned crossover.",
        "rate times travel");
    public static RelationKind SpringSeat { get; } = new("spring-seat", "A spring's bore and the register in it are nearly alike.",
        Practice);
    public static RelationKind NameSays { get; } = new("name-says", "A part's name says the number that it has.", Practice);
    public static RelationKind UsualRange { get; } = new("usual-range", "A number lies where that of a car usually lies.", Practice);
    public static RelationKind BarrelRoom { get; } = new("barrel-rim", "The barrel lies 12 to 50 mm inside the rim's bead seat.",
        "ISO 4000-2:2007, least depth of the well 17.3 mm; the band: " + Practice);
    public static RelationKind SpokeRim { get; } = new("spoke-rim", "The spokes' back lies inside the rim's outer lip.",
        "geometry of the inset; the band: " + Practice);
    public static RelationKind BoreSpigot { get; } = new("bore-spigot", "The wheel's bore is the hub's spigot or up to 15 mm more.",
        Practice);
    public static RelationKind CircleHub { get; } = new("circle-hub", "The bolt circle leaves the spigot and the bolts room.", Practice);
    public static RelationKind ThreadHub { get; } = new("thread-hub", "Pitch and engaged length go with the thread.",
        "ISO 261, pitches of M10 to M16 are 0.08 to 0.15 of the diameter; engaged length: " + Practice);
    public static RelationKind HubsAlike { get; } = new("hubs-alike", "Front and rear hubs of a car share bolt circle and thread.",
        Practice);
    public static RelationKind CaliperRoom { get; } = new("caliper-room", "The wheel that is on the car clears its caliper.",
        "it is on the car; the upper bound: " + Practice);
    public static RelationKind RatingLoad { get; } = new("rating-load", "A wheel is rated for 1 to 2.7 times what it carries.", Practice);
    public static RelationKind OffsetNow { get; } = new("offset-now", "Offset less spacer is within 20 mm of the present wheel's.",
        Practice);
    public static RelationKind OffsetRange { get; } = new("offset-range", "The offset is one that such a rim can have.", Practice);
    public static RelationKind TyreWidth { get; } = new("tyre-width", "A tyre measures what its size says, in width.",
        "UN Regulation No. 30, overall width at most 4 % more; the band for the rim's width: " + Practice);
    public static RelationKind TyreDiameter { get; } = new("tyre-diameter", "A tyre measures what its size says, in diameter.",
        "UN Regulation No. 30, outer diameter; the band for wear and growth: " + Practice);
    public static RelationKind TyreTread { get; } = new("tyre-tread", "The tread is 70 to 97 % as wide as the section.", Practice);
    public static RelationKind TyreRims { get; } = new("tyre-rims", "The rims allowed are those usual for the size.", Practice);
    public static RelationKind PerchShape { get; } = new("perch-shape", "A perch is a little wider than its register.", Practice);
    public static RelationKind MountShape { get; } = new("mount-shape", "The rod's shoulder lies 3 to 28 mm below the spring's seat.",
        Practice);
    public static RelationKind DamperStroke { get; } = new("damper-stroke", "A damper's stroke goes into its body.", Practice);
    public static RelationKind DamperThread { get; } = new("damper-thread", "The collar's thread lies on the body.",
        "it is cut there; its length: " + Practice);
    public static RelationKind DamperWindow { get; } = new("damper-window", "The maker's window lies within the stroke.",
        "the rod shows no more and no less; its width: " + Practice);
    public static RelationKind DamperCurve { get; } = new("damper-curve", "A damper's forces rise with speed, rebound above bump.",
        Practice);
    public static RelationKind StopShape { get; } = new("stop-shape", "A bump stop is pressed to 30 to 75 % of its length.", Practice);
    public static RelationKind StopCurve { get; } = new("stop-curve", "A bump stop stiffens, and its curve ends where it is spent.",
        Practice);
    public static RelationKind BarShape { get; } = new("bar-shape", "A bar's bore, arm and rate go with its size.", Practice);
    public static RelationKind CaseSides { get; } = new("load-sides", "Both sides of an axle carry nearly alike.", Practice);
    public static RelationKind CaseAxles { get; } = new("load-axles", "An axle carries 35 to 68 % of the car.", Practice);
    public static RelationKind CaseOthers { get; } = new("load-cases",
        "A corner carries 0.6 to 1.8 times what it does in the first case.", Practice);
    public static RelationKind UnsprungShare { get; } = new("unsprung-share", "4 to 20 % of what a wheel carries is unsprung.", Practice);
    public static RelationKind Sides { get; } = new("sides", "Left and right of an axle read nearly alike.", Practice);
    public static RelationKind ArchHeight { get; } = new("arch-height", "Hub to arch edge is wheel radius and gap to the lip.",
        "geometry; the band for who measured where: " + Practice);
    public static RelationKind ArchTyre { get; } = new("arch-tyre", "The arch edge lies about the tyre's top.", Practice);
    public static RelationKind GapLine { get; } = new("gap-line", "Gaps of one line run evenly round the wheel.", Practice);
    public static RelationKind GapSteer { get; } = new("gap-steer", "A gap is read within the lock, steered toward the thing.", Practice);
    public static RelationKind StrutGap { get; } = new("strut-gap", "Tyre to tube goes with offset, tyre and strut.",
        "geometry of the hardpoints; the band: " + Practice);
    public static RelationKind LinkLength { get; } = new("link-length",
        "A drop link is as long as its ends are apart, another one nearly so.",
        "geometry; the band for a tape to two joints: " + Practice);
    public static RelationKind SpringCarries { get; } = new("spring-carries",
        "The springs that are on the car carry it as it was measured.",
        "virtual work on the corner, docs/theory/relations.md; the band: " + Practice);
    public static RelationKind RodShows { get; } = new("rod-shows", "As the car stands, the damper stands within its stroke.",
        "lengths along its axis; the travel either way: " + Practice);
    public static RelationKind RatioLayout { get; } = new("ratio-layout", "A motion ratio is one that its layout has.", Practice);
    public static RelationKind Contact { get; } = new("contact-stop", "Metal meets metal near where the bump stop is spent.", Practice);
    public static RelationKind CycledEven { get; } = new("cycled-even", "Cycled readings run evenly.", Practice);
    public static RelationKind CycledMeets { get; } = new("cycled-meets", "Cycled readings pass through what was read at ride.",
        "both were read there; the band: " + Practice);
    public static RelationKind CycledRatio { get; } = new("cycled-ratio", "Cycled readings have the motion ratio that was typed.",
        "the ratio is their slope; the band: " + Practice);
    public static RelationKind Track { get; } = new("track", "Tracks go with each other, the wheelbase and the hub faces.", Practice);
    public static RelationKind PointAxis { get; } = new("points-axis", "The points' steering axis is the one that was read.",
        "geometry; the band: " + Practice);
    public static RelationKind PointHub { get; } = new("points-hub", "The hub stands at the tyre's radius, half a track out.",
        "geometry; the band for the tyre's give: " + Practice);
    public static RelationKind PointStrut { get; } = new("points-strut", "The points' strut is the one that was read.",
        "geometry; the band: " + Practice);
    public static RelationKind PointLinks { get; } = new("points-links", "Arms, links and rods are as long and as level as a car's.",
        Practice);
    public static RelationKind PointMotion { get; } = new("points-motion", "Wheels on these points rise as a car's do.",
        "velocities of a rigid body, docs/theory/relations.md; the band: " + Practice);
    public static RelationKind PointRatios { get; } = new("points-ratios", "The points move as the ratios typed say.",
        "velocities of a rigid body, docs/theory/relations.md; the band: " + Practice);
    public static RelationKind PerchOnThread { get; } = new("perch-thread", "The perch stands on its thread.", Practice);
    public static RelationKind BuildCarries { get; } = new("build-carries",
        "The build's springs bear about the car at its reference height.",
        "virtual work on the corner, docs/theory/relations.md; the band: " + Practice);
    public static RelationKind LimitLax { get; } = new("limit-lax", "A limit asks for about as much as the default does.", Practice);
    public static RelationKind HeightWanted { get; } = new("height-wanted", "The height wanted is near the one that was measured.",
        Practice);
    public static RelationKind Pressures { get; } = new("pressures", "Front and rear pressures are nearly alike.", Practice);

    /// <summary>All of them, in the order of this page.</summary>
    public static IReadOnlyList<RelationKind> All { get; } =
    [
        SpringWire, SpringRate, SpringSolid, SpringIndex, SpringTravel, SpringStress, SpringSlack, SpringCurve, HelperClosing,
        TenderClosing, SpringSeat, NameSays, UsualRange, BarrelRoom, SpokeRim, BoreSpigot, CircleHub, ThreadHub, HubsAlike,
        CaliperRoom, RatingLoad, OffsetNow, OffsetRange, TyreWidth, TyreDiameter, TyreTread, TyreRims, PerchShape, MountShape, DamperStroke,
        DamperThread, DamperWindow, DamperCurve, StopShape, StopCurve, BarShape, CaseSides, CaseAxles, CaseOthers, UnsprungShare,
        Sides, ArchHeight, ArchTyre, GapLine, GapSteer, StrutGap, LinkLength, SpringCarries, RodShows, RatioLayout, Contact,
        CycledEven, CycledMeets, CycledRatio, Track, PointAxis, PointHub, PointStrut, PointLinks, PointMotion, PointRatios, PerchOnThread,
        BuildCarries, LimitLax, HeightWanted, Pressures,
    ];
}
