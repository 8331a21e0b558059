using Cornerwright.Mechanics.Geometry;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Scans;

/// <summary>Something to draw: fetched by the browser from an address.</summary>
public sealed record StageDrawing(string Name, string Address, string Token, double Opacity);

/// <summary>Shows drawings and tells what was picked, in the drawing's own frame.</summary>
public sealed partial class ScanStage : IAsyncDisposable
{
    private static readonly (string Side, string Words)[] Sides =
        [("corner", "Slanted"), ("street", "Street side"), ("front", "Front"), ("rear", "Rear"), ("above", "Above")];

    private ElementReference _host;
    private IJSObjectReference? _module, _stage;
    private DotNetObjectReference<ScanStage>? _self;
    private bool? _solid;
    private bool _behind;
    private string _shown = "", _marked = "", _looked = "";

    [Inject] private IJSRuntime Js { get; set; } = null!;

    [Parameter, EditorRequired] public IReadOnlyList<StageDrawing> Drawings { get; set; } = [];

    /// <summary>Turn of everything: stands a file upright.</summary>
    [Parameter] public RigidTransform Turn { get; set; } = RigidTransform.Identity;

    /// <summary>1 looks from the left of the car, -1 from the right.</summary>
    [Parameter] public int Side { get; set; } = 1;

    [Parameter] public bool Picking { get; set; }

    /// <summary>Points to mark, in the drawings' frame.</summary>
    [Parameter] public IReadOnlyList<Vec3> Marks { get; set; } = [];

    [Parameter] public string Label { get; set; } = "";

    [Parameter] public EventCallback<Vec3> Picked { get; set; }

    [JSInvokable]
    public Task PickedAt(double x, double y, double z) => Picked.InvokeAsync(new Vec3(x, y, z));

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        try
        {
            if (firstRender)
            {
                _self = DotNetObjectReference.Create(this);
                _module = await Js.InvokeAsync<IJSObjectReference>("import", "./scan3d.js");
                _stage = await _module.InvokeAsync<IJSObjectReference?>("stage", _host, _self);
                _solid = _stage is not null;
                StateHasChanged();
            }

            if (_stage is not null)
            {
                await Update(_stage);
            }
        }
        catch (JSDisconnectedException)
        {
            // The page is gone.
        }
        catch (JSException) when (_stage is null)
        {
            _solid = false;
            StateHasChanged();
        }
    }

    private async Task Update(IJSObjectReference stage)
    {
        string what = string.Join(' ', Drawings.Select(d => d.Address)),
            way = FormattableString.Invariant($"{Turn.W} {Turn.X} {Turn.Y} {Turn.Z} {Side} {_behind}");
        if (_shown != what + way + Picking)
        {
            // A new thing is looked at whole; a change of the same thing leaves the view as it is.
            string look = _looked == Label + way ? "" : "corner";
            (_shown, _looked) = (what + way + Picking, Label + way);
            await stage.InvokeVoidAsync("show", Drawings, new[] { Turn.X, Turn.Y, Turn.Z, Turn.W }, Side, _behind, Picking, look);
        }

        string marked = string.Join(' ', Marks);
        if (_marked != marked)
        {
            _marked = marked;
            await stage.InvokeVoidAsync("setMarks", Marks.SelectMany(m => new[] { m.X, m.Y, m.Z }).ToArray());
        }
    }

    private async Task Look(string side) => await (_stage?.InvokeVoidAsync("look", side) ?? ValueTask.CompletedTask);

    private async Task Zoom(double factor) => await (_stage?.InvokeVoidAsync("zoom", factor) ?? ValueTask.CompletedTask);

    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_stage is not null)
            {
                await _stage.InvokeVoidAsync("dispose");
                await _stage.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and its graphics with it.
        }

        _self?.Dispose();
    }
}
