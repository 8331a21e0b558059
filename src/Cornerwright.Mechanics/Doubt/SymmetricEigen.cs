namespace Cornerwright.Mechanics.Doubt;

/// <summary>Eigenvalues and vectors of a small symmetric matrix.</summary>
/// <remarks>Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §8.5 (cyclic Jacobi).</remarks>
public static class SymmetricEigen
{
    /// <summary>Sweeps; Jacobi's method settles in 6 to 10 for tens of rows.</summary>
    private const int MostSweeps = 60;

    /// <summary>A = Q diag(values) Qᵀ.</summary>
    /// <param name="a">n × n, symmetric, finite.</param>
    /// <returns>Values in no order, and the vectors as columns of Q.</returns>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 8.5.3.</remarks>
    public static (double[] Values, double[,] Vectors) Of(double[,] a)
    {
        ArgumentNullException.ThrowIfNull(a);
        int n = a.GetLength(0);
        double[,] m = (double[,])a.Clone(), q = new double[n, n];
        double size = 0;
        for (int i = 0; i < n; i++)
        {
            q[i, i] = 1;
            for (int j = 0; j < n; j++)
            {
                size += m[i, j] * m[i, j];
            }
        }

        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            double off = 0;
            for (int i = 0; i < n; i++)
            {
                for (int j = i + 1; j < n; j++)
                {
                    off += m[i, j] * m[i, j];
                }
            }

            if (!(off > 1e-30 * size))
            {
                break;
            }

            for (int i = 0; i < n; i++)
            {
                for (int j = i + 1; j < n; j++)
                {
                    Rotate(m, q, i, j, n);
                }
            }
        }

        double[] values = new double[n];
        for (int i = 0; i < n; i++)
        {
            values[i] = m[i, i];
        }

        return (values, q);
    }

    private static void Rotate(double[,] m, double[,] q, int i, int j, int n)
    {
        if (m[i, j] == 0)
        {
            return;
        }

        double theta = (m[j, j] - m[i, i]) / (2 * m[i, j]);
        double t = (theta >= 0 ? 1 : -1) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1)), c = 1 / Math.Sqrt((t * t) + 1), s = t * c;
        for (int k = 0; k < n; k++)
        {
            (m[k, i], m[k, j]) = ((c * m[k, i]) - (s * m[k, j]), (s * m[k, i]) + (c * m[k, j]));
        }

        for (int k = 0; k < n; k++)
        {
            (m[i, k], m[j, k]) = ((c * m[i, k]) - (s * m[j, k]), (s * m[i, k]) + (c * m[j, k]));
            (q[k, i], q[k, j]) = ((c * q[k, i]) - (s * q[k, j]), (s * q[k, i]) + (c * q[k, j]));
        }
    }
}
