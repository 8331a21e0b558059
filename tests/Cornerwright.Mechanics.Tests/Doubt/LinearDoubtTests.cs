using Cornerwright.Mechanics.Doubt;

namespace Cornerwright.Mechanics.Tests.Doubt;

public sealed class LinearDoubtTests
{
    [Fact]
    public void Normal_parts_alone_are_normal()
    {
        // Closed form: 3 and 4 make 5.
        var doubt = LinearDoubt.Of([3, -4], [false, false]);
        Assert.Equal(5, doubt.StandardDeviation, 1e-12);
        Assert.Equal(NormalDistribution.Below(1) - NormalDistribution.Below(-1), doubt.Within(10, 5, 15), 1e-12);
    }

    [Fact]
    public void One_uniform_part_alone_is_uniform()
    {
        // Standard deviation 2/√3 of a half range of 2: from 8 to 12 about 10.
        var doubt = LinearDoubt.Of([2 / Math.Sqrt(3)], [true]);
        Assert.Equal(2, doubt.HalfWidth, 1e-12);
        Assert.Equal(0.75, doubt.Within(10, 9, double.PositiveInfinity), 1e-12);
        Assert.Equal(0.5, doubt.Within(10, 9, 11), 1e-12);
        Assert.Equal(1, doubt.Within(10, 8, 12), 1e-12);
        Assert.Equal(0, doubt.Within(10, 12.1, 20), 1e-12);
    }

    [Fact]
    public void No_doubt_is_certain_either_way()
    {
        Assert.Equal(1, default(LinearDoubt).Within(5, 5, 6));
        Assert.Equal(0, default(LinearDoubt).Within(5, 5.000001, 6));
    }

    // The mix of a uniform and a normal part, by the midpoint rule over the uniform part.
    [Theory]
    [InlineData(1, 0.1)]
    [InlineData(1, 1)]
    [InlineData(1, 5)]
    [InlineData(1, 100)]
    [InlineData(1, 1e-5)]
    public void A_mix_is_the_mean_of_normals(double normal, double halfWidth)
    {
        const int steps = 20_000;
        var doubt = new LinearDoubt(normal, halfWidth);
        for (double x = -3 * (normal + halfWidth); x <= 3 * (normal + halfWidth); x += 0.37 * (normal + halfWidth))
        {
            double mean = 0;
            for (int i = 0; i < steps; i++)
            {
                double t = halfWidth * ((2 * (i + 0.5) / steps) - 1);
                mean += NormalDistribution.Below((x - t) / normal) / steps;
            }

            Assert.Equal(mean, doubt.Below(x), 1e-6);
        }
    }

    // Random sets of inputs, some uniform: the largest uniform part is exact, the others count as normal. Worst found: 1.0
    // points, the draws' own noise (0.25 points, one standard error) included.
    [Fact]
    public void Against_random_draws_of_the_linear_value()
    {
        const int draws = 40_000, seed = 5;
        var random = new Random(seed);
        double worst = 0;
        for (int set = 0; set < 30; set++)
        {
            int count = 1 + random.Next(6);
            double[] contributions = [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() - 0.5)];
            bool[] uniform = [.. Enumerable.Range(0, count).Select(_ => random.Next(2) == 0)];
            var doubt = LinearDoubt.Of(contributions, uniform);
            double low = -1.5 * doubt.StandardDeviation * random.NextDouble(), high = 2 * doubt.StandardDeviation * random.NextDouble();
            int within = 0;
            for (int d = 0; d < draws; d++)
            {
                double value = 0;
                for (int i = 0; i < count; i++)
                {
                    value += contributions[i]
                        * (uniform[i]
                        ? Math.Sqrt(3) * ((2 * random.NextDouble()) - 1)
                        : NormalDistribution.Quantile((random.Next() + 0.5) / int.MaxValue));
                }

                within += value >= low && value <= high ? 1 : 0;
            }

            worst = Math.Max(worst, Math.Abs((within / (double)draws) - doubt.Within(0, low, high)));
        }

        Assert.True(worst < 0.015, $"seed {seed}: {worst}");
    }

    // By hand: a half width of 6 has a variance of 36/3; with 3² it makes 21.
    [Fact]
    public void A_uniform_part_counts_by_a_third_of_its_square() =>
        Assert.Equal(Math.Sqrt(21), new LinearDoubt(3, 6).StandardDeviation, 1e-12);
}
