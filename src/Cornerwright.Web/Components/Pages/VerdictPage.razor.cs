using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Relations;
using Cornerwright.Workshop.Settling;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Pages;

/// <summary>What is said of one build, with everything that can be set at hand: every move judges it again.</summary>
public sealed partial class VerdictPage
{
    private readonly PresentJudgement _present = new();
    private readonly SettleAsk _settle;
    private Judgement? _lastDrawn;
    private IReadOnlyList<Problem> _refused = [];
    private (Judgement? Of, string? At, string? Say, IReadOnlyList<Finding> Findings) _chosen = (null, null, null, []);

    public VerdictPage() => _settle = finding => Judgement is { } judged
        ? SettlingFinder.Of(judged.Car, judged.Build, finding, scans: Scans.ShelfOf(judged.Car)) : null;

    [Inject] private IJSRuntime Js { get; set; } = null!;
    [Inject] private ScanRoom Scans { get; set; } = null!;

    /// <summary>The corner whose stack and wheel are drawn.</summary>
    [SupplyParameterFromQuery(Name = "corner")] public string? CornerSlug { get; set; }

    /// <summary>The state in which the wheel is drawn; nothing for the worst.</summary>
    [SupplyParameterFromQuery(Name = "state")] public string? State { get; set; }

    /// <summary>Margins of one corner, or "car" for what belongs to none.</summary>
    [SupplyParameterFromQuery(Name = "at")] public string? At { get; set; }

    /// <summary>Margins of one verdict, "all", or nothing for those that are not settled.</summary>
    [SupplyParameterFromQuery(Name = "say")] public string? Say { get; set; }

    /// <summary>"apart" when every corner is set for itself.</summary>
    [SupplyParameterFromQuery(Name = "sides")] public string? Sides { get; set; }

    private Build? Build => Car.Build(BuildId ?? "");

    private string PresentId => Car.MeasuredBuild;

    private bool Apart => Sides == "apart";

    private bool Narrow { get; set; }

    /// <summary>How many judgements this page has drawn; browser tests count by it.</summary>
    private int Drawn { get; set; }

    private Judgement? Judgement { get; set; }

    /// <summary>True when what is drawn is the whole judgement of the car as it is now.</summary>
    private bool Fresh => Bench.IsWhole(Judgement);

    private Judgement? Present { get; set; }

    private IReadOnlyList<SettingSlider> Sliders { get; set; } = [];

    private IReadOnlyList<Problem> Refused => _refused;

    private CornerPlace Corner => Addresses.CornerOf(CornerSlug) ?? Judgement?.Findings.FirstOrDefault()?.Corner ?? CornerPlace.FrontLeft;

    /// <summary>The findings of the choice; the same list as long as neither judgement nor choice changed.</summary>
    private IReadOnlyList<Finding> Shown
    {
        get
        {
            if (!ReferenceEquals(_chosen.Of, Judgement) || _chosen.At != At || _chosen.Say != Say)
            {
                _chosen = (Judgement, At, Say, [.. (Judgement?.Findings ?? []).Where(f => IsHere(f) && Says(f))]);
            }

            return _chosen.Findings;
        }
    }

    private string EmptyWords => Say is null or "" ? "Every check here holds, and surely enough. Choose \"all checks\" to read them."
        : "No check here says so.";

    private string FiguresCaption => Present is null ? "Of this build"
        : $"Present is \"{Present.Build.Name}\", on which the readings were taken";

    protected override void OnCarReady() => Look();

