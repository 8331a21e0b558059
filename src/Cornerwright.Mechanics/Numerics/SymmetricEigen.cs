namespace Cornerwright.Mechanics.Numerics;

/// <summary>Eigenvalues and eigenvectors of small symmetric matrices by plane rotations.</summary>
/// <remarks>
/// Off-diagonal entries fall below 1e-15 of the largest entry, so values are true to about n of these and vectors square to each other
/// to rounding. Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §8.5 (cyclic Jacobi).
/// </remarks>
public static class SymmetricEigen
{
    /// <summary>A matrix of this size needs 6 to 10; a matrix with a NaN in it ends at once.</summary>
    private const int MostSweeps = 40;

    /// <summary>Off-diagonal entries, as a share of the largest entry, that are taken for zero: a few roundings.</summary>
    private const double Settled = 1e-15;

    /// <summary>A = Q diag(values) Qᵀ.</summary>
    /// <param name="a">n × n, symmetric, finite.</param>
    /// <returns>Values in no order, and the vectors as columns of Q.</returns>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 8.5.3.</remarks>
    public static (double[] Values, double[,] Vectors) Of(double[,] a)
    {
        ArgumentNullException.ThrowIfNull(a);
        int n = a.GetLength(0);
        double[] m = [.. a.Cast<double>()], q = new double[n * n], values = new double[n];
        Decompose(m, q, n);
        double[,] vectors = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            values[i] = m[(i * n) + i];
            for (int k = 0; k < n; k++)
            {
                vectors[i, k] = q[(i * n) + k];
            }
        }

        return (values, vectors);
    }

    /// <summary>Decomposes in place; allocates nothing.</summary>
    /// <param name="a">n × n, row by row, symmetric and finite; destroyed, its diagonal becomes the values.</param>
    /// <param name="vectors">n × n; column k belongs to value k.</param>
    /// <param name="n">Order.</param>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 8.5.3.</remarks>
    internal static void Decompose(Span<double> a, Span<double> vectors, int n)
    {
        vectors[..(n * n)].Clear();
        for (int i = 0; i < n; i++)
        {
            vectors[(i * n) + i] = 1;
        }

        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            double off = 0, all = 0;
            for (int i = 0; i < n * n; i++)
            {
                all = Math.Max(all, Math.Abs(a[i]));
                off = i / n == i % n ? off : Math.Max(off, Math.Abs(a[i]));
            }

            if (!(off > Settled * all))
            {
                return;
            }

            for (int p = 0; p < n - 1; p++)
            {
                for (int q = p + 1; q < n; q++)
                {
                    Rotate(a, vectors, n, p, q);
                }
            }
        }
    }

    /// <summary>The larger eigenvalue of ((a, b), (b, d)).</summary>
    /// <remarks>Source: the quadratic formula.</remarks>
    internal static double LargerOfTwo(double a, double b, double d) =>
        ((a + d) / 2) + Math.Sqrt((((a - d) / 2) * ((a - d) / 2)) + (b * b));

    /// <summary>Columns in order of falling values. Source: definition.</summary>
    internal static void Order(ReadOnlySpan<double> a, int n, Span<int> order)
    {
        for (int i = 0; i < n; i++)
        {
            int at = i;
            for (; at > 0 && a[(order[at - 1] * n) + order[at - 1]] < a[(i * n) + i]; at--)
            {
                order[at] = order[at - 1];
            }

            order[at] = i;
        }
    }

    private static void Rotate(Span<double> a, Span<double> v, int n, int p, int q)
    {
        double apq = a[(p * n) + q];
        if (apq == 0)
        {
            return;
        }

        double theta = (a[(q * n) + q] - a[(p * n) + p]) / (2 * apq);
        double t = double.IsFinite(theta) ? (theta >= 0 ? 1 : -1) / (Math.Abs(theta) + Math.Sqrt(1 + (theta * theta))) : 0;
        double c = 1 / Math.Sqrt(1 + (t * t)), s = t * c;
        for (int k = 0; k < n; k++)
        {
            double kp = a[(k * n) + p], kq = a[(k * n) + q];
            (a[(k * n) + p], a[(k * n) + q]) = ((c * kp) - (s * kq), (s * kp) + (c * kq));
        }

        for (int k = 0; k < n; k++)
        {
            double pk = a[(p * n) + k], qk = a[(q * n) + k];
            (a[(p * n) + k], a[(q * n) + k]) = ((c * pk) - (s * qk), (s * pk) + (c * qk));
            double vp = v[(k * n) + p], vq = v[(k * n) + q];
            (v[(k * n) + p], v[(k * n) + q]) = ((c * vp) - (s * vq), (s * vp) + (c * vq));
        }
    }
}
