namespace Cornerwright.Mechanics.Numerics;

/// <summary>Small dense square systems: a factor P A = L U, kept for as many right-hand sides as wanted.</summary>
/// <remarks>
/// Matrices lie row by row in the caller's span; nothing is allocated. Gaussian elimination with partial pivoting: a solution satisfies
/// (A + E) x = b with |E| of some n ε |A| in practice, though the bound grows as 2ⁿ (Golub and Van Loan (2013), §3.4.6). Against
/// MathNet.Numerics: LuTests. Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §3.4 (Gaussian elimination).
/// </remarks>
public static class Lu
{
    /// <summary>Smallest pivot, relative to the largest entry, that is not taken for a singular matrix; a hundred roundings.</summary>
    public const double LeastPivot = 2e-14;

    /// <summary>Factors in place.</summary>
    /// <param name="a">n × n; becomes U on and above the diagonal and L below, whose own diagonal is 1.</param>
    /// <param name="swaps">n; which row was exchanged with each.</param>
    /// <param name="leastPivot">Smallest pivot in size, in the unit of the entries: near zero the equations are nearly dependent.</param>
    /// <param name="least">A pivot at or below this in size makes the matrix singular.</param>
    /// <returns>Sign of the determinant; 0 when singular or not finite, and then nothing may be solved.</returns>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 3.4.1.</remarks>
    public static int Factor(Span<double> a, Span<int> swaps, out double leastPivot, double least)
    {
        int n = swaps.Length, sign = 1;
        leastPivot = double.MaxValue;
        for (int k = 0; k < n; k++)
        {
            Span<double> top = a.Slice(k * n, n);
            int best = PivotRow(a, n, k);
            double size = Math.Abs(a[(best * n) + k]);
            if (!(size > least) || !double.IsFinite(size))
            {
                leastPivot = 0;
                return 0;
            }

            leastPivot = Math.Min(leastPivot, size);
            swaps[k] = best;
            if (best != k)
            {
                sign = -sign;
                Span<double> other = a.Slice(best * n, n);
                for (int j = 0; j < top.Length; j++)
                {
                    (top[j], other[j]) = (other[j], top[j]);
                }
            }

            double over = 1 / top[k];
            sign = over < 0 ? -sign : sign;
            for (int i = k + 1; i < n; i++)
            {
                Span<double> row = a.Slice(i * n, n);
                double factor = row[k] * over;
                row[k] = factor;
                for (int j = k + 1; j < row.Length; j++)
                {
                    row[j] -= factor * top[j];
                }
            }
        }

        return sign;
    }

    /// <summary>Solves A X = B with the factor; <paramref name="b"/> becomes X.</summary>
    /// <param name="factor">From <see cref="Factor"/>.</param>
    /// <param name="swaps">Likewise.</param>
    /// <param name="b">n × columns, row by row.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §3.4.2, §3.1.</remarks>
    public static void Solve(ReadOnlySpan<double> factor, ReadOnlySpan<int> swaps, Span<double> b)
    {
        // Rows were swapped whole, so the right side is swapped first and the triangles follow.
        int n = swaps.Length, columns = b.Length / n;
        for (int k = 0; k < n; k++)
        {
            for (int c = 0, other = swaps[k]; other != k && c < columns; c++)
            {
                (b[(k * columns) + c], b[(other * columns) + c]) = (b[(other * columns) + c], b[(k * columns) + c]);
            }
        }

        for (int c = 0; c < columns; c++)
        {
            Substitute(factor, b[c..], n, columns);
        }
    }

    private static void Substitute(ReadOnlySpan<double> factor, Span<double> b, int n, int step)
    {
        for (int i = 1; i < n; i++)
        {
            ReadOnlySpan<double> row = factor.Slice(i * n, i);
            double sum = b[i * step];
            for (int k = 0; k < row.Length; k++)
            {
                sum -= row[k] * b[k * step];
            }

            b[i * step] = sum;
        }

        for (int i = n - 1; i >= 0; i--)
        {
            ReadOnlySpan<double> row = factor.Slice(i * n, n);
            double sum = b[i * step];
            for (int k = i + 1; k < row.Length; k++)
            {
                sum -= row[k] * b[k * step];
            }

            b[i * step] = sum / row[i];
        }
    }

    /// <summary>Solves A X = B once: <paramref name="a"/> is used up, <paramref name="b"/> becomes X.</summary>
    /// <param name="a">n × n, row by row; singular where a pivot is below <see cref="LeastPivot"/> of its largest entry.</param>
    /// <param name="b">n × columns, row by row.</param>
    /// <param name="n">Order.</param>
    /// <returns>Sign of the determinant of A; 0 when it is singular or not finite, and then <paramref name="b"/> means nothing.</returns>
    /// <remarks>Source: Golub and Van Loan (2013), §3.4.</remarks>
    public static int Solve(Span<double> a, Span<double> b, int n)
    {
        double largest = 0;
        foreach (double entry in a[..(n * n)])
        {
            largest = Math.Max(largest, Math.Abs(entry));
        }

        Span<int> swaps = n <= 64 ? stackalloc int[n] : new int[n];
        int sign = Factor(a, swaps, out _, LeastPivot * largest);
        if (sign != 0)
        {
            Solve(a, swaps, b);
        }

        return sign;
    }

    private static int PivotRow(ReadOnlySpan<double> a, int n, int k)
    {
        int best = k;
        double size = Math.Abs(a[(k * n) + k]);
        for (int i = k + 1; i < n; i++)
        {
            double other = Math.Abs(a[(i * n) + k]);
            if (other > size)
            {
                (best, size) = (i, other);
            }
        }

        return best;
    }
}
