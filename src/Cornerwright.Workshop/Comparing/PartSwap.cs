using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.Comparing;

/// <summary>A part or setting of one corner that differs between two builds.</summary>
/// <param name="Place">The trade's word for it: "Tyre", "Perch height".</param>
/// <param name="Before">Name or value as typed; empty where the build has none.</param>
/// <param name="After">Likewise in the other build.</param>
public sealed record PartSwap(CornerPlace Corner, string Place, string Before, string After)
{
    /// <returns>Corner by corner in the order of <see cref="Places.Corners"/>, field by field as declared.</returns>
    public static IReadOnlyList<PartSwap> Between(Car car, Build left, Build right)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        var swaps = new List<PartSwap>();
        foreach (var corner in Places.Corners)
        {
            foreach (var slot in CornerSlot.All)
            {
                string before = slot.Written(car.Parts, left.At(corner)), after = slot.Written(car.Parts, right.At(corner));
                if (before != after)
                {
                    swaps.Add(new PartSwap(corner, slot.Field.Label, before, after));
                }
            }
        }

        return swaps;
    }
}
