using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The points between which one corner's links run: typed, pasted, drawn.</summary>
public partial class HardpointsPage
{
    private static readonly HardpointTable Started = new();

    private string _block = "", _unit = "mm", _said = "", _shownAt = "";
    private IReadOnlyList<Problem> _problems = [];

    /// <summary>"front-left" and so on.</summary>
    [Parameter] public string? Place { get; set; }

    private CornerPlace? At => Addresses.CornerOf(Place);

    private HardpointTable? Table => At is { } place ? Car.At(place).Hardpoints : null;

    protected override void OnCarReady()
    {
        // Rows pasted for one wheel are not to be taken at another by mistake.
        if (_shownAt != Place)
        {
            (_block, _said, _problems, _shownAt) = ("", "", [], Place ?? "");
        }
    }

    private void Put(CornerPlace place, HardpointTable? table) => Bench.Apply(
        (table is null ? "Take out" : "Start") + $" the hardpoints, {place.Words()}",
        car => car.With(place, car.At(place) with { Hardpoints = table }));

    private void MendTable(CornerPlace place, string words, Func<object?, object?> rework) => Bench.Apply(
        words, car => car.With(place, car.At(place) with { Hardpoints = (HardpointTable?)rework(car.At(place).Hardpoints) }));

    private void Take(CornerPlace place)
    {
        var before = Table ?? Started;
        var read = HardpointBlock.Read(before, _block, Units.Find(_unit, Dimension.Length)!, ReadingSource.Tape);
        _problems = read.Problems;
        _said = read.Ok ? "The points stand in the table." : $"{read.Problems.Count} cells or rows cannot be read; nothing was taken.";
        if (read.Ok)
        {
            Bench.Apply($"Paste hardpoints, {place.Words()}", car => car.With(place, car.At(place) with { Hardpoints = read.Value }));
        }
    }
}
