namespace Cornerwright.Garage.Access.Starting;

/// <summary>Spring standing on a link, damper apart: the link is let down on a jack and gives the spring free.</summary>
internal static class LinkGraph
{
    public static IReadOnlyList<Component> Make(AxleWords a) =>
    [
        a.Wheel, a.Spacer, a.HoseClip, a.SensorClip, a.LinkEnd("its link"), a.Link, a.Bar,
        DamperFoot(a, "the spring link"), SpringLink(a), OtherPivots(a), Spring(a, "spring-link", "it stands on the link"),
        a.Perch(onBench: false), Damper(a), Mount(a), Stop(a),
    ];

    public static Component DamperFoot(AxleWords a, string carrier) => new()
    {
        Id = a.Id("damper-foot"), Name = "Damper, lower end", Place = a.Sides, MinutesOff = 4, MinutesOn = 4,
            Source = StartingGraph.Practice,
        OffWords = $"Put a jack under {carrier} and take its weight, then take out the damper's lower bolt",
        LooseWords = "Slacken the damper's lower bolt, so that its rubber turns free",
        OnWords = $"Lift {carrier} on the jack until the damper's lower bolt goes in by hand",
        BeforeOff = [a.Off("wheel")],
        BeforeLoose = [a.Off("wheel", "for room")],
        Fasteners = [new Fastener { Id = "lower-bolt", Name = "Damper, lower bolt", Count = 1, Drive = "socket",
            When = TightenedWhen.OnItsWheels, BondedRubber = true }],
        Hazards = [AxleWords.Danger(HazardKind.SpringEnergy, HazardTime.TakingOff, "The damper is what stops the hanging wheel: never "
            + "take its bolt out without a jack under the load; without it the spring throws the link down.")],
    };

    public static Component Spring(AxleWords a, string blockedBy, string why) => new()
    {
        Id = a.Id("spring"), Name = "Spring stack", Place = a.Sides, Role = BuildRole.Stack, MinutesOff = 5, MinutesOn = 6,
            Source = StartingGraph.Practice,
        OffWords = "Lift the spring out with its seats",
        OnWords = "Stand the spring in with its seats, coil ends against their stops",
        BeforeOff = [a.Off(blockedBy, why)],
        Hazards = [AxleWords.Danger(HazardKind.SpringEnergy, HazardTime.BothWays,
            "See that the spring is quite loose before a hand goes near it; if it is not, use a spring compressor.")],
    };

    public static Component Damper(AxleWords a) => new()
    {
        Id = a.Id("damper"), Name = "Damper", Place = a.Sides, Role = BuildRole.Damper, MinutesOff = 6, MinutesOn = 8,
            Source = StartingGraph.Practice,
        OffWords = "Undo the damper's upper end and take it out",
        OnWords = "Bolt the damper's upper end to the body",
        BeforeOff = [a.Off("damper-foot")],
        Fasteners = [new Fastener { Id = "upper-bolts", Name = "Damper to body, bolts", Count = 2, Drive = "socket" }],
    };

    public static Component Mount(AxleWords a) => new()
    {
        Id = a.Id("mount"), Name = "Damper's upper mount", Place = a.Sides, Role = BuildRole.TopMount, OnBench = true, MinutesOff = 4,
            MinutesOn = 5, Source = StartingGraph.Practice,
        BeforeOff = [a.Off("damper")],
        Fasteners = [AxleWords.TopNut],
    };

    public static Component Stop(AxleWords a) => new()
    {
        Id = a.Id("stop"), Name = "Bump stop on the rod", Place = a.Sides, Role = BuildRole.BumpStop, OnBench = true, MinutesOff = 1,
            MinutesOn = 2, Source = StartingGraph.Practice,
        OffWords = "Slide bump stop and packers off the rod",
        OnWords = "Slide packers and bump stop on the rod",
        BeforeOff = [a.Off("mount")],
    };

    private static Component SpringLink(AxleWords a) => new()
    {
        Id = a.Id("spring-link"), Name = "Spring link, outer end", Place = a.Sides, MinutesOff = 10, MinutesOn = 12,
            Source = StartingGraph.Practice,
        OffWords = "With the jack bearing the link, take out its outer bolt and let it down slowly until the spring is loose",
        OnWords = "Lift the link on the jack with the spring standing straight until its outer bolt goes in by hand",
        BeforeOff = [a.Off("damper-foot", "the damper holds the link up"), a.Off("hose"), a.Off("sensor"), a.Off("link-end"),
            a.Loose("spring-link-inner", "so that its rubber is not torn")],
        Fasteners = [new Fastener { Id = "outer-bolt", Name = "Spring link, outer bolt", Count = 1, Drive = "socket and ring spanner",
            When = TightenedWhen.OnItsWheels, BondedRubber = true }],
        Hazards =
        [
            AxleWords.Danger(HazardKind.SpringEnergy, HazardTime.BothWays, "The link carries a compressed spring: jack square under it, "
                + "lower slowly, keep clear of the spring's way out; a spring compressor where the spring is not loose at full droop."),
            .. a.Driven ? new[] { AxleWords.Danger(HazardKind.DriveShaft) } : [],
        ],
        MovesAlignment = true,
    };

    private static Component OtherPivots(AxleWords a) => new()
    {
        Id = a.Id("spring-link-inner"), Name = "Spring link, inner pivot", Place = a.Sides, MinutesOff = 3, MinutesOn = 4,
            Source = StartingGraph.Practice,
        LooseWords = "Mark the eccentric of the spring link's inner pivot, then slacken its bolt half a turn",
        OffWords = "Mark and take out the bolt of the spring link's inner pivot",
        BeforeLoose = [a.Off("wheel", "for room")],
        BeforeOff = [a.Off("spring-link")],
        Fasteners = [new Fastener { Id = "inner-bolt", Name = "Spring link, inner bolt with eccentric", Count = 1,
            Drive = "socket and ring spanner", When = TightenedWhen.OnItsWheels, BondedRubber = true, Mark = true }],
        MovesAlignment = true,
    };
}
