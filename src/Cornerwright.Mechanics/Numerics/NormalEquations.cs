namespace Cornerwright.Mechanics.Numerics;

/// <summary>Linear least squares of a few unknowns, gathered row by row: Σ w rᵀr x = Σ w rᵀv.</summary>
/// <remarks>
/// Lives in the caller's spans, so that a fit allocates nothing. Normal equations square the condition number: the rows' units must be
/// such that all unknowns count alike, and unknowns that the rows do not fix to 1e-6 of each other are refused
/// (<see cref="Cholesky.OfReadings"/>). Against MathNet.Numerics' QR: NormalEquationsTests.
/// Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §5.3.2 (the method of normal equations).
/// </remarks>
public readonly ref struct NormalEquations
{
    private readonly Span<double> matrix;
    private readonly Span<double> right;

    /// <param name="matrix">At least n², n being the length of <paramref name="right"/>.</param>
    /// <param name="right">As many as there are unknowns.</param>
    public NormalEquations(Span<double> matrix, Span<double> right)
    {
        this.matrix = matrix[..(right.Length * right.Length)];
        this.right = right;
        Clear();
    }

    /// <summary>The sum of the rows' squares and products so far, n × n.</summary>
    public ReadOnlySpan<double> Matrix => matrix;

    /// <summary>Right-hand side; the unknowns after <see cref="Solve"/>.</summary>
    public ReadOnlySpan<double> Unknowns => right;

    /// <summary>Forgets all rows. Source: definition.</summary>
    public void Clear()
    {
        matrix.Clear();
        right.Clear();
    }

    /// <summary>One more row that should give a value.</summary>
    /// <param name="row">How the value goes with each unknown.</param>
    /// <param name="value">What it should be.</param>
    /// <param name="weight">At least 0; the inverse variance, or its ratio to others.</param>
    /// <remarks>Source: Golub and Van Loan (2013), §5.3.2.</remarks>
    public void Add(ReadOnlySpan<double> row, double value, double weight = 1)
    {
        int n = right.Length;
        for (int i = 0; i < n; i++)
        {
            double share = weight * row[i];
            right[i] += share * value;
            for (int k = 0; k < n; k++)
            {
                matrix[(i * n) + k] += share * row[k];
            }
        }
    }

    /// <summary>Solves; the matrix is used up.</summary>
    /// <param name="leastPivot">As <see cref="Cholesky.Factor"/> takes it.</param>
    /// <returns>False where the rows do not fix all unknowns, or are not finite; then the unknowns mean nothing.</returns>
    /// <remarks>Source: Golub and Van Loan (2013), algorithm 5.3.1.</remarks>
    public bool Solve(double leastPivot = Cholesky.OfReadings)
    {
        if (!Cholesky.Factor(matrix, right.Length, leastPivot))
        {
            return false;
        }

        Cholesky.Solve(matrix, right);
        return true;
    }

    /// <summary>Covariance of the unknowns for rows whose weights are inverse variances; the matrix is used up.</summary>
    /// <param name="into">n × n, row by row.</param>
    /// <returns>False as in <see cref="Solve"/>.</returns>
    /// <remarks>The inverse of the matrix, column by column. Source: Golub and Van Loan (2013), §5.3.1.</remarks>
    public bool Covariance(Span<double> into)
    {
        int n = right.Length;
        if (!Cholesky.Factor(matrix, n, Cholesky.OfReadings))
        {
            return false;
        }

        // Symmetric: a column solved for is a row as well.
        into[..(n * n)].Clear();
        for (int k = 0; k < n; k++)
        {
            Span<double> column = into.Slice(k * n, n);
            column[k] = 1;
            Cholesky.Solve(matrix, column);
        }

        return true;
    }
}
