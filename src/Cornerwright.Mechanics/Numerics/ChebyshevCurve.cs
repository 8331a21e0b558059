namespace Cornerwright.Mechanics.Numerics;

/// <summary>A smooth quantity over travel, sampled once at Chebyshev points and read from its polynomial from then on.</summary>
/// <remarks>
/// For motions that are dear to compute: nine samples of a suspension's lengths and angles over 0.2 m leave below 1e-7 m and rad.
/// Source: Trefethen, Approximation Theory and Approximation Practice (2013), ch. 3 and 8; derivatives by the recurrence of ch. 21.
/// </remarks>
public sealed class ChebyshevCurve : SampledCurve
{
    private const int MostKept = 16;

    /// <summary>Row k of table n: cos(πk(n - i - ½)/n), i from 0; for up to sixteen points.</summary>
    private static readonly double[][] Cosines = [.. Enumerable.Range(0, MostKept + 1).Select(CosinesFor)];

    private readonly double[] value, first, second;

    private ChebyshevCurve(double start, double end, double[] coefficients)
    {
        (Start, End, value) = (start, end, coefficients);
        first = Derivative(coefficients, 2 / (end - start));
        second = Derivative(first, 2 / (end - start));
    }

    /// <inheritdoc/>
    public override double Start { get; }

    /// <inheritdoc/>
    public override double End { get; }

    /// <summary>Travels at which to sample, m, in order. Source: Trefethen (2013), ch. 2, points of the first kind.</summary>
    /// <param name="start">Lower end, m.</param>
    /// <param name="end">Upper end, m, above it.</param>
    /// <param name="count">At least 3.</param>
    public static double[] Points(double start, double end, int count)
    {
        Require.Positive(end - start);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        double[] points = new double[count];
        for (int i = 0; i < count; i++)
        {
            points[i] = (0.5 * (start + end))
                + (0.5 * (end - start) * (count <= MostKept ? Cosines[count][count + i] : Math.Cos(Math.PI * (count - i - 0.5) / count)));
        }

        return points;
    }

    /// <summary>The curve through samples at <see cref="Points"/>. Source: discrete cosine transform, Trefethen (2013), ch. 3.</summary>
    /// <exception cref="ArgumentException">A sample is not finite: the caller asks where the motion cannot be.</exception>
    public static ChebyshevCurve Through(double start, double end, ReadOnlySpan<double> samples)
    {
        Require.Positive(end - start);
        int n = samples.Length;
        double[] coefficients = new double[n], cosines = n <= MostKept ? Cosines[n] : CosinesFor(n);
        for (int k = 0; k < n; k++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                Require.Finite(samples[i]);
                sum += samples[i] * cosines[(k * n) + i];
            }

            coefficients[k] = sum * (k == 0 ? 1 : 2) / n;
        }

        return new(start, end, coefficients);
    }

    /// <inheritdoc/>
    /// <remarks>Source: Clenshaw's recurrence.</remarks>
    public override (double Value, double First, double Second) At(double position)
    {
        double inside = Math.Clamp(position, Start, End), t = ((2 * inside) - Start - End) / (End - Start), beyond = position - inside;
        double slope = Sum(first, t);
        return (Sum(value, t) + (slope * beyond), slope, beyond == 0 ? Sum(second, t) : 0);
    }

    private static double[] CosinesFor(int n)
    {
        double[] table = new double[n * n];
        for (int k = 0; k < n; k++)
        {
            for (int i = 0; i < n; i++)
            {
                table[(k * n) + i] = Math.Cos(Math.PI * k * (n - i - 0.5) / n);
            }
        }

        return table;
    }

    private static double Sum(double[] c, double t)
    {
        double b1 = 0, b2 = 0;
        for (int k = c.Length - 1; k >= 1; k--)
        {
            (b1, b2) = (c[k] + (2 * t * b1) - b2, b1);
        }

        return c[0] + (t * b1) - b2;
    }

    private static double[] Derivative(double[] c, double scale)
    {
        double[] d = new double[c.Length];
        double ahead = 0, next = 0;
        for (int k = c.Length - 1; k >= 1; k--)
        {
            double here = ahead + (2 * k * c[k]);
            d[k - 1] = here * scale;
            (ahead, next) = (next, here);
        }

        d[0] *= 0.5;
        return d;
    }
}
