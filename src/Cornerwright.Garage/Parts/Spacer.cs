using Cornerwright.Garage.Access;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
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

    [Field("Bore over the hub", Dimension.Length, "mm", 30, 200, How = "Calliper across the hole that goes over the hub's collar.")]
    public Reading? Bore { get; init; }

    [Field("Collar toward the wheel", Dimension.Length, "mm", 30, 200, How = "Calliper across the collar that centres the wheel.")]
    public Reading? Collar { get; init; }

    [Field("Bolt circle toward the wheel", Dimension.Length, "mm", 50, 300,
        How = "Of its own studs or threads; only for one that is bolted on.")]
    public Reading? BoltCircle { get; init; }

    [Field("Thread toward the wheel", How = "M12x1.5: of its own studs or threads.")]
    public string Thread { get; init; } = "";

    [Field("Own studs stand out by", Dimension.Length, "mm", 5, 150, How = "From its face to the end of the full thread.")]
    public Reading? StudLength { get; init; }

    [Field("Thread engaged in the hub", Dimension.Length, "mm", 2, 60,
        How = "Of the bolts or nuts that hold it: count the turns until one comes off, times the pitch.")]
    public Reading? HubEngagement { get; init; }

    public override IEnumerable<Problem> Contradictions(string path) =>
        Thread.Length > 0 ? ThreadDesignation.Parse(Thread, path + " / thread toward the wheel").Problems : [];
}
