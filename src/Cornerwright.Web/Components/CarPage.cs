using Cornerwright.Garage.Cars;
using Cornerwright.Web.Benches;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components;

/// <summary>
/// A page about one car: puts the car on the bench before the page draws, takes the build of the address in hand, and
/// draws again when the bench changes, at most once per visit of the renderer.
/// </summary>
public abstract class CarPage : ComponentBase, IDisposable
{
    private int _drawing;
    private string _openId = "";

    [Inject] protected Workbench Bench { get; set; } = null!;
    [Inject] protected NavigationManager Navigation { get; set; } = null!;

    /// <summary>The car's id.</summary>
    [Parameter] public string Id { get; set; } = "";

    /// <summary>The build's id where the address names one.</summary>
    [Parameter] public string? BuildId { get; set; }

    /// <summary>True once the car lies on the bench; false with <see cref="Missing"/> when there is none.</summary>
    protected bool Ready => Bench.Car?.Id == Id && _openId == Id;

    /// <summary>True when the garage has no such car.</summary>
    protected bool Missing { get; private set; }

    protected Car Car => Bench.Car!;

    protected override void OnInitialized() => Bench.Changed += OnBenchChanged;

    protected override async Task OnParametersSetAsync()
    {
        if (_openId != Id)
        {
            Missing = !await Bench.Open(Id);
            _openId = Missing ? "" : Id;
        }

        if (Ready && BuildId is not null)
        {
            Bench.Select(BuildId);
        }

        if (Ready)
        {
            OnCarReady();
        }
    }

    /// <summary>Called when the car is on the bench and whenever the address changed.</summary>
    protected virtual void OnCarReady()
    {
    }

    /// <summary>Called on the circuit's own thread before each drawing that the bench set off.</summary>
    protected virtual void OnBenchDrawn()
    {
    }

    public void Dispose()
    {
        Bench.Changed -= OnBenchChanged;
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
    }

    private void OnBenchChanged()
    {
        // A burst of changes waits as one: whoever comes while a drawing is asked for rides along.
        if (Interlocked.Exchange(ref _drawing, 1) == 0)
        {
            _ = InvokeAsync(() =>
            {
                Volatile.Write(ref _drawing, 0);
                OnBenchDrawn();
                StateHasChanged();
            });
        }
    }
}
