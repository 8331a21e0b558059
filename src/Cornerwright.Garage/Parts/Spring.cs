using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>What a spring of a stack is there for.</summary>
public enum SpringRole
{
    Main,

    /// <summary>Only keeps the stack seated at droop; closed at ride height.</summary>
    Helper,

    /// <summary>Works with the main spring until it closes at a planned load.</summary>
    Tender,
}

/// <summary>How a coil spring's ends are finished.</summary>
public enum SpringEnds
{
    ClosedAndGround,
    Closed,
    Open,
}

/// <summary>One row of a progressive spring's curve.</summary>
public sealed record SpringCurvePoint
{
    [Field("Deflection", Dimension.Length, "mm", 0, 600, Needed = true)]
    public Reading? Deflection { get; init; }

    [Field("Force", Dimension.Force, "N", 0, 100_000, Needed = true)]
    public Reading? Force { get; init; }
}

/// <summary>A compression spring: main, helper or tender; linear by its rate or progressive by a curve.</summary>
public sealed record Spring : Part
{
    [Field("Role")]
    public SpringRole Role { get; init; }

    [Field("Rate", Dimension.SpringRate, "N/mm", 0.1, 2000, How = "From the data sheet, or weight against shortening on a press.")]
    public Reading? Rate { get; init; }

    /// <summary>Deflection against force, from zero, rising. When given it is used in place of the rate.</summary>
    [Field("Force curve")]
    public IReadOnlyList<SpringCurvePoint> Curve { get; init; } = [];

    [Field("Free length", Dimension.Length, "mm", 5, 900, How = "Standing on a table, nothing on it.")]
    public Reading? FreeLength { get; init; }

    [Field("Solid height", Dimension.Length, "mm", 2, 600,
        How = "All coils touching: from the data sheet, or wire thickness times total coils.")]
    public Reading? SolidHeight { get; init; }

    [Field("Inner diameter", Dimension.Length, "mm", 20, 250, How = "Calliper inside the end coil.")]
    public Reading? InnerDiameter { get; init; }

    [Field("Outer diameter", Dimension.Length, "mm", 25, 300, How = "Calliper across the middle coils.")]
    public Reading? OuterDiameter { get; init; }

    [Field("Greatest working deflection", Dimension.Length, "mm", 1, 600, How = "The maker's block travel.")]
    public Reading? GreatestDeflection { get; init; }

    [Field("Wire diameter", Dimension.Length, "mm", 1, 40, How = "Calliper on a bare place of the wire.")]
    public Reading? WireDiameter { get; init; }

    [Field("Active coils", Dimension.Ratio, "", 1, 40)]
    public Reading? ActiveCoils { get; init; }

    [Field("Tensile strength of the wire", Dimension.Stress, "MPa", 500, 3000)]
    public Reading? TensileStrength { get; init; }

    [Field("Ends")]
    public SpringEnds Ends { get; init; }

    /// <summary>For a tender: the force at which it is planned to close.</summary>
    [Field("Planned crossover", Dimension.Force, "N", 1, 100_000)]
    public Reading? PlannedCrossover { get; init; }

    public override IEnumerable<Problem> Contradictions(string path) =>
    [
        .. InOrder.Smaller(path + " / solid height and free length", SolidHeight, FreeLength),
        .. InOrder.Smaller(path + " / inner and outer diameter", InnerDiameter, OuterDiameter),
        .. InOrder.Rising(path + " / curve / deflection", Curve.Select(x => x.Deflection)),
        .. InOrder.Rising(path + " / curve / force", Curve.Select(x => x.Force)),
    ];
}
