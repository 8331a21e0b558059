namespace Cornerwright.Mechanics.Numerics;

/// <summary>Symmetric positive definite matrices: the lower triangle L with L Lᵀ = A, and systems solved with it.</summary>
/// <remarks>
/// Matrices lie row by row in the caller's span; nothing is allocated. The factor is exact for a matrix that differs from A by at most
/// (n + 1) ε |A| entry by entry, ε = 2⁻⁵³ (Golub and Van Loan (2013), §4.2.6); so a solution's relative error is about n ε times the
/// condition number. Against MathNet.Numerics on random matrices up to 12 rows: CholeskyTests.
/// Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §4.2 (Cholesky factorization), §3.1 (triangular systems).
/// </remarks>
public static class Cholesky
{
    /// <summary>
    /// Least share of a diagonal entry that must be left of it for normal equations of readings: below it the unknown is not fixed by the
    /// data, since normal equations square the condition number and 1e-12 is then all that rounding leaves.
    /// </summary>
    public const double OfReadings = 1e-12;

    /// <summary>The same for a covariance or a matrix with a unit added: a hundred roundings.</summary>
    public const double OfCovariance = 1e-14;

    /// <summary>Factors in place.</summary>
    /// <param name="a">n × n; its lower triangle is read and becomes L, what is above the diagonal stays as it was.</param>
    /// <param name="n">Order.</param>
    /// <param name="leastPivot">Share of a diagonal entry that must be left of it, for example <see cref="OfReadings"/>.</param>
    /// <returns>
    /// False where the matrix is not positive definite to that share, or not finite; then <paramref name="a"/> means nothing.
    /// </returns>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 4.2.1.</remarks>
    public static bool Factor(Span<double> a, int n, double leastPivot)
    {
        for (int j = 0; j < n; j++)
        {
            double pivot = a[(j * n) + j], least = leastPivot * Math.Abs(pivot);
            for (int k = 0; k < j; k++)
            {
                pivot -= a[(j * n) + k] * a[(j * n) + k];
            }

            if (!(pivot > least) || !double.IsFinite(pivot))
            {
                return false;
            }

            double root = Math.Sqrt(pivot);
            a[(j * n) + j] = root;
            for (int i = j + 1; i < n; i++)
            {
                double sum = a[(i * n) + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= a[(i * n) + k] * a[(j * n) + k];
                }

                a[(i * n) + j] = sum / root;
            }
        }

        return true;
    }

    /// <summary>Factors a matrix that may be singular in place: a row that the earlier ones settle gets a zero on the diagonal.</summary>
    /// <param name="a">n × n, symmetric, positive semidefinite; its lower triangle is read and becomes L.</param>
    /// <param name="n">Order.</param>
    /// <param name="settled">What is left of a diagonal entry, in its unit, below which it counts as 0.</param>
    /// <remarks>Below a zero on the diagonal the column is zero too. Source: Golub and Van Loan (2013), §4.2.8, without exchange.</remarks>
    public static void FactorSemidefinite(Span<double> a, int n, double settled)
    {
        for (int j = 0; j < n; j++)
        {
            double pivot = a[(j * n) + j];
            for (int k = 0; k < j; k++)
            {
                pivot -= a[(j * n) + k] * a[(j * n) + k];
            }

            double root = pivot > settled ? Math.Sqrt(pivot) : 0;
            a[(j * n) + j] = root;
            for (int i = j + 1; i < n; i++)
            {
                double sum = a[(i * n) + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= a[(i * n) + k] * a[(j * n) + k];
                }

                a[(i * n) + j] = root > 0 ? sum / root : 0;
            }
        }
    }

    /// <summary>Solves A x = b with A's factor; <paramref name="b"/> becomes x.</summary>
    /// <param name="factor">From <see cref="Factor"/>.</param>
    /// <param name="b">Right-hand side; its length is the order.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §4.2.</remarks>
    public static void Solve(ReadOnlySpan<double> factor, Span<double> b)
    {
        Forward(factor, b);
        int n = b.Length;
        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                b[i] -= factor[(k * n) + i] * b[k];
            }

            b[i] /= factor[(i * n) + i];
        }
    }

    /// <summary>Solves L y = b; <paramref name="b"/> becomes y.</summary>
    /// <param name="factor">L, from <see cref="Factor"/>.</param>
    /// <param name="b">Right-hand side; its length is the order.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §3.1.</remarks>
    public static void Forward(ReadOnlySpan<double> factor, Span<double> b)
    {
        int n = b.Length;
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                b[i] -= factor[(i * n) + k] * b[k];
            }

            b[i] /= factor[(i * n) + i];
        }
    }
}
