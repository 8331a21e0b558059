using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>A rigid piece of a stack: thrust sheet, adapter between two springs, rubber isolator, packing ring.</summary>
public sealed record Sheet : Part
{
    [Field("Thickness between its seats", Dimension.Length, "mm", 0.1, 80, Needed = true)]
    public Reading? Thickness { get; init; }

    [Field("Register below", Dimension.Length, "mm", 20, 250, How = "Diameter of the collar that enters what lies below it.")]
    public Reading? LowerRegister { get; init; }

    [Field("Register above", Dimension.Length, "mm", 20, 250, How = "Diameter of the collar that enters what lies above it.")]
    public Reading? UpperRegister { get; init; }

    [Field("Height of its collars", Dimension.Length, "mm", 0, 60,
        How = "How far the collar reaches into the spring: it must not leave it when the stack goes loose.")]
    public Reading? CollarHeight { get; init; }
}
