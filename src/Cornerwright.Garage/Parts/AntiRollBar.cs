using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>An anti-roll bar by its rate at the end, or by its dimensions.</summary>
public sealed record AntiRollBar : Part
{
    [Field("Rate at one end", Dimension.SpringRate, "N/mm", 0.1, 1000, How = "Both ends moving oppositely.")]
    public Reading? Rate { get; init; }

    [Field("Bar diameter", Dimension.Length, "mm", 5, 60)]
    public Reading? Diameter { get; init; }

    [Field("Bore, if it is a tube", Dimension.Length, "mm", 0, 55)]
    public Reading? Bore { get; init; }

    [Field("Straight length", Dimension.Length, "mm", 100, 2000)]
    public Reading? StraightLength { get; init; }

    [Field("Lever arm", Dimension.Length, "mm", 30, 800, How = "From the bar's axis, square to it, to the link's eye.")]
    public Reading? Arm { get; init; }
}

/// <summary>The drop link between an anti-roll bar and the strut or arm.</summary>
public sealed record BarLink : Part
{
    [Field("Length between eyes", Dimension.Length, "mm", 20, 600)]
    public Reading? Length { get; init; }

    [Field("Thickness", Dimension.Length, "mm", 4, 60, How = "Across the thickest place that the tyre passes: the rod, or the joint's "
        + "housing where the tyre passes an end.")]
    public Reading? Thickness { get; init; }

    [Field("Adjustable")]
    public bool Adjustable { get; init; }
}
