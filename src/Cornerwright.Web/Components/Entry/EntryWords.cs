using Cornerwright.Garage.Access;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Log;
using Cornerwright.Garage.Setting;

namespace Cornerwright.Web.Components.Entry;

/// <summary>What the entries of a list are called, one by one and when a new one is added.</summary>
public static class EntryWords
{
    /// <summary>Without its article: "load case".</summary>
    public static string Noun(Type type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return type.Name switch
        {
            nameof(LoadCase) => "load case",
            nameof(Obstacle) => "thing near the wheel",
            nameof(Gap) => "gap",
            nameof(CycledStep) => "step",
            nameof(PlacedLoad) => "person or load",
            nameof(GapAtRide) => "gap",
            nameof(Component) or nameof(Prerequisite) or nameof(Carried) => "component",
            nameof(Fastener) => "fastener",
            nameof(Hazard) => "hazard",
            nameof(CornerLog) => "tyre",
            nameof(Photo) => "photo",
            _ => "point",
        };
    }

    public static string IdStem(Type type) => type == typeof(LoadCase) ? "case" : type == typeof(Fastener) ? "fastener" : "thing";

    public static string Title(object item, int index, Car? car)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item switch
        {
            GapAtRide { Thing.Length: > 0 } gap => "gap to " + gap.Thing,
            Gap gap => FormattableString.Invariant($"gap at {gap.Clock:0.#} o'clock"),
            Prerequisite before => NameOf(car, before.Component) + (before.State == Undone.Loose ? ", slack" : ", off"),
            Carried carried => NameOf(car, carried.Component),
            Hazard hazard => ChoiceWords.Of(hazard.Kind),
            CornerLog tyre => tyre.Corner.Words(),
            _ when RecordShape.Of(item.GetType()).ByName.TryGetValue("name", out var name)
                && name.Get(item) is string { Length: > 0 } text => text,
            _ => FormattableString.Invariant($"{Noun(item.GetType())} {index + 1}"),
        };
    }

    /// <summary>Empty for entries without an id.</summary>
    public static string IdOf(object item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return RecordShape.Of(item.GetType()).ByName.TryGetValue("id", out var id) ? (string)id.Get(item)! : "";
    }

    private static string NameOf(Car? car, string id) => id.Length == 0 ? "choose a component" : car?.Access.Find(id)?.Name ?? id;
}
