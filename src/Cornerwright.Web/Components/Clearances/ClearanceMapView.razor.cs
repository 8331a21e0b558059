using System.Globalization;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>The clearance map of one corner; tells which pose is wanted, at most once a drawn frame.</summary>
public sealed partial class ClearanceMapView : IAsyncDisposable
{
    private const double Degrees = 180 / Math.PI;
    private const double TravelStep = 0.002;
    private const double SteerStep = Math.PI / 180;

    private ElementReference _host;
    private IJSObjectReference? _module, _hand;
    private DotNetObjectReference<ClearanceMapView>? _self;
    private ClearanceMap? _known;
    private MapLayout _layout = null!;
    private string _readings = "";
    private bool _left;

    [Inject] private IJSRuntime Js { get; set; } = null!;

    /// <summary>With nothing missing.</summary>
    [Parameter, EditorRequired] public ClearanceMap Map { get; set; } = null!;

    [Parameter, EditorRequired] public PoseBox Box { get; set; } = null!;

    /// <summary>The pose shown, m and rad.</summary>
    [Parameter] public double Travel { get; set; }

    [Parameter] public double Steer { get; set; }

    /// <summary>The gap there, in words.</summary>
    [Parameter] public string Here { get; set; } = "";

    [Parameter] public PosePlace? Worst { get; set; }

    [Parameter] public IReadOnlyList<(string Name, double Travel)> Rides { get; set; } = [];

    [Parameter] public EventCallback<(double Travel, double Steer)> PoseWanted { get; set; }

    /// <summary>The pointer was let go.</summary>
    [Parameter] public EventCallback Released { get; set; }

    private string Spoken => $"Gaps over wheel travel and steering. Chosen: travel {Px.Travel(Travel)} mm, {SteerWords.Of(Steer)}. {Here}";

    /// <summary>The pointer stands here, in the drawing's units.</summary>
    [JSInvokable]
    public Task Point(double x, double y) =>
        double.IsFinite(x + y) ? PoseWanted.InvokeAsync(_layout.PoseAt(x, y)) : Task.CompletedTask;

    /// <summary>An arrow key: whole steps to the left and upward.</summary>
    [JSInvokable]
    public async Task Step(int leftward, int upward)
    {
        double travel = Math.Clamp(Travel + (TravelStep * Math.Clamp(upward, -9, 9)), Map.Travels[0], Map.Travels[^1]);
        await PoseWanted.InvokeAsync(
            (travel, Math.Clamp(Steer + (SteerStep * Math.Clamp(leftward, -9, 9)), Map.Steers[0], Map.Steers[^1])));
        await Released.InvokeAsync();
    }

    [JSInvokable]
    public Task Release() => Released.InvokeAsync();

    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(_known, Map))
        {
            (_known, _layout) = (Map, new MapLayout(Map, Box));
            _readings = _layout.Readings();
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender)
        {
            return;
        }

        try
        {
            _self = DotNetObjectReference.Create(this);
            _module = await Js.InvokeAsync<IJSObjectReference>("import", "./clearance-map.js");
            _hand = _left ? null : await _module.InvokeAsync<IJSObjectReference>("hold", _host, _self);
        }
        catch (JSDisconnectedException)
        {
            // The page is gone.
        }
    }

    public async ValueTask DisposeAsync()
    {
        _left = true;
        try
        {
            if (_hand is not null)
            {
                await _hand.InvokeVoidAsync("stop");
                await _hand.DisposeAsync();
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
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
