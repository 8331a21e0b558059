using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Access;

/// <summary>Bolts, nuts or screws of one kind that hold a component at one place.</summary>
public sealed record Fastener
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true, How = "What it is and where: clamp bolts, tube to knuckle.")]
    public string Name { get; init; } = "";

    [Field("Count", How = "At one wheel, or in all where the component is there once.")]
    public int? Count { get; init; }

    [Field("Drive", How = "What turns it: 18 mm socket, 6 mm hexagon key.")]
    public string Drive { get; init; } = "";

    [Field("Thread", How = "M12x1.5; without a pitch the coarse one is meant.")]
    public string Thread { get; init; } = "";

    [Field("Property class", How = "The mark on the head or nut: 8.8, 10.9, 10.")]
    public string Class { get; init; } = "";

    [Field("Torque", Dimension.Torque, "N·m", 0.5, 1000, How = "The car or part maker's figure. Left empty, the order says so.")]
    public Reading? Torque { get; init; }

    [Field("Then turn further", Dimension.Angle, "deg", 1, 360, How = "After the torque, for bolts that are tightened by angle.")]
    public Reading? ThenTurn { get; init; }

    [Field("Where the torque comes from", How = "Maker's instruction and page; or: common practice, no source.")]
    public string TorqueFrom { get; init; } = "";

    [Field("Pattern")]
    public TighteningPattern Pattern { get; init; }

    [Field("Single use", How = "Stretch bolts, self-locking nuts, split pins: new ones every time.")]
    public bool SingleUse { get; init; }

    [Field("Locking agent", How = "Thread lock and its strength, or what else locks it.")]
    public string Locking { get; init; } = "";

    [Field("Tightened")]
    public TightenedWhen When { get; init; }

    [Field("Bonded rubber", How = "Its bushing is bonded to rubber, which must be at rest at ride height.")]
    public bool BondedRubber { get; init; }

    [Field("Mark its place first", How = "It sets the wheel's alignment: scribe round it before it is undone.")]
    public bool Mark { get; init; }

    [Field("Tighten again on its wheels", How = "Tightened when it is fitted, and once more with the car's weight on its wheels.")]
    public bool AgainOnItsWheels { get; init; }

    [Field("Check again after 50 to 100 km")]
    public bool CheckAgain { get; init; }
}
