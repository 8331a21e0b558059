namespace Cornerwright.Mechanics.Doubt;

/// <summary>
/// The distribution of a value that depends on its inputs in first order: a normal part, and the one uniform part
/// that weighs most, taken exactly; every other uniform part is counted as normal.
/// </summary>
/// <param name="Normal">Standard deviation of the normal part, in the value's unit, at least 0.</param>
/// <param name="HalfWidth">Half width of the uniform part, in the value's unit, at least 0.</param>
/// <remarks>The default value is a value without doubt. Source: JCGM 100:2008 (GUM), 5.1.2; docs/theory/doubt.md §1.</remarks>
public readonly record struct LinearDoubt(double Normal, double HalfWidth)
{
    /// <summary>Standard deviation of the whole, in the value's unit.</summary>
    public double StandardDeviation => Math.Sqrt((Normal * Normal) + (HalfWidth * HalfWidth / 3));

    /// <summary>Puts the contributions of all inputs together.</summary>
    /// <param name="contributions">Derivative times standard deviation of each input, in the value's unit; the sign plays no part.</param>
    /// <param name="uniform">Which of them are uniform.</param>
    /// <remarks>Source: JCGM 100:2008 (GUM), eq. 10.</remarks>
    public static LinearDoubt Of(ReadOnlySpan<double> contributions, ReadOnlySpan<bool> uniform)
    {
        double square = 0, largest = 0;
        for (int i = 0; i < contributions.Length; i++)
        {
            double c = Math.Abs(contributions[i]);
            if (uniform[i] && c > largest)
            {
                (c, largest) = (largest, c);
            }

            square += c * c;
        }

        return new(Math.Sqrt(square), largest * Math.Sqrt(3));
    }

    /// <summary>Probability that the value lies between two limits (either may be infinite).</summary>
    /// <param name="value">Best estimate.</param>
    /// <param name="low">In the value's unit, may be minus infinity.</param>
    /// <param name="high">In the value's unit, may be infinity.</param>
    /// <remarks>Source: convolution of a uniform with a normal distribution; docs/theory/doubt.md §1.</remarks>
    public double Within(double value, double low, double high)
    {
        // Without doubt a value that lies on its limit is inside.
        if (!(Normal > 0) && !(HalfWidth > 0))
        {
            return value >= low && value <= high ? 1 : 0;
        }

        double p = Below(high - value) - Below(low - value);
        return Math.Clamp(p, 0, 1);
    }

    /// <summary>Probability that the deviation from the best estimate is below <paramref name="x"/>.</summary>
    /// <remarks>Source: as <see cref="Within"/>.</remarks>
    public double Below(double x)
    {
        if (double.IsInfinity(x))
        {
            return x > 0 ? 1 : 0;
        }

        // Degenerate mixes first: no doubt at all, one kind alone.
        if (!(Normal > 0))
        {
            return HalfWidth > 0 ? Math.Clamp(0.5 + (x / (2 * HalfWidth)), 0, 1) : x >= 0 ? 1 : 0;
        }

        if (!(HalfWidth > 1e-6 * Normal))
        {
            return NormalDistribution.Below(x / Normal);
        }

        // Mean of Φ((x - t)/s) for t over the uniform part, by Φ's integral uΦ(u) + φ(u).
        double above = (x + HalfWidth) / Normal, below = (x - HalfWidth) / Normal;
        return Normal / (2 * HalfWidth) * (Integral(above) - Integral(below));
    }

    private static double Integral(double u) => (u * NormalDistribution.Below(u)) + NormalDistribution.Density(u);
}
