using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Quantities;
using Cornerwright.Web.Components.Ranking;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Web.Tests.Ranking;

public class ChoiceMapLayoutTests
{
    private static RankedBuild Made(int rank, decimal cost, double? hertz, double probability = 0.97, bool front = false) => new()
    {
        Rank = rank, Build = new Build(), Parts = [], Probability = probability, Bounds = (probability, probability), Unknown = 0,
            Verdict = probability < 0.95 ? Verdict.Tight : Verdict.Holds,
            Tightest = null, Cost = cost, Unpriced = [],
        Frequency = hertz is { } f ? new Measure(f, Units.Hertz, 2) : null, HeightMiss = null, PerchHeight = null, OnFront = front,
    };

    [Fact]
    public void Marks_lie_inside_the_frame_dearer_to_the_right_and_stiffer_above()
    {
        var map = ChoiceMapLayout.Of([Made(1, 400, 1.4), Made(2, 1900, 1.9), Made(3, 900, 1.55)], [])!;
        Assert.All(map.Marks, m =>
        {
            Assert.InRange(m.X, ChoiceMapLayout.Left, ChoiceMapLayout.Width - ChoiceMapLayout.Right);
            Assert.InRange(m.Y, ChoiceMapLayout.Top, ChoiceMapLayout.Height - ChoiceMapLayout.Bottom);
        });
        ChoiceMark At(int rank) => map.Marks.Single(m => m.Build.Rank == rank);
        Assert.True(At(1).X < At(3).X && At(3).X < At(2).X);
        Assert.True(At(1).Y > At(3).Y && At(3).Y > At(2).Y);
    }

    [Fact]
    public void Those_not_beaten_lie_on_top_and_one_beyond_the_list_is_drawn_too()
    {
        var map = ChoiceMapLayout.Of([Made(1, 500, 1.5, front: true), Made(2, 600, 1.5)],
            [Made(1, 500, 1.5, front: true), Made(0, 300, 1.7, 0.6, front: true)])!;
        Assert.Equal(3, map.Marks.Count);
        Assert.Equal([false, true, true], map.Marks.Select(m => m.Front));
        Assert.False(map.Marks.Single(m => m.Build.Rank == 0).Sure);
    }

    [Fact]
    public void Nothing_is_drawn_where_no_ride_is_known() => Assert.Null(ChoiceMapLayout.Of([Made(1, 500, null)], []));

    [Theory]
    [InlineData(0, 0, 50)]
    [InlineData(1200, 1200, 50)]
    [InlineData(12, 98_765, 50)]
    [InlineData(1.31, 1.34, 0.1)]
    public void Scales_hold_their_values_in_a_few_round_steps(double low, double high, double least)
    {
        var (from, to, step) = ChoiceMapLayout.Scale(low, high, least);
        Assert.True(from <= low && to >= high && to > from);
        Assert.InRange((to - from) / step, 0.999, 9.001);
    }
}
