namespace Cornerwright.Mechanics.Doubt;

/// <summary>The standard normal distribution.</summary>
public static class NormalDistribution
{
    /// <summary>Probability that a standard normal number is below <paramref name="x"/>.</summary>
    /// <remarks>
    /// Φ(x) = erfc(-x/√2)/2 with erfc by the Chebyshev fit of Numerical Recipes: relative error below 1.2e-7.
    /// Source: Press et al., Numerical Recipes in C, 2nd ed. (1992), §6.2 (erfcc).
    /// </remarks>
    public static double Below(double x) => 0.5 * Erfc(-x / Math.Sqrt(2));

    /// <summary>Density at <paramref name="x"/>.</summary>
    /// <remarks>Source: definition.</remarks>
    public static double Density(double x) => Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);

    /// <summary>The number below which a share <paramref name="p"/> (between 0 and 1, both excluded) of the distribution lies.</summary>
    /// <remarks>
    /// Relative error below 1.2e-9. Source: P. J. Acklam (2003), "An algorithm for computing the inverse normal cumulative distribution
    /// function"; coefficients from memory, checked against <see cref="Below"/> by a test.
    /// </remarks>
    public static double Quantile(double p)
    {
        if (!(p > 0) || !(p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A share lies between 0 and 1, both excluded.");
        }

        const double Tail = 0.02425;
        if (p > 1 - Tail)
        {
            return -Quantile(1 - p);
        }

        if (p < Tail)
        {
            double q = Math.Sqrt(-2 * Math.Log(p));
            double top = (((((-7.784894002430293e-03 * q) - 3.223964580411365e-01) * q) - 2.400758277161838) * q) - 2.549732539343734;
            double bottom = (((((7.784695709041462e-03 * q) + 3.224671290700398e-01) * q) + 2.445134137142996) * q) + 3.754408661907416;
            return ((((top * q) + 4.374664141464968) * q) + 2.938163982698783) / ((bottom * q) + 1);
        }

        double c = p - 0.5, r = c * c;
        double over = (((((-3.969683028665376e+01 * r) + 2.209460984245205e+02) * r) - 2.759285104469687e+02) * r) + 1.383577518672690e+02;
        double under = (((((-5.447609879822406e+01 * r) + 1.615858368580409e+02) * r) - 1.556989798598866e+02) * r) + 6.680131188771972e+01;
        return ((((over * r) - 3.066479806614716e+01) * r) + 2.506628277459239) * c / ((((under * r) - 1.328068155288572e+01) * r) + 1);
    }

    private static double Erfc(double x)
    {
        double z = Math.Abs(x), t = 1 / (1 + (0.5 * z));
        double poly = -1.26551223 + (t * (1.00002368 + (t * (0.37409196 + (t * (0.09678418 + (t * (-0.18628806 + (t * (0.27886807
            + (t * (-1.13520398 + (t * (1.48851587 + (t * (-0.82215223 + (t * 0.17087277)))))))))))))))));
        double result = t * Math.Exp((-z * z) + poly);
        return x >= 0 ? result : 2 - result;
    }
}