    protected override void OnBenchDrawn() => Look();

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            await using var module = await Js.InvokeAsync<IJSObjectReference>("import", "./Components/Pages/VerdictPage.razor.js");
            Narrow = await module.InvokeAsync<bool>("narrow");
            StateHasChanged();
        }
    }

    /// <summary>Takes the newest judgement before a drawing.</summary>
    private void Look()
    {
        if (!Ready || Build is not { } build)
        {
            return;
        }

        Judgement = Bench.JudgementOf(build.Id);
        if (!ReferenceEquals(Judgement, _lastDrawn))
        {
            (_lastDrawn, Drawn) = (Judgement, Drawn + 1);
        }

        Sliders = SettingSliders.Of(Car, build, Apart);
        Present = _present.Of(Car, build.Id, Bench);
    }

    private bool IsHere(Finding finding) => At switch
    {
        null or "" => true,
        "car" => finding.Corner is null,
        _ => finding.Corner is { } corner && Addresses.Slug(corner) == At,
    };

    private bool Says(Finding finding) => Say switch
    {
        null or "" => finding.Verdict != Verdict.Holds,
        "all" => true,
        _ => VerdictWords.Of(finding.Verdict) == Say,
    };

    /// <summary>Done when the new setting is judged: the browser sends the next step of a drag only then.</summary>
    private async Task Move(string name, int step)
    {
        _refused = [];
        if (Sliders.FirstOrDefault(s => s.Name == name) is { } slider)
        {
            Bench.Apply(slider.Words, car => car.Build(BuildId ?? "") is { } now ? car.With(slider.Move(now, step)) : car,
                "slider-" + name);
            await Bench.Judged();
        }
    }

    /// <summary>The collar of a corner goes to this height, and with it the other side's by as much.</summary>
    private async Task Turn(CornerPlace corner, double height)
    {
        _refused = [];
        Bench.Apply($"Perch height, {(Apart ? corner.Words() : corner.Axle().Words())}", car =>
            TurnCollar(car, corner, height), "collar-" + corner);
        await Bench.Judged();
    }

    private Car TurnCollar(Car car, CornerPlace corner, double height)
    {
        if (car.Build(BuildId ?? "") is not { } build || build.At(corner).PerchHeight is not { } before)
        {
            return car;
        }

        // A collar cannot leave its thread, however far the pointer goes.
        var damper = car.Parts.Dampers.FirstOrDefault(d => d.Id == build.At(corner).Damper);
        bool threaded = SettingSliders.QuarterTurn(car, build.At(corner)) is not null;
        double low = threaded ? damper?.ThreadLow?.Si ?? double.NegativeInfinity : double.NegativeInfinity;
        double high = threaded ? damper?.ThreadHigh?.Si ?? double.PositiveInfinity : double.PositiveInfinity;
        double change = Math.Clamp(height, Math.Min(low, before.Si), Math.Max(high, before.Si)) - before.Si;
        if (Math.Abs(change) < 1e-7)
        {
            return car;
        }

        foreach (var place in Apart ? [corner] : new[] { corner, SettingPath.OtherSide(corner) })
        {
            if (build.At(place).PerchHeight is { } reading)
            {
                build = build.With(place,
                    build.At(place) with { PerchHeight = SettingSliders.Setting(reading.Si + change, Units.Millimetre, reading) });
            }
        }

        return car.With(build);
    }

    /// <summary>The load case in which heights are wanted is the one whose ride mark is dragged.</summary>
    private string? RideWords => Car.LoadCases is [{ } first, ..] ? "ride, " + first.Name : null;

    private double RatioAt(CornerPlace corner) =>
        Car.At(corner).Motion.SpringRatio is { Si: > 0.05 } ratio ? ratio.Si : 1;

    private void Try(Cure cure)
    {
        _refused = [];
        if (Build is not { } build)
        {
            return;
        }

        var changed = SettingPath.Set(build, cure.Setting, cure.NewValue, bothSides: !Apart);
        if (changed.Try(out var after))
        {
            Bench.Apply(cure.Sentence.TrimEnd('.'), car => car.With(after));
        }
        else
        {
            _refused = changed.Problems;
        }
    }

    private void Confirm((Relation Relation, string Why) said) =>
        Bench.Apply("Confirm: " + said.Relation.Sentence, car => Confirming.With(car, said.Relation, said.Why));

    private void AskAgain(Relation relation) => Bench.Apply("Ask again: " + relation.Sentence, car => Confirming.Without(car, relation.Id));

    private string? LinkTo(string path) => ReadingLinks.ByPath(Id, path);

    private void ToggleSides() => Go(nameof(Sides), Apart ? null : "apart");

    private void Choose(string what, ChangeEventArgs e) => Go(what, e.Value?.ToString());

    /// <summary>Writes a choice into the address; the page draws from there.</summary>
    private void Go(string what, string? value)
    {
        string name = what switch { nameof(CornerSlug) => "corner", nameof(State) => "state", nameof(At) => "at", nameof(Say) =>
            "say", _ => "sides" };
        Navigation.NavigateTo(Navigation.GetUriWithQueryParameter(name, string.IsNullOrEmpty(value) ? null : value), replace: true);
    }
}
