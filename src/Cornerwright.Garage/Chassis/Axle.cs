using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>How springs and dampers stand at an axle.</summary>
public enum SpringLayout
{
    /// <summary>Spring round the strut or damper, one axis.</summary>
    Coilover,

    /// <summary>Spring and damper on axes of their own.</summary>
    Apart,
}

/// <summary>Whether the wheels of an axle move each for itself.</summary>
public enum AxleKind
{
    /// <summary>Each wheel has links of its own.</summary>
    Independent,

    /// <summary>One straight axle carries both wheels.</summary>
    RigidAxle,

    /// <summary>Two trailing arms joined by a cross member that twists.</summary>
    TwistBeam,
}

/// <summary>What both sides of an axle have in common.</summary>
public sealed record Axle
{
    [Field("Springs")]
    public SpringLayout Layout { get; init; }

    [Field("Wheels hang", How = "On a rigid axle or a twist beam one wheel that rises leans the other: gaps are then judged with either "
        + "wheel up and down. A table of hardpoints says it by itself.")]
    public AxleKind Kind { get; init; }

    [Field("Driven")]
    public bool Driven { get; init; }

    [Field("Steered")]
    public bool Steered { get; init; }

    [Field("Track", Dimension.Length, "mm", 600, 2500, How = "Between the middles of the two treads, on the ground.")]
    public Reading? Track { get; init; }

    [Field("Steering arm", Dimension.Length, "mm", 40, 400, How = "From the steering axis, square to the tie rod, to the rod's "
        + "joint at the knuckle; for a rear toe link the same from its pivot.")]
    public Reading? SteeringArm { get; init; }

    [Field("Tie rod, length per turn", Dimension.Length, "mm", 0.25, 6,
        How = "One turn of the rod: the thread's pitch; twice that for a sleeve with a left and a right thread.")]
    public Reading? TieRodPitch { get; init; }

    [Field("Hub")]
    public Hub Hub { get; init; } = new();
}
