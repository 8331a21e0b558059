using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>What joins the damper rod and the spring's upper seat to the body: rubber mount, ball mount, sliding plate.</summary>
public sealed record TopMount : Part
{
    [Field("Seat drop", Dimension.Length, "mm", -80, 250,
        How = "From the body's mount plane down to the upper spring seat, along the axis.")]
    public Reading? SeatDrop { get; init; }

    [Field("Rod drop", Dimension.Length, "mm", -80, 250,
        How = "From the body's mount plane down to the rod's shoulder, where the bump stop bears.")]
    public Reading? RodDrop { get; init; }

    [Field("Upper register diameter", Dimension.Length, "mm", 20, 250, How = "Of the ring that centres the spring's upper end.")]
    public Reading? Register { get; init; }

    [Field("Slide inward at most", Dimension.Length, "mm", 0, 60)]
    public Reading? SlideIn { get; init; }

    [Field("Slide outward at most", Dimension.Length, "mm", 0, 60)]
    public Reading? SlideOut { get; init; }
}
