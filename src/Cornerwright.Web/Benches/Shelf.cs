using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Benches;

/// <summary>What is done to a car's shelf: one kind of part at a time, by the kind's name in files ("springs").</summary>
public static class Shelf
{
    /// <summary>The kinds, in the order of the shelf.</summary>
    public static IReadOnlyList<FieldShape> Kinds => RecordShape.Of<PartsShelf>().Fields;

    public static FieldShape? Kind(string? name) =>
        name is not null && RecordShape.Of<PartsShelf>().ByName.TryGetValue(name, out var kind) ? kind : null;

    public static IReadOnlyList<Part> Of(Car car, FieldShape kind)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(kind);
        return [.. (IEnumerable<Part>)kind.Get(car.Parts)!];
    }

    public static Car Put(Car car, FieldShape kind, Part part) => With(car, kind, [.. Of(car, kind), part]);

    public static Car Change(Car car, FieldShape kind, string partId, Func<Part, Part> change) =>
        With(car, kind, [.. Of(car, kind).Select(p => p.Id == partId ? change(p) : p)]);

    public static Car Remove(Car car, FieldShape kind, string partId) =>
        With(car, kind, [.. Of(car, kind).Where(p => p.Id != partId)]);

    /// <summary>The part under another id and name.</summary>
    public static Part Copy(Part part, string id, string name)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part with { Id = id, Name = name, Owned = false };
    }

    /// <summary>Ids that a new part of this kind must not have: springs and sheets lie in one stack and share theirs.</summary>
    public static IEnumerable<string> TakenIds(Car car, FieldShape kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var stacked = RecordShape.Of<CornerBuild>().ByName["stack"].Words.RefersTo.Split(',');
        return stacked.Contains("parts/" + kind.Name)
            ? stacked.SelectMany(s => Of(car, Kind(s["parts/".Length..])!)).Select(p => p.Id)
            : Of(car, kind).Select(p => p.Id);
    }

    /// <summary>Names of the builds that use a part.</summary>
    public static IReadOnlyList<string> UsersOf(Car car, FieldShape kind, string partId)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(kind);
        var fields = RecordShape.Of<CornerBuild>().Fields.Where(f => f.Words.RefersTo.Split(',').Contains("parts/" + kind.Name)).ToList();
        return [.. car.Builds.Where(b => Places.Corners.Any(c => fields.Any(f => Names(f, b.At(c), partId)))).Select(b => b.Name)];
    }

    private static bool Names(FieldShape field, CornerBuild corner, string partId) => field.Get(corner) switch
    {
        string id => id == partId,
        IReadOnlyList<string> ids => ids.Contains(partId, StringComparer.Ordinal),
        _ => false,
    };

    private static Car With(Car car, FieldShape kind, IReadOnlyList<Part> parts)
    {
        var typed = Array.CreateInstance(kind.ElementType, parts.Count);
        for (int i = 0; i < parts.Count; i++)
        {
            typed.SetValue(parts[i], i);
        }

        return car with { Parts = RecordShape.Of<PartsShelf>().With(car.Parts, kind, typed) };
    }
}
