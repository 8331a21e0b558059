using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>Shows one corner's wheel and surroundings; every pose is worked out here and sent as some hundred bytes.</summary>
public sealed partial class ClearanceStage : IAsyncDisposable
{
    private static readonly (string Side, string Words)[] Sides = [("corner", "Slanted"), ("street", "Street side"),
        ("inside", "From inside"), ("front", "Front"), ("rear", "Rear"), ("above", "Above")];

    private readonly Dictionary<string, bool> _shown = new(StringComparer.Ordinal) { ["scan"] = true, ["lines"] = true, ["strut"] = true };
    private readonly Dictionary<PlacedScan, string> _addresses = [];

    private ElementReference _host;
    private IJSObjectReference? _module, _scene;
    private CornerClearance? _drawn;
    private (double Travel, double Steer, double? Other, PoseGap? Nearest)? _sent;
    private bool? _solid;
    private bool _left, _swept, _sweeping;

    [Inject] private IJSRuntime Js { get; set; } = null!;

    [Inject] private ScanRoom Room { get; set; } = null!;

    /// <summary>With nothing missing.</summary>
    [Parameter, EditorRequired] public CornerClearance Corner { get; set; } = null!;

    /// <summary>Another of the same, for work beside the page's own thread.</summary>
    [Parameter, EditorRequired] public Func<CornerClearance> Another { get; set; } = null!;

    /// <summary>m.</summary>
    [Parameter] public double Travel { get; set; }

    /// <summary>rad.</summary>
    [Parameter] public double Steer { get; set; }

    /// <summary>Travel of the axle's other wheel, m; null where each wheel moves for itself.</summary>
    [Parameter] public double? Other { get; set; }

    /// <summary>The gap that is marked.</summary>
    [Parameter] public PoseGap? Nearest { get; set; }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        try
        {
            if (firstRender)
            {
                await Begin();
            }
            else if (_scene is not null && !ReferenceEquals(_drawn, Corner))
            {
                (_drawn, _sent) = (Corner, null);
                await _scene.InvokeVoidAsync("build", Scene());
                await _scene.InvokeVoidAsync("options", _shown);
                await Sweep(_swept);
            }

            await Send();
        }
        catch (JSDisconnectedException)
        {
            // The page is gone.
        }
    }

    private async Task Begin()
    {
        _drawn = Corner;
        try
        {
            _module = await Js.InvokeAsync<IJSObjectReference>("import", "./clearance3d.js");
            _scene = _left ? null : await _module.InvokeAsync<IJSObjectReference?>("show", _host, Scene());
        }
        catch (JSException)
        {
            // No graphics in this browser: map, list and section do.
            _scene = null;
        }

        if (_left)
        {
            // The page was left while the browser fetched the module: what came too late is given back.
            await (_scene is null ? ValueTask.CompletedTask : _scene.InvokeVoidAsync("dispose"));
            return;
        }

        _solid = _scene is not null;
        StateHasChanged();
    }

    // Not sent twice; calls keep their order.
    private async Task Send()
    {
        var now = (Travel, Steer, Other, Nearest);
        if (_scene is null || !ReferenceEquals(_drawn, Corner) || _sent == now)
        {
            return;
        }

        _sent = now;
        if (ClearanceScene.Pose(Corner, Travel, Steer, Nearest, Other) is { } bytes)
        {
            await _scene.InvokeVoidAsync("pose", bytes);
        }
    }

    private ClearanceScene Scene() => ClearanceScene.Of(
        Corner, [.. Corner.Scans.Select(s => new SceneScan(s.Scan.Name, AddressOf(s), s.Scan.AttachedTo == AttachedTo.Knuckle))]);

    // Put out once: the room may have let go of it since, but then the browser has it already.
    private string AddressOf(PlacedScan scan)
    {
        if (!_addresses.TryGetValue(scan, out string? address))
        {
            _addresses[scan] = address = Room.Draw(ScanDrawing.Of(scan));
        }

        return address;
    }

    private async Task Show(string name, bool shown)
    {
        _shown[name] = shown;
        await Call("options", _shown);
    }

    private async Task Sweep(bool wanted)
    {
        _swept = wanted;
        if (!wanted)
        {
            await Call("swept", "");
            return;
        }

        _sweeping = true;
        StateHasChanged();
        var (of, make) = (Corner, Another);
        SweptTyre? swept = await Task.Run(() => SweptTyre.Of(make()));
        _sweeping = false;
        if (_swept && ReferenceEquals(of, Corner) && swept is not null)
        {
            await Call("swept", Room.Draw(ScanDrawing.Of(swept.Coordinates, swept.Corners)));
        }

        StateHasChanged();
    }

    private async Task Near()
    {
        if (Nearest is { } nearest && Corner.TryPose(Travel, Steer, out WheelPose pose, Other))
        {
            Vec3 at = SpindleFrame.Of(pose).ToBody(nearest.OnThing);
            await Call("near", at.X, at.Y, at.Z);
        }
    }

    private async Task Call(string what, params object?[] with)
    {
        if (_scene is null || _left)
        {
            return;
        }

        try
        {
            await _scene.InvokeVoidAsync(what, with);
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
            if (_scene is not null)
            {
                await _scene.InvokeVoidAsync("dispose");
                await _scene.DisposeAsync();
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
    }
}
