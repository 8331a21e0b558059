using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>What the wheel is bolted to, the same on both sides of an axle.</summary>
public sealed record Hub
{
    [Field("Bolt count", How = "Studs or bolt holes.")]
    public int? Bolts { get; init; }

    [Field("Bolt circle", Dimension.Length, "mm", 50, 300,
        How = "Even count: calliper across two opposite studs, centre to centre. Five: neighbouring centres times 1.7013.")]
    public Reading? BoltCircle { get; init; }

    [Field("Centring diameter", Dimension.Length, "mm", 30, 200, How = "Calliper across the collar on the hub.")]
    public Reading? Centring { get; init; }

    [Field("Thread diameter", Dimension.Length, "mm", 6, 30, How = "M12 is 12 mm.")]
    public Reading? Thread { get; init; }

    [Field("Thread pitch", Dimension.Length, "mm", 0.5, 4)]
    public Reading? ThreadPitch { get; init; }

    /// <summary>True when studs stand on the hub and nuts hold the wheel.</summary>
    [Field("Studs and nuts")]
    public bool Studs { get; init; }

    [Field("Centring collar stands out by", Dimension.Length, "mm", 0, 80,
        How = "Depth gauge on the hub's collar: from the face on which the wheel lies to the end of its straight part, no chamfer.")]
    public Reading? SpigotLength { get; init; }

    [Field("Studs stand out by", Dimension.Length, "mm", 5, 150,
        How = "Only studs: from the face on which the wheel lies to the end of the full thread.")]
    public Reading? StudLength { get; init; }

    [Field("Free depth behind the face", Dimension.Length, "mm", 5, 150,
        How = "Only bolts: wire down a bolt hole, hub turned, to the first thing that a bolt must not touch: cable, plate, sensor ring.")]
    public Reading? BoltDepth { get; init; }

    [Field("Thread engaged now", Dimension.Length, "mm", 2, 60, How = "Count the turns until the bolt or nut comes off, times the pitch.")]
    public Reading? EngagedNow { get; init; }
}
