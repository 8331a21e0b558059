namespace Cornerwright.Mechanics.Numerics;

/// <summary>Symmetric positive systems of a few unknowns.</summary>
/// <remarks>Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §4.2 (Cholesky).</remarks>
internal static class SmallSystem
{
    /// <summary>Smallest pivot over the diagonal entry it came from that still means something: below it the unknown is not fixed by the data.</summary>
    private const double LeastPivot = 1e-12;

    /// <summary>Solves in place: <paramref name="m"/> is destroyed, <paramref name="b"/> becomes the solution.</summary>
    /// <returns>False where the matrix is not positive to rounding or not finite.</returns>
    public static bool Solve(Span<double> m, Span<double> b, int n)
    {
        for (int j = 0; j < n; j++)
        {
            double pivot = m[(j * n) + j];
            double least = LeastPivot * Math.Abs(pivot);
            for (int k = 0; k < j; k++)
            {
                pivot -= m[(j * n) + k] * m[(j * n) + k];
            }

            if (!(pivot > least))
            {
                return false;
            }

            double root = Math.Sqrt(pivot);
            m[(j * n) + j] = root;
            for (int i = j + 1; i < n; i++)
            {
                double sum = m[(i * n) + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= m[(i * n) + k] * m[(j * n) + k];
                }

                m[(i * n) + j] = sum / root;
            }
        }

        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                b[i] -= m[(i * n) + k] * b[k];
            }

            b[i] /= m[(i * n) + i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                b[i] -= m[(k * n) + i] * b[k];
            }

            b[i] /= m[(i * n) + i];
        }

        return true;
    }
}
