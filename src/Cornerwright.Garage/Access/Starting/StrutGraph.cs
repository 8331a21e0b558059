namespace Cornerwright.Garage.Access.Starting;

/// <summary>Strut with the spring round it: out as one, apart on the bench.</summary>
internal static class StrutGraph
{
    public static IReadOnlyList<Component> Make(AxleWords a) =>
    [
        a.Wheel, a.Spacer, a.HoseClip, a.SensorClip,
        a.LinkEnd("the strut"), a.Link, a.Bar, Brace(a), ArmPivots(a), Strut(a),
        BenchUnit.TopMount(a, "strut"), BenchUnit.Spring(a), BenchUnit.BumpStop(a), a.Perch(onBench: true) with
        {
            BeforeOff = [a.Off("spring")],
        },
    ];

    private static Component Brace(AxleWords a) => new()
    {
        Id = a.Id("brace"), Name = "Strut brace", Place = a.Middle, MinutesOff = 5, MinutesOn = 8, Source = StartingGraph.Practice,
        Fasteners =
        [
            new Fastener { Id = "brace-bolts", Name = "Brace bolts", Count = 4, Drive = "16 mm socket", Thread = "M10", Class = "8.8",
                Torque = AxleWords.Torque("56 N·m"), TorqueFrom = StartingGraph.Practice, Pattern = TighteningPattern.Alternate },
        ],
        Hazards =
        [
            AxleWords.Danger(HazardKind.BatteryNear, HazardTime.TakingOff),
            AxleWords.Danger(HazardKind.BatteryNear, HazardTime.Fitting,
                "A spanner here can bridge the battery: its earth lead goes on last."),
        ],
    };

    private static Component ArmPivots(AxleWords a) => new()
    {
        Id = a.Id("arm-pivots"), Name = "Lower arm, inner pivots", Place = a.Sides, MinutesOff = 5, MinutesOn = 6,
            Source = StartingGraph.Practice,
        LooseWords = "Slacken the lower arm's inner pivot bolts half a turn, so that their rubber turns free",
        OffWords = "Undo the lower arm's inner pivot bolts",
        BeforeOff = [a.Off("wheel")],
        BeforeLoose = [a.Off("wheel", "for room")],
        Fasteners = [new Fastener { Id = "pivot-bolts", Name = "Lower arm, pivot bolts", Count = 2, Drive = "socket",
            When = TightenedWhen.OnItsWheels, BondedRubber = true }],
        MovesAlignment = true,
    };

    private static Component Strut(AxleWords a) => new()
    {
        Id = a.Id("strut"), Name = "Strut, complete", Place = a.Sides, Role = BuildRole.Damper, MinutesOff = 15, MinutesOn = 20,
            Source = StartingGraph.Practice,
        OffWords =
            "Prop the wheel carrier up, take out the clamp bolts, undo the mount nuts last while somebody holds the strut, and lift it out",
        LooseWords = "Mark and slacken the clamp bolts between strut and wheel carrier",
        OnWords = "Offer the strut up, run the mount nuts on by hand, seat it in the carrier and put the clamp bolts in",
        BeforeOff =
        [
            a.Off("wheel"), a.Off("hose", "it is clipped to the strut"), a.Off("sensor", "it is clipped to the strut"),
            a.Off("link-end", "the link is bolted to the strut"), a.Off("brace", "it covers the mount nuts"),
        ],
        BeforeLoose = [a.Off("wheel")],
        Fasteners =
        [
            new Fastener { Id = "clamp-bolts", Name = "Strut to wheel carrier, bolts", Count = 2, Drive = "socket and ring spanner",
                SingleUse = true, Mark = true },
            AxleWords.MountNuts,
        ],
        Hazards =
        [
            AxleWords.Danger(HazardKind.HeavyPart, HazardTime.BothWays,
                "Without the strut the wheel carrier falls outward: prop or tie it up so that brake hose and sensor wire hang slack."),
            .. a.Driven ? new[] { AxleWords.Danger(HazardKind.DriveShaft) } : [],
        ],
        MovesAlignment = true,
    };
}
