using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Setting;

/// <summary>The gap between the wheel that is on now and one thing, standing at ride height, wheels straight ahead.</summary>
public sealed record GapAtRide
{
    [Field("Thing near the wheel", How = "Its id at this corner; perch, spring, tube or helper for pieces of the strut.")]
    public string Thing { get; init; } = "";

    [Field("Least gap", Dimension.Length, "mm", 0, 400)]
    public Reading? Distance { get; init; }
}

/// <summary>What was read at one corner after the work.</summary>
public sealed record CornerReadings
{
    [Field("Hub centre to arch edge", Dimension.Length, "mm", 150, 800, How = "Rolled and settled first.")]
    public Reading? Height { get; init; }

    [Field("Load on the scale", Dimension.Mass, "kg", 20, 3000)]
    public Reading? Load { get; init; }

    [Field("Camber", Dimension.Angle, "deg", -15, 15)]
    public Reading? Camber { get; init; }

    [Field("Toe", Dimension.Angle, "deg", -5, 5)]
    public Reading? Toe { get; init; }

    [Field("Gaps at ride")]
    public IReadOnlyList<GapAtRide> Gaps { get; init; } = [];

    [Field("Cycled readings", How = "Travel from the reference height of this car.")]
    public IReadOnlyList<CycledStep> Steps { get; init; } = [];
}
