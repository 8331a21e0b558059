using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>A disc between hub and wheel. It moves the wheel outward by its thickness.</summary>
public sealed record Spacer : Part
{
    [Field("Thickness", Dimension.Length, "mm", 0.5, 150, Needed = true)]
    public Reading? Thickness { get; init; }

    /// <summary>Bolted to the hub with its own fasteners, so that the wheel's bolts keep their engagement.</summary>
    [Field("Bolted to the hub on its own")]
    public bool Bolted { get; init; }

    [Field("Carries a centring collar")]
    public bool HubCentric { get; init; }
}
