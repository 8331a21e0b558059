using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Setting;

/// <summary>What is wanted at one corner. Left out: it may come out as it likes.</summary>
public sealed record CornerWish
{
    [Field("Hub centre to arch edge", Dimension.Length, "mm", 150, 800)]
    public Reading? Height { get; init; }

    [Field("Camber", Dimension.Angle, "deg", -15, 15)]
    public Reading? Camber { get; init; }

    [Field("Toe", Dimension.Angle, "deg", -5, 5, How = "Of this wheel; toe-in positive.")]
    public Reading? Toe { get; init; }
}

/// <summary>How one build is to be set: heights, cross weight, camber and toe, and who sits in it then.</summary>
public sealed record SettingWish
{
    [Field("Build", RefersTo = "builds", Needed = true)]
    public string Build { get; init; } = "";

    [Field("Front left")] public CornerWish FrontLeft { get; init; } = new();
    [Field("Front right")] public CornerWish FrontRight { get; init; } = new();
    [Field("Rear left")] public CornerWish RearLeft { get; init; } = new();
    [Field("Rear right")] public CornerWish RearRight { get; init; } = new();

    [Field("Cross weight", Dimension.Ratio, "%", 30, 70,
        How = "Right front and left rear, share of the whole; 50 % turns alike both ways. Left out: it stays as it is.")]
    public Reading? CrossWeight { get; init; }

    [Field("On board when it is to be so", How = "A driver who will sit in it, or ballast in his place.")]
    public IReadOnlyList<PlacedLoad> Aboard { get; init; } = [];

    [Field("A height may miss by", Dimension.Length, "mm", 0.2, 20)]
    public Reading? HeightBand { get; init; }

    [Field("The cross weight may miss by", Dimension.Ratio, "%", 0.05, 5)]
    public Reading? CrossBand { get; init; }

    [Field("Bar links stay on",
        How = "Otherwise one link of each anti-roll bar comes off before turning and goes back, without load, at the end.")]
    public bool LinksOn { get; init; }

    public CornerWish At(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => FrontLeft,
        CornerPlace.FrontRight => FrontRight,
        CornerPlace.RearLeft => RearLeft,
        _ => RearRight,
    };

    public SettingWish With(CornerPlace corner, CornerWish value) => corner switch
    {
        CornerPlace.FrontLeft => this with { FrontLeft = value },
        CornerPlace.FrontRight => this with { FrontRight = value },
        CornerPlace.RearLeft => this with { RearLeft = value },
        _ => this with { RearRight = value },
    };
}
