using System.Collections;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Garage.Files;

/// <summary>One kind of part: a list of the shelf, and the fields its parts have.</summary>
public sealed class PartKind
{
    private readonly FieldShape _list;

    private PartKind(FieldShape list)
    {
        _list = list;
        Shape = RecordShape.Of(list.ElementType);
    }

    /// <summary>Every kind, in the order of the shelf.</summary>
    public static IReadOnlyList<PartKind> All { get; } =
        [.. RecordShape.Of<PartsShelf>().Fields.Where(x => x.Kind == FieldKind.RecordList).Select(x => new PartKind(x))];

    /// <summary>As in files, e.g. "topMounts".</summary>
    public string Name => _list.Name;

    /// <summary>For people, e.g. "Top mounts".</summary>
    public string Label => _list.Label;

    public RecordShape Shape { get; }

    /// <summary>By name or label, capitals aside; null if there is none.</summary>
    public static PartKind? Find(string text) => All.FirstOrDefault(x =>
        string.Equals(x.Name, text, StringComparison.OrdinalIgnoreCase)
            || string.Equals(x.Label, text, StringComparison.OrdinalIgnoreCase));

    public IReadOnlyList<Part> On(PartsShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        return [.. ((IEnumerable)_list.Get(shelf)!).Cast<Part>()];
    }

    /// <summary>A shelf with these parts as its only ones of this kind.</summary>
    public PartsShelf With(PartsShelf shelf, IReadOnlyList<Part> parts)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(parts);
        var list = Array.CreateInstance(_list.ElementType, parts.Count);
        for (int i = 0; i < parts.Count; i++)
        {
            list.SetValue(parts[i], i);
        }

        return RecordShape.Of<PartsShelf>().With(shelf, _list, list);
    }

    public override string ToString() => Label;
}
