using System.Reflection;

namespace Cornerwright.Web.Components.Measures;

/// <summary>
/// Marks the sketches of one kind of part, or of another record: static properties of type <see cref="Sketch"/>, each named for the
/// field it explains.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class SketchesOfAttribute(Type owner) : Attribute
{
    public Type Owner { get; } = owner;
}

/// <summary>The sketches that kinds of parts bring with them: a new kind's file is found by its mark and entered nowhere.</summary>
internal static class PartSheets
{
    private static readonly Dictionary<(Type Owner, string Property), Sketch> Known = typeof(PartSheets).Assembly.GetTypes()
        .Select(t => (Sheet: t, Mark: t.GetCustomAttribute<SketchesOfAttribute>())).Where(x => x.Mark is not null)
        .SelectMany(x => x.Sheet.GetProperties(BindingFlags.Public | BindingFlags.Static)
            .Select(p => (Key: (x.Mark!.Owner, p.Name), Sketch: (Sketch)p.GetValue(null)!)))
        .ToDictionary(x => x.Key, x => x.Sketch);

    /// <summary>Those that have a drawing of their own.</summary>
    public static IEnumerable<Sketch> Own => Known.OrderBy(x => x.Key.Owner.Name, StringComparer.Ordinal)
        .ThenBy(x => x.Key.Property, StringComparer.Ordinal).Select(x => x.Value).Where(x => x.Drawing is not null).Distinct();

    public static Sketch? Of(Type owner, string property) => Known.GetValueOrDefault((owner, property));
}
