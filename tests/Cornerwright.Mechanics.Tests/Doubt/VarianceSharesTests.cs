using Cornerwright.Mechanics.Doubt;

namespace Cornerwright.Mechanics.Tests.Doubt;

/// <summary>Sampled shares of variance against closed forms.</summary>
public sealed class VarianceSharesTests
{
    private static readonly double[] Weights = [3, 2, 1, 0.5, 0];

    // Source: T. Ishigami and T. Homma, ISUMA '90 (1990) 398: sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1, x uniform within ±π. Shares by
    // their closed forms: first 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437; variance 13.8446.
    [Fact]
    public void Ishigamis_function()
    {
        const double Tolerance = 0.02;
        var shares = VarianceShares.Of(
            d =>
            {
                double scale = Math.PI / Math.Sqrt(3), x = scale * d[0], y = scale * d[1], z = scale * d[2];
                return Math.Sin(x) + (7 * Math.Pow(Math.Sin(y), 2)) + (0.1 * Math.Pow(z, 4) * Math.Sin(x));
            },
            [true, true, true]);
        Assert.Equal(13.8446, shares.StandardDeviation * shares.StandardDeviation, 0.3);
        double[] first = [0.3139, 0.4424, 0], total = [0.5576, 0.4424, 0.2437];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(first[i], shares.ByInput[i].First, Tolerance);
            Assert.Equal(total[i], shares.ByInput[i].Total, Tolerance);
        }
    }

    [Fact]
    public void A_sum_of_normal_inputs_shares_by_squares()
    {
        var shares = VarianceShares.Of(
            d =>
            {
                double sum = 10;
                for (int i = 0; i < Weights.Length; i++)
                {
                    sum += Weights[i] * d[i];
                }

                return sum;
            },
            new bool[Weights.Length], 10, double.PositiveInfinity);
        double all = Weights.Sum(w => w * w);
        Assert.Equal(10, shares.Mean, 0.03);
        Assert.Equal(Math.Sqrt(all), shares.StandardDeviation, 0.05);
        Assert.Equal(0.5, shares.Within, 0.01);
        for (int i = 0; i < Weights.Length; i++)
        {
            Assert.Equal(Weights[i] * Weights[i] / all, shares.ByInput[i].First, 0.02);
            Assert.Equal(Weights[i] * Weights[i] / all, shares.ByInput[i].Total, 0.02);
        }
    }

    [Fact]
    public void Points_without_a_value_are_counted_and_left_out()
    {
        var shares = VarianceShares.Of(d => d[0] > 1 ? double.NaN : d[0], [false], -10, 10);
        Assert.Equal(0.1587, shares.Lost, 0.01);   // Source: Abramowitz and Stegun (1964), table 26.1, Q(1)
        Assert.Equal(1 - shares.Lost, shares.Within, 1e-12);
        Assert.True(double.IsFinite(shares.StandardDeviation));
    }

    // Every projection on one coordinate is a shifted grid: N points, N different cells.
    [Fact]
    public void Each_coordinate_of_the_lattice_is_an_even_grid()
    {
        var seen = new HashSet<int>[RankOneLattice.MostCoordinates];
        double[] point = new double[RankOneLattice.MostCoordinates];
        for (int k = 0; k < RankOneLattice.Points; k++)
        {
            RankOneLattice.Write(k, point);
            for (int j = 0; j < point.Length; j++)
            {
                Assert.InRange(point[j], 0, 1);
                (seen[j] ??= []).Add((int)(point[j] * RankOneLattice.Points));
            }
        }

        Assert.All(seen, cells => Assert.True(cells.Count >= RankOneLattice.Points - 1, $"{cells.Count}"));
    }

    // A smooth integral whose value is known: the product of 1 + (x - 1/2)/j² is 1.
    [Fact]
    public void The_lattice_integrates_far_better_than_chance()
    {
        double[] point = new double[12];
        double sum = 0;
        for (int k = 0; k < RankOneLattice.Points; k++)
        {
            RankOneLattice.Write(k, point);
            double product = 1;
            for (int j = 0; j < point.Length; j++)
            {
                product *= 1 + ((point[j] - 0.5) / ((j + 1) * (j + 1)));
            }

            sum += product;
        }

        // Chance would miss by about 0.3/√1021 = 0.009.
        Assert.Equal(1, sum / RankOneLattice.Points, 0.001);
    }
}
