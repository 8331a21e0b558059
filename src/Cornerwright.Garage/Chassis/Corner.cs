using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>What was measured at one corner, all at the same standing height: the reference state.</summary>
public sealed record Corner
{
    [Field("Hub centre to arch edge", Dimension.Length, "mm", 150, 800,
        How = "Plumb from the centre of the wheel up to the arch edge; tyres do not matter.")]
    public Reading? RideHeight { get; init; }

    [Field("Unsprung mass", Dimension.Mass, "kg", 5, 250,
        How = "Wheel, tyre, brake, hub, half of the arms. About 35 to 45 kg on a passenger car (common practice, no source).")]
    public Reading? UnsprungMass { get; init; }

    [Field("Camber now", Dimension.Angle, "deg", -15, 15)]
    public Reading? Camber { get; init; }

    [Field("Toe now", Dimension.Angle, "deg", -5, 5)]
    public Reading? Toe { get; init; }

    [Field("Spring axis length", Dimension.Length, "mm", 50, 1200,
        How = "At the reference height: from the body's mount plane to the lower reference, along the spring's axis.")]
    public Reading? SpringAxisLength { get; init; }

    [Field("Damper axis length", Dimension.Length, "mm", 50, 1200,
        How = "The same along the damper. Leave out where the spring sits round the damper.")]
    public Reading? DamperAxisLength { get; init; }

    [Field("Wheel motion")]
    public WheelMotion Motion { get; init; } = new();

    [Field("Hardpoints")]
    public HardpointTable? Hardpoints { get; init; }

    [Field("Steering axis")]
    public SteeringAxis? Steering { get; init; }

    [Field("Droop held by", Dimension.Length, "mm", -300, 0,
        How = "Travel at which something other than the damper stops the hanging wheel; leave out if nothing does.")]
    public Reading? DroopLimit { get; init; }

    [Field("Metal meets metal at", Dimension.Length, "mm", 0, 300,
        How = "Travel at which the arm meets the body or subframe; leave out if unknown.")]
    public Reading? MetalContact { get; init; }

    [Field("Strut beside the wheel")]
    public StrutPlace? Strut { get; init; }

    [Field("Drop link beside the wheel", How = "Not asked for where the hardpoints have the bar's three points.")]
    public DropLinkPlace? DropLink { get; init; }

    [Field("Things near the wheel")]
    public IReadOnlyList<Obstacle> Obstacles { get; init; } = [];

    [Field("Tyre inside the wing's edge by", Dimension.Length, "mm", -100, 150,
        How = "Plumb line from the wing's edge over the hub: level from the tyre's widest place out to it. Negative where it stands out.")]
    public Reading? WingEdge { get; init; }

    [Field("Calliper radius", Dimension.Length, "mm", 80, 350, How = "From the hub centre to the outermost place of the brake calliper.")]
    public Reading? CalliperRadius { get; init; }

    [Field("Calliper beyond the hub face", Dimension.Length, "mm", -120, 150,
        How = "Straight edge across the calliper: how far it stands out beyond the hub face.")]
    public Reading? CalliperProud { get; init; }
}
