using System.Globalization;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Measures;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Entry;

/// <summary>One reading on a page. Text that cannot be read stays in its box, with the reason under it.</summary>
public partial class ReadingField
{
    private ReadingDraft _draft = new();
    private IReadOnlyList<Problem> _problems = [];
    private Reading? _shown;
    private bool _loaded;
    private bool _open;

    [Inject] private Workbench Bench { get; set; } = null!;
    [Inject] private NavigationManager Navigation { get; set; } = null!;
    [Inject] private IJSRuntime Js { get; set; } = null!;

    [Parameter, EditorRequired] public FieldShape Field { get; set; } = null!;

    /// <summary>The type that the field belongs to: it chooses the sketch and the usual source.</summary>
    [Parameter, EditorRequired] public Type Owner { get; set; } = null!;

    [Parameter] public Reading? Value { get; set; }

    /// <summary>Where it stands in the document.</summary>
    [Parameter] public string Path { get; set; } = "";

    /// <summary>Where it stands, in words.</summary>
    [Parameter] public string Where { get; set; } = "";

    [Parameter] public Mend? Mend { get; set; }

    /// <summary>For what is chosen and not measured: one box, no sketch.</summary>
    [Parameter] public bool Plain { get; set; }

    /// <summary>What counts while nothing is given, in words: "2 turns, the default".</summary>
    [Parameter] public string Inherited { get; set; } = "";

    /// <summary>Clock position of a gap, for its sketch.</summary>
    [Parameter] public double Clock { get; set; } = 12;

    [Parameter] public bool Mirrored { get; set; }

    private Sketch? Sketch => SketchOf.Field(Owner, Field.PropertyName);
    private string RowId => FieldPaths.RowId(Path);
    private string BoxId => RowId + "-box";
    private string HowId => RowId + "-how";
    private string UsedId => RowId + "-used";
    private string FullName => Where.Length == 0 ? Field.Label : Where + " / " + Field.Label;
    private string Placeholder => Field.Unit?.Symbol is { Length: > 0 } unit ? unit : "number";
    private string TolerancePlaceholder => _draft.Source == ReadingSource.Setting ? "none" : "as usual";
    private ReadingSource Usual => Plain ? ReadingSource.Setting : ChoiceWords.UsualSource(Owner, Field.Words.Dimension);

    /// <summary>The address leads to this very row: a finding asked for it.</summary>
    private bool Sought => Navigation.Uri.EndsWith("#" + RowId, StringComparison.Ordinal);

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender && Sought)
        {
            await Js.InvokeVoidAsync("cornerwright.show", BoxId);
        }
    }

    protected override void OnParametersSet()
    {
        if (!_loaded && Bench.Drafts.TryGetValue(Path, out string? kept))
        {
            // The person left the page with a text that could not be read: it is still here.
            (_loaded, _shown) = (true, Value);
            _draft = ReadingDraft.Of(Value, Usual) with { Value = kept };
            _problems = _draft.Read(Field, FullName).Problems;
        }
        else if (!_loaded || !ReferenceEquals(_shown, Value))
        {
            (_loaded, _shown, _problems) = (true, Value, []);
            _draft = ReadingDraft.Of(Value, Usual);
            _open |= Plain && Value is { Tolerance: not null } or { Date: not null };
            Bench.Draft(Path, null);
        }
    }

    private static string Text(ChangeEventArgs e) => e.Value?.ToString() ?? "";

    private void TypeDate(ChangeEventArgs e) =>
        Type(_draft with { Date = DateOnly.TryParseExact(Text(e), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None,
            out var date) ? date : null });

    private void Type(ReadingDraft draft)
    {
        _draft = draft;
        if (draft.Empty && Field.Words.Needed && Value is not null)
        {
            _problems =
                [new Problem(FullName, "", Field.Allowed, "This one is needed: type the right value, or take out the whole entry.")];
            return;
        }

        if (draft.Empty)
        {
            _problems = [];
            Bench.Draft(Path, null);
            if (Value is not null)
            {
                Mend?.Invoke("Take out " + FullName, _ => null);
            }

            return;
        }

        var read = draft.Read(Field, FullName);
        _problems = read.Problems;
        if (read.Try(out var reading))
        {
            Bench.Draft(Path, null);
            _draft = ReadingDraft.Of(reading, Usual);
            if (reading != Value)
            {
                Mend?.Invoke(FullName, _ => reading);
            }
        }
        else
        {
            Bench.Draft(Path, draft.Value);
        }
    }
}
