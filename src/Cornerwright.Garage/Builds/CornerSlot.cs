using Cornerwright.Garage.Access;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Builds;

/// <summary>
/// One line of the table of what a corner of a build can hold: a part, several parts, or a setting. The table is
/// <see cref="CornerBuild"/> itself; whoever compares, prices, orders, counts, checks or shows builds goes by these lines, so that
/// a new kind of part is its record and list on the shelf, its field in <see cref="CornerBuild"/> and its sketches.
/// </summary>
public sealed class CornerSlot
{
    /// <summary>Two settings nearer than this are the same, SI: below anything that can be typed.</summary>
    private const double SameSetting = 1e-9;

    private CornerSlot(FieldShape field)
    {
        Field = field;
        About = field.Attribute<SlotAttribute>()
            ?? throw new InvalidOperationException($"{nameof(CornerBuild)}.{field.PropertyName} says not what it is on the car.");
        Kinds = PartKind.ReferredTo(field);
    }

    /// <summary>Every slot, in the order in which they are declared.</summary>
    public static IReadOnlyList<CornerSlot> All { get; } = [.. RecordShape.Of<CornerBuild>().Fields.Select(x => new CornerSlot(x))];

    /// <summary>Name in files, label and, for a setting, its range.</summary>
    public FieldShape Field { get; }

    public SlotAttribute About { get; }

    /// <summary>The kinds of part that it holds, in the order in which they are looked in; none for a setting.</summary>
    public IReadOnlyList<PartKind> Kinds { get; }

    /// <summary>False for a setting.</summary>
    public bool HoldsParts => Kinds.Count > 0;

    /// <summary>Within a sentence: "top mount", "stack".</summary>
    public string Words => Field.Label.Split(',')[0].ToLowerInvariant();

    /// <param name="property">Of <see cref="CornerBuild"/>, by nameof.</param>
    public static CornerSlot Named(string property) => All.First(x => x.Field.PropertyName == property);

    /// <summary>The slots that hold parts of a kind.</summary>
    public static IEnumerable<CornerSlot> Of(PartKind kind) => All.Where(x => x.Kinds.Contains(kind));

    /// <summary>The part that a component of the car is; null for a component that is none of a build's.</summary>
    public static CornerSlot? Of(BuildRole role) => PartsOf(role).FirstOrDefault();

    /// <summary>The part that a component is, and those that come off with it: a wheel and its tyre.</summary>
    public static IEnumerable<CornerSlot> PartsOf(BuildRole role) => With(role).Where(x => x.HoldsParts);

    /// <summary>How a component is set.</summary>
    public static IEnumerable<CornerSlot> SettingsOf(BuildRole role) => With(role).Where(x => !x.HoldsParts);

    /// <summary>The kinds, this one among them, whose parts lie in one slot and may not have the same id.</summary>
    public static IReadOnlyList<PartKind> SharingIds(PartKind kind) => Of(kind).FirstOrDefault()?.Kinds ?? [kind];

    /// <summary>A part of a kind within a sentence: "top mount", "spring".</summary>
    public static string PartWords(PartKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return Of(kind).FirstOrDefault() is { Kinds.Count: 1 } slot ? slot.Words : kind.Shape.Type.Name.ToLowerInvariant();
    }

    /// <summary>Ids of the parts that a corner has here, in order; empty for none.</summary>
    public IReadOnlyList<string> Ids(CornerBuild corner) => Field.Get(corner) switch
    {
        string { Length: > 0 } id when HoldsParts => [id],
        IReadOnlyList<string> ids => ids,
        _ => [],
    };

    /// <summary>The parts that a corner has here, in order; what the shelf does not have is left out.</summary>
    public IEnumerable<Part> Parts(PartsShelf shelf, CornerBuild corner) => Ids(corner).Select(id => Find(shelf, id)).OfType<Part>();

    /// <summary>Whether a corner has a part of this kind here.</summary>
    public bool Holds(CornerBuild corner, PartKind kind, string id) =>
        Kinds.Contains(kind) && Ids(corner).Contains(id, StringComparer.Ordinal);

    /// <summary>The same part is the same id; the same setting the same number, however typed.</summary>
    public bool Same(CornerBuild one, CornerBuild other) => (Field.Get(one), Field.Get(other)) switch
    {
        (Reading a, Reading b) => Math.Abs(a.Si - b.Si) < SameSetting,
        (string a, string b) => a == b,
        (IReadOnlyList<string> a, IReadOnlyList<string> b) => a.SequenceEqual(b, StringComparer.Ordinal),
        var (a, b) => a is null && b is null,
    };

    /// <summary>In words: the part's name, the names from the perch upward, the setting as typed; empty for nothing.</summary>
    public string Written(PartsShelf shelf, CornerBuild corner) => Field.Get(corner) is Reading reading ? reading.Typed
        : string.Join(" + ", Ids(corner).Select(id => Find(shelf, id)?.Name ?? id));

    private static IEnumerable<CornerSlot> With(BuildRole role) => role == BuildRole.None ? [] : All.Where(x => x.About.Role == role);

    // Ids are unique within the slot's kinds only.
    private Part? Find(PartsShelf shelf, string id) => Kinds.SelectMany(k => k.On(shelf)).FirstOrDefault(x => x.Id == id);
}
