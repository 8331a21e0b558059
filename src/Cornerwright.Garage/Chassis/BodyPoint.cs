using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>A point in the body frame: from the ground midway between the front wheels, X forward, Y left, Z up.</summary>
public sealed record BodyPoint
{
    [Field("X, forward", Dimension.Length, "mm", -6000, 2500,
        How = "Ahead of the line through the front wheels' centres; behind it is negative.", Needed = true)]
    public Reading? X { get; init; }

    [Field("Y, left", Dimension.Length, "mm", -1500, 1500, How = "From the car's middle plane to its left; to the right is negative.",
        Needed = true)]
    public Reading? Y { get; init; }

    [Field("Z, up", Dimension.Length, "mm", -200, 2500, How = "Above the ground on which the car stands at its reference height.",
        Needed = true)]
    public Reading? Z { get; init; }
}
