using System.Collections;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>Every reading of a record and of all that it holds, each with the record in which that one is changed.</summary>
internal static class ReadingsIn
{
    /// <param name="record">Walked through by its fields.</param>
    /// <param name="change">What becomes of a reading.</param>
    /// <param name="into">False for an entry of a list that is passed over; null to walk into all.</param>
    public static IEnumerable<(string Path, Func<object> Make)> Of(object record, Func<Reading, Reading?> change,
        Func<object, bool>? into = null)
    {
        var shape = RecordShape.Of(record.GetType());
        foreach (var field in shape.Fields)
        {
            switch (field.Get(record))
            {
                case Reading reading:
                    yield return (field.Name, () => shape.With(record, field, change(reading)));
                    break;
                case IEnumerable list when field.Kind == FieldKind.RecordList:
                    object[] entries = [.. list.Cast<object>()];
                    for (int i = 0; i < entries.Length; i++)
                    {
                        int at = i;
                        foreach (var (path, make) in into?.Invoke(entries[i]) == false ? [] : Of(entries[i], change, into))
                        {
                            yield return ($"{field.Name}/{i}/{path}", () =>
                            {
                                var array = Array.CreateInstance(field.ElementType, entries.Length);
                                entries.CopyTo(array, 0);
                                array.SetValue(make(), at);
                                return shape.With(record, field, array);
                            });
                        }
                    }

                    break;
                case { } inner when field.Kind == FieldKind.Record:
                    foreach (var (path, make) in Of(inner, change, into))
                    {
                        yield return ($"{field.Name}/{path}", () => shape.With(record, field, make()));
                    }

                    break;
                default:
                    break;
            }
        }
    }
}
