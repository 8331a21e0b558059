using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>Fills what a wheel's bore is larger than the collar that centres it.</summary>
public sealed record CentringRing : Part
{
    [Field("Outer diameter", Dimension.Length, "mm", 30, 200, How = "Calliper across the part that goes into the wheel.")]
    public Reading? OuterDiameter { get; init; }

    [Field("Inner diameter", Dimension.Length, "mm", 30, 200, How = "Calliper across the hole that goes over the hub's collar.")]
    public Reading? InnerDiameter { get; init; }

    public override IEnumerable<Problem> Contradictions(string path) =>
        InOrder.Smaller(path + " / inner and outer diameter", InnerDiameter, OuterDiameter);
}
