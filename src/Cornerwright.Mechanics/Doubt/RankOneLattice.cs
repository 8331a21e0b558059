namespace Cornerwright.Mechanics.Doubt;

/// <summary>Evenly spread points of the unit cube: a shifted rank-1 lattice, made component by component.</summary>
/// <remarks>
/// Point k is the fraction of k z/N + shift. Each component of z is the one that keeps the worst-case error least (kernel
/// 2π²(x² - x + 1/6), weight 0.1 for every coordinate), so that all pairs of coordinates are spread evenly.
/// Source: I. H. Sloan and A. V. Reztsov, Component-by-component construction of good lattice rules, Math. Comp. 71 (2002) 263;
/// J. Dick, F. Y. Kuo and I. H. Sloan, High-dimensional integration: the quasi-Monte Carlo way, Acta Numerica 22 (2013) 133, §5.
/// </remarks>
public static class RankOneLattice
{
    /// <summary>N, a prime: a thousand points give shares of variance to about a point.</summary>
    public const int Points = 1021;

    /// <summary>Most coordinates; more inputs than half of this are never asked apart.</summary>
    public const int MostCoordinates = 40;

    /// <summary>Added to every coordinate, so that none is 0: the golden section, far from all fractions.</summary>
    private const double Shift = 0.6180339887498949;

    /// <summary>Heavier, and the product of many coordinates would rule; lighter, and pairs would not count.</summary>
    private const double Weight = 0.1;

    private static readonly Lazy<int[]> Generator = new(Build);

    /// <summary>One point.</summary>
    /// <param name="k">0 to <see cref="Points"/> - 1.</param>
    /// <param name="point">Written: coordinates between 0 and 1, both excluded; at most <see cref="MostCoordinates"/>.</param>
    /// <remarks>Source: Dick, Kuo and Sloan (2013), eq. 5.1 and 5.2.</remarks>
    public static void Write(int k, Span<double> point)
    {
        int[] z = Generator.Value;
        for (int j = 0; j < point.Length; j++)
        {
            double x = ((long)k * z[j] % Points / (double)Points) + (Shift * (j + 1) % 1);
            x -= Math.Floor(x);
            point[j] = Math.Clamp(x, 1e-9, 1 - 1e-9);
        }
    }

    private static int[] Build()
    {
        double[] kernel = new double[Points], product = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            double x = i / (double)Points;
            kernel[i] = 2 * Math.PI * Math.PI * ((x * x) - x + (1.0 / 6));
        }

        Array.Fill(product, 1);
        int[] z = new int[MostCoordinates];
        for (int j = 0; j < MostCoordinates; j++)
        {
            double least = double.PositiveInfinity;
            for (int candidate = 1; candidate <= Points / 2; candidate++)
            {
                double sum = 0;
                for (int k = 0, at = 0; k < Points; k++)
                {
                    sum += product[k] * kernel[at];
                    at += candidate;
                    at -= at >= Points ? Points : 0;
                }

                if (sum < least - 1e-9)
                {
                    (least, z[j]) = (sum, candidate);
                }
            }

            for (int k = 0; k < Points; k++)
            {
                product[k] *= 1 + (Weight * kernel[(int)((long)k * z[j] % Points)]);
            }
        }

        return z;
    }
}
