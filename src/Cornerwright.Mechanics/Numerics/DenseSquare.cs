namespace Cornerwright.Mechanics.Numerics;

/// <summary>Small dense square systems, row by row in the caller's span.</summary>
/// <remarks>Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §3.4 (Gaussian elimination with partial pivoting).</remarks>
internal static class DenseSquare
{
    /// <summary>Smallest pivot, relative to the largest entry, that is not taken for a singular matrix; a hundred roundings.</summary>
    private const double LeastPivot = 2e-14;

    /// <summary>Solves A X = B in place: <paramref name="a"/> is destroyed, <paramref name="b"/> becomes X.</summary>
    /// <param name="a">n × n, row by row.</param>
    /// <param name="b">n × columns, row by row.</param>
    /// <param name="n">Order.</param>
    /// <returns>False when A is singular to rounding or not finite; then <paramref name="b"/> means nothing.</returns>
    public static bool Solve(Span<double> a, Span<double> b, int n) => Solve(a, b, n, out _);

    /// <inheritdoc cref="Solve(Span{double}, Span{double}, int)"/>
    /// <param name="sign">Sign of the determinant of A: 1, -1, or 0 when singular.</param>
    public static bool Solve(Span<double> a, Span<double> b, int n, out int sign)
    {
        sign = 1;
        int columns = b.Length / n;
        double largest = 0;
        foreach (double entry in a[..(n * n)])
        {
            largest = Math.Max(largest, Math.Abs(entry));
        }

        for (int k = 0; k < n; k++)
        {
            int pivot = PivotRow(a, n, k);
            if (!(Math.Abs(a[(pivot * n) + k]) > LeastPivot * largest))
            {
                sign = 0;
                return false;
            }

            sign *= (pivot == k ? 1 : -1) * Math.Sign(a[(pivot * n) + k]);
            Swap(a, n, pivot, k);
            Swap(b, columns, pivot, k);
            Eliminate(a, b, n, columns, k);
        }

        // Back substitution.
        for (int k = n - 1; k >= 0; k--)
        {
            for (int c = 0; c < columns; c++)
            {
                double sum = b[(k * columns) + c];
                for (int j = k + 1; j < n; j++)
                {
                    sum -= a[(k * n) + j] * b[(j * columns) + c];
                }

                b[(k * columns) + c] = sum / a[(k * n) + k];
            }
        }

        return true;
    }

    private static int PivotRow(ReadOnlySpan<double> a, int n, int k)
    {
        int best = k;
        for (int i = k + 1; i < n; i++)
        {
            if (Math.Abs(a[(i * n) + k]) > Math.Abs(a[(best * n) + k]))
            {
                best = i;
            }
        }

        return best;
    }

    private static void Swap(Span<double> m, int width, int i, int k)
    {
        for (int j = 0; i != k && j < width; j++)
        {
            (m[(i * width) + j], m[(k * width) + j]) = (m[(k * width) + j], m[(i * width) + j]);
        }
    }

    private static void Eliminate(Span<double> a, Span<double> b, int n, int columns, int k)
    {
        for (int i = k + 1; i < n; i++)
        {
            double factor = a[(i * n) + k] / a[(k * n) + k];
            for (int j = k + 1; j < n; j++)
            {
                a[(i * n) + j] -= factor * a[(k * n) + j];
            }

            for (int c = 0; c < columns; c++)
            {
                b[(i * columns) + c] -= factor * b[(k * columns) + c];
            }
        }
    }
}
