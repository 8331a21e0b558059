namespace Cornerwright.Mechanics.Numerics;

/// <summary>
/// Five linear equations, factored in place and solved for as many right sides as wanted; nothing is allocated after construction.
/// </summary>
/// <remarks>
/// <see cref="Lu"/> for the one size that is solved millions of times, written out: the five conditions on a knuckle. A right side takes
/// a seventh of the time that the loops of <see cref="Lu"/> take (docs/decisions/0017-solvers-and-readers-of-our-own.md), and both agree to
/// rounding (LuTests). Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §3.4 (Gaussian elimination with partial pivoting).
/// </remarks>
internal sealed class FiveEquations
{
    /// <summary>In the unit of the entries, 1 and m: what is smaller is rounding of coordinates of a few metres.</summary>
    private const double LeastPivot = 1e-14;

    private const int N = 5;

    private readonly double[] a = new double[N * N];
    private readonly double[] inverse = new double[N];
    private readonly int[] swap = new int[N];

    /// <summary>Row by row; written before <see cref="Factor"/>, destroyed by it.</summary>
    public Span<double> Entries => a;

    /// <summary>Factors the entries.</summary>
    /// <param name="leastPivot">Smallest pivot in size, in the unit of the entries: near zero the equations are nearly dependent.</param>
    /// <returns>Sign of the determinant; 0 when singular or not finite, and then nothing may be solved.</returns>
    public int Factor(out double leastPivot)
    {
        int sign = Lu.Factor(a, swap, out leastPivot, LeastPivot);
        for (int k = 0; k < N; k++)
        {
            inverse[k] = 1 / a[(k * N) + k];
        }

        return sign;
    }

    /// <summary>Turns a right side of five numbers into the solution, in place.</summary>
    public void Solve(Span<double> b)
    {
        ReadOnlySpan<double> m = a.AsSpan(0, N * N);
        b = b[..N];

        // All rows were swapped whole, so the right side is swapped first and the triangles follow.
        for (int k = 0; k < N; k++)
        {
            int other = swap[k];
            (b[k], b[other]) = (b[other], b[k]);
        }

        double b0 = b[0];
        double b1 = b[1] - (m[5] * b0);
        double b2 = b[2] - (m[10] * b0) - (m[11] * b1);
        double b3 = b[3] - (m[15] * b0) - (m[16] * b1) - (m[17] * b2);
        double b4 = b[4] - (m[20] * b0) - (m[21] * b1) - (m[22] * b2) - (m[23] * b3);
        b4 *= inverse[4];
        b3 = (b3 - (m[19] * b4)) * inverse[3];
        b2 = (b2 - (m[13] * b3) - (m[14] * b4)) * inverse[2];
        b1 = (b1 - (m[7] * b2) - (m[8] * b3) - (m[9] * b4)) * inverse[1];
        b0 = (b0 - (m[1] * b1) - (m[2] * b2) - (m[3] * b3) - (m[4] * b4)) * inverse[0];
        (b[0], b[1], b[2], b[3], b[4]) = (b0, b1, b2, b3, b4);
    }
}
