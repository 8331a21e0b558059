using System.Collections;
using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Parts;

/// <summary>One kind of part: a list of the shelf, and the fields its parts have.</summary>
public sealed class PartKind
{
    private const string Prefix = "parts/";

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

    /// <summary>The kind's path in a car's document, e.g. "parts/topMounts": what fields refer to.</summary>
    public string Path => Prefix + Name;

    /// <summary>By name or label, capitals aside; null if there is none.</summary>
    public static PartKind? Find(string text) => All.FirstOrDefault(x =>
        string.Equals(x.Name, text, StringComparison.OrdinalIgnoreCase)
            || string.Equals(x.Label, text, StringComparison.OrdinalIgnoreCase));

    /// <summary>The kind of a record type.</summary>
    public static PartKind Of<T>()
        where T : Part => All.First(x => x.Shape.Type == typeof(T));

    /// <summary>The kinds that a field may hold, by the collections that it refers to: "parts/springs,parts/sheets".</summary>
    public static IReadOnlyList<PartKind> ReferredTo(FieldShape field)
    {
        ArgumentNullException.ThrowIfNull(field);
        string[] places = field.Words.RefersTo.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return [.. places.Where(x => x.StartsWith(Prefix, StringComparison.Ordinal)).Select(x => Find(x[Prefix.Length..])
            ?? throw new InvalidOperationException($"{field.PropertyName}: the shelf has no \"{x}\"."))];
    }

    /// <summary>A part of this kind with nothing filled in.</summary>
    public Part New() => (Part)Shape.New();

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
