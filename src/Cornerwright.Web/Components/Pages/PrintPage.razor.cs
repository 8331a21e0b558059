using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The sheets that go into the workshop: assembly, parts, set-up, findings.</summary>
public sealed partial class PrintPage
{
    private Build? Build => Car.Build(BuildId ?? "");

    private Judgement? Judgement { get; set; }

    protected override void OnCarReady() => Look();

    protected override void OnBenchDrawn() => Look();

    private void Look()
    {
        // Paper cannot be drawn again: only the judgement of the car as it is goes onto it.
        Judgement = Ready && Build is { } build && Bench.JudgementOf(build.Id) is { } judged && ReferenceEquals(judged.Car, Car) ? judged : null;
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
            && s.First.Pieces.Zip(s.Second.Pieces).All(p => p.First.Name == p.Second.Name && Math.Abs(p.First.Length - p.Second.Length) < Shown));
    }
}
