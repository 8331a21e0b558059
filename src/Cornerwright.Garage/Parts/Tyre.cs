using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>A tyre by its designation; what was measured on the tyre itself wins over the size tables.</summary>
public sealed record Tyre : Part
{
    [Field("Size and service description", Needed = true, How = "From the sidewall, e.g. 225/45 R17 94W XL.")]
    public string Designation { get; init; } = "";

    [Field("Section width as measured", Dimension.Length, "mm", 80, 500,
        How = "Mounted and inflated: calliper across the widest place of the sidewalls.")]
    public Reading? SectionWidth { get; init; }

    [Field("Rim width it was measured on", Dimension.Length, "in", 2.5, 14,
        How = "Width code of the rim that carried the tyre when its section was measured: half an inch of rim is 5 mm of section.")]
    public Reading? MeasuredOnRim { get; init; }

    [Field("Outer diameter as measured", Dimension.Length, "mm", 300, 1300,
        How = "Mounted and inflated, wheel off the ground: tape round the tread divided by 3.1416, or a straight edge.")]
    public Reading? OuterDiameter { get; init; }

    [Field("Tread width", Dimension.Length, "mm", 50, 480, How = "Across the flat of the tread, to where it starts to drop away.")]
    public Reading? TreadWidth { get; init; }

    [Field("Shoulder drop", Dimension.Length, "mm", 0, 60, How = "Straight edge on the tread: how much lower the tread's edge lies.")]
    public Reading? ShoulderDrop { get; init; }

    [Field("Narrowest rim allowed", Dimension.Length, "in", 3, 20, How = "From the tyre maker's data sheet.")]
    public Reading? RimMin { get; init; }

    [Field("Widest rim allowed", Dimension.Length, "in", 3, 20, How = "From the tyre maker's data sheet.")]
    public Reading? RimMax { get; init; }

    [Field("Mass", Dimension.Mass, "kg", 1, 100)]
    public Reading? Mass { get; init; }

    public override IEnumerable<Problem> Contradictions(string path) =>
    [
        .. TyreDesignation.Parse(Designation, path + " / size").Problems,
        .. InOrder.Smaller(path + " / narrowest and widest rim", RimMin, RimMax),
    ];
}
