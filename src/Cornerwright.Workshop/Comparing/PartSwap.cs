using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;

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
            foreach (var field in RecordShape.Of<CornerBuild>().Fields)
            {
                string before = Words(car.Parts, field, left.At(corner)), after = Words(car.Parts, field, right.At(corner));
                if (before != after)
                {
                    swaps.Add(new PartSwap(corner, field.Label, before, after));
                }
            }
        }

        return swaps;
    }

    /// <summary>A corner's field in words: the part's name, the stack's names from the perch upward, the reading as typed.</summary>
    public static string Words(PartsShelf shelf, FieldShape field, CornerBuild corner)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(field);
        return field.Get(corner) switch
        {
            Reading reading => reading.Typed,
            string id => NameOf(shelf, field, id),
            IReadOnlyList<string> ids => string.Join(" + ", ids.Select(id => NameOf(shelf, field, id))),
            _ => "",
        };
    }

    // Ids are unique within a kind only, so the name is looked for on the shelf that the field refers to.
    private static string NameOf(PartsShelf shelf, FieldShape field, string id)
    {
        foreach (string place in field.Words.RefersTo.Split(','))
        {
            string kind = place["parts/".Length..];
            var parts = (IEnumerable<Part>?)RecordShape.Of<PartsShelf>().ByName[kind].Get(shelf) ?? [];
            if (parts.FirstOrDefault(p => p.Id == id) is { } part)
            {
                return part.Name;
            }
        }

        return id;
    }
}
