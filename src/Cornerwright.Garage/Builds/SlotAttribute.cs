using Cornerwright.Garage.Access;

namespace Cornerwright.Garage.Builds;

/// <summary>Where on the pages a part or setting of a corner is chosen.</summary>
public enum SlotGroup
{
    /// <summary>Beside the wheel.</summary>
    Wheel,

    /// <summary>Springs, seats and damper.</summary>
    Station,

    /// <summary>An adjuster: how the parts are set.</summary>
    Setting,
}

/// <summary>How many pieces of a part are needed where a corner names it.</summary>
public enum SlotPieces
{
    /// <summary>One for each time it is named.</summary>
    One,

    /// <summary>One serves both wheels of an axle.</summary>
    OneAnAxle,

    /// <summary>One for each bolt or stud of the hub.</summary>
    OneAWheelBolt,
}

/// <summary>
/// Says of a field of a corner's build what it is on the car. With <see cref="Fields.FieldAttribute"/> beside it (label, range,
/// and the lists of parts it looks in) this is all that is kept about it: see <see cref="CornerSlot"/> for who reads it.
/// </summary>
/// <param name="role">The component that carries it; none for what needs no spanner.</param>
/// <param name="group">Where it is chosen.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class SlotAttribute(BuildRole role, SlotGroup group) : Attribute
{
    public BuildRole Role { get; } = role;

    public SlotGroup Group { get; } = group;

    /// <summary>How far the component must be undone to change it.</summary>
    public Undone Undo { get; init; }

    /// <summary>Whether the car stands at another height afterwards.</summary>
    public bool MovesHeight { get; init; }

    public SlotPieces Pieces { get; init; }
}
