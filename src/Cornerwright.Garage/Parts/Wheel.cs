using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>A disc wheel, described by its rim designation and the few readings that the designation leaves out.</summary>
public sealed record Wheel : Part
{
    [Field("Rim designation", Needed = true, How = "As cast or stamped on the wheel, e.g. 8Jx18 ET35 5x112.")]
    public string Designation { get; init; } = "";

    [Field("Centre bore", Dimension.Length, "mm", 30, 200, How = "Calliper across the hole in the mounting face.")]
    public Reading? CentreBore { get; init; }

    [Field("Thickness at the bolt seat", Dimension.Length, "mm", 3, 60, How = "From the mounting face to where the bolt or nut seats.")]
    public Reading? SeatThickness { get; init; }

    [Field("Seat for bolts or nuts", How = "The shape of the holes where a bolt or nut presses: they must have the same.")]
    public BoltSeat? Seat { get; init; }

    [Field("Pockets in the mounting face", Dimension.Length, "mm", 0, 60, How = "Depth of the hollows between its bolt holes.")]
    public Reading? Pockets { get; init; }

    [Field("Flange thickness", Dimension.Length, "mm", 5, 25,
        How = "Outer face of the rim flange to the bead seat's end; adds to the rim width on both sides.")]
    public Reading? FlangeThickness { get; init; }

    [Field("Barrel radius over the calliper", Dimension.Length, "mm", 100, 350,
        How = "Inside the wheel, from its centre to the barrel where the calliper sits.")]
    public Reading? BarrelRadius { get; init; }

    [Field("Spoke room", Dimension.Length, "mm", 0, 200,
        How = "Straight edge across the mounting face: depth to the back of the spokes where the calliper sits.")]
    public Reading? SpokeRoom { get; init; }

    [Field("Load rating", Dimension.Mass, "kg", 100, 3000, How = "Stamped on the wheel, for one wheel.")]
    public Reading? LoadRating { get; init; }

    [Field("Mass", Dimension.Mass, "kg", 1, 100)]
    public Reading? Mass { get; init; }

    public override IEnumerable<Problem> Contradictions(string path) =>
        RimDesignation.Parse(Designation, path + " / rim designation").Problems;
}
