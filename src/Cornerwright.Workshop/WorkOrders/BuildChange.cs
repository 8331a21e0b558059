using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>A part or setting of one corner that differs, and what must be undone for it.</summary>
/// <param name="Corner">Which.</param>
/// <param name="Slot">The part or setting.</param>
/// <param name="Before">In words; empty for nothing.</param>
/// <param name="After">Likewise in the proposed build.</param>
public sealed record BuildChange(CornerPlace Corner, CornerSlot Slot, string Before, string After)
{
    public FieldShape Field => Slot.Field;

    /// <summary>The component that carries it; none for what needs no spanner.</summary>
    public BuildRole Role => Slot.About.Role;

    /// <summary>How far that is undone.</summary>
    public Undone State => Slot.About.Undo;

    /// <summary>True for another part, false for another setting of the same one.</summary>
    public bool Part => Slot.HoldsParts;

    /// <summary>Whether the car stands at another height afterwards, so that bonded rubber must be let go.</summary>
    public bool MovesHeight => Slot.About.MovesHeight;

    public static IReadOnlyList<BuildChange> Between(Car car, Build from, Build to)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        return [.. Places.Corners.SelectMany(corner => CornerSlot.All.Where(slot => !slot.Same(from.At(corner), to.At(corner)))
            .Select(slot => new BuildChange(
                corner, slot, slot.Written(car.Parts, from.At(corner)), slot.Written(car.Parts, to.At(corner)))))];
    }
}
