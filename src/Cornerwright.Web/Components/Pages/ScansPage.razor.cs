using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Web.Scans;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The scans of a car: brought in, aligned, taken out. Which one is on the desk stands in the address.</summary>
public partial class ScansPage
{
    private ScanDesk? _desk;
    private IReadOnlyList<Problem> _problems = [];
    private string _asked = "";

    [Inject] private ScanRoom Room { get; set; } = null!;

    [SupplyParameterFromQuery(Name = "scan")] public string? ScanId { get; set; }

    /// <summary>The demo scan fits the demo car, and whoever's copy of it.</summary>
    private bool IsDemo => Car.Name.StartsWith("Wagtail", StringComparison.Ordinal);

    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (Ready && _asked != (ScanId ?? ""))
        {
            _asked = ScanId ?? "";
            await Lay(Car.Scans.FirstOrDefault(s => s.Id == ScanId));
        }
    }

    private async Task Lay(Scan? scan)
    {
        (_desk, _problems) = (null, []);
        if (scan is null)
        {
            return;
        }

        var car = Car;
        var read = await Task.Run(() => Room.Read(scan.ContentHash));
        _problems = read.Problems;
        if (read.Try(out var raw))
        {
            _desk = await Task.Run(() => ScanDesk.Of(car, scan, raw));
        }
    }

    private async Task Begin((string Hash, string Name) came)
    {
        var read = await Task.Run(() => Room.Read(came.Hash));
        _problems = read.Problems;
        if (read.Try(out var raw))
        {
            _desk = ScanDesk.New(FreshId.Beside("scan", Car.Scans.Select(s => s.Id)), came.Hash, came.Name, raw, CornerPlace.FrontLeft);
        }
    }

    private void Take(Scan scan)
    {
        bool known = Car.Scans.Any(s => s.Id == scan.Id);

        // The whole car must read back with it.
        var with = Put(Car, scan);
        var readBack = OpenEntries.ReadBack(with);
        _problems = readBack.Problems;
        if (readBack.Ok)
        {
            Bench.Apply((known ? "Align " : "Take in ") + scan.Name, car => Put(car, scan));
            Leave();
        }
    }

    private void Leave()
    {
        _desk = null;
        if (_asked.Length > 0)
        {
            Navigation.NavigateTo(Addresses.Scans(Id));
        }
    }

    private void TakeOut(Scan scan)
    {
        Bench.Apply("Take out " + scan.Name, car => car with { Scans = [.. car.Scans.Where(s => s.Id != scan.Id)] });
        if (_desk?.Scan.Id == scan.Id)
        {
            Leave();
        }
    }

    private static Car Put(Car car, Scan scan) => car with
    {
        Scans = car.Scans.Any(s => s.Id == scan.Id) ? [.. car.Scans.Select(s => s.Id == scan.Id ? scan : s)] : [.. car.Scans, scan],
    };

    private KeptScan? Kept(Scan scan) => Room.Store.Find(scan.ContentHash);

    private static string Size(long bytes) => bytes >= 1_000_000
        ? (bytes / 1e6).ToString("0.0", CultureInfo.InvariantCulture) + " MB"
        : Math.Max(1, bytes / 1000).ToString(CultureInfo.InvariantCulture) + " kB";
}
