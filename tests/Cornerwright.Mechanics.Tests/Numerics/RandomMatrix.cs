using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Cornerwright.Mechanics.Tests.Numerics;

/// <summary>Matrices and vectors for comparing our solvers with MathNet.Numerics 5.0.0; row by row, as ours take them.</summary>
internal sealed class RandomMatrix(int seed)
{
    private readonly Random random = new(seed);

    public double Entry() => (2 * random.NextDouble()) - 1;

    public double[] Row(int n) => [.. Enumerable.Range(0, n).Select(_ => Entry())];

    /// <summary>Entries within ±1.</summary>
    public double[] Square(int n) => Row(n * n);

    public double[] Symmetric(int n)
    {
        double[] a = Square(n);
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                a[(i * n) + k] = a[(k * n) + i];
            }
        }

        return a;
    }

    /// <summary>B Bᵀ with <paramref name="rank"/> columns in B, and a little on the diagonal.</summary>
    public double[] Positive(int n, int rank, double diagonal)
    {
        Matrix<double> b = Peer(Row(n * rank), n, rank), a = b * b.Transpose();
        return Rows(a + (diagonal * DenseMatrix.CreateIdentity(n)));
    }

    public static Matrix<double> Peer(double[] rows, int n, int columns) =>
        DenseMatrix.Create(n, columns, (i, k) => rows[(i * columns) + k]);

    public static Vector<double> Peer(double[] values) => DenseVector.OfArray(values);

    public static double[] Rows(Matrix<double> m) => [.. m.EnumerateRows().SelectMany(row => row)];
}
