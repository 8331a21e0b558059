using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>The lower spring seat: a threaded collar, or a seat that is fixed to an arm (no pitch).</summary>
public sealed record Perch : Part
{
    [Field("Register diameter", Dimension.Length, "mm", 20, 250, How = "Calliper across the raised ring that centres the spring.")]
    public Reading? Register { get; init; }

    [Field("Outer diameter", Dimension.Length, "mm", 25, 300)]
    public Reading? OuterDiameter { get; init; }

    [Field("Depth below the seat", Dimension.Length, "mm", 0, 80,
        How = "From the spring's seat down to the collar's lowest face, lock ring included.")]
    public Reading? Depth { get; init; }

    [Field("Thread pitch", Dimension.Length, "mm", 0.25, 10, How = "Ten turns of the collar, divided by ten.")]
    public Reading? Pitch { get; init; }
}
