using System.Collections;
using System.Globalization;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Cars;

/// <summary>One reading of a car by its path in the document: "frontLeft/motion/springRatio", "parts/springs/f-8-220/rate".</summary>
public static class CarPath
{
    /// <summary>The field at a path and what stands there; null where no reading's field is.</summary>
    public static (FieldShape Field, Reading? Reading)? Find(Car car, string path)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(path);
        return Look(car, path);
    }

    /// <summary>The same car with another reading there; null where no reading's field is.</summary>
    public static Car? With(Car car, string path, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(path);
        return (Car?)Put(car, path, reading);
    }

    /// <summary>The same car without the reading there; null where no reading's field is.</summary>
    public static Car? Without(Car car, string path)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(path);
        return (Car?)Put(car, path, null);
    }

    private static (FieldShape Field, Reading? Reading)? Look(object owner, string path)
    {
        if (FieldOf(owner, path, out string rest) is not { } field)
        {
            return null;
        }

        return field.Kind switch
        {
            FieldKind.Reading when rest.Length == 0 => (field, (Reading?)field.Get(owner)),
            FieldKind.Record when field.Get(owner) is { } record => Look(record, rest),
            FieldKind.RecordList when Entry(field, owner, rest) is { } entry => Look(entry.Record, entry.Tail),
            _ => null,
        };
    }

    private static object? Put(object owner, string path, Reading? reading)
    {
        if (FieldOf(owner, path, out string rest) is not { } field)
        {
            return null;
        }

        switch (field.Kind)
        {
            case FieldKind.Reading when rest.Length == 0:
                return Set(owner, field, reading);
            case FieldKind.Record when field.Get(owner) is { } record:
                return Put(record, rest, reading) is { } changed ? Set(owner, field, changed) : null;
            case FieldKind.RecordList when Entry(field, owner, rest) is { } entry:
                if (Put(entry.Record, entry.Tail, reading) is not { } mended)
                {
                    return null;
                }

                var old = ((IEnumerable)field.Get(owner)!).Cast<object>().ToList();
                var list = Array.CreateInstance(field.ElementType, old.Count);
                for (int i = 0; i < old.Count; i++)
                {
                    list.SetValue(i == entry.Index ? mended : old[i], i);
                }

                return Set(owner, field, list);
            default:
                return null;
        }
    }

    private static object Set(object owner, FieldShape field, object? value) => RecordShape.Of(owner.GetType()).With(owner, field, value);

    private static FieldShape? FieldOf(object owner, string path, out string rest)
    {
        int slash = path.IndexOf('/', StringComparison.Ordinal);
        rest = slash < 0 ? "" : path[(slash + 1)..];
        return RecordShape.Of(owner.GetType()).ByName.GetValueOrDefault(slash < 0 ? path : path[..slash]);
    }

    // By id where the records have one (an id may hold a slash), else by place in the list.
    private static (object Record, int Index, string Tail)? Entry(FieldShape field, object owner, string path)
    {
        var records = ((IEnumerable)field.Get(owner)!).Cast<object>().ToList();
        var id = RecordShape.Of(field.ElementType).ByName.GetValueOrDefault("id");
        for (int i = 0; i < records.Count; i++)
        {
            string name = id is null ? i.ToString(CultureInfo.InvariantCulture) : (string)id.Get(records[i])!;
            if (path.StartsWith(name + "/", StringComparison.Ordinal))
            {
                return (records[i], i, path[(name.Length + 1)..]);
            }
        }

        return null;
    }
}
