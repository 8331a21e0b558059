using System.Collections;
using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests.Relations;

/// <summary>Every reading of a car that a judgement can stand on, found anew by the records' shapes.</summary>
internal static class EveryReading
{
    /// <summary>Path, field and reading; the log, the graph of disassembly and kept searches are no part of a judgement.</summary>
    public static IReadOnlyList<(string Path, FieldShape Field, Reading Reading)> Of(Car car) =>
        [.. In(car, "").Where(r => !r.Path.StartsWith("log/", StringComparison.Ordinal) && !r.Path.StartsWith("access/",
            StringComparison.Ordinal)
            && !r.Path.StartsWith("searches/", StringComparison.Ordinal) && !r.Path.StartsWith("scans/", StringComparison.Ordinal))];

    /// <summary>The next reading of the same record and dimension, with which one may be exchanged; null where there is none.</summary>
    public static string? Neighbour(IReadOnlyList<(string Path, FieldShape Field, Reading Reading)> all, int index)
    {
        string owner = Owner(all[index].Path);
        for (int i = index + 1; i < all.Count && Owner(all[i].Path) == owner; i++)
        {
            if (all[i].Field.Words.Dimension == all[index].Field.Words.Dimension)
            {
                return all[i].Path;
            }
        }

        return null;
    }

    private static string Owner(string path) => path[..Math.Max(0, path.LastIndexOf('/'))];

    private static IEnumerable<(string Path, FieldShape Field, Reading Reading)> In(object record, string path)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            string at = path.Length == 0 ? field.Name : $"{path}/{field.Name}";
            if (field.Kind == FieldKind.Reading && field.Get(record) is Reading reading)
            {
                yield return (at, field, reading);
            }
            else if (field.Kind == FieldKind.Record && field.Get(record) is { } inner)
            {
                foreach (var found in In(inner, at))
                {
                    yield return found;
                }
            }
            else if (field.Kind == FieldKind.RecordList)
            {
                var id = RecordShape.Of(field.ElementType).ByName.GetValueOrDefault("id");
                int i = 0;
                foreach (object entry in (IEnumerable)field.Get(record)!)
                {
                    foreach (var found in In(entry, $"{at}/{(id is null ? i.ToString(CultureInfo.InvariantCulture) : id.Get(entry))}"))
                    {
                        yield return found;
                    }

                    i++;
                }
            }
        }
    }
}
