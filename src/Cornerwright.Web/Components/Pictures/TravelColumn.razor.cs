using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Pictures;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>The whole way of one wheel, to scale; its ride mark can be dragged, which is turning the collar.</summary>
public sealed partial class TravelColumn
{
    private const int Left = 36;
    private const int BandWidth = 52;
    private const int Right = Left + BandWidth;
    private const int Mid = Left + (BandWidth / 2);

    /// <summary>Used where the collar's pitch is unknown, m: a quarter turn of a 2 mm thread (common practice, no source).</summary>
    private const double UsualQuarterTurn = 0.0005;

    private TravelLayout _layout = TravelLayout.Of([]);
    private (CornerPicture? Picture, double? Perch, bool Turns) _drawn;
    private bool _changed;
    private ElementReference _svg;
    private IJSObjectReference? _module;
    private IJSObjectReference? _drag;
    private DotNetObjectReference<TravelColumn>? _self;

    [Parameter, EditorRequired] public CornerPicture Picture { get; set; } = default!;

    /// <summary>Words of the ride mark that is dragged; left out, the first one.</summary>
    [Parameter] public string? RideWords { get; set; }

    /// <summary>Where the collar stands, m; null where it cannot be turned.</summary>
    [Parameter] public double? PerchHeight { get; set; }

    /// <summary>Spring travel for a metre of wheel travel.</summary>
    [Parameter] public double MotionRatio { get; set; } = 1;

    /// <summary>How far a quarter turn moves the perch, m.</summary>
    [Parameter] public double? QuarterTurn { get; set; }

    /// <summary>The perch height that a drag or an arrow key asks for, m.</summary>
    [Parameter] public EventCallback<double> PerchWanted { get; set; }

    /// <summary>The handle was let go after its last place.</summary>
    [Parameter] public EventCallback Released { get; set; }

    private bool CanTurn => PerchWanted.HasDelegate && PerchHeight is not null && _layout.Ride is not null;

    private string Id => "travel-" + Picture.Corner;

    private string Heading => char.ToUpperInvariant(Picture.Corner.Words()[0]) + Picture.Corner.Words()[1..];

    private string ValueText =>
        $"ride at {Px.Travel(_layout.Ride!.Mark.Travel)} mm of wheel travel, perch at {Px.Mm(PerchHeight ?? 0)} mm";

    private string Description => _layout.Marks.Count == 0
        ? "Nothing is known of this wheel's travel yet."
        : "From full bump down to full droop: "
            + string.Join("; ", _layout.Marks.Reverse().Select(m => $"{m.Mark.Words} at {Px.Travel(m.Mark.Travel)} mm")) + ".";

    protected override void OnParametersSet()
    {
        // While a slider moves, most columns stay what they were: those are not drawn again.
        var drawn = (Picture, PerchHeight, PerchWanted.HasDelegate);
        _changed = _drawn.Picture is null || _drawn.Perch != drawn.PerchHeight || _drawn.Turns != drawn.HasDelegate
            || _drawn.Picture.Corner != Picture.Corner || !_drawn.Picture.Marks.SequenceEqual(Picture.Marks);
        if (_changed)
        {
            _drawn = drawn;
            _layout = TravelLayout.Of(Picture.Marks, RideWords);
        }
    }

    protected override bool ShouldRender() => _changed;

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (_drag is null && CanTurn)
        {
            _self ??= DotNetObjectReference.Create(this);
            _module ??= await Js.InvokeAsync<IJSObjectReference>("import", "./Components/Pictures/LiveSlider.razor.js");
            _drag ??= await _module.InvokeAsync<IJSObjectReference>("drag", _svg, ".handle", _self);
        }
    }

    /// <summary>The pointer asks for the ride mark at this place of the drawing.</summary>
    [JSInvokable]
    public Task Drag(double y)
    {
        double travel = _layout.Low + ((_layout.Y(_layout.Low) - y) / _layout.PerMetre);
        return CanTurn && double.IsFinite(travel) ? PerchWanted.InvokeAsync(PerchFor(travel)) : Task.CompletedTask;
    }

    /// <summary>The pointer let the handle go; every place before it has been heard.</summary>
    [JSInvokable]
    public Task Release() => Released.InvokeAsync();

    /// <summary>
    /// The perch that brings the ride mark to this travel: turning it up pushes the body up, so the wheel stands lower in its travel.
    /// To the nearest quarter turn. A stiff or loose stack answers differently, but the next step of the drag makes that good.
    /// </summary>
    private double PerchFor(double travel)
    {
        double step = QuarterTurn ?? UsualQuarterTurn;
        double change = -(travel - _layout.Ride!.Mark.Travel) * MotionRatio;
        return PerchHeight!.Value + (step * Math.Round(change / step));
    }

    private Task Turn(KeyboardEventArgs key)
    {
        int quarters = key.Key switch
        {
            "ArrowUp" or "ArrowRight" => -1,
            "ArrowDown" or "ArrowLeft" => 1,
            "PageUp" => -4,
            "PageDown" => 4,
            _ => 0,
        };
        return quarters == 0 || PerchHeight is not { } perch
            ? Task.CompletedTask
            : PerchWanted.InvokeAsync(perch + (quarters * (QuarterTurn ?? UsualQuarterTurn)));
    }

    private string Fill(TravelZone zone) => zone switch
    {
        TravelZone.OutOfReach => $"url(#{Id}-far)",
        TravelZone.OnStop => $"url(#{Id}-stop)",
        TravelZone.Loose => $"url(#{Id}-loose)",
        _ => "none",
    };

    private static string Number(PlacedMark placed) =>
        !placed.OffScale ? Px.Travel(placed.Mark.Travel)
        : (placed.Mark.Travel > 0 ? "↑" : "↓") + Px.Travel(placed.Mark.Travel);

    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_drag is not null)
            {
                await _drag.InvokeVoidAsync("stop");
                await _drag.DisposeAsync();
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
}
