using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>One row of a bump stop's force against how much it is squeezed.</summary>
public sealed record StopCurvePoint
{
    [Field("Squeezed by", Dimension.Length, "mm", 0, 200, Needed = true)]
    public Reading? Deflection { get; init; }

    [Field("Force", Dimension.Force, "N", 0, 100_000, Needed = true)]
    public Reading? Force { get; init; }
}

/// <summary>The elastomer on the rod that ends the travel.</summary>
public sealed record BumpStop : Part
{
    [Field("Length", Dimension.Length, "mm", 3, 200, How = "On the rod, nothing pressing on it.")]
    public Reading? Length { get; init; }

    [Field("Length when spent", Dimension.Length, "mm", 1, 150, How = "Squeezed as far as it usefully goes.")]
    public Reading? SpentLength { get; init; }

    [Field("Force curve", How = "From zero, rising.")]
    public IReadOnlyList<StopCurvePoint> Curve { get; init; } = [];

    public override IEnumerable<Problem> Contradictions(string path) =>
    [
        .. InOrder.Smaller(path + " / spent and free length", SpentLength, Length),
        .. InOrder.Rising(path + " / curve / squeezed by", Curve.Select(x => x.Deflection)),
        .. InOrder.Rising(path + " / curve / force", Curve.Select(x => x.Force)),
    ];
}
