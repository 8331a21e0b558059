using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Cars;

/// <summary>How springs and dampers stand at an axle.</summary>
public enum SpringLayout
{
    /// <summary>Spring round the strut or damper, one axis.</summary>
    Coilover,

    /// <summary>Spring and damper on axes of their own.</summary>
    Apart,
}

/// <summary>What both sides of an axle have in common.</summary>
public sealed record Axle
{
    [Field("Springs")]
    public SpringLayout Layout { get; init; }

    [Field("Driven")]
    public bool Driven { get; init; }

    [Field("Steered")]
    public bool Steered { get; init; }

    [Field("Track", Dimension.Length, "mm", 600, 2500, How = "Between the middles of the two treads, on the ground.")]
    public Reading? Track { get; init; }

    [Field("Hub")]
    public Hub Hub { get; init; } = new();
}
