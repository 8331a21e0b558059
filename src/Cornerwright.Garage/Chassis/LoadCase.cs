using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>What the four wheels carry in one state of loading: from scales, or half of an axle load each.</summary>
public sealed record LoadCase
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true, How = "Kerb, driver alone, full...")]
    public string Name { get; init; } = "";

    [Field("Front left", Dimension.Mass, "kg", 20, 3000)]
    public Reading? FrontLeft { get; init; }

    [Field("Front right", Dimension.Mass, "kg", 20, 3000)]
    public Reading? FrontRight { get; init; }

    [Field("Rear left", Dimension.Mass, "kg", 20, 3000)]
    public Reading? RearLeft { get; init; }

    [Field("Rear right", Dimension.Mass, "kg", 20, 3000)]
    public Reading? RearRight { get; init; }

    public Reading? At(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => FrontLeft,
        CornerPlace.FrontRight => FrontRight,
        CornerPlace.RearLeft => RearLeft,
        _ => RearRight,
    };
}
