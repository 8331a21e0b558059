using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Web.Scans;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Scans;

/// <summary>Brings a file into the store and tells what it is called there.</summary>
public sealed partial class ScanImport : IAsyncDisposable
{
    private ElementReference _input;
    private IJSObjectReference? _module, _sending;
    private DotNetObjectReference<ScanImport>? _self;
    private Problem? _problem;
    private string _stage = "", _said = "";
    private double _share;

    [Inject] private IJSRuntime Js { get; set; } = null!;
    [Inject] private ScanRoom Room { get; set; } = null!;

    /// <summary>Offer the scan that comes with the demo car.</summary>
    [Parameter] public bool Demo { get; set; }

    /// <summary>Content hash and name of a file that is in the store and can be read.</summary>
    [Parameter] public EventCallback<(string Hash, string Name)> Came { get; set; }

    private bool Busy => _stage.Length > 0;

    [JSInvokable]
    public void Sent(double share) => Say(share >= 1 ? "Writing it to the disk…" : "Sending the file…", share);

    [JSInvokable]
    public void Reading(double share) => Say("Reading the scan…", share);

    [JSInvokable]
    public async Task CameIn(string hash, string name)
    {
        End("");
        await Came.InvokeAsync((hash, name));
    }

    [JSInvokable]
    public void Refused(string field, string given, string allowed, string cure)
    {
        _problem = new Problem(field, given, allowed, cure);
        End("");
    }

    [JSInvokable]
    public void Broken(string why) => End(why + " Nothing was kept; try again.");

    [JSInvokable]
    public void Cancelled() => End("Cancelled; nothing was kept.");

    private async Task Send()
    {
        (_problem, _said) = (null, "");
        _module ??= await Js.InvokeAsync<IJSObjectReference>("import", "./scan3d.js");
        _self ??= DotNetObjectReference.Create(this);
        Say("Sending the file…", 0);
        _sending = await _module.InvokeAsync<IJSObjectReference?>("send", _input, _self, ScanEndpoints.OwnHeader);
        if (_sending is null)
        {
            End("");
        }
    }

    private async Task Cancel()
    {
        if (_sending is not null)
        {
            await _sending.InvokeVoidAsync("cancel");
        }
    }

    private async Task TakeDemo()
    {
        (_problem, _said) = (null, "");
        Say("Reading the scan…", 0.5);
        await using var stream = DemoCar.Scan();
        var kept = await Room.Store.Keep(stream, ScanFormat.Ply);
        if (kept.Ok)
        {
            await CameIn(kept.Value.Hash, DemoCar.ScanName);
        }
        else
        {
            _problem = kept.Problems[0];
            End("");
        }
    }

    private void Say(string stage, double share)
    {
        (_stage, _share) = (stage, share);
        StateHasChanged();
    }

    private void End(string said)
    {
        (_stage, _share, _said) = ("", 0, said);
        StateHasChanged();
    }

    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_sending is not null)
            {
                await _sending.InvokeVoidAsync("cancel");
                await _sending.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and what it was sending with it.
        }

        _self?.Dispose();
    }
}
