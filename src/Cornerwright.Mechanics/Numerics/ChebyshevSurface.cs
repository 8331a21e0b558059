namespace Cornerwright.Mechanics.Numerics;

/// <summary>A smooth quantity over two numbers, sampled once at Chebyshev points of both and read from its polynomial.</summary>
/// <remarks>Source: Trefethen, Approximation Theory and Approximation Practice (2013), ch. 3, in each number for itself.</remarks>
public sealed class ChebyshevSurface
{
    private readonly double[] coefficients;   // by the first number's degree, then the second's
    private readonly int columns;
    private readonly (double Start, double End) first, second;

    private ChebyshevSurface(double[] coefficients, int columns, (double Start, double End) first, (double Start, double End) second) =>
        (this.coefficients, this.columns, this.first, this.second) = (coefficients, columns, first, second);

    /// <summary>The surface through samples at <see cref="ChebyshevCurve.Points"/> of both ranges.</summary>
    /// <param name="first">Range of the first number.</param>
    /// <param name="second">Of the second.</param>
    /// <param name="samples">By the first number's points, then the second's.</param>
    /// <param name="columns">How many points the second has.</param>
    /// <exception cref="ArgumentException">A sample is not finite.</exception>
    /// <remarks>Source: discrete cosine transform, Trefethen (2013), ch. 3.</remarks>
    public static ChebyshevSurface Through((double Start, double End) first, (double Start, double End) second,
        ReadOnlySpan<double> samples, int columns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        int rows = samples.Length / columns;
        double[] values = new double[samples.Length], line = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            Transformed(samples.Slice(i * columns, columns), values.AsSpan(i * columns, columns));
        }

        double[] column = new double[rows];
        for (int k = 0; k < columns; k++)
        {
            for (int i = 0; i < rows; i++)
            {
                column[i] = values[(i * columns) + k];
            }

            Transformed(column, line);
            for (int i = 0; i < rows; i++)
            {
                values[(i * columns) + k] = line[i];
            }
        }

        return new(values, columns, first, second);
    }

    /// <summary>True within both ranges. Source: as given.</summary>
    public bool Holds(double a, double b) => a >= first.Start && a <= first.End && b >= second.Start && b <= second.End;

    /// <summary>The value at a place within both ranges. Source: Clenshaw's recurrence, twice.</summary>
    public double At(double a, double b)
    {
        double s = ((2 * a) - first.Start - first.End) / (first.End - first.Start),
            t = ((2 * b) - second.Start - second.End) / (second.End - second.Start), b1 = 0, b2 = 0;
        int rows = coefficients.Length / columns;
        for (int k = rows - 1; k >= 1; k--)
        {
            (b1, b2) = (Row(k, t) + (2 * s * b1) - b2, b1);
        }

        return Row(0, t) + (s * b1) - b2;
    }

    private double Row(int row, double t)
    {
        ReadOnlySpan<double> c = coefficients.AsSpan(row * columns, columns);
        double b1 = 0, b2 = 0;
        for (int k = c.Length - 1; k >= 1; k--)
        {
            (b1, b2) = (c[k] + (2 * t * b1) - b2, b1);
        }

        return c[0] + (t * b1) - b2;
    }

    private static void Transformed(ReadOnlySpan<double> samples, Span<double> into)
    {
        int n = samples.Length;
        for (int k = 0; k < n; k++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                Require.Finite(samples[i]);
                sum += samples[i] * Math.Cos(Math.PI * k * (n - i - 0.5) / n);
            }

            into[k] = sum * (k == 0 ? 1 : 2) / n;
        }
    }
}
