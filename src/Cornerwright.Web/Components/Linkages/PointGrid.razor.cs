using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Entry;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>Types and pastes the points of a table, cell by cell or whole.</summary>
public partial class PointGrid
{
    private readonly Dictionary<string, IReadOnlyList<Problem>> _problems = new(StringComparer.Ordinal);
    private ElementReference _root;
    private IJSObjectReference? _module, _keys;
    private DotNetObjectReference<PointGrid>? _self;
    private bool _left;
    private IReadOnlyList<Problem> _refused = [];
    private string _block = "", _unit = "mm", _said = "", _at = "";

    [Parameter, EditorRequired] public HardpointTable Table { get; set; } = null!;

    /// <summary>Of the table in the document.</summary>
    [Parameter, EditorRequired] public string Path { get; set; } = "";

    /// <summary>The corner, in words.</summary>
    [Parameter, EditorRequired] public string Where { get; set; } = "";

    /// <summary>Told the words of a change and the table's way from what it is then to what it becomes.</summary>
    [Parameter, EditorRequired] public Action<string, Func<HardpointTable, HardpointTable>> Put { get; set; } = null!;

    /// <summary>Told the property of the point in whose row the cursor stands.</summary>
    [Parameter] public EventCallback<string> SoughtChanged { get; set; }

    private IReadOnlyList<FieldShape> Rows => [.. HardpointNeeds.Of(Table), .. HardpointNeeds.Extra(Table)];

    private bool Any => HardpointNeeds.Points.Any(f => f.Get(Table) is not null);

    private IReadOnlyList<FieldShape> Unused => [.. HardpointNeeds.Points.Where(f => f.Get(Table) is not null && !Rows.Contains(f))];

    protected override void OnInitialized()
    {
        // Texts that could not be read when the page was left are still in their cells, with their reasons.
        foreach (var field in Rows)
        {
            for (int column = 0; column < PointCells.Columns; column++)
            {
                if (Bench.Drafts.TryGetValue(CellPath(field, column), out string? kept)
                    && PointCells.Type(Table, field, column, kept, Where) is { Ok: false } wrong)
                {
                    _problems[CellPath(field, column)] = wrong.Problems;
                }
            }
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            _self = DotNetObjectReference.Create(this);
            _module = await Js.InvokeAsync<IJSObjectReference>("import", "./grid.js");
            if (_left)
            {
                return;   // The page was left while the browser fetched the module.
            }

            _keys = await _module.InvokeAsync<IJSObjectReference>("attach", _root, _self);
        }
    }

    /// <summary>A block was pasted while the cursor stood in a cell.</summary>
    [JSInvokable]
    public void Paste(int row, int column, string text)
    {
        if (row < 0 || row >= Rows.Count || column is < 0 or >= PointCells.Columns)
        {
            return;
        }

        Taken(PointCells.Paste(Table, Rows, row, column, text), table => PointCells.Paste(table, Rows, row, column, text));
        StateHasChanged();
    }

    private string PathOf(FieldShape field) => FieldPaths.Join(Path, field.Name);

    private string CellPath(FieldShape field, int column) => FieldPaths.Join(PathOf(field), PointCells.Name(column));

    private bool IsExtra(FieldShape field) => HardpointNeeds.Extra(Table).Contains(field);

    private async Task Stand(FieldShape field)
    {
        if (_at != field.PropertyName)
        {
            _at = field.PropertyName;
            await SoughtChanged.InvokeAsync(_at);
        }
    }

    private void Type(FieldShape field, int column, string text)
    {
        string path = CellPath(field, column);
        var typed = PointCells.Type(Table, field, column, text, Where);
        if (typed.Ok)
        {
            _problems.Remove(path);
            Bench.Draft(path, null);
            Put($"{field.Label}, {PointCells.Title(column)}, {Where}", table =>
                PointCells.Type(table, field, column, text, Where) is { Ok: true } now ? now.Value : table);
        }
        else
        {
            _problems[path] = typed.Problems;
            Bench.Draft(path, text);
        }
    }

    private void Take()
    {
        var unit = Units.Find(_unit, Dimension.Length)!;
        Taken(HardpointBlock.Read(Table, _block, unit, ReadingSource.Tape), table =>
            HardpointBlock.Read(table, _block, unit, ReadingSource.Tape));
    }

    private void Taken(Checked<HardpointTable> read, Func<HardpointTable, Checked<HardpointTable>> again)
    {
        _refused = read.Problems;
        _said = read.Ok ? "The points stand in the table." : $"{read.Problems.Count} cells or rows cannot be read; nothing was taken.";
        if (!read.Ok)
        {
            return;
        }

        foreach (string path in _problems.Keys)
        {
            Bench.Draft(path, null);
        }

        _problems.Clear();
        Put($"Paste hardpoints, {Where}", table => again(table) is { Ok: true } now ? now.Value : table);
    }

    public async ValueTask DisposeAsync()
    {
        _left = true;
        try
        {
            if (_keys is not null)
            {
                await _keys.InvokeVoidAsync("stop");
                await _keys.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and its listeners with it.
        }

        _self?.Dispose();
        GC.SuppressFinalize(this);
    }
}
