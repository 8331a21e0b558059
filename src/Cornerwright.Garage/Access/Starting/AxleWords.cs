using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Access.Starting;

/// <summary>What all starting graphs share: ids by axle, and the components that every axle has.</summary>
internal sealed class AxleWords(AxlePlace axle, bool driven)
{
    private static readonly Hazard Hose = new() { Kind = HazardKind.BrakeHose, When = HazardTime.TakingOff },
        Wire = new() { Kind = HazardKind.SensorWire, When = HazardTime.TakingOff };

    public ComponentPlace Sides => axle == AxlePlace.Front ? ComponentPlace.FrontSides : ComponentPlace.RearSides;

    public ComponentPlace Middle => axle == AxlePlace.Front ? ComponentPlace.FrontMiddle : ComponentPlace.RearMiddle;

    public bool Driven => driven;

    public string Id(string name) => (axle == AxlePlace.Front ? "f-" : "r-") + name;

    public Prerequisite Off(string name, string why = "") => new() { Component = Id(name), Why = why };

    public Prerequisite Loose(string name, string why = "") => new() { Component = Id(name), State = Undone.Loose, Why = why };

    public static Reading Torque(string typed) => Reading.Of(typed, Dimension.Torque);

    public static Hazard Danger(HazardKind kind, HazardTime when = HazardTime.BothWays, string words = "") =>
        new() { Kind = kind, When = when, Words = words };

    public Component Wheel => new()
    {
        Id = Id("wheel"), Name = "Wheel", Place = Sides, Role = BuildRole.Wheel, MinutesOff = 2, MinutesOn = 4,
            Source = StartingGraph.Practice,
        Consumables = "wire brush for the hub face",
        OnWords = "Clean hub face and wheel seat, put the wheel on, run its bolts or nuts in crosswise until it sits flat",
        Fasteners =
        [
            new Fastener
            {
                Id = "bolts", Name = "Wheel bolts or nuts", Pattern = TighteningPattern.Star, When = TightenedWhen.OnItsWheels,
                    CheckAgain = true,
                Drive = "wheel socket", TorqueFrom = "car maker, and wheel maker where the wheel is not the car's own",
            },
        ],
    };

    public Component Spacer => new()
    {
        Id = Id("spacer"), Name = "Spacer", Place = Sides, Role = BuildRole.Spacer, MinutesOff = 1, MinutesOn = 3,
            Source = StartingGraph.Practice,
        OnWords = "Set the spacer flat on the clean hub face, on its centring; check that bolts or studs are long enough: count the turns",
        Supports = [new Carried { Component = Id("wheel") }],
    };

    public Component HoseClip => new()
    {
        Id = Id("hose"), Name = "Brake hose bracket", Place = Sides, MinutesOff = 2, MinutesOn = 2, Source = StartingGraph.Practice,
        OffWords = "Unclip the brake hose from its bracket; do not open the line",
        OnWords = "Clip the brake hose in, not twisted; turn the steering from lock to lock and see that it has slack",
        BeforeOff = [Off("wheel")], Hazards = [Hose],
    };

    public Component SensorClip => new()
    {
        Id = Id("sensor"), Name = "Wheel-speed sensor wire", Place = Sides, MinutesOff = 1, MinutesOn = 1, Source = StartingGraph.Practice,
        OffWords = "Unclip the wheel-speed sensor's wire from its holders",
        OnWords = "Clip the wheel-speed sensor's wire into its holders, clear of everything that moves",
        BeforeOff = [Off("wheel")], Hazards = [Wire],
    };

    public Component LinkEnd(string on) => new()
    {
        Id = Id("link-end"), Name = "Bar link, upper end", Place = Sides, MinutesOff = 4, MinutesOn = 4, Source = StartingGraph.Practice,
        OffWords = "Undo the bar link's upper nut and swing the link away; hold its ball pin with a key",
        OnWords = $"Bolt the bar link to {on}",
        BeforeOff = [Off("wheel")],
        Fasteners = [LinkNut("upper-nut", "Bar link, upper nut")],
        Hazards =
            [Danger(HazardKind.Other, HazardTime.BothWays, "Both wheels of the axle must hang: on one wheel the anti-roll bar pushes.")],
    };

    public Component Link => new()
    {
        Id = Id("link"), Name = "Bar link", Place = Sides, Role = BuildRole.BarLink, MinutesOff = 3, MinutesOn = 4,
            Source = StartingGraph.Practice,
        BeforeOff = [Off("link-end")],
        Fasteners = [LinkNut("lower-nut", "Bar link, lower nut")],
    };

    public Component Bar => new()
    {
        Id = Id("bar"), Name = "Anti-roll bar", Place = Middle, Role = BuildRole.AntiRollBar, MinutesOff = 30, MinutesOn = 30,
            Source = StartingGraph.Practice,
        BeforeOff = [Off("link", "the bar hangs on both links")],
        Fasteners = [new Fastener { Id = "clamps", Name = "Bar clamp bolts", Count = 4, Drive = "socket",
            Pattern = TighteningPattern.Alternate, When = TightenedWhen.OnItsWheels }],
        Consumables = "grease for the bar's bushings, as their maker says",
    };

    /// <summary>The collar under a spring; turned with the wheel hanging, taken off once the spring is.</summary>
    public Component Perch(bool onBench) => new()
    {
        Id = Id("perch"), Name = "Perch and lock ring", Place = Sides, Role = BuildRole.Perch, OnBench = onBench, MinutesOff = 5,
            MinutesOn = 8, Source = StartingGraph.Practice,
        LooseWords = "Clean the thread and slacken the lock ring",
        OnWords = "Turn the perch to its height, measured from the lower reference, and lock it",
        BeforeOff = [Off("spring")], BeforeLoose = [Off("wheel", "to reach the collar, and so that the spring bears least")],
        Fasteners = [new Fastener { Id = "lock-ring", Name = "Lock ring", Count = 1, Drive = "hook spanner", TorqueFrom = "damper maker" }],
        Consumables = "grease for the thread of the perch",
        MovesAlignment = true,
    };

    public static Fastener TopNut => new()
    {
        Id = "top-nut", Name = "Rod's top nut", Count = 1, Drive = "ring spanner, hexagon key to hold the rod", Torque = Torque("40 N·m"),
            TorqueFrom = StartingGraph.Practice,
        SingleUse = true, AgainOnItsWheels = true,
    };

    public static Fastener MountNuts => new()
    {
        Id = "mount-nuts", Name = "Top mount to body, nuts", Count = 3, Drive = "13 mm socket", Thread = "M8", Class = "8",
            Torque = Torque("28 N·m"), TorqueFrom = StartingGraph.Practice,
        Pattern = TighteningPattern.Star,
    };

    private static Fastener LinkNut(string id, string name) => new()
    {
        Id = id, Name = name, Count = 1, Drive = "socket and hexagon key", Torque = Torque("25 lbf·ft"),
            TorqueFrom = StartingGraph.Practice, SingleUse = true,
    };
}
