using System.Collections;
using System.Globalization;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Relations;

/// <summary>Every reading of a record and of the records in it, with its path in the car document.</summary>
internal static class FieldWalk
{
    public static IEnumerable<(string Path, object Owner, FieldShape Field, Reading Reading)> Readings(object record, string path)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            string at = path.Length == 0 ? field.Name : $"{path}/{field.Name}";
            switch (field.Kind)
            {
                case FieldKind.Reading when field.Get(record) is Reading reading:
                    yield return (at, record, field, reading);
                    break;
                case FieldKind.Record when field.Get(record) is { } inner:
                    foreach (var found in Readings(inner, at))
                    {
                        yield return found;
                    }

                    break;
                case FieldKind.RecordList:
                    foreach (var (entry, name) in Entries((IEnumerable)field.Get(record)!, field.ElementType))
                    {
                        foreach (var found in Readings(entry, $"{at}/{name}"))
                        {
                            yield return found;
                        }
                    }

                    break;
            }
        }
    }

    private static IEnumerable<(object Entry, string Name)> Entries(IEnumerable list, Type type)
    {
        var id = RecordShape.Of(type).ByName.GetValueOrDefault("id");
        int i = 0;
        foreach (object entry in list)
        {
            yield return (entry, id is null ? i.ToString(CultureInfo.InvariantCulture) : (string)id.Get(entry)!);
            i++;
        }
    }
}
