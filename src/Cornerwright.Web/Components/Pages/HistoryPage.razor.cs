using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Differences;
using Cornerwright.Storage;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A car's revisions; which two are compared stands in the address.</summary>
public partial class HistoryPage
{
    private const int Page = 40;
    private const int MostShown = 200;

    private IReadOnlyList<Revision> _lines = [];
    private IReadOnlyList<FieldChange> _changes = [];
    private Car? _from;
    private Car? _to;
    private int _shown = Page;
    private int _naming;
    private string _name = "";
    private int _listed;
    private int _turn;

    [Inject] private IGarageStore Store { get; set; } = null!;

    [SupplyParameterFromQuery] public int? From { get; set; }
    [SupplyParameterFromQuery] public int? To { get; set; }

    /// <summary>Only revisions in which this build changed.</summary>
    [SupplyParameterFromQuery(Name = "build")] public string? Only { get; set; }

    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (Ready)
        {
            await Bench.SaveNow();
            await Refresh();
        }
    }

    protected override void OnBenchDrawn()
    {
        if (_listed != Bench.Revision && Ready)
        {
            _ = InvokeAsync(Refresh);
        }
    }

    private async Task Refresh()
    {
        _listed = Bench.Revision;
        int turn = ++_turn;
        string id = Id, build = Only ?? "";
        var lines = await Task.Run(() => build.Length > 0 ? Store.RevisionsOfBuild(id, build) : Store.Revisions(id));
        var (from, to) = (await LoadRevision(From), await LoadRevision(To));
        if (turn != _turn)
        {
            // Another look was taken in the meantime, and it is newer.
            return;
        }

        (_lines, _from, _to) = (lines, from, to);
        _changes = from is not null && to is not null ? CarDifference.Between(from, to) : [];
        StateHasChanged();
    }

    private async Task<Car?> LoadRevision(int? number)
    {
        string id = Id;
        return number is { } n && (await Task.Run(() => Store.Load(id, n))).Try(out var stored) ? stored.Car : null;
    }

    private async Task Return(int number)
    {
        if (await LoadRevision(number) is { } car)
        {
            // The log is a diary: an older set-up does not undo what was driven and done since.
            Bench.Apply($"Return to revision {number}", now => car with { Log = now.Log });
            await Bench.SaveNow($"Returned to revision {number}");
            await Refresh();
        }
    }

    private async Task Name(int number)
    {
        string id = Id, name = _name;
        await Task.Run(() => Store.Label(id, number, name));
        _naming = 0;
        await Refresh();
    }

    private string Address(int? from, int? to, string? build) =>
        Addresses.History(Id) + $"?from={from}&to={to}" + (string.IsNullOrEmpty(build) ? "" : "&build=" + Uri.EscapeDataString(build));

    private void Go(int? from, int? to, string? build) => Navigation.NavigateTo(Address(from, to, build));

    private static string Before(FieldChange change) =>
        change.Kind == ChangeKind.Changed ? Shown(change.Before) : change.Kind == ChangeKind.Added ? "–" : "there";

    private static string After(FieldChange change) => change.Kind switch
    {
        ChangeKind.Changed => Shown(change.After),
        ChangeKind.Removed => "–",
        ChangeKind.Reordered => "in another order",
        _ => "there",
    };

    private static string Shown(string text) => text.Length > 0 ? text : "–";
}
