namespace Cornerwright.Garage.Log;

/// <summary>Puts two logs together that grew from the same one: a phone ticks while somebody works on the car's builds.</summary>
public static class LogMerge
{
    /// <summary>
    /// Mine, with what they added, changed and took out since <paramref name="common"/>.
    /// Where both changed the same thing, mine stays; ticks of both are kept.
    /// </summary>
    public static CarLog Merge(CarLog common, CarLog mine, CarLog theirs)
    {
        ArgumentNullException.ThrowIfNull(common);
        ArgumentNullException.ThrowIfNull(mine);
        ArgumentNullException.ThrowIfNull(theirs);
        return new CarLog
        {
            Entries = Lists(common.Entries, mine.Entries, theirs.Entries, x => x.Id, (m, _) => m),
            Jobs = Lists(common.Jobs, mine.Jobs, theirs.Jobs, x => x.Id, (m, t) => TickMerge.Add(m, t.Ticks)),
            Reminders = Lists(common.Reminders, mine.Reminders, theirs.Reminders, x => x.Id, (m, _) => m),
        };
    }

    private static IReadOnlyList<T> Lists<T>(IReadOnlyList<T> common, IReadOnlyList<T> mine, IReadOnlyList<T> theirs, Func<T, string> id,
        Func<T, T, T> both)
        where T : class
    {
        var (inCommon, inMine, inTheirs) = (ById(common, id), ById(mine, id), ById(theirs, id));
        var merged = new List<T>();
        foreach (var item in mine)
        {
            var before = inCommon.GetValueOrDefault(id(item));
            var other = inTheirs.GetValueOrDefault(id(item));
            if (other is null)
            {
                // They took it out; it stays only if it is new here or was changed here.
                if (before is null || !ReferenceEquals(before, item))
                {
                    merged.Add(item);
                }
            }
            else
            {
                merged.Add(before is not null && ReferenceEquals(before, item) ? other : both(item, other));
            }
        }

        merged.AddRange(theirs.Where(t => !inMine.ContainsKey(id(t)) && !inCommon.ContainsKey(id(t))));
        return merged;
    }

    private static Dictionary<string, T> ById<T>(IReadOnlyList<T> items, Func<T, string> id)
    {
        var found = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            found.TryAdd(id(item), item);
        }

        return found;
    }
}
