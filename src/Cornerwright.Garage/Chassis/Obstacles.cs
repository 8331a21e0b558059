using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>What an obstacle moves with.</summary>
public enum AttachedTo
{
    Body,

    /// <summary>The wheel carrier: it steers and travels with the wheel.</summary>
    Knuckle,
}

/// <summary>The place on the present wheel from which a gap was measured.</summary>
public enum GapFrom
{
    Crown,
    OuterShoulder,
    InnerShoulder,
    OuterSidewall,
    InnerSidewall,
    RimOuterLip,
    RimInnerLip,
}

/// <summary>Which way the gap was measured.</summary>
public enum GapDirection
{
    /// <summary>Shortest way from the tyre or rim there.</summary>
    Nearest,

    /// <summary>Straight away from the axle.</summary>
    Radial,

    /// <summary>Level, toward the street.</summary>
    Outboard,

    /// <summary>Level, toward the car's middle.</summary>
    Inboard,
}

/// <summary>One gap between the wheel that is on the car now and something near it.</summary>
public sealed record Gap
{
    [Field("From")]
    public GapFrom From { get; init; }

    [Field("Direction")]
    public GapDirection Direction { get; init; }

    [Field("Clock position", How = "Seen from the street: 12 is up. On a left wheel 9 is forward, on a right wheel 3 is.")]
    public double Clock { get; init; } = 12;

    [Field("Gap", Dimension.Length, "mm", 0, 400, How = "Feeler stack, drill shank or tape between the two; the finger test is a guess.",
        Needed = true)]
    public Reading? Distance { get; init; }

    [Field("Wheel travel when read", Dimension.Length, "mm", -300, 300, How = "0 if the car stood at its reference height.")]
    public Reading? Travel { get; init; }

    [Field("Steered when read", Dimension.Angle, "deg", -60, 60, How = "To the left is positive; 0 straight ahead.")]
    public Reading? Steer { get; init; }
}

/// <summary>Something that a wheel may touch, known by its gaps to the wheel that is on the car now.</summary>
public sealed record Obstacle
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true, How = "Arch lip, liner, tie rod, brake hose...")]
    public string Name { get; init; } = "";

    [Field("Moves with")]
    public AttachedTo AttachedTo { get; init; }

    /// <summary>Several gaps, in order round the wheel, are joined to a line.</summary>
    [Field("Gaps")]
    public IReadOnlyList<Gap> Gaps { get; init; } = [];
}

/// <summary>Where a strut stands against the wheel that is on the car now. Tube, perch and spring come from the parts.</summary>
public sealed record StrutPlace
{
    [Field("Tyre to tube", Dimension.Length, "mm", 0, 300,
        How = "Nearest gap between the tyre's inner side and the strut tube at the top of the wheel.", Needed = true)]
    public Reading? TyreToTube { get; init; }

    [Field("From")]
    public GapFrom From { get; init; } = GapFrom.InnerShoulder;

    [Field("Strut lean against the wheel", Dimension.Angle, "deg", -30, 30,
        How = "Angle between strut and wheel plane seen from the front; positive when the strut's top leans inboard of the wheel plane.")]
    public Reading? Lean { get; init; }

    [Field("Lower reference above hub centre", Dimension.Length, "mm", -300, 400,
        How = "Height of the clamp bolt or lower eye above the hub centre; below is negative.", Needed = true)]
    public Reading? LowerReference { get; init; }
}

/// <summary>The steering axis at a corner, as far as it is known.</summary>
public sealed record SteeringAxis
{
    [Field("Kingpin inclination", Dimension.Angle, "deg", -5, 30)]
    public Reading? Kingpin { get; init; }

    [Field("Caster", Dimension.Angle, "deg", -10, 20)]
    public Reading? Caster { get; init; }

    [Field("Axis to hub face at hub height", Dimension.Length, "mm", -100, 300,
        How = "Level distance from the steering axis out to the hub face.")]
    public Reading? HubOffset { get; init; }

    [Field("Axis ahead of the hub at hub height", Dimension.Length, "mm", -100, 100,
        How = "Seen from the side: level distance from the hub's centre forward to the steering axis; negative where it passes behind.")]
    public Reading? TrailAtHub { get; init; }

    [Field("Lock, each way", Dimension.Angle, "deg", 5, 60, How = "Of the road wheel, on turning plates.")]
    public Reading? Lock { get; init; }

    [Field("Rack travel, each way", Dimension.Length, "mm", 10, 150, How = "How far the rack moves from straight ahead to its stop. Only "
        + "hardpoints need it; left out, the stop is where the inner wheel reaches the lock.")]
    public Reading? RackTravel { get; init; }

    [Field("Most bump at full lock", Dimension.Length, "mm", -100, 300,
        How = "How far into bump this wheel can be with the steering at its stop. Left out: full bump counts.")]
    public Reading? BumpAtLock { get; init; }
}
