using Cornerwright.Web.Benches;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Layout;

/// <summary>A piece of the frame that draws again when the bench changes.</summary>
public abstract class BenchWatcher : ComponentBase, IDisposable
{
    private int _drawing;

    [Inject] protected Workbench Bench { get; set; } = null!;

    protected override void OnInitialized() => Bench.Changed += OnBenchChanged;

    public void Dispose()
    {
        Bench.Changed -= OnBenchChanged;
        GC.SuppressFinalize(this);
    }

    private void OnBenchChanged()
    {
        if (Interlocked.Exchange(ref _drawing, 1) == 0)
        {
            _ = InvokeAsync(() =>
            {
                Volatile.Write(ref _drawing, 0);
                StateHasChanged();
            });
        }
    }
}
