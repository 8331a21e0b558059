using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Pictures;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The sheets that go into the workshop: assembly, parts, set-up, findings.</summary>
public sealed partial class PrintPage
{
    private StoredCar? _old;
    private int? _asked;

    [Inject] private IGarageStore Store { get; set; } = null!;

    [Inject] private QuickJudge Judge { get; set; } = null!;

    /// <summary>An older revision whose sheets are wanted; null for the car as it is.</summary>
    [SupplyParameterFromQuery] public int? Revision { get; set; }

    /// <summary>The car on the sheets; null while an older one is fetched, or when there is none of that number.</summary>
    private Car? Shown => Revision is null ? Car : _old?.Car;

    private int ShownRevision => Revision ?? Bench.Revision;

    private bool Fetching { get; set; }

    private Build? Build => Shown?.Build(BuildId ?? "");

    private Judgement? Judgement { get; set; }

    protected override void OnCarReady()
    {
        if (Revision is { } number && _asked != number)
        {
            _asked = number;
            _ = Fetch(number);
        }

        Look();
    }

    protected override void OnBenchDrawn() => Look();

    /// <summary>An older revision is judged for itself: its settings, its readings.</summary>
    private async Task Fetch(int number)
    {
        (Fetching, _old, Judgement) = (true, null, null);
        var (id, build) = (Id, BuildId ?? "");
        var (old, judged) = await Task.Run(() =>
        {
            var found = Store.Load(id, number);
            return found.Try(out var stored) ? (stored, stored.Car.Build(build) is null ? null : Judge(stored.Car, build)) : (null, null);
        });
        if (_asked == number)
        {
            (Fetching, _old, Judgement) = (false, old, judged);
            StateHasChanged();
        }
    }

    private void Look()
    {
        if (Revision is not null)
        {
            return;
        }

        // Paper cannot be drawn again: only the judgement of the car as it is goes onto it.
        Judgement = Ready && Build is { } build && Bench.JudgementOf(build.Id) is { } judged && ReferenceEquals(judged.Car, Car)
            ? judged : null;
    }

    /// <summary>Both sides of an axle, or one drawing for both where the stacks are the same to a tenth of a millimetre.</summary>
    internal static IReadOnlyList<(CornerPicture Picture, string Title)> Distinct(Judgement judged, AxlePlace axle)
    {
        var sides = judged.Pictures.Where(p => p.Corner.Axle() == axle).ToList();
        return sides is [var left, var right] && Same(left.Stack, right.Stack)
            ? [(left, $"Spring stack, {axle.Words()} left and right, to scale")]
            : [.. sides.Select(s => (s, $"Spring stack, {s.Corner.Words()}, to scale"))];
    }

    private static bool Same(IReadOnlyList<StackState> a, IReadOnlyList<StackState> b)
    {
        const double Shown = 0.00005;
        return a.Count == b.Count && a.Zip(b).All(s => s.First.State == s.Second.State
            && Math.Abs(s.First.Space - s.Second.Space) < Shown
            && s.First.Pieces.Count == s.Second.Pieces.Count
            && s.First.Pieces.Zip(s.Second.Pieces)
            .All(p => p.First.Name == p.Second.Name && Math.Abs(p.First.Length - p.Second.Length) < Shown));
    }
}
