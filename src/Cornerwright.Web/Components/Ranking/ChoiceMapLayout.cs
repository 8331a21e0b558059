using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>One build as a mark on the map of choices.</summary>
/// <param name="Sure">Holds as a whole: drawn solid.</param>
/// <param name="Front">Not beaten: a diamond, others are round.</param>
internal sealed record ChoiceMark(RankedBuild Build, double X, double Y, bool Sure, bool Front);

/// <summary>Where builds stand on the map: price to the right, ride frequency upward. Free of pages, so that it can be tested.</summary>
internal sealed class ChoiceMapLayout
{
    public const double Width = 640, Height = 300, Left = 56, Right = 18, Top = 14, Bottom = 44;

    private ChoiceMapLayout(IReadOnlyList<ChoiceMark> marks, (double Low, double High, double Step) cost,
        (double Low, double High, double Step) ride) =>
        (Marks, Cost, Ride) = (marks, cost, ride);

    public IReadOnlyList<ChoiceMark> Marks { get; }
    public (double Low, double High, double Step) Cost { get; }
    public (double Low, double High, double Step) Ride { get; }

    public double X(double cost) => Left + ((cost - Cost.Low) / (Cost.High - Cost.Low) * (Width - Left - Right));

    public double Y(double ride) => Height - Bottom - ((ride - Ride.Low) / (Ride.High - Ride.Low) * (Height - Top - Bottom));

    public IEnumerable<double> CostTicks => Ticks(Cost);

    public IEnumerable<double> RideTicks => Ticks(Ride);

    /// <returns>Null where no build has a ride frequency.</returns>
    public static ChoiceMapLayout? Of(IReadOnlyList<RankedBuild> listed, IReadOnlyList<RankedBuild> front)
    {
        List<RankedBuild> builds = [.. listed.Concat(front.Where(f => f.Rank == 0)).Where(b => b.Frequency is not null)];
        if (builds.Count == 0)
        {
            return null;
        }

        var cost = Scale(builds.Min(b => (double)b.Cost), builds.Max(b => (double)b.Cost), 50);
        var ride = Scale(builds.Min(b => b.Frequency!.Value.Si), builds.Max(b => b.Frequency!.Value.Si), 0.05);
        var layout = new ChoiceMapLayout([], cost, ride);

        // Those not beaten last, so that they lie on top.
        var marks = builds.OrderBy(b => b.OnFront).ThenByDescending(b => b.Rank == 0 ? int.MaxValue : b.Rank)
            .Select(b => new ChoiceMark(
                b, layout.X((double)b.Cost), layout.Y(b.Frequency!.Value.Si), b.Verdict == Verdict.Holds, b.OnFront));
        return new ChoiceMapLayout([.. marks], cost, ride);
    }

    /// <summary>A range in round steps, at least two of them, with a little air.</summary>
    internal static (double Low, double High, double Step) Scale(double low, double high, double least)
    {
        double step = least;
        for (int i = 0; i < 40 && (high - low) / step > 6; i++)
        {
            step *= i % 3 == 1 ? 2.5 : 2;
        }

        double from = Math.Floor((low / step) - 0.25) * step, to = Math.Ceiling((high / step) + 0.25) * step;
        return (Math.Max(0, from), to, step);
    }

    private static IEnumerable<double> Ticks((double Low, double High, double Step) scale)
    {
        for (int i = 0; scale.Low + (i * scale.Step) <= scale.High + (1e-6 * scale.Step); i++)
        {
            yield return scale.Low + (i * scale.Step);
        }
    }
}
