using Cornerwright.Web.Components.Pictures;

namespace Cornerwright.Web.Tests.Pictures;

public class LabelSpreadTests
{
    [Fact]
    public void Labels_with_room_stay_where_they_want_to_be()
    {
        double[] wanted = [10, 40, 90];
        Assert.Equal(wanted, LabelSpread.Place(wanted, [10, 10, 10], 0, 100));
    }

    [Fact]
    public void Two_labels_at_one_place_move_apart_by_the_same_amount() =>
        Assert.Equal([45, 55], LabelSpread.Place([50, 50], [10, 10], 0, 100));

    [Fact]
    public void Labels_at_the_edge_are_pushed_inside() =>
        Assert.Equal([85, 95], LabelSpread.Place([99, 100], [10, 10], 0, 100));

    [Fact]
    public void Random_labels_never_cover_one_another_and_keep_their_order()
    {
        var chance = new Random(4711);
        for (int round = 0; round < 500; round++)
        {
            int n = chance.Next(1, 14);
            double[] wanted = [.. Enumerable.Range(0, n).Select(_ => chance.NextDouble() * 400)];
            double[] heights = [.. Enumerable.Range(0, n).Select(_ => 5 + (chance.NextDouble() * 20))];
            double[] at = LabelSpread.Place(wanted, heights, 0, 400);
            int[] order = [.. Enumerable.Range(0, n).OrderBy(i => at[i])];
            for (int i = 1; i < n; i++)
            {
                int above = order[i - 1], below = order[i];
                Assert.True(at[below] - at[above] >= ((heights[above] + heights[below]) / 2) - 1e-9, $"round {round}");
                Assert.True(wanted[above] <= wanted[below] + 1e-12, $"round {round}");
            }

            Assert.True(at[order[0]] - (heights[order[0]] / 2) >= -1e-9, $"round {round}");
            Assert.True(at[order[^1]] + (heights[order[^1]] / 2) <= 400 + 1e-9, $"round {round}");
        }
    }

    /// <summary>The placing is the least sum of squared shifts: no small push of any label makes it less.</summary>
    [Fact]
    public void No_other_placing_of_the_same_order_is_nearer()
    {
        var chance = new Random(815);
        for (int round = 0; round < 200; round++)
        {
            double[] wanted = [.. Enumerable.Range(0, 6).Select(_ => chance.NextDouble() * 100)];
            double[] heights = [.. Enumerable.Repeat(12.0, 6)];
            double[] at = LabelSpread.Place(wanted, heights, -1000, 1000);
            double best = Cost(at, wanted);
            for (int trial = 0; trial < 100; trial++)
            {
                double[] other = [.. at.Select(y => y + ((chance.NextDouble() - 0.5) * 6))];
                double[] sorted = [.. other.Order()];
                bool apart = sorted.Zip(sorted.Skip(1)).All(p => p.Second - p.First >= 12);
                Assert.False(apart && Cost(other, wanted) < best - 1e-9, $"round {round}, trial {trial}");
            }
        }

        static double Cost(double[] at, double[] wanted) => at.Zip(wanted).Sum(p => (p.First - p.Second) * (p.First - p.Second));
    }
}
