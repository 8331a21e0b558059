namespace Cornerwright.Garage.Access.Starting;

/// <summary>Two arms, spring round the damper: the unit comes out between them.</summary>
internal static class WishboneGraph
{
    public static IReadOnlyList<Component> Make(AxleWords a) =>
    [
        a.Wheel, a.Spacer, a.HoseClip, a.SensorClip, a.LinkEnd("its arm"), a.Link, a.Bar, ArmPivots(a), Unit(a),
        BenchUnit.TopMount(a, "unit") with { BeforeLoose = [] },
        BenchUnit.Spring(a), BenchUnit.BumpStop(a), a.Perch(onBench: true),
    ];

    private static Component ArmPivots(AxleWords a) => new()
    {
        Id = a.Id("arm-pivots"), Name = "Inner pivots of both arms", Place = a.Sides, MinutesOff = 8, MinutesOn = 10,
            Source = StartingGraph.Practice,
        LooseWords = "Slacken the inner pivot bolts of both arms half a turn, so that their rubber turns free",
        OffWords = "Undo the inner pivot bolts of both arms",
        BeforeOff = [a.Off("wheel")],
        BeforeLoose = [a.Off("wheel", "for room")],
        Fasteners = [new Fastener { Id = "pivot-bolts", Name = "Arms, pivot bolts", Count = 4, Drive = "socket",
            When = TightenedWhen.OnItsWheels, BondedRubber = true, Mark = true }],
        MovesAlignment = true,
    };

    private static Component Unit(AxleWords a) => new()
    {
        Id = a.Id("unit"), Name = "Damper with its spring", Place = a.Sides, Role = BuildRole.Damper, MinutesOff = 15, MinutesOn = 18,
            Source = StartingGraph.Practice,
        OffWords = "Prop the lower arm up, take out the lower bolt, undo the mount nuts last and lift the damper out between the arms",
        OnWords = "Offer the damper up, run the mount nuts on by hand, put the lower bolt in",
        BeforeOff = [a.Off("wheel"), a.Off("hose"), a.Off("sensor"), a.Off("link-end", "the link keeps the arm up")],
        BeforeLoose = [a.Off("wheel")],
        Fasteners =
        [
            AxleWords.MountNuts,
            new Fastener { Id = "lower-bolt", Name = "Damper, lower bolt", Count = 1, Drive = "socket and ring spanner",
                When = TightenedWhen.OnItsWheels, BondedRubber = true },
        ],
        Hazards =
        [
            AxleWords.Danger(HazardKind.HeavyPart, HazardTime.BothWays,
                "The damper holds the arms: prop the lower arm before its bolt comes out, so that brake hose and sensor wire hang slack."),
            .. a.Driven ? new[] { AxleWords.Danger(HazardKind.DriveShaft) } : [],
        ],
        MovesAlignment = true,
    };
}
