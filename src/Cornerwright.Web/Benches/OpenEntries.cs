using System.Collections;
using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Web.Benches;

/// <summary>An entry that stays on the bench and is not kept yet.</summary>
/// <param name="Path">Where it stands in the document.</param>
/// <param name="Where">The same in words: "Front left / Things near the wheel / Gaps".</param>
/// <param name="Why">What it waits for: "Gap is not given yet".</param>
public sealed record OpenEntry(string Path, string Where, string Why);

/// <summary>
/// Tells the entries that were opened and are not complete from the rest of a car. The rest is kept without them: an
/// opened row never stops another entry from being saved, and never is saved as an empty one.
/// </summary>
public sealed class OpenEntries
{
    private readonly HashSet<string> _referredTo = new(StringComparer.Ordinal);
    private readonly List<OpenEntry> _open = [];

    private OpenEntries(Car car) => Refer(car);

    /// <summary>The car as it can be kept, which is the very object where nothing is open; and what stays open.</summary>
    public static (Car Kept, IReadOnlyList<OpenEntry> Open) Split(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var walk = new OpenEntries(car);
        return ((Car)walk.Without(car, "", ""), walk._open);
    }

    /// <summary>The car as it can be kept, read back as a file would be; or every problem.</summary>
    public static Checked<Car> ReadBack(Car car) => CarFile.Read(CarFile.Write(Split(car).Kept));

    /// <summary>What an entry waits for; null if it is complete.</summary>
    public static string? Missing(object entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var shape = RecordShape.Of(entry.GetType());
        string[] names = [.. shape.Fields.Where(f => f.Words.Needed && f.Get(entry) is null or "").Select(f => f.Label)];
        return names.Length == 1 ? names[0] + " is not given yet"
            : names.Length > 1 ? string.Join(", ", names[..^1]) + " and " + names[^1] + " are not given yet"
            : NewEntry.IsUntouched(entry) ? "nothing is given yet" : null;
    }

    /// <inheritdoc cref="Missing(object)"/>
    /// <remarks>An entry that is chosen somewhere in the car is kept as it was opened.</remarks>
    public static string? Missing(object entry, Car? car) =>
        car is not null && IdOf(entry) is { Length: > 0 } id && NewEntry.IsUntouched(entry) && new OpenEntries(car)._referredTo.Contains(id)
            ? null : Missing(entry);

    private object Without(object record, string path, string where)
    {
        var shape = RecordShape.Of(record.GetType());
        object kept = record;
        foreach (var field in shape.Fields.Where(f => f.Kind is FieldKind.Record or FieldKind.RecordList))
        {
            if (field.Get(record) is not { } value)
            {
                continue;
            }

            string at = path.Length == 0 ? field.Name : path + "/" + field.Name;
            string words = where.Length == 0 ? field.Label : where + " / " + field.Label;
            object? rest = field.Kind == FieldKind.Record ? WithoutRecord(shape, field, value, at, words)
                : WithoutRows(field, (IEnumerable)value, at, words);
            if (!ReferenceEquals(rest, value))
            {
                kept = shape.With(kept, field, rest);
            }
        }

        return kept;
    }

    /// <summary>Only a record that may be missing can be left out.</summary>
    private object? WithoutRecord(RecordShape owner, FieldShape field, object value, string path, string where)
    {
        object rest = Without(value, path, where);
        return field.Get(NewEntry.Of(owner.Type)) is null && Stays(rest, path, where) ? null : rest;
    }

    private IEnumerable WithoutRows(FieldShape field, IEnumerable rows, string path, string where)
    {
        var kept = new List<object>();
        bool changed = false;
        int index = 0;
        foreach (object row in rows)
        {
            string id = IdOf(row);
            string at = path + "/" + (id.Length > 0 ? id : index.ToString(CultureInfo.InvariantCulture));
            object rest = Without(row, at, where);
            bool stays = id.Length == 0 ? Stays(rest, at, where)
                : NewEntry.IsUntouched(rest) && !_referredTo.Contains(id) && Stays(rest, at, where);
            changed |= stays || !ReferenceEquals(rest, row);
            if (!stays)
            {
                kept.Add(rest);
            }

            index++;
        }

        if (!changed)
        {
            return rows;
        }

        var typed = Array.CreateInstance(field.ElementType, kept.Count);
        for (int i = 0; i < kept.Count; i++)
        {
            typed.SetValue(kept[i], i);
        }

        return typed;
    }

    private bool Stays(object entry, string path, string where)
    {
        if (Missing(entry) is not { } why)
        {
            return false;
        }

        _open.Add(new OpenEntry(path, where, why));
        return true;
    }

    private static string IdOf(object row) => RecordShape.Of(row.GetType()).ByName.TryGetValue("id", out var id)
        ? (string)id.Get(row)! : "";

    /// <summary>Gathers every id that something refers to: an entry that is chosen somewhere has to be there.</summary>
    private void Refer(object record)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            switch (field.Get(record))
            {
                case string id when field.Words.RefersTo.Length > 0 && id.Length > 0:
                    _referredTo.Add(id);
                    break;
                case { } child when field.Kind == FieldKind.Record:
                    Refer(child);
                    break;
                case IEnumerable rows when field.Kind == FieldKind.RecordList:
                    foreach (object row in rows)
                    {
                        Refer(row);
                    }

                    break;
                default:
                    break;
            }
        }
    }
}
