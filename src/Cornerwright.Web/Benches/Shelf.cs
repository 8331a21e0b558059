using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Benches;

/// <summary>What is done to a car's shelf: one kind of part at a time, by the kind's name in files ("springs").</summary>
public static class Shelf
{
    /// <summary>The kinds, in the order of the shelf.</summary>
    public static IReadOnlyList<PartKind> Kinds => PartKind.All;

    public static PartKind? Kind(string? name) => name is null ? null : PartKind.Find(name);

    public static IReadOnlyList<Part> Of(Car car, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(kind);
        return kind.On(car.Parts);
    }

    public static Car Put(Car car, PartKind kind, Part part) => With(car, kind, [.. Of(car, kind), part]);

    public static Car Change(Car car, PartKind kind, string partId, Func<Part, Part> change) =>
        With(car, kind, [.. Of(car, kind).Select(p => p.Id == partId ? change(p) : p)]);

    public static Car Remove(Car car, PartKind kind, string partId) =>
        With(car, kind, [.. Of(car, kind).Where(p => p.Id != partId)]);

    /// <summary>The part under another id and name.</summary>
    public static Part Copy(Part part, string id, string name)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part with { Id = id, Name = name, Owned = false };
    }

    /// <summary>Ids that a new part of this kind must not have: kinds that lie in one stack share theirs.</summary>
    public static IEnumerable<string> TakenIds(Car car, PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return CornerSlot.SharingIds(kind).SelectMany(k => Of(car, k)).Select(p => p.Id);
    }

    /// <summary>Names of the builds that use a part.</summary>
    public static IReadOnlyList<string> UsersOf(Car car, PartKind kind, string partId)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(kind);
        return [.. car.Builds.Where(b => Places.Corners.Any(c => CornerSlot.Of(kind).Any(s => s.Holds(b.At(c), kind, partId))))
            .Select(b => b.Name)];
    }

    private static Car With(Car car, PartKind kind, IReadOnlyList<Part> parts) => car with { Parts = kind.With(car.Parts, parts) };
}
