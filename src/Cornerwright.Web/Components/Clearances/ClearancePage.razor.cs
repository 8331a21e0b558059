using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Web.Components.Pages;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Surroundings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>
/// One wheel against everything round it: the map of gaps, the wheel at a chosen pose in three dimensions, the section where it is nearest,
/// the proof over every pose, and the cures. Worked out beside the page's own thread whenever car, build or corner change; what stood there
/// stays until the new stands.
/// </summary>
public sealed partial class ClearancePage
{
    private const double TravelStep = 0.001;
    private const double SteerStep = Math.PI / 360;

    private ClearanceStudy? _study;
    private (Car Car, string Build, CornerPlace Place)? _asked;
    private CancellationTokenSource? _work;
    private string _failure = "";
    private IReadOnlyList<Problem> _refused = [];
    private double _travel, _steer;
    private double? _other;   // travel of the axle's other wheel; null where both rise alike
    private bool _chosen, _stale;
    private string _marked = "";
    private IReadOnlyList<PoseGap> _gaps = [];
    private WheelCut? _cut;

    [Inject] private ScanRoom Room { get; set; } = null!;

    /// <summary>"front-left" and so on; nothing for the front left.</summary>
    [SupplyParameterFromQuery(Name = "corner")] public string? CornerSlug { get; set; }

    /// <summary>Travel of the pose, mm; with <see cref="SteerDeg"/> nothing for the worst.</summary>
    [SupplyParameterFromQuery(Name = "travel")] public double? TravelMm { get; set; }

    /// <summary>Steering of the pose, degrees to the left.</summary>
    [SupplyParameterFromQuery(Name = "steer")] public double? SteerDeg { get; set; }

    /// <summary>Travel of the axle's other wheel, mm, where one axle carries both; nothing for the same.</summary>
    [SupplyParameterFromQuery(Name = "other")] public double? OtherMm { get; set; }

    private Build? Build => Car.Build(BuildId ?? "");

    private CornerPlace Place => Addresses.CornerOf(CornerSlug) ?? CornerPlace.FrontLeft;

    private Judgement? Judged => Bench.JudgementOf(BuildId ?? "");

    /// <summary>What is drawn is worked out, proof included, of the car as it is now.</summary>
    private bool Settled => _study is { } study && (study.Proved || study.Missing.Count > 0) && ReferenceEquals(study.Car, Car)
        && study.Place == Place && study.Build.Id == BuildId;

    private IReadOnlyList<Finding> Findings =>
        [.. (Judged?.Findings ?? []).Where(f => f.Corner == Place
            && (f.Check.StartsWith("clear-", StringComparison.Ordinal) || f.Check.StartsWith("scan-", StringComparison.Ordinal)))];

    /// <summary>The gap that is marked and cut: the one asked for, else the nearest of what belongs to the body.</summary>
    private PoseGap? Marked => _gaps.FirstOrDefault(g => g.Thing.Id == _marked) ?? _gaps.FirstOrDefault(g => g.Thing.OnBody)
        ?? _gaps.FirstOrDefault();

    private bool Forbidden => _study is { } study && _travel > study.Corner.Box.AllowedBump(_steer) + 1e-6;

    private string HereWords => _gaps.FirstOrDefault(g => g.Thing.OnBody) is { } gap
        ? (gap.Gap < 0 ? $"Overlaps {gap.Thing.Name} by {Pictures.Px.Mm(-gap.Gap)} mm."
            : $"Gap {Pictures.Px.Mm(gap.Gap)} mm to {gap.Thing.Name}.") : "";

    private string Counted
    {
        get
        {
            int tape = _study?.Corner.Things.Count(t => t.OnBody && t.Kind == NearKind.Tape) ?? 0,
                scans = _study?.Corner.Things.Count(t => t.OnBody && t.Kind == NearKind.Scan) ?? 0;
            return $"Of the body: {Many(tape, "line or place of measured gaps", "lines or places of measured gaps")} and "
                + $"{Many(scans, "scan", "scans")}.";
        }
    }

    protected override void OnCarReady() => Begin();

