using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Tests.Ranking;

public class RankKeyTests
{
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.9901, 0)]
    [InlineData(0.99, 1)]
    [InlineData(0.976, 3)]
    [InlineData(0.974, 3)]
    [InlineData(0, 100)]
    public void Certainty_counts_by_the_whole_per_cent_that_is_printed(double probability, int doubt) =>
        Assert.Equal(doubt, RankKey.DoubtOf(probability));

    [Fact]
    public void A_surer_build_never_has_the_larger_doubt()
    {
        int last = 100;
        for (int i = 0; i <= 10_000; i++)
        {
            int doubt = RankKey.DoubtOf(i / 10_000.0);
            Assert.InRange(doubt, 0, last);
            last = doubt;
        }
    }

    [Fact]
    public void No_two_choices_are_equal()
    {
        var key = new RankKey(0, 3, 1200, 1200, 0.0001, 1.5, 7, 2);
        Assert.True(key.CompareTo(key with { WheelSet = 3 }) < 0);
        Assert.True(key.CompareTo(key with { Suspension = 6 }) > 0);
        Assert.True(key.CompareTo(key with { Doubt = 2 }) > 0);
        Assert.Equal(0, key.CompareTo(key));
    }
}
