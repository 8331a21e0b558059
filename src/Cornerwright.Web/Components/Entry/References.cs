using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Components.Entry;

/// <summary>Something a field may refer to.</summary>
public sealed record Choosable(string Id, string Name);

/// <summary>Finds what a field's id may name: "parts/springs,parts/sheets", "builds", "loadCases".</summary>
public static class References
{
    public static IReadOnlyList<Choosable> For(Car car, FieldShape field)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(field);
        return [.. field.Words.RefersTo.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .SelectMany(c => In(car, c))];
    }

    private static IEnumerable<Choosable> In(Car car, string collection) => collection switch
    {
        "builds" => car.Builds.Select(b => new Choosable(b.Id, b.Name)),
        "access/components" => car.Access.Components.Select(c => new Choosable(c.Id, c.Name)),
        "loadCases" => car.LoadCases.Select(c => new Choosable(c.Id, c.Name)),
        _ => PartKind.All.Where(k => k.Path == collection).SelectMany(k => k.On(car.Parts)).Select(p => new Choosable(p.Id, p.Name)),
    };
}
