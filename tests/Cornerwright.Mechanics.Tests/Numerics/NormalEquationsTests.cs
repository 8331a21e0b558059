using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class NormalEquationsTests
{
    // By hand: the line through (0, 1), (1, 3), (2, 5) and, with no weight, a wild one: 1 + 2x.
    [Fact]
    public void A_line_by_hand()
    {
        var equations = new NormalEquations(stackalloc double[4], stackalloc double[2]);
        equations.Add([1, 0], 1);
        equations.Add([1, 1], 3, 4);
        equations.Add([1, 2], 5);
        equations.Add([1, 7], 999, 0);
        Assert.Equal([6, 6, 6, 8], equations.Matrix.ToArray());
        Assert.Equal([18, 22], equations.Unknowns.ToArray());
        Assert.True(equations.Solve());
        Assert.Equal(1, equations.Unknowns[0], 1e-14);
        Assert.Equal(2, equations.Unknowns[1], 1e-14);
        equations.Clear();
        Assert.Equal(new double[4], equations.Matrix.ToArray());
        Assert.Equal(new double[2], equations.Unknowns.ToArray());
    }

    // MathNet.Numerics 5.0.0 solves the same rows by QR.
    [Fact]
    public void Agrees_with_the_QR_of_MathNet()
    {
        const int Seed = 20261203;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 300; k++)
        {
            int n = 1 + (k % 6), rows = n + 2 + (k % 9);
            double[] a = random.Row(rows * n), v = random.Row(rows), w = [.. random.Row(rows).Select(x => 0.2 + (x * x))];
            var equations = new NormalEquations(new double[n * n], new double[n]);
            for (int r = 0; r < rows; r++)
            {
                equations.Add(a.AsSpan(r * n, n), v[r], w[r]);
            }

            double[] root = [.. w.Select(Math.Sqrt)];
            Matrix<double> peer = RandomMatrix.Peer([.. a.Select((x, i) => x * root[i / n])], rows, n);
            Vector<double> expected = peer.QR().Solve(RandomMatrix.Peer([.. v.Zip(root, (x, s) => x * s)]));
            double condition = peer.ConditionNumber();
            Assert.True(equations.Solve(), $"seed {Seed}, {k}");
            for (int i = 0; i < n; i++)
            {
                Assert.Equal(expected[i], equations.Unknowns[i], 1e-14 * condition * condition * (1 + Math.Abs(expected[i])));
            }
        }
    }

    [Fact]
    public void Covariance_is_the_inverse()
    {
        const int Seed = 3;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 100; k++)
        {
            int n = 1 + (k % 6);
            double[] a = random.Row((n + 3) * n), covariance = new double[n * n];
            var equations = new NormalEquations(new double[n * n], new double[n]);
            for (int r = 0; r < n + 3; r++)
            {
                equations.Add(a.AsSpan(r * n, n), 0);
            }

            Matrix<double> inverse = RandomMatrix.Peer(equations.Matrix.ToArray(), n, n).Inverse();
            Assert.True(equations.Covariance(covariance));
            for (int i = 0; i < n * n; i++)
            {
                Assert.Equal(inverse[i / n, i % n], covariance[i], 1e-9 * (1 + Math.Abs(covariance[i])));
            }
        }
    }

    // Two unknowns that always come together: one of them is free.
    [Fact]
    public void Unknowns_that_the_rows_do_not_fix_are_refused()
    {
        var equations = new NormalEquations(new double[4], new double[2]);
        equations.Add([1, 1], 1);
        equations.Add([2, 2], 2);
        double[] kept = equations.Matrix.ToArray();
        Assert.False(equations.Solve());
        equations.Clear();
        Assert.False(equations.Covariance(new double[4]));
        Assert.Equal([5, 5, 5, 5], kept);

        // One part in 1e-7 apart: their squares are 1e-14 apart, which readings do not carry and a caller may ask for.
        equations.Clear();
        equations.Add([1, 1], 1);
        equations.Add([1, 1 + 2e-7], 1);
        Assert.False(equations.Solve());
        equations.Clear();
        equations.Add([1, 1], 1);
        equations.Add([1, 1 + 2e-6], 1);
        Assert.True(equations.Solve(1e-14));
        Assert.Equal(1, equations.Unknowns[0] + equations.Unknowns[1], 1e-6);
    }
}
