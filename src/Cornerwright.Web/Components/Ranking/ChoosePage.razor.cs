using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Ranking;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>Wishes, parts, and the builds that fit them best: searched for on this page, kept with the car.</summary>
public sealed partial class ChoosePage
{
    private const int Page = 10;

    private static readonly string[] Main =
        [nameof(Wishes.Name), nameof(Wishes.Axle), nameof(Wishes.StartingBuild), nameof(Wishes.Height), nameof(Wishes.Budget),
            nameof(Wishes.Helper), nameof(Wishes.Prefer)];

    private static readonly string[] More =
        [nameof(Wishes.LeastGap), nameof(Wishes.FrequencyLow), nameof(Wishes.FrequencyHigh), nameof(Wishes.Camber),
            nameof(Wishes.CamberBand), nameof(Wishes.OnlyWithSpacer), nameof(Wishes.Listed)];

    private int _shown = Page;
    private (Car? Car, Wishes? Wishes) _pooled;
    private PartsPool? _pool;

    [Inject] private SearchRun Run { get; set; } = null!;

    /// <summary>Id of the search looked at.</summary>
    [SupplyParameterFromQuery(Name = "search")] public string? Search { get; set; }

    /// <summary>
    /// The wishes looked at: those of the address, else the first that the
    /// car keeps, else fresh ones that are kept once something is typed.
    /// </summary>
    private Wishes Now => Car.Searches.FirstOrDefault(s => s.Id == Search) ?? Car.Searches.FirstOrDefault()
        ?? new Wishes { Id = "search-1", Name = "First search", StartingBuild = StartingId };

    private string StartingId => Bench.BuildId.Length > 0 ? Bench.BuildId : Car.MeasuredBuild;

    /// <summary>This page: an address of a place on it must not lead to another.</summary>
    private string Here => new Uri(Navigation.Uri).PathAndQuery;

    private string FormPath => $"searches/{Now.Id}";

    private RankingResult? Result => Mine ? Run.Result : null;

    /// <summary>The search that runs or ran is this one.</summary>
    private bool Mine => Run.Car?.Id == Id && Run.Wishes?.Id == Now.Id;

    private string State => Run.Running && Mine ? "running" : Result is { Done: true } ? "done" : Result is not null ? "stopped" : "none";

    private int MoreGiven => RecordShape.Of<Wishes>().Fields.Count(f => More.Contains(f.PropertyName) && FieldSense.Filled(f.Get(Now)));

    /// <summary>What was found stands on a car or wishes that are no longer these. Builds may come and go.</summary>
    private bool Stale
    {
        get
        {
            var (then, now) = (Run.Car!, Car);
            bool same = ReferenceEquals(then.Parts, now.Parts) && ReferenceEquals(then.Scans, now.Scans)
                && ReferenceEquals(then.Limits, now.Limits) && ReferenceEquals(then.LoadCases, now.LoadCases)
                && ReferenceEquals(then.Front, now.Front) && ReferenceEquals(then.Rear, now.Rear)
                && Places.Corners.All(p => ReferenceEquals(then.At(p), now.At(p)))
                && Equals(then.Build(Run.Wishes!.StartingBuild), now.Build(Run.Wishes.StartingBuild));
            return !same || !ReferenceEquals(Run.Wishes, Now);
        }
    }

    private PartsPool Pool
    {
        get
        {
            var now = (Car, Now);
            if (_pool is null || !ReferenceEquals(_pooled.Car, Car) || !Equals(_pooled.Wishes, Now))
            {
                (_pooled, _pool) = (now, PartsPool.Of(Car, Now));
            }

            return _pool;
        }
    }

    private long Combinations => Pool.Suspensions * Pool.WheelSets;

