using System.Collections;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Differences;

/// <summary>What differs between two states of a car, or between two builds, field by field in the order of the document.</summary>
/// <remarks>
/// Goes by <see cref="RecordShape"/>, so a new field takes part by itself. Items of a list are matched by their id;
/// where they have none (rows of a curve), or an id stands twice, by their place in the list.
/// </remarks>
public static class CarDifference
{
    private const string IdField = "id", LogField = "log/";

    /// <returns>Empty if both would be written as the same document.</returns>
    public static IReadOnlyList<FieldChange> Between(Car before, Car after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return Compare(RecordShape.Of<Car>(), before, after);
    }

    /// <summary>True if nothing but the log differs between the two cars.</summary>
    public static bool IsOfLogAlone(Car before, Car after) =>
        Between(before, after).All(c => c.Address.StartsWith(LogField, StringComparison.Ordinal));

    /// <summary>Two builds side by side: ids, names and notes apart from each other are differences too.</summary>
    /// <inheritdoc cref="Between(Car, Car)"/>
    public static IReadOnlyList<FieldChange> Between(Build before, Build after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return Compare(RecordShape.Of<Build>(), before, after);
    }

    private static List<FieldChange> Compare(RecordShape shape, object before, object after)
    {
        var changes = new List<FieldChange>();
        Records(changes, shape, before, after, new Place("", ""));
        return changes;
    }

    private static void Records(List<FieldChange> changes, RecordShape shape, object? before, object? after, Place place)
    {
        foreach (var field in shape.Fields)
        {
            object? a = before is null ? null : field.Get(before);
            object? b = after is null ? null : field.Get(after);
            if (!ReferenceEquals(a, b))
            {
                Values(changes, field, a, b, place.Then(field.Name, field.Label));
            }
        }
    }

    private static void Values(List<FieldChange> changes, FieldShape field, object? a, object? b, Place place)
    {
        switch (field.Kind)
        {
            case FieldKind.Record:
                Nested(changes, field, a, b, place);
                break;
            case FieldKind.RecordList:
                Lists(changes, RecordShape.Of(field.ElementType), Items(a), Items(b), place);
                break;
            default:
                var (before, after) = a is Reading ra && b is Reading rb
                    ? ValueWords.OfBoth(ra, rb)
                    : (ValueWords.Of(field, a), ValueWords.Of(field, b));
                if (before != after
                    || (a is IEnumerable<string> ta && b is IEnumerable<string> tb && !ta.SequenceEqual(tb, StringComparer.Ordinal)))
                {
                    changes.Add(new FieldChange(ChangeKind.Changed, place.Address, place.Words, before, after));
                }

                break;
        }
    }

    /// <summary>A nested record that came or went without any content is still a difference of the two documents.</summary>
    private static void Nested(List<FieldChange> changes, FieldShape field, object? a, object? b, Place place)
    {
        int known = changes.Count;
        Records(changes, RecordShape.Of(field.ElementType), a, b, place);
        if (changes.Count == known && (a is null) != (b is null))
        {
            changes.Add(new FieldChange(a is null ? ChangeKind.Added : ChangeKind.Removed, place.Address, place.Words, "", ""));
        }
    }

    private static void Lists(List<FieldChange> changes, RecordShape shape, List<object> a, List<object> b, Place place)
    {
        if (shape.ByName.TryGetValue(IdField, out var id) && ById(a, id) is { } inA && ById(b, id) is { } inB)
        {
            Matched(changes, shape, (a, inA), (b, inB), id, place);
            return;
        }

        for (int i = 0; i < Math.Max(a.Count, b.Count); i++)
        {
            string number = FormattableString.Invariant($"{i + 1}");
            var row = new Place($"{place.Address}/{number}", $"{place.Words} {number}");
            if (i < a.Count && i < b.Count)
            {
                Records(changes, shape, a[i], b[i], row);
            }
            else
            {
                changes.Add(new FieldChange(i < b.Count ? ChangeKind.Added : ChangeKind.Removed, row.Address, row.Words, "", ""));
            }
        }
    }

    private static void Matched(
        List<FieldChange> changes,
        RecordShape shape,
        (List<object> Items, Dictionary<string, object> ById) a,
        (List<object> Items, Dictionary<string, object> ById) b,
        FieldShape id,
        Place place)
    {
        foreach (var item in a.Items.Where(x => !b.ById.ContainsKey((string)id.Get(x)!)))
        {
            var gone = ItemPlace(item);
            changes.Add(new FieldChange(ChangeKind.Removed, gone.Address, gone.Words, Name(item), ""));
        }

        foreach (var item in b.Items)
        {
            var itemPlace = ItemPlace(item);
            if (a.ById.TryGetValue((string)id.Get(item)!, out var old))
            {
                Records(changes, shape, old, item, itemPlace);
            }
            else
            {
                changes.Add(new FieldChange(ChangeKind.Added, itemPlace.Address, itemPlace.Words, "", Name(item)));
            }
        }

        var left = a.Items.Select(x => (string)id.Get(x)!).Where(b.ById.ContainsKey);
        var kept = b.Items.Select(x => (string)id.Get(x)!).Where(a.ById.ContainsKey);
        if (!left.SequenceEqual(kept, StringComparer.Ordinal))
        {
            changes.Add(
                new FieldChange(ChangeKind.Reordered, place.Address, place.Words, string.Join(", ", left), string.Join(", ", kept)));
        }

        Place ItemPlace(object item) => place.Then(FieldChange.Escape((string)id.Get(item)!), Name(item));

        string Name(object item) =>
            shape.ByName.TryGetValue("name", out var name) && name.Get(item) is string { Length: > 0 } text ? text : (string)id.Get(item)!;
    }

    private static Dictionary<string, object>? ById(List<object> items, FieldShape id)
    {
        var found = new Dictionary<string, object>(StringComparer.Ordinal);
        return items.All(x => found.TryAdd((string)id.Get(x)!, x)) ? found : null;
    }

    private static List<object> Items(object? list) => list is IEnumerable items ? [.. items.Cast<object>()] : [];

    /// <summary>A place by address and in words, grown while going down.</summary>
    private readonly record struct Place(string Address, string Words)
    {
        public Place Then(string name, string words) =>
            Address.Length == 0 ? new(name, words) : new(Address + "/" + name, Words + " / " + words);
    }
}
