using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class LuTests
{
    private const double Epsilon = 1.1102230246251565e-16;

    // By hand: ((0, 2), (4, 8)) exchanges its rows; x = (1, 3) gives (6, 28). Determinant -8.
    [Fact]
    public void A_factor_by_hand()
    {
        double[] a = [0, 2, 4, 8], b = [6, 28];
        int[] swaps = new int[2];
        Assert.Equal(-1, Lu.Factor(a, swaps, out double least, 1e-14));
        Assert.Equal([4, 8, 0, 2], a);
        Assert.Equal([1, 1], swaps);
        Assert.Equal(2, least);
        Lu.Solve(a, swaps, b);
        Assert.Equal([1, 3], b);
    }

    [Fact]
    public void Agrees_with_MathNet_for_many_right_sides()
    {
        const int Seed = 20261202;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 400; k++)
        {
            int n = 1 + (k % 12), columns = 1 + (k % 4);
            double[] a = random.Square(n), b = random.Row(n * columns), x = [.. b];
            Matrix<double> peer = RandomMatrix.Peer(a, n, n), expected = peer.LU().Solve(RandomMatrix.Peer(b, n, columns));
            double determinant = peer.Determinant(), condition = peer.ConditionNumber(), size = expected.Enumerate().Max(Math.Abs);
            Assert.Equal(Math.Sign(determinant), Lu.Solve([.. a], x, n));
            for (int i = 0; i < n * columns; i++)
            {
                double off = Math.Abs(x[i] - expected[i / columns, i % columns]);
                Assert.True(off <= 8 * n * Epsilon * condition * size, $"seed {Seed}, {k}: off by {off:E2}, condition {condition:E2}");
            }
        }
    }

    [Fact]
    public void Five_equations_are_the_same_written_out()
    {
        const int Seed = 9;
        var random = new RandomMatrix(Seed);
        var five = new FiveEquations();
        for (int k = 0; k < 300; k++)
        {
            double[] a = random.Square(5), b = random.Row(5), x = [.. b], y = [.. b];
            a.CopyTo(five.Entries);
            int sign = five.Factor(out double least), swapsSign = Lu.Factor([.. a], new int[5], out double leastToo, 1e-14);
            Assert.Equal((swapsSign, leastToo), (sign, least));
            Assert.Equal(sign, Lu.Solve(a, x, 5));
            five.Solve(y);
            Assert.All(Enumerable.Range(0, 5), i => Assert.Equal(x[i], y[i], 1e-11 * (1 + Math.Abs(x[i])) / Math.Min(1, least)));
        }

        // Two equal rows.
        double[] twice = [.. Enumerable.Range(0, 25).Select(i => i / 5 == 3 ? (i % 5) + 1.0 : i / 5 == 1 ? (i % 5) + 1.0 : random.Entry())];
        twice.CopyTo(five.Entries);
        Assert.Equal(0, five.Factor(out double none));
        Assert.Equal(0, none);
    }

    [Fact]
    public void Nearly_dependent_rows_are_singular_in_any_unit()
    {
        foreach (double unit in new[] { 1e-9, 1, 1e9 })
        {
            Assert.Equal(0, Lu.Solve([unit, 2 * unit, unit, 2 * unit * (1 + 1e-15)], [1, 1], 2));
            Assert.NotEqual(0, Lu.Solve([unit, 2 * unit, unit, 2 * unit * (1 + 1e-12)], [1, 1], 2));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_number_that_is_none_is_singular(int at)
    {
        double[] a = [2, 1, 1, 3];
        a[at] = double.NaN;
        Assert.Equal(0, Lu.Solve(a, [1, 1], 2));
        Assert.Equal(0, Lu.Factor([double.PositiveInfinity, 1, 1, 3], new int[2], out _, 1e-14));
    }
}
