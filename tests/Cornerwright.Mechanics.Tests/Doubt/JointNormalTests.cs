using Cornerwright.Mechanics.Doubt;

namespace Cornerwright.Mechanics.Tests.Doubt;

public class JointNormalTests
{
    private const double Infinity = double.PositiveInfinity;

    // Source: W. F. Sheppard (1899), Phil. Trans. R. Soc. A 192, 101-167: P(x > 0, y > 0) = 1/4 + asin(ρ)/(2π).
    [Theory]
    [InlineData(-0.9)]
    [InlineData(-0.3)]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    [InlineData(0.9999)]
    public void Two_numbers_above_zero(double correlation)
    {
        double expected = 0.25 + (Math.Asin(correlation) / (2 * Math.PI));
        Assert.Equal(expected, JointNormal.Within([0, 0], [Infinity, Infinity], [1, correlation, correlation, 1]), 0.002);
    }

    // Numbers that correlate by 1/2 with each other are x_i - x_0 of independent ones: all are above 0 when x_0 is the smallest
    // of n + 1, which happens once in n + 1. Derived.
    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(12)]
    public void Many_numbers_that_share_one(int n)
    {
        double[] correlation = [.. Enumerable.Range(0, n * n).Select(i => i / n == i % n ? 1.0 : 0.5)];
        Assert.Equal(1.0 / (n + 1), JointNormal.Within(new double[n], [.. Enumerable.Repeat(Infinity, n)], correlation), 0.003);
    }

    [Fact]
    public void Independent_numbers_multiply()
    {
        double[] low = [-1, -0.5, -2.5, -1.7], high = [2, Infinity, 0.3, 1.7],
            one = [.. Enumerable.Range(0, 16).Select(i => i % 5 == 0 ? 1.0 : 0)];
        double expected = 1;
        for (int i = 0; i < low.Length; i++)
        {
            expected *= (double.IsInfinity(high[i]) ? 1 : NormalDistribution.Below(high[i])) - NormalDistribution.Below(low[i]);
        }

        Assert.Equal(expected, JointNormal.Within(low, high, one), 1e-9);
    }

    [Fact]
    public void The_same_number_twice_counts_once()
    {
        double once = NormalDistribution.Below(1.3);
        Assert.Equal(once, JointNormal.Within([-1.3, -1.3], [Infinity, Infinity], [1, 1, 1, 1]), 1e-7);
        Assert.Equal((2 * once) - 1, JointNormal.Within([-1.3, -1.3], [Infinity, Infinity], [1, -1, -1, 1]), 0.002);
        Assert.Equal(0, JointNormal.Within([0.1, 0.1], [Infinity, Infinity], [1, -1, -1, 1]), 1e-7);
    }

    [Fact]
    public void None_is_certain() => Assert.Equal(1, JointNormal.Within([], [], []));

    [Fact]
    public void Random_correlations_agree_with_draws()
    {
        const int Seed = 4711, Draws = 200_000;
        var random = new Random(Seed);
        for (int round = 0; round < 6; round++)
        {
            int n = 2 + (2 * round), sources = 3 + round;
            double[,] weights = new double[n, sources];
            double[] low = new double[n], high = new double[n], correlation = new double[n * n];
            for (int i = 0; i < n; i++)
            {
                double square = 0;
                for (int k = 0; k < sources; k++)
                {
                    weights[i, k] = random.NextDouble() - 0.4;
                    square += weights[i, k] * weights[i, k];
                }

                for (int k = 0; k < sources; k++)
                {
                    weights[i, k] /= Math.Sqrt(square);
                }

                (low[i], high[i]) = (-0.3 - (2.5 * random.NextDouble()), random.Next(2) == 0 ? Infinity : 0.5 + (2 * random.NextDouble()));
            }

            for (int i = 0; i < n * n; i++)
            {
                correlation[i] = Enumerable.Range(0, sources).Sum(k => weights[i / n, k] * weights[i % n, k]);
            }

            int inside = 0;
            double[] x = new double[sources];
            for (int d = 0; d < Draws; d++)
            {
                for (int k = 0; k < sources; k++)
                {
                    x[k] = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
                }

                bool all = true;
                for (int i = 0; i < n && all; i++)
                {
                    double value = 0;
                    for (int k = 0; k < sources; k++)
                    {
                        value += weights[i, k] * x[k];
                    }

                    all = value >= low[i] && value <= high[i];
                }

                inside += all ? 1 : 0;
            }

            double drawn = (double)inside / Draws, error = 3.5 * Math.Sqrt(Math.Max(drawn * (1 - drawn), 1e-4) / Draws);
            double joined = JointNormal.Within(low, high, correlation);
            Assert.True(Math.Abs(joined - drawn) <= 0.003 + error, $"seed {Seed}, round {round}: joined {joined}, drawn {drawn}");
        }
    }

    [Fact]
    public void Lengths_that_do_not_fit_are_our_own_mistake() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => JointNormal.Within([0, 0], [1, 1], [1, 0, 1]));
}
