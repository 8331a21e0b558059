using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Entry;

/// <summary>A form made from a record's <see cref="RecordShape"/>: labels, how to measure, units and ranges all come from there.</summary>
public partial class RecordForm
{
    [Parameter, EditorRequired] public object Value { get; set; } = null!;

    /// <summary>Where the record stands in the document.</summary>
    [Parameter] public string Path { get; set; } = "";

    /// <summary>Where it stands, in words.</summary>
    [Parameter] public string Where { get; set; } = "";

    [Parameter, EditorRequired] public Mend Mend { get; set; } = null!;

    /// <summary>What references are looked up in.</summary>
    [Parameter] public Car? Car { get; set; }

    /// <summary>Only these fields, by name; null for all.</summary>
    [Parameter] public IReadOnlyList<string>? Only { get; set; }

    /// <summary>These fields stand elsewhere on the page.</summary>
    [Parameter] public IReadOnlyList<string>? Skip { get; set; }

    /// <summary>For what is chosen and not measured.</summary>
    [Parameter] public bool Plain { get; set; }

    /// <summary>Springs and dampers of this axle stand on axes of their own.</summary>
    [Parameter] public bool Apart { get; set; }

    [Parameter] public bool Mirrored { get; set; }

    /// <summary>What counts while a field is empty, in words.</summary>
    [Parameter] public Func<FieldShape, string>? Inherited { get; set; }

    /// <summary>Why a field cannot be changed now; empty if it can.</summary>
    [Parameter] public Func<FieldShape, string>? Locked { get; set; }

    private IEnumerable<FieldShape> Shown => RecordShape.Of(Value.GetType()).Fields
        .Where(f => (Only is null || Only.Contains(f.PropertyName)) && Skip?.Contains(f.PropertyName) != true);

    private IEnumerable<FieldShape> Main => Shown.Where(f => FieldSense.Needed(Value, f, Apart));

    private List<FieldShape> Folded => [.. Shown.Where(f => !FieldSense.Needed(Value, f, Apart))];

    private double Clock => Value is Gap gap ? gap.Clock : 12;

    private string PathOf(FieldShape field) => FieldPaths.Join(Path, field.Name);

    private string WhereOf(FieldShape field) => Where.Length == 0 ? field.Label : Where + " / " + field.Label;

    /// <summary>A record that may be missing starts out missing.</summary>
    private static bool IsOptional(FieldShape field, Type owner) => field.Get(Activator.CreateInstance(owner)!) is null;

    private bool IsOptional(FieldShape field) => IsOptional(field, Value.GetType());

    private void Put(FieldShape field, object? value) =>
        MendField(field, (value is null ? "Take out " : "Add ") + WhereOf(field), _ => value);

    private void MendField(FieldShape field, string words, Func<object?, object?> rework) =>
        Mend(words, owner => owner is null ? null : RecordShape.Of(owner.GetType()).With(owner, field, rework(field.Get(owner))));
}
