using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Setting;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Setting;

/// <summary>From present and wanted to turns; what was read afterwards; what the car taught.</summary>
public sealed partial class SettingPage
{
    private static readonly string[] WholeWish = [nameof(SettingWish.CrossWeight), nameof(SettingWish.HeightBand),
        nameof(SettingWish.CrossBand), nameof(SettingWish.LinksOn), nameof(SettingWish.Aboard)];
    private static readonly string[] Read =
        [nameof(Cornerwright.Garage.Setting.CornerReadings.Height), nameof(Cornerwright.Garage.Setting.CornerReadings.Load),
            nameof(Cornerwright.Garage.Setting.CornerReadings.Camber), nameof(Cornerwright.Garage.Setting.CornerReadings.Toe)];
    private static readonly string[] ReadMore =
        [nameof(Cornerwright.Garage.Setting.CornerReadings.Gaps), nameof(Cornerwright.Garage.Setting.CornerReadings.Steps)];
    private static readonly string[] WholeOccasion =
        [nameof(Occasion.Name), nameof(Occasion.Note), nameof(Occasion.LoadCase), nameof(Occasion.Aboard)];

    private Car? _worked;
    private string _workedBuild = "";
    private bool _workedEvery;

    [Inject] private TimeProvider Time { get; set; } = null!;

    /// <summary>Turn collars also where it gains little: more moves, smaller misses.</summary>
    [SupplyParameterFromQuery(Name = "every")] public bool Every { get; set; }

    private TurnTable? Table { get; set; }
    private TurnVerdict? Outcome { get; set; }
    private IReadOnlyList<Problem> Problems { get; set; } = [];
    private Learned Learned { get; set; } = Learned.Nothing;
    /// <summary>Why nothing could be learned though it should; a fault of the program.</summary>
    private string LearnFailure { get; set; } = "";

    private SettingWish Wish { get; set; } = new();
    private Occasion? Newest { get; set; }

    private string FromWords => Table?.From switch
    {
        PresentFrom.Occasion => $"From what was read last; loads: {Table.LoadsFrom}.",
        PresentFrom.Measured => $"From the readings with which the car was measured; loads: {Table.LoadsFrom}.",
        PresentFrom.Predicted => $"Nobody has read this build yet: from where its springs should carry it; loads: {Table.LoadsFrom}.",
        _ => "Present and wanted in, turns out.",
    };

    protected override void OnCarReady() => Work();

    protected override void OnBenchDrawn() => Work();

    private void Work()
    {
        if (!Ready || Bench.Build is not { } build || (ReferenceEquals(_worked, Car) && _workedBuild == build.Id && _workedEvery == Every))
        {
            return;
        }

        (_worked, _workedBuild, _workedEvery) = (Car, build.Id, Every);
        Wish = Car.Wish(build.Id) ?? TurnTableMaker.UsualWish(Car, build);
        Newest = TurnTableMaker.NewestReadings(Car, build);
        var made = TurnTableMaker.Make(Car, build, Wish, Every ? 0 : CollarSearch.Price);
        (Table, Problems) = (made.Try(out var table) ? table : null, made.Problems);
        Outcome = Table is null ? null : TurnVerdict.Of(Car, Table);
        Learn(Car);
    }

    // Gaps and hardpoints can take a second: the table does not wait for it.
    private void Learn(Car car)
    {
        if (car.Occasions.Count == 0)
        {
            Learned = Learned.Nothing;
            return;
        }

        _ = Task.Run(() => CarLearning.Of(car)).ContinueWith(
            done => InvokeAsync(() =>
            {
                if (ReferenceEquals(_worked, car))
                {
                    (Learned, LearnFailure) = done.IsCompletedSuccessfully ? (done.Result, "")
                        : (Learned.Nothing, done.Exception?.GetBaseException().Message ?? "stopped");
                    StateHasChanged();
                }
            }),
            TaskScheduler.Default);
    }

    private void Choose(bool every) =>
        Navigation.NavigateTo(Navigation.GetUriWithQueryParameter("every", every ? "true" : null), replace: true);

    private void MendWish(string words, Func<SettingWish, SettingWish> rework)
    {
        string id = _workedBuild;
        Bench.Apply(words, car =>
            car.Build(id) is { } build ? car.With(rework(car.Wish(id) ?? TurnTableMaker.UsualWish(car, build))) : car);
    }

    private void MendOccasion(string id, string words, Func<Occasion, Occasion> rework) =>
        Bench.Apply(words, car => car.Occasions.FirstOrDefault(o => o.Id == id) is { } occasion ? car.With(rework(occasion)) : car);

    /// <summary>The turns go into the build, and a sheet for the readings is laid out.</summary>
    private void Done(TurnTable table)
    {
        string id = _workedBuild;
        Bench.Apply("Collars, plates and tie rods turned", car =>
            car.Build(id) is { } build ? WithSheet(car.With(Turned(build, table)), id) : car);
    }

    private void StartReading()
    {
        string id = _workedBuild;
        Bench.Apply("Sheet for new readings", car => WithSheet(car, id));
    }

    private Car WithSheet(Car car, string buildId)
    {
        if (car.Build(buildId) is not { } build)
        {
            return car;
        }

        var before = car.Occasions.LastOrDefault(o => o.Fitted.Id == buildId);
        return car.With(new Occasion
        {
            Id = FreshId.Beside("read", car.Occasions.Select(o => o.Id)),
            Name = "Read " + Time.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            LoadCase = before?.LoadCase
                ?? (car.MeasuredLoadCase.Length > 0 ? car.MeasuredLoadCase : car.LoadCases.FirstOrDefault()?.Id ?? ""),
            Aboard = before?.Aboard ?? [],
            Fitted = build,
        });
    }

    // Only what the table turned: parts may have been changed since it was read.
    private static Build Turned(Build build, TurnTable table)
    {
        foreach (var c in table.Corners)
        {
            build = build.With(c.Corner,
                build.At(c.Corner) with { PerchHeight = c.After.PerchHeight, Slide = c.After.Slide, ClampCamber = c.After.ClampCamber });
        }

        return build;
    }

    private void UseLearned(bool use) =>
        Bench.Apply(use ? "Judge with what was learned" : "Judge by what was typed", car => car with { UseLearned = use });

    private void LeaveOut(string id, bool ignored) =>
        MendOccasion(id, ignored ? "Leave readings out" : "Take readings in again", o => o with { Ignored = ignored });

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
