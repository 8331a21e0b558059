using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class SymmetricEigenTests
{
    // By hand: ((2, 1), (1, 2)) has 3 along (1, 1) and 1 along (1, -1).
    [Fact]
    public void Two_rows_by_hand()
    {
        double[] a = [2, 1, 1, 2], v = new double[4];
        SymmetricEigen.Decompose(a, v, 2);
        Span<int> order = stackalloc int[2];
        SymmetricEigen.Order(a, 2, order);
        Assert.Equal(3, a[order[0] * 3], 1e-15);
        Assert.Equal(1, a[order[1] * 3], 1e-15);
        Assert.Equal(v[order[0]], v[2 + order[0]], 1e-15);
        Assert.Equal(v[order[1]], -v[2 + order[1]], 1e-15);
        Assert.Equal(3, SymmetricEigen.LargerOfTwo(2, 1, 2), 1e-15);
    }

    [Fact]
    public void Agrees_with_MathNet_and_the_vectors_are_square_to_each_other()
    {
        const int Seed = 20261204;
        var random = new RandomMatrix(Seed);
        for (int k = 0; k < 300; k++)
        {
            int n = 1 + (k % 9);
            double[] a = random.Symmetric(n);
            Evd<double> peer = RandomMatrix.Peer(a, n, n).Evd(Symmetricity.Symmetric);
            double[] expected = [.. peer.EigenValues.Select(x => x.Real).Order()];
            var (values, vectors) = SymmetricEigen.Of(ToTable(a, n));
            double size = expected.Max(Math.Abs);
            Assert.All(expected.Zip(values.Order()), pair => Assert.Equal(pair.First, pair.Second, 1e-14 * n * size));
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    double dot = Enumerable.Range(0, n).Sum(p => vectors[p, i] * vectors[p, j]);
                    Assert.Equal(i == j ? 1 : 0, dot, 1e-14);

                    // A = Q diag(values) Qᵀ.
                    double sum = Enumerable.Range(0, n).Sum(p => vectors[i, p] * values[p] * vectors[j, p]);
                    Assert.Equal(a[(i * n) + j], sum, 1e-14 * n * size);
                }
            }
        }
    }

    [Fact]
    public void Order_is_falling_and_larger_of_two_is_the_first_of_it()
    {
        const int Seed = 4;
        var random = new RandomMatrix(Seed);
        Span<int> order = stackalloc int[5];
        for (int k = 0; k < 100; k++)
        {
            double[] a = random.Symmetric(5), v = new double[25], two = random.Symmetric(2), w = new double[4];
            SymmetricEigen.Decompose(a, v, 5);
            SymmetricEigen.Order(a, 5, order);
            Assert.Equal([0, 1, 2, 3, 4], order.ToArray().Order());
            for (int i = 1; i < 5; i++)
            {
                Assert.True(a[order[i] * 6] <= a[order[i - 1] * 6]);
            }

            double larger = SymmetricEigen.LargerOfTwo(two[0], two[1], two[3]);
            SymmetricEigen.Decompose(two, w, 2);
            Assert.Equal(Math.Max(two[0], two[3]), larger, 1e-14);
        }
    }

    // Equal values, zeros and a diagonal need no turning; a number that is none ends at once and stays one.
    [Fact]
    public void Plain_and_broken_matrices_end()
    {
        double[] diagonal = [3, 0, 0, -1], v = new double[4];
        SymmetricEigen.Decompose(diagonal, v, 2);
        Assert.Equal([3, 0, 0, -1], diagonal);
        Assert.Equal([1, 0, 0, 1], v);
        double[] zero = new double[4];
        SymmetricEigen.Decompose(zero, v, 2);
        Assert.Equal(new double[4], zero);
        double[] broken = [1, double.NaN, double.NaN, 1];
        SymmetricEigen.Decompose(broken, v, 2);
        Assert.True(double.IsNaN(broken[1]));
    }

    private static double[,] ToTable(double[] a, int n)
    {
        double[,] table = new double[n, n];
        Buffer.BlockCopy(a, 0, table, 0, n * n * sizeof(double));
        return table;
    }
}
