using System.Collections;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Web.Benches;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Entry;

/// <summary>Entries of a list: added at the end, moved up, taken out; each is a form of its own.</summary>
public partial class RecordListForm
{
    /// <summary>Ids of list entries are made by the program; people see the names.</summary>
    private static readonly IReadOnlyList<string> HiddenIds = ["Id"];

    [Parameter, EditorRequired] public FieldShape Field { get; set; } = null!;
    [Parameter, EditorRequired] public IEnumerable Items { get; set; } = null!;
    [Parameter] public string Path { get; set; } = "";
    [Parameter] public string Where { get; set; } = "";
    [Parameter, EditorRequired] public Mend Mend { get; set; } = null!;
    [Parameter] public Car? Car { get; set; }
    [Parameter] public bool Apart { get; set; }
    [Parameter] public bool Mirrored { get; set; }

    [Inject] private NavigationManager Navigation { get; set; } = null!;

    private object? _added;

    private string AddWords => "Add a " + EntryWords.Noun(Field.ElementType);

    private void Add() => MendList(AddWords + ": " + Where, list =>
    {
        object fresh = Fresh(list);
        list.Add(fresh);
        _added = KeyOf(fresh, list.Count - 1);
    });

    // Entries start folded, but for the one just added and the one the address leads into.
    private bool StartsOpen(object item, int index) =>
        KeyOf(item, index).Equals(_added)
        || Navigation.Uri.Contains("#" + FieldPaths.RowId(ItemPath(item, index)) + "-", StringComparison.Ordinal);

    private void Remove(int index) => MendList("Take out of " + Where, list =>
    {
        if (index < list.Count)
        {
            list.RemoveAt(index);
        }
    });

    private void Move(int index, int by) => MendList("Order of " + Where, list =>
    {
        if (index < list.Count && index + by >= 0 && index + by < list.Count)
        {
            (list[index], list[index + by]) = (list[index + by], list[index]);
        }
    });

    private void MendItem(int index, string words, Func<object?, object?> rework) => MendList(words, index, rework);

    private void MendList(string words, int index, Func<object?, object?> rework) => MendList(words, list =>
    {
        if (index < list.Count && rework(list[index]) is { } reworked)
        {
            list[index] = reworked;
        }
    });

    private void MendList(string words, Action<List<object>> change) => Mend(words, old =>
    {
        var list = ((IEnumerable)old!).Cast<object>().ToList();
        change(list);
        var typed = Array.CreateInstance(Field.ElementType, list.Count);
        for (int i = 0; i < list.Count; i++)
        {
            typed.SetValue(list[i], i);
        }

        return typed;
    });

    /// <summary>A new entry; where entries have ids it gets one that nobody has.</summary>
    private object Fresh(List<object> others) => RecordShape.Of(Field.ElementType).ByName.TryGetValue("id", out var id)
        ? NewEntry.Of(Field.ElementType, FreshId.Beside(EntryWords.IdStem(Field.ElementType), others.Select(o => (string)id.Get(o)!)))
        : NewEntry.Of(Field.ElementType);

    /// <summary>It says enough as it was opened, and somebody says so.</summary>
    private void KeepAsItIs(int index) => MendItem(index, AddWords + ": " + Where, old => old is null ? null : NewEntry.Touched(old));

    private string Title(object item, int index) => EntryWords.Title(item, index, Car);

    private static object KeyOf(object item, int index) => EntryWords.IdOf(item) is { Length: > 0 } id ? id : index;

    private string ItemPath(object item, int index) => FieldPaths.Join(Path, KeyOf(item, index).ToString()!);
}
