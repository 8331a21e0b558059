using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Setting;

/// <summary>Somebody or something on board: a driver, a passenger, sandbags in a seat.</summary>
public sealed record PlacedLoad
{
    [Field("Name")]
    public string Name { get; init; } = "";

    [Field("Mass", Dimension.Mass, "kg", 0, 1000)]
    public Reading? Mass { get; init; }

    [Field("Behind the front axle", Dimension.Length, "mm", -1500, 6000,
        How = "Level, from the line between the front wheels' centres; a driver's seat lies about half a wheelbase behind it.")]
    public Reading? Behind { get; init; }

    [Field("Left of the middle", Dimension.Length, "mm", -1200, 1200, How = "Right of the middle is negative.")]
    public Reading? Left { get; init; }

    /// <summary>Mass and place are known: only then it counts.</summary>
    public bool IsComplete => Mass is not null && Behind is not null && Left is not null;
}
