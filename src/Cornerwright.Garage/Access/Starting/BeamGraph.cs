namespace Cornerwright.Garage.Access.Starting;

/// <summary>A beam between the wheels, let down as a whole: a rigid axle on rods, or a twist beam on its two pivots.</summary>
internal static class BeamGraph
{
    public static IReadOnlyList<Component> Make(AxleWords a, StartingKind kind)
    {
        bool rigid = kind == StartingKind.RigidAxle;
        return
        [
            a.Wheel, a.Spacer, a.HoseClip, a.SensorClip,
            .. rigid ? new[] { a.LinkEnd("the axle"), a.Link, a.Bar, LateralRod(a) } : [],
            LinkGraph.DamperFoot(a, rigid ? "the axle" : "the beam"), Pivots(a, rigid), Beam(a, rigid),
            LinkGraph.Spring(a, "beam", rigid ? "it stands on the axle" : "it stands on the beam"), a.Perch(onBench: false),
            LinkGraph.Damper(a), LinkGraph.Mount(a), LinkGraph.Stop(a),
        ];
    }

    private static Component LateralRod(AxleWords a) => new()
    {
        Id = a.Id("lateral-rod"), Name = "Lateral rod, end at the body", Place = a.Middle, MinutesOff = 4, MinutesOn = 5,
            Source = StartingGraph.Practice,
        LooseWords = "Slacken the lateral rod's bolt at the body, so that its rubber turns free",
        OffWords = "Take out the lateral rod's bolt at the body",
        BeforeOff = [a.Off("wheel")],
        BeforeLoose = [a.Off("wheel", "for room")],
        Fasteners = [new Fastener { Id = "rod-bolt", Name = "Lateral rod, bolt at the body", Count = 1, Drive = "socket",
            When = TightenedWhen.OnItsWheels, BondedRubber = true }],
        MovesAlignment = true,
    };

    private static Component Pivots(AxleWords a, bool rigid) => new()
    {
        Id = a.Id("pivots"), Name = rigid ? "Trailing rods, pivots at the body" : "Beam, pivots at the body", Place = a.Sides,
            MinutesOff = 4, MinutesOn = 5, Source = StartingGraph.Practice,
        LooseWords = "Slacken the pivot bolt half a turn, so that its rubber turns free",
        OffWords = "Take out the pivot bolt",
        BeforeOff = [a.Off("beam")],
        BeforeLoose = [a.Off("wheel", "for room")],
        Fasteners = [new Fastener { Id = "pivot-bolt", Name = rigid ? "Trailing rods, pivot bolts" : "Beam, pivot bolt",
            Count = rigid ? 2 : 1, Drive = "socket", When = TightenedWhen.OnItsWheels, BondedRubber = true }],
    };

    private static Component Beam(AxleWords a, bool rigid)
    {
        string name = rigid ? "axle" : "beam";
        return new()
        {
            Id = a.Id("beam"), Name = rigid ? "Axle, let down" : "Beam, let down", Place = a.Middle, MinutesOff = 10, MinutesOn = 12,
                Source = StartingGraph.Practice,
            OffWords = $"Let the {name} down on the jack, evenly, until both springs are loose",
            OnWords = $"Lift the {name} on the jack with both springs standing straight",
            BeforeOff =
            [
                a.Off("damper-foot", $"the dampers hold the {name} up"), a.Off("hose"), a.Off("sensor"),
                a.Loose("pivots", "so that their rubber is not torn"),
                .. rigid ? new[] { a.Off("link-end"), a.Loose("lateral-rod", "so that its rubber is not torn") } : [],
            ],
            Hazards =
            [
                AxleWords.Danger(HazardKind.HeavyPart, HazardTime.BothWays,
                    $"The {name} is heavy and tips: a jack under its middle, a second pair of hands at the side."),
                AxleWords.Danger(HazardKind.BrakeHose, HazardTime.TakingOff,
                    $"Watch the brake hose between body and {name} all the way down: it must not carry weight."),
                .. rigid && a.Driven ? new[] { AxleWords.Danger(HazardKind.DriveShaft, HazardTime.TakingOff,
                    "Mind the propeller shaft: do not let the axle hang so low that its joints bind.") } : [],
            ],
        };
    }
}
