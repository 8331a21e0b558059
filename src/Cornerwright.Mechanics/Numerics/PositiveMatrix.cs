namespace Cornerwright.Mechanics.Numerics;

/// <summary>Symmetric positive definite systems: normal equations and covariances.</summary>
/// <remarks>Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §4.2 (Cholesky factorization).</remarks>
public static class PositiveMatrix
{
    /// <summary>Lower triangle L with L Lᵀ = A; null where A is not positive definite to rounding or not finite.</summary>
    /// <param name="a">n × n, symmetric; only its lower triangle is read.</param>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 4.2.1.</remarks>
    public static double[,]? Factor(double[,] a)
    {
        ArgumentNullException.ThrowIfNull(a);
        int n = a.GetLength(0);
        double[,] l = new double[n, n];
        for (int j = 0; j < n; j++)
        {
            double pivot = a[j, j];
            for (int k = 0; k < j; k++)
            {
                pivot -= l[j, k] * l[j, k];
            }

            if (!(pivot > 1e-14 * Math.Abs(a[j, j])) || !double.IsFinite(pivot))
            {
                return null;
            }

            l[j, j] = Math.Sqrt(pivot);
            for (int i = j + 1; i < n; i++)
            {
                double sum = a[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= l[i, k] * l[j, k];
                }

                l[i, j] = sum / l[j, j];
            }
        }

        return l;
    }

    /// <summary>Solves A x = b with A's factor.</summary>
    /// <param name="factor">From <see cref="Factor"/>.</param>
    /// <param name="b">Right-hand side, n.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §4.2.</remarks>
    public static double[] Solve(double[,] factor, ReadOnlySpan<double> b)
    {
        double[] x = Forward(factor, b);
        int n = x.Length;
        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                x[i] -= factor[k, i] * x[k];
            }

            x[i] /= factor[i, i];
        }

        return x;
    }

    /// <summary>Solves L y = b.</summary>
    /// <param name="factor">L, from <see cref="Factor"/>.</param>
    /// <param name="b">Right-hand side, n.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §3.1.</remarks>
    public static double[] Forward(double[,] factor, ReadOnlySpan<double> b)
    {
        ArgumentNullException.ThrowIfNull(factor);
        double[] y = b.ToArray();
        for (int i = 0; i < y.Length; i++)
        {
            for (int k = 0; k < i; k++)
            {
                y[i] -= factor[i, k] * y[k];
            }

            y[i] /= factor[i, i];
        }

        return y;
    }
}