    protected override void OnBenchDrawn() => Begin();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _work?.Cancel();
            _work?.Dispose();
            _work = null;
        }

        base.Dispose(disposing);
    }

    private void Begin()
    {
        if (!Ready || Build is not { } build)
        {
            return;
        }

        var asked = (Car, build.Id, Place);
        if (_asked is { } before && ReferenceEquals(before.Car, asked.Car) && before.Build == asked.Id && before.Place == asked.Place)
        {
            return;
        }

        if (_asked is { } other && (other.Place != asked.Place || other.Build != asked.Id))
        {
            (_chosen, _marked) = (false, "");
        }

        _asked = asked;
        _work?.Cancel();
        _work?.Dispose();
        _work = new CancellationTokenSource();
        _ = Work(Car, build, Place, _work.Token);
    }

    private async Task Work(Car car, Build build, CornerPlace place, CancellationToken cancel)
    {
        try
        {
            _failure = "";
            var study = await Task.Run(() => ClearanceStudy.Of(car, build, place, Room.ShelfOf(car)), cancel);
            if (cancel.IsCancellationRequested)
            {
                return;
            }

            Lay(study);
            StateHasChanged();
            if (study.Missing.Count == 0)
            {
                var least = await Task.Run(() => study.Another().Least(cancel), cancel);
                if (cancel.IsCancellationRequested)
                {
                    return;
                }

                Lay(study with { Least = least, Proved = true });
                StateHasChanged();
            }
        }
        catch (OperationCanceledException)
        {
            // Something newer is being worked out.
        }
        catch (Exception error) when (!cancel.IsCancellationRequested)
        {
            // Our own bug; the page says so and the rest of the workshop stays open.
            _failure = error.Message;
            StateHasChanged();
        }
    }

    /// <summary>A new study: the pose that was chosen stays, else the one of the address, else the worst.</summary>
    private void Lay(ClearanceStudy study)
    {
        _study = study;
        if (study.Missing.Count > 0)
        {
            (_gaps, _cut) = ([], null);
            return;
        }

        if (!_chosen && TravelMm is { } mm && double.IsFinite(mm))
        {
            (_chosen, _travel, _steer) =
                (true, mm / 1000, SteerDeg is { } degrees && double.IsFinite(degrees) ? degrees * Math.PI / 180 : 0);
            _other = OtherMm is { } other && double.IsFinite(other) ? other / 1000 : null;
        }
        else if (!_chosen && study.Least is { } least)
        {
            (_travel, _steer, _other) = (least.Place.Travel, least.Place.Steer, least.Place.Third);
        }
        else if (!_chosen && study.Map!.Poses.Where(p => double.IsFinite(p.Gap)).OrderBy(p => p.Gap).Select(p => (MapPose?)p)
            .FirstOrDefault() is { } lowest)
        {
            (_travel, _steer, _other) = (lowest.Travel, lowest.Steer, lowest.Other);
        }

        Look();
    }

    private void Go(double travel, double steer) => Go(travel, steer, _other);

    private void Go(double travel, double steer, double? other)
    {
        (_chosen, _travel, _steer, _other) = (true, travel, steer, other);
        Look(cut: false);
    }

    // A field of the map is the nearest over the other wheel's travel: the pose shown is that one.
    private void Pick(double travel, double steer)
    {
        double? other = _study is { Corner.Paired: true, Map: { } map }
            ? map.Poses.MinBy(p => Math.Abs(p.Travel - travel) + Math.Abs(p.Steer - steer)).Other : null;
        Go(travel, steer, other);
    }

    // While the pose moves, the section stays as it was: it is cut anew when the pointer is let go.
    private void Look(bool cut = true)
    {
        var corner = _study!.Corner;
        _travel = Math.Clamp(_travel, corner.Box.Least.Travel, corner.Box.Most.Travel);
        _steer = Math.Clamp(_steer, corner.Box.Least.Steer, corner.Box.Most.Steer);
        _other = corner.Paired ? Math.Clamp(_other ?? _travel, corner.Box.Least.Third, corner.Box.Most.Third) : null;
        _gaps = corner.At(_travel, _steer, _other);
        _stale = !cut;
        _cut = cut ? Cut() : _cut;
    }

    private WheelCut? Cut() => Marked is { } gap ? WheelCut.Of(_study!.Corner, _travel, _steer, gap, other: _other) : null;

    private void Mark(string id)
    {
        _marked = id;
        Look();
    }

    private async Task GoToWorst()
    {
        if (_study?.Least is { } least)
        {
            _marked = least.Thing.Id;
            Go(least.Place.Travel, least.Place.Steer, least.Place.Third);
            await Told();
        }
    }

    private async Task Show((double Travel, double Steer, double? Other, string Check) where)
    {
        if (_study is { Missing.Count: 0 } study)
        {
            _marked = study.Corner.Things.FirstOrDefault(t => where.Check == (t.Kind == NearKind.Scan ? t.Id : "clear-" + t.Id))?.Id ?? "";
            Go(where.Travel, where.Steer, where.Other);
            await Told("#h-map");
        }
    }

    /// <summary>Where the pose was left stands in the address, so that it can be shown to somebody else.</summary>
    private Task Told(string part = "")
    {
        if (_stale)
        {
            (_stale, _cut) = (false, Cut());
        }

        Navigation.NavigateTo(
            Navigation.GetUriWithQueryParameters(new Dictionary<string, object?>
            {
                ["travel"] = Math.Round(_travel * 1000, 1),
                ["steer"] = Math.Round(_steer * 180 / Math.PI, 1),
                ["other"] = _other is { } other ? Math.Round(other * 1000, 1) : null,
            }) + part,
            replace: true);
        return Task.CompletedTask;
    }

    private void Take(Cure cure)
    {
        _refused = [];
        if (Build is not { } build)
        {
            return;
        }

        var changed = SettingPath.Set(build, cure.Setting, cure.NewValue, bothSides: true);
        if (changed.Try(out var after))
        {
            Bench.Apply(cure.Sentence.TrimEnd('.'), car => car.With(after));
        }
        else
        {
            _refused = changed.Problems;
        }
    }

    /// <summary>The rim's diameter code; null where the build's wheel does not say it.</summary>
    private static double? RimOf(ClearanceStudy study) => study.Corner.RimCode;

    private static int StepOf(double value, double least, double step) => Math.Max(0, (int)Math.Round((value - least) / step));

    private static string KindWords(NearThing thing) => thing.Kind switch
    {
        NearKind.Scan => thing.OnBody ? "scan, on the body" : "scan, moves with the wheel",
        NearKind.Strut => "strut, moves with the wheel",
        NearKind.Link => "drop link, its outer end moves with the wheel",
        _ => thing.OnBody ? "measured, on the body" : "measured, moves with the wheel",
    };

    private static string Many(int count, string one, string more) =>
        count switch { 0 => "no " + one, 1 => "one " + one, _ => count + " " + more };
}
