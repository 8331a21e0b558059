using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class CholeskyTests
{
    private const double Epsilon = 1.1102230246251565e-16;

    // By hand: ((4, 2), (2, 5)) = L Lᵀ with L = ((2, 0), (1, 2)); A x = (8, 10) at x = (1.25, 1.5).
    [Fact]
    public void A_factor_by_hand()
    {
        double[] a = [4, 99, 2, 5], b = [8, 10];
        Assert.True(Cholesky.Factor(a, 2, Cholesky.OfReadings));
        Assert.Equal([2, 99, 1, 2], a);
        Cholesky.Solve(a, b);
        Assert.Equal([1.25, 1.5], b);
        double[] y = [8, 10];
        Cholesky.Forward(a, y);
        Assert.Equal([4, 3], y);
    }

    // MathNet.Numerics 5.0.0 as the second way; and the error bound of the documentation, entry by entry of |A|.
    [Fact]
    public void Agrees_with_MathNet_and_keeps_the_bound()
    {
        const int Seed = 20261201;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 400; k++)
        {
            int n = 1 + (k % 12);
            double[] a = random.Positive(n, n + 2, 0.01), b = random.Row(n), l = [.. a], x = [.. b];
            Assert.True(Cholesky.Factor(l, n, Cholesky.OfReadings), $"seed {Seed}, {k}");
            Cholesky.Solve(l, x);
            Matrix<double> peer = RandomMatrix.Peer(a, n, n);
            double[] expected = [.. peer.Cholesky().Solve(RandomMatrix.Peer(b))];
            double condition = peer.ConditionNumber(), size = expected.Max(Math.Abs);
            for (int i = 0; i < n; i++)
            {
                Assert.True(
                    Math.Abs(x[i] - expected[i]) <= 4 * n * Epsilon * condition * size, $"seed {Seed}, {k}: {x[i]} against {expected[i]}");
                for (int j = 0; j <= i; j++)
                {
                    double sum = 0;
                    for (int p = 0; p <= j; p++)
                    {
                        sum += l[(i * n) + p] * l[(j * n) + p];
                    }

                    // |L||Lᵀ| is at most the root of the product of the diagonal's entries.
                    double bound = 2 * (n + 1) * Epsilon * Math.Sqrt(a[(i * n) + i] * a[(j * n) + j]);
                    Assert.True(Math.Abs(sum - a[(i * n) + j]) <= bound, $"seed {Seed}, {k}");
                }
            }
        }
    }

    // The share left of the second diagonal entry is 1 - r²: the pivot is refused at the share that was asked for, and not before.
    [Theory]
    [InlineData(1e-6, Cholesky.OfReadings, true)]
    [InlineData(1e-13, Cholesky.OfReadings, false)]
    [InlineData(1e-13, Cholesky.OfCovariance, true)]
    [InlineData(0, Cholesky.OfCovariance, false)]
    [InlineData(-0.5, Cholesky.OfCovariance, false)]
    public void What_the_data_do_not_fix_is_refused(double left, double least, bool factored)
    {
        double r = Math.Sqrt(1 - left);
        Assert.Equal(factored, Cholesky.Factor([1, r, r, 1], 2, least));

        // Whatever the units of the unknowns.
        Assert.Equal(factored, Cholesky.Factor([1e-8, r * 1e-2, r * 1e-2, 1e4], 2, least));
    }

    [Theory]
    [InlineData(double.NaN, 1)]
    [InlineData(1, double.NaN)]
    [InlineData(double.PositiveInfinity, 1)]
    [InlineData(1, double.PositiveInfinity)]
    [InlineData(0, 1)]
    public void No_numbers_make_no_factor(double first, double second) =>
        Assert.False(Cholesky.Factor([first, 0, 0, second], 2, Cholesky.OfCovariance));

    // By hand: the third number is the first again, so nothing is left of it and its column is empty.
    [Fact]
    public void A_settled_row_gets_a_zero()
    {
        double[] a = [4, 0, 4, 0, 9, 0, 4, 0, 4];
        Cholesky.FactorSemidefinite(a, 3, 1e-9);
        Assert.Equal([2, 0, 4, 0, 3, 0, 2, 0, 0], a);

        // The settled one first: what follows hangs on nothing of it.
        double[] zero = [0, 0, 0, 1];
        Cholesky.FactorSemidefinite(zero, 2, 1e-9);
        Assert.Equal([0, 0, 0, 1], zero);

        // Just above and just below what counts as settled.
        double[] above = [2e-9], below = [0.5e-9];
        Cholesky.FactorSemidefinite(above, 1, 1e-9);
        Cholesky.FactorSemidefinite(below, 1, 1e-9);
        Assert.Equal((Math.Sqrt(2e-9), 0), (above[0], below[0]));
    }

    [Fact]
    public void A_semidefinite_factor_gives_its_matrix_back()
    {
        const int Seed = 5;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 200; k++)
        {
            int n = 2 + (k % 7), rank = 1 + (k % n);
            double[] a = random.Positive(n, rank, 0), l = [.. a];
            Cholesky.FactorSemidefinite(l, n, 1e-9);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j <= i; j++)
                {
                    double sum = Enumerable.Range(0, j + 1).Sum(p => l[(i * n) + p] * l[(j * n) + p]);
                    Assert.Equal(a[(i * n) + j], sum, 1e-4);   // the root of what counts as settled
                }
            }
        }
    }
}
