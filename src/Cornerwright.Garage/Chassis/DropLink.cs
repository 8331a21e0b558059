using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>What the outer end of a drop link is bolted to.</summary>
public enum LinkOn
{
    /// <summary>The strut's tube: camber set at the clamp between strut and knuckle moves it against the wheel.</summary>
    Strut,

    /// <summary>The knuckle itself.</summary>
    Knuckle,
}

/// <summary>A point beside a wheel, from the centre of the hub's face with the car at its reference height and the wheel ahead.</summary>
public sealed record HubPoint
{
    [Field("Inboard", Dimension.Length, "mm", -100, 600, How = "From the hub face toward the car's middle, level.", Needed = true)]
    public Reading? Inboard { get; init; }

    [Field("Ahead", Dimension.Length, "mm", -600, 600, How = "Toward the front of the car from the hub's centre; behind it is negative.",
        Needed = true)]
    public Reading? Ahead { get; init; }

    [Field("Above", Dimension.Length, "mm", -400, 600, How = "Above the hub's centre; below is negative.", Needed = true)]
    public Reading? Above { get; init; }
}

/// <summary>Where the drop link (end link) of the anti-roll bar stands beside a wheel. Its thickness is the part's.</summary>
public sealed record DropLinkPlace
{
    [Field("Outer end is bolted to", How = "A link to a lower or upper arm is judged by no check of its own: enter gaps to it as "
        + "an obstacle.")]
    public LinkOn On { get; init; }

    [Field("End at the strut or knuckle", How = "Middle of the joint.")]
    public HubPoint? Outer { get; init; }

    [Field("End at the bar", How = "Middle of the joint.")]
    public HubPoint? BarEnd { get; init; }

    [Field("Bar's bushes ahead of its end", Dimension.Length, "mm", -500, 500, How = "Level, from the joint at the bar's end toward the "
        + "front of the car to the straight part of the bar that turns in its bushes; negative where that is behind the joint.")]
    public Reading? BushesAhead { get; init; }

    [Field("Bar's bushes above its end", Dimension.Length, "mm", -300, 300, How = "The same upward; below the joint is negative.")]
    public Reading? BushesAbove { get; init; }
}