    /// <summary>The kinds of part that a search chooses among.</summary>
    private static IReadOnlyList<PartsChoice> Kinds { get; } =
        [.. RecordShape.Of<Wishes>().Fields.Where(f => f.Kind == FieldKind.TextList)
            .Select(f => new PartsChoice(f, PartKind.ReferredTo(f)[0]))];

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Run.Changed += OnRunChanged;
    }

    protected override void Dispose(bool disposing)
    {
        Run.Changed -= OnRunChanged;
        base.Dispose(disposing);
    }

    private void OnRunChanged() => _ = InvokeAsync(StateHasChanged);

    private HashSet<string> Chosen(PartsChoice kind) => [.. kind.Of(Pool).Select(p => p.Id)];

    private void Begin()
    {
        _shown = Page;
        Keep();
        Run.Begin(Car, Now);
    }

    // Fresh wishes become the car's own as soon as they are used.
    private void Keep()
    {
        if (Car.Searches.All(s => s.Id != Now.Id))
        {
            var fresh = Now;
            Bench.Apply("New search", car => car.With(fresh));
        }
    }

    private void MendWishes(string words, Func<object?, object?> rework) => Change(words, wishes => (Wishes)rework(wishes)!);

    private void Change(string words, Func<Wishes, Wishes> rework)
    {
        string id = Now.Id;
        Keep();
        Bench.Apply(words, car => car.Searches.FirstOrDefault(s => s.Id == id) is { } wishes ? car.With(rework(wishes)) : car);
    }

    private void Tick(PartsChoice kind, Part part, bool ticked)
    {
        // The first tick or its taking turns "the usual ones" into ones that are named.
        var chosen = Chosen(kind);
        IReadOnlyList<string> ids =
            [.. Shelf.Of(Car, kind.Kind).Select(p => p.Id).Where(id => id == part.Id ? ticked : chosen.Contains(id))];
        if (ids.Count > 0)
        {
            Change($"{(ticked ? "Take in" : "Leave out")} {part.Name}", wishes => RecordShape.Of<Wishes>().With(wishes, kind.Field, ids));
        }
    }

    private void Usual(PartsChoice kind) => Change($"Usual {kind.Field.Label.ToLowerInvariant()}", wishes =>
        RecordShape.Of<Wishes>().With(wishes, kind.Field, Array.Empty<string>()));

    private void Open(string? id) => Navigation.NavigateTo(Navigation.GetUriWithQueryParameter("search", id), replace: true);

    private void AddSearch()
    {
        Keep();
        string id = FreshId.Beside("search", Car.Searches.Select(s => s.Id));
        Bench.Apply("New search", car =>
            car.With(new Wishes { Id = id, Name = "Search " + id["search-".Length..], StartingBuild = StartingId }));
        Open(id);
    }

    private void RemoveSearch()
    {
        string id = Now.Id;
        Bench.Apply($"Take out {Now.Name}", car => car with { Searches = [.. car.Searches.Where(s => s.Id != id)] });
        Open(null);
    }

    private void Take(RankedBuild build) => Take(KeyOf(build), id => ChosenBuild.Named(build, id));

    private void Take(NearMiss miss) => Take(KeyOf(miss), id => ChosenBuild.Named(miss, id));

    private void Take(string key, Func<string, Build> make)
    {
        string id = ChosenBuild.FreshId(Car);
        var build = make(id);
        Bench.Apply($"Take {build.Name}", car => car.With(build));
        Run.Take(key, id);
    }

    private static string KeyOf(RankedBuild build) => string.Join('+', build.Parts.Select(p => p.Id));

    private static string KeyOf(NearMiss miss) => "near:" + string.Join('+', miss.Parts.Select(p => p.Id));

    private string PriceWords(Part part) => part.Owned ? "owned" : part.Price is { } price ? Money.Of(price, Car.Currency) : "no price";

    private static string SumWords(RankingResult result)
    {
        string found =
            $"Of {Count(result.Combinations)} combinations {Count(result.JudgedInFull)} were judged in full, clearance and doubt included.";
        string aside = result.SetAside > 0 ? $" {Count(result.SetAside)} more pass the quick checks but could not come among these." : "";
        string left = result.LeftOut > 0 ? $" {Count(result.LeftOut)} more were not looked at: tick fewer parts." : "";
        return found + aside + left + (result.Done ? "" : " The search was stopped: what it had not reached is missing.");
    }

    private static string Count(long count) => count.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ');
}
