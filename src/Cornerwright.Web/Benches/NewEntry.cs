using System.Collections;
using System.Collections.Concurrent;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;

namespace Cornerwright.Web.Benches;

/// <summary>
/// An entry as a form opens it, and whether it still is as it was opened. Entries without an id start as one and the same
/// object a kind: what still is that object, nobody has touched.
/// </summary>
public static class NewEntry
{
    private static readonly ConcurrentDictionary<Type, object> Blanks = new();

    /// <summary>The untouched entry of a kind.</summary>
    public static object Of(Type type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return Blanks.GetOrAdd(type, t => Activator.CreateInstance(t)!);
    }

    /// <summary>An untouched entry with an id of its own, and the name that such a one starts with.</summary>
    public static object Of(Type type, string id)
    {
        var shape = RecordShape.Of(type);
        object made = shape.With(Of(type), shape.ByName["id"], id);
        return FirstName(type) is { } name ? shape.With(made, shape.ByName["name"], name) : made;
    }

    /// <summary>Opened, and nothing typed or chosen in it since.</summary>
    public static bool IsUntouched(object entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var type = entry.GetType();
        return FirstName(type) is null ? ReferenceEquals(entry, Of(type))
            : SameValues(entry, Of(type, (string)RecordShape.Of(type).ByName["id"].Get(entry)!));
    }

    /// <summary>The same values as an object of its own: what is kept although nothing was changed in it.</summary>
    public static object Touched(object entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var shape = RecordShape.Of(entry.GetType());
        return shape.With(entry, shape.Fields[0], shape.Fields[0].Get(entry));
    }

    /// <summary>Its first choices say something without a word typed: a kind of hazard does, an empty gap does not.</summary>
    public static bool SpeaksByItself(Type type)
    {
        var fields = RecordShape.Of(type).Fields;
        return fields.Any(f => f.Kind == FieldKind.Choice)
            && fields.All(f => f.Kind == FieldKind.Choice || (f.Kind == FieldKind.Text && f.Words.RefersTo.Length == 0));
    }

    /// <summary>Null for entries that are not opened empty with a name.</summary>
    private static string? FirstName(Type type) => type.Name switch
    {
        nameof(LoadCase) => "New load case",
        nameof(Obstacle) => "New thing",
        nameof(Fastener) => "New fastener",
        nameof(Component) => "New component",
        _ => null,
    };

    private static bool SameValues(object a, object b) => RecordShape.Of(a.GetType()).Fields.All(f => (f.Get(a), f.Get(b)) switch
    {
        (string x, string y) => x == y,
        (IEnumerable x, IEnumerable y) => !x.Cast<object>().Any() && !y.Cast<object>().Any(),
        var (x, y) => Equals(x, y),
    });
}
