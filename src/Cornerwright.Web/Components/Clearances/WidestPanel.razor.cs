using System.Globalization;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>Asks how wide one can go at a corner, beside the page's own thread, with progress and a way to stop.</summary>
public sealed partial class WidestPanel
{
    private const int Few = 12;

    private CancellationTokenSource? _work;
    private WidestAnswer? _answer;
    private CornerClearance? _of;
    private RoomLayout? _layout;
    private double _rim, _share;
    private string _failure = "";
    private bool _all, _left;

    /// <summary>With nothing missing.</summary>
    [Parameter, EditorRequired] public ClearanceStudy Study { get; set; } = null!;

    /// <summary>The build's own rim diameter code.</summary>
    [Parameter, EditorRequired] public double Rim { get; set; }

    /// <summary>False while the corner is being worked out anew: what is asked then would be old when it is answered.</summary>
    [Parameter] public bool Ready { get; set; } = true;

    private double[] Rims => [.. Enumerable.Range(13, 10).Select(i => (double)i).Append(Rim).Distinct().Order()];

    private string Spoken => _answer is { Envelope.Count: > 0 } a
        ? $"Room round the wheel: from {Px.Mm(a.Envelope.Min(p => p.A), 0)} to {Px.Mm(a.Envelope.Max(p => p.A), 0)} mm from the hub face, "
        + $"up to {Px.Mm(a.Envelope.Max(p => p.R), 0)} mm from the middle of the "
        + $"axle; this build's tyre reaches {Px.Mm(a.Present.Max(p => p.R), 0)} mm."
        : "";

    public void Dispose()
    {
        _left = true;
        Stop();
    }

    protected override void OnParametersSet()
    {
        if (_rim == 0)
        {
            _rim = Rim;
        }
    }

    private async Task Ask()
    {
        var (study, rim) = (Study, _rim);
        using var work = new CancellationTokenSource();
        (_work, _share, _failure, _all) = (work, 0, "", false);
        var progress = new Progress<double>(share => _ = _left ? Task.CompletedTask : InvokeAsync(() =>
        {
            _share = share;
            StateHasChanged();
        }));
        try
        {
            var answer = await Task.Run(() =>
                WidestWheel.Of(study.Car, study.Build, study.Place, study.Shelf, new WidestTask(rim), progress, work.Token), work.Token);
            (_answer, _of) = (answer, study.Corner);
            _layout = answer.Envelope.Count > 2 ? new RoomLayout(answer) : null;
        }
        catch (OperationCanceledException)
        {
            // Stopped by hand, or the page was left.
        }
        catch (Exception error) when (!_left)
        {
            // Our own bug; the page says so and the rest of the workshop stays open.
            _failure = error.Message;
        }
        finally
        {
            _work = null;
        }
    }

    private void Stop() => _work?.Cancel();

    private static string Text(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Percent(double share) => (100 * share).ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture) + " %";
}
