using Cornerwright.Mechanics.Doubt;

namespace Cornerwright.Mechanics.Tests.Doubt;

public sealed class NormalDistributionTests
{
    // Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.1, P(x), shortened to ten digits.
    // The fit promises 1.2e-7 relative of the complementary error function.
    [Theory]
    [InlineData(0.0, 0.5000000000)]
    [InlineData(0.1, 0.5398278373)]
    [InlineData(0.5, 0.6914624613)]
    [InlineData(1.0, 0.8413447461)]
    [InlineData(1.5, 0.9331927987)]
    [InlineData(2.0, 0.9772498681)]
    [InlineData(2.5, 0.9937903347)]
    [InlineData(3.0, 0.9986501020)]
    public void Share_below(double x, double published)
    {
        Assert.Equal(published, NormalDistribution.Below(x), 1.2e-7);
        Assert.Equal(1 - published, NormalDistribution.Below(-x), 1.2e-7);
    }

    // Source: Abramowitz and Stegun (1964), table 26.1, Z(x).
    [Theory]
    [InlineData(0.0, 0.3989422804)]
    [InlineData(1.0, 0.2419707245)]
    [InlineData(2.0, 0.0539909665)]
    public void Density(double x, double published) => Assert.Equal(published, NormalDistribution.Density(x), 1e-10);

    // Source: Abramowitz and Stegun (1964), table 26.5 (percentage points), x for P: 0.95, 0.975, 0.99, 0.999.
    [Theory]
    [InlineData(0.95, 1.6449)]
    [InlineData(0.975, 1.9600)]
    [InlineData(0.99, 2.3263)]
    [InlineData(0.999, 3.0902)]
    public void Quantile(double p, double published) => Assert.Equal(published, NormalDistribution.Quantile(p), 5e-5);

    [Fact]
    public void Quantile_and_share_below_undo_each_other()
    {
        for (double p = 1e-6; p < 1; p += 1.7e-3)
        {
            Assert.Equal(p, NormalDistribution.Below(NormalDistribution.Quantile(p)), 2e-7);
            Assert.Equal(-NormalDistribution.Quantile(p), NormalDistribution.Quantile(1 - p), 1e-6);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void No_quantile_of_what_is_no_share(double p) =>
        Assert.Contains(
            "between 0 and 1", Assert.Throws<ArgumentOutOfRangeException>(() => NormalDistribution.Quantile(p)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Never_falls()
    {
        double before = 0;
        for (double x = -9; x <= 9; x += 0.01)
        {
            double now = NormalDistribution.Below(x);
            Assert.True(now >= before && now <= 1, $"at {x}");
            before = now;
        }
    }
}
