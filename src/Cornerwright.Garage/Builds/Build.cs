using Cornerwright.Garage.Access;
using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Builds;

/// <summary>What is bolted to one corner, and how it is set: the table of slots (<see cref="CornerSlot"/>), a field a line.</summary>
public sealed record CornerBuild
{
    [Slot(BuildRole.Wheel, SlotGroup.Wheel), Field("Wheel", RefersTo = "parts/wheels")]
    public string Wheel { get; init; } = "";

    [Slot(BuildRole.Wheel, SlotGroup.Wheel), Field("Tyre", RefersTo = "parts/tyres")]
    public string Tyre { get; init; } = "";

    [Slot(BuildRole.Spacer, SlotGroup.Wheel), Field("Spacer", RefersTo = "parts/spacers")]
    public string Spacer { get; init; } = "";

    [Slot(BuildRole.Wheel, SlotGroup.Wheel), Field("Centring ring", RefersTo = "parts/centringRings")]
    public string CentringRing { get; init; } = "";

    [Slot(BuildRole.Wheel, SlotGroup.Wheel, Pieces = SlotPieces.OneAWheelBolt), Field("Wheel bolts or nuts", RefersTo = "parts/wheelBolts")]
    public string WheelBolt { get; init; } = "";

    /// <summary>Ids of springs and sheets from the perch upward.</summary>
    [Slot(BuildRole.Stack, SlotGroup.Station, MovesHeight = true)]
    [Field("Stack, from the perch upward", RefersTo = "parts/springs,parts/sheets")]
    public IReadOnlyList<string> Stack { get; init; } = [];

    [Slot(BuildRole.Perch, SlotGroup.Station, MovesHeight = true), Field("Perch", RefersTo = "parts/perches")]
    public string Perch { get; init; } = "";

    [Slot(BuildRole.TopMount, SlotGroup.Station, MovesHeight = true), Field("Top mount", RefersTo = "parts/topMounts")]
    public string TopMount { get; init; } = "";

    [Slot(BuildRole.Damper, SlotGroup.Station, MovesHeight = true), Field("Damper", RefersTo = "parts/dampers")]
    public string Damper { get; init; } = "";

    [Slot(BuildRole.BumpStop, SlotGroup.Station), Field("Bump stop", RefersTo = "parts/bumpStops")]
    public string BumpStop { get; init; } = "";

    [Slot(BuildRole.AntiRollBar, SlotGroup.Station, Pieces = SlotPieces.OneAnAxle), Field("Anti-roll bar", RefersTo = "parts/antiRollBars")]
    public string AntiRollBar { get; init; } = "";

    [Slot(BuildRole.BarLink, SlotGroup.Station), Field("Bar link", RefersTo = "parts/barLinks")]
    public string BarLink { get; init; } = "";

    [Slot(BuildRole.Perch, SlotGroup.Setting, Undo = Undone.Loose, MovesHeight = true)]
    [Field("Perch height", Dimension.Length, "mm", -50, 900,
        How = "From the lower reference up to the perch's seat, along the spring's axis.")]
    public Reading? PerchHeight { get; init; }

    [Slot(BuildRole.Damper, SlotGroup.Setting, Undo = Undone.Loose, MovesHeight = true)]
    [Field("Body height", Dimension.Length, "mm", 30, 900,
        How = "From the lower reference to the damper body's top; only for a body that screws into its clamp.")]
    public Reading? BodyHeight { get; init; }

    [Slot(BuildRole.TopMount, SlotGroup.Setting, Undo = Undone.Loose)]
    [Field("Plate slid inward", Dimension.Length, "mm", -60, 60, How = "From the plate's middle; outward is negative.")]
    public Reading? Slide { get; init; }

    [Slot(BuildRole.Damper, SlotGroup.Setting, Undo = Undone.Loose)]
    [Field("Camber set at the clamp", Dimension.Angle, "deg", -6, 6,
        How = "Change against the measured camber, made where the strut is bolted to the knuckle.")]
    public Reading? ClampCamber { get; init; }

    [Slot(BuildRole.BumpStop, SlotGroup.Setting)]
    [Field("Packer on the rod", Dimension.Length, "mm", 0, 100)]
    public Reading? Packer { get; init; }

    [Slot(BuildRole.None, SlotGroup.Setting, Undo = Undone.Loose)]
    [Field("Tyre pressure, cold", Dimension.Pressure, "bar", 0.5, 6)]
    public Reading? Pressure { get; init; }
}

/// <summary>Parts and settings of all four corners under one name.</summary>
public sealed record Build
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    [Field("Note")]
    public string Note { get; init; } = "";

    [Field("Limits of this build")]
    public Limits Limits { get; init; } = new();

    [Field("Allowances of this build")]
    public Allowances Allowances { get; init; } = new();

    [Field("Front left")] public CornerBuild FrontLeft { get; init; } = new();
    [Field("Front right")] public CornerBuild FrontRight { get; init; } = new();
    [Field("Rear left")] public CornerBuild RearLeft { get; init; } = new();
    [Field("Rear right")] public CornerBuild RearRight { get; init; } = new();

    public CornerBuild At(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => FrontLeft,
        CornerPlace.FrontRight => FrontRight,
        CornerPlace.RearLeft => RearLeft,
        _ => RearRight,
    };

    public Build With(CornerPlace corner, CornerBuild value) => corner switch
    {
        CornerPlace.FrontLeft => this with { FrontLeft = value },
        CornerPlace.FrontRight => this with { FrontRight = value },
        CornerPlace.RearLeft => this with { RearLeft = value },
        _ => this with { RearRight = value },
    };
}
