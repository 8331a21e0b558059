namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>Five linear equations, factored in place and solved for as many right sides as wanted; nothing is allocated after construction.</summary>
/// <remarks>Source: Golub and Van Loan, Matrix Computations, 4th ed. (2013), §3.4 (Gaussian elimination with partial pivoting).</remarks>
internal sealed class FiveEquations
{
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
        int sign = 1;
        leastPivot = double.MaxValue;
        Span<double> m = a.AsSpan(0, N * N);
        for (int k = 0; k < N; k++)
        {
            int kk = k * N, best = k;
            double size = Math.Abs(m[kk + k]);
            for (int i = k + 1; i < N; i++)
            {
                double other = Math.Abs(m[(i * N) + k]);
                if (other > size)
                {
                    (best, size) = (i, other);
                }
            }

            if (!(size > 1e-14) || !(size < 1e14))
            {
                leastPivot = 0;
                return 0;
            }

            leastPivot = Math.Min(leastPivot, size);
            swap[k] = best;
            if (best != k)
            {
                sign = -sign;
                int bb = best * N;
                for (int j = 0; j < N; j++)
                {
                    (m[kk + j], m[bb + j]) = (m[bb + j], m[kk + j]);
                }
            }

            double pivot = m[kk + k], over = 1 / pivot;
            inverse[k] = over;
            sign = pivot < 0 ? -sign : sign;
            for (int i = k + 1; i < N; i++)
            {
                int ii = i * N;
                double factor = m[ii + k] * over;
                m[ii + k] = factor;
                for (int j = k + 1; j < N; j++)
                {
                    m[ii + j] -= factor * m[kk + j];
                }
            }
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
