using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>
/// A native slider over whole steps whose every move reaches the page, at most once a drawn frame. The browser owns the thumb
/// while a finger is on it; the page moves it only when the value changed elsewhere.
/// </summary>
public sealed partial class LiveSlider : IAsyncDisposable
{
    private ElementReference _input;
    private IJSObjectReference? _module;
    private IJSObjectReference? _slide;
    private DotNetObjectReference<LiveSlider>? _self;
    private int _first = -1;
    private int _firstMax;
    private int _known;
    private int _knownMax;
    private bool _left;

    /// <summary>Unique in the page, without blanks.</summary>
    [Parameter, EditorRequired] public string Name { get; set; } = "";

    [Parameter, EditorRequired] public string Label { get; set; } = "";

    /// <summary>The value in words, as read out and printed beside the label.</summary>
    [Parameter, EditorRequired] public string Shown { get; set; } = "";

    /// <summary>0 to <see cref="Most"/>.</summary>
    [Parameter, EditorRequired] public int Step { get; set; }

    [Parameter, EditorRequired] public int Most { get; set; }

    [Parameter] public string LowText { get; set; } = "";
    [Parameter] public string HighText { get; set; } = "";
    [Parameter] public EventCallback<int> StepWanted { get; set; }

    /// <summary>The thumb was let go after its last value.</summary>
    [Parameter] public EventCallback Released { get; set; }

    private string Id => "slider-" + Name;

    protected override void OnParametersSet()
    {
        if (_first < 0)
        {
            // What is rendered stays as it first was: later values reach the thumb through the browser's side.
            (_first, _firstMax) = (Step, Most);
            (_known, _knownMax) = (Step, Most);
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            _self = DotNetObjectReference.Create(this);
            _module = await Js.InvokeAsync<IJSObjectReference>("import", "./Components/Pictures/LiveSlider.razor.js");
            if (_left)
            {
                return;   // The page was left while the browser fetched the module.
            }

            _slide = await _module.InvokeAsync<IJSObjectReference>("slide", _input, _self);
        }

        if (_slide is not null && (_known != Step || _knownMax != Most))
        {
            (_known, _knownMax) = (Step, Most);
            await _slide.InvokeVoidAsync("show", Step, Most);
        }
    }

    /// <summary>The thumb stands here now.</summary>
    [JSInvokable]
    public Task Slide(double step)
    {
        if (!(step >= 0 && step <= Most))
        {
            return Task.CompletedTask;
        }

        _known = (int)Math.Round(step);
        return StepWanted.InvokeAsync(_known);
    }

    /// <summary>The thumb was let go; every value before it has been heard.</summary>
    [JSInvokable]
    public Task Release() => Released.InvokeAsync();

    public async ValueTask DisposeAsync()
    {
        _left = true;
        try
        {
            if (_slide is not null)
            {
                await _slide.InvokeVoidAsync("stop");
                await _slide.DisposeAsync();
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
