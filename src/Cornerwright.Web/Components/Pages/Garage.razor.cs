using System.Collections.Concurrent;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Judging;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The first page: every car with the verdicts of its builds.</summary>
public partial class Garage
{
    private const int MostProblems = 20;

    private readonly ConcurrentDictionary<string, Look> _looks = new(StringComparer.Ordinal);
    private IReadOnlyList<CarCard>? _cars;
    private IReadOnlyList<CarCard> _bin = [];
    private IReadOnlyList<Problem> _problems = [];
    private string _problemTitle = "";
    private string _name = "";
    private bool _adding;
    private Car? _waiting;

    [Inject] private IGarageStore Store { get; set; } = null!;
    [Inject] private Workbench Bench { get; set; } = null!;
    [Inject] private ScanRoom Scans { get; set; } = null!;
    [Inject] private NavigationManager Navigation { get; set; } = null!;

    private sealed record BuildLook(string Id, string Name, Judgement? Judgement, string Failure);

    private sealed record Look(string Note, IReadOnlyList<BuildLook> Builds);

    protected override async Task OnInitializedAsync()
    {
        await Bench.SaveNow();
        await Refresh();
    }

    private async Task Refresh()
    {
        (_cars, _bin) = await Task.Run(() => (Store.ListCars(), Store.ListBin()));
        StateHasChanged();
        foreach (var card in _cars)
        {
            _looks[card.Id] = await Task.Run(() => LookAt(card.Id));
            StateHasChanged();
        }
    }

    private Look LookAt(string carId) => Store.Load(carId).Try(out var stored)
        ? new Look(stored.Car.Note, [.. stored.Car.Builds.Select(b => Judged(stored.Car, b.Id, b.Name))])
        : new Look("This car could not be read.", []);

    private BuildLook Judged(Car car, string id, string name)
    {
        try
        {
            return new BuildLook(id, name, Judge.Build(car, id, JudgeOptions.FindingsOnly with { Scans = Scans.ShelfOf(car) }), "");
        }
        catch (Exception error)
        {
            // One build that upsets the judge must not close the garage.
            return new BuildLook(id, name, null, error.Message);
        }
    }

    private async Task Add()
    {
        string name = _name.Trim();
        if (name.Length == 0)
        {
            (_problemTitle, _problems) = ("The car needs a name", [new Problem("name", _name, "some text", "Type what you call the car.")]);
            return;
        }

        var car = new Car
        {
            Id = NewId(name),
            Name = name,
            Front = new Axle { Steered = true },
            LoadCases = [new LoadCase { Id = "driver", Name = "Driver alone" }],
            MeasuredLoadCase = "driver",
            Builds = [new() { Id = "now", Name = "As it stands" }],
            MeasuredBuild = "now",
        };
        await Keep(car, null, "New car");
    }

    private string NewId(string name) => FreshId.FromName(name, (_cars ?? []).Concat(_bin).Select(c => c.Id));

    private async Task Import(InputFileChangeEventArgs e)
    {
        (_problems, _waiting) = ([], null);
        using var room = new MemoryStream();
        try
        {
            await using var stream = e.File.OpenReadStream(CarFile.GreatestBytes);
            await stream.CopyToAsync(room);
        }
        catch (IOException error)
        {
            (_problemTitle, _problems) = ("The file could not be read",
                [new Problem(e.File.Name, $"{e.File.Size} bytes", $"at most {CarFile.GreatestBytes} bytes", error.Message)]);
            return;
        }

        var read = CarFile.Read(room.ToArray());
        if (!read.Try(out var car))
        {
            (_problemTitle, _problems) = ($"{e.File.Name} was not imported: {read.Problems.Count} to mend", read.Problems);
        }
        else if ((_cars ?? []).Concat(_bin).Any(c => c.Id == car.Id))
        {
            _waiting = car;
        }
        else
        {
            await Keep(car, null, "Imported from " + e.File.Name);
        }
    }

    private async Task PutOnTop()
    {
        if (_waiting is { } car)
        {
            if (Bench.Car?.Id == car.Id)
            {
                await Bench.Close();
            }

            Store.Restore(car.Id);
            await Keep(car, Store.Load(car.Id).Try(out var stored) ? stored.Mark : null, "Imported on top");
        }
    }

    private async Task PutBeside()
    {
        if (_waiting is { } car)
        {
            await Keep(car with { Id = NewId(car.Name) }, null, "Imported beside another");
        }
    }

    private async Task Keep(Car car, RevisionMark? expected, string label)
    {
        var result = await Task.Run(() =>
            Store.Save(car, expected, label.Length > GarageStore.LongestLabel ? label[..GarageStore.LongestLabel] : label));
        if (result is SaveResult.Refused refused)
        {
            (_problemTitle, _problems) = ("The car was not kept", refused.Problems);
            return;
        }

        Navigation.NavigateTo(Addresses.Car(car.Id));
    }

    private async Task Bin(CarCard card)
    {
        if (Bench.Car?.Id == card.Id)
        {
            await Bench.Close();
        }

        await Task.Run(() => Store.Delete(card.Id));
        await Refresh();
    }

    private async Task Restore(CarCard card)
    {
        await Task.Run(() => Store.Restore(card.Id));
        await Refresh();
    }
}
