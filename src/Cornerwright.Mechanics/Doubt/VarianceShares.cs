namespace Cornerwright.Mechanics.Doubt;

/// <summary>What one input does to a value's variance.</summary>
/// <param name="First">Share that would go on average if this input alone were known exactly, 0 to 1.</param>
/// <param name="Total">
/// Share that would stay on average if everything else were known exactly, 0 to 1; larger than First where it works together with others.
/// </param>
public readonly record struct VarianceShare(double First, double Total);

/// <summary>Shares of variance of a value by sampling: no straight line is assumed.</summary>
/// <param name="ByInput">In the order of the inputs.</param>
/// <param name="Mean">Of the value.</param>
/// <param name="StandardDeviation">Of the value.</param>
/// <param name="Within">Share of the points at which the value lay within the limits.</param>
/// <param name="Lost">Share of the points at which there was no value; they count as outside the limits and nowhere else.</param>
public sealed record VarianceShares(IReadOnlyList<VarianceShare> ByInput, double Mean, double StandardDeviation, double Within, double Lost)
{
    /// <summary>Most inputs asked apart: each needs two coordinates.</summary>
    public const int MostInputs = RankOneLattice.MostCoordinates / 2;

    /// <summary>Samples a value.</summary>
    /// <param name="value">By deviations of the inputs, each in its own standard deviations; NaN where it has none.</param>
    /// <param name="uniform">By input: uniform rather than normal. At most <see cref="MostInputs"/>.</param>
    /// <param name="low">Lower limit, may be minus infinity.</param>
    /// <param name="high">Upper limit, may be infinity.</param>
    /// <remarks>
    /// Two samples A and B, and for every input A with that input's column of B. First: mean of f(B)(f(AB) - f(A)); total: mean of
    /// (f(A) - f(AB))²/2; both over the variance.
    /// Source: A. Saltelli et al., Variance based sensitivity analysis of model output, Comput. Phys. Commun. 181 (2010) 259, table 2
    /// (b) and (f), the latter by M. J. W. Jansen (1999).
    /// </remarks>
    public static VarianceShares Of(
        Func<ReadOnlySpan<double>, double> value, ReadOnlySpan<bool> uniform, double low = double.NegativeInfinity,
        double high = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(value);
        int n = uniform.Length;
        if (n > MostInputs)
        {
            throw new ArgumentException($"{n} inputs; at most {MostInputs}.", nameof(uniform));
        }

        double[] point = new double[2 * n], a = new double[n], b = new double[n], row = new double[n];
        double[] atA = new double[RankOneLattice.Points], atB = new double[RankOneLattice.Points];
        double[,] mixed = new double[RankOneLattice.Points, n];
        int within = 0, lost = 0;
        for (int k = 0; k < RankOneLattice.Points; k++)
        {
            RankOneLattice.Write(k, point);
            for (int i = 0; i < n; i++)
            {
                a[i] = Deviation(point[2 * i], uniform[i]);
                b[i] = Deviation(point[(2 * i) + 1], uniform[i]);
            }

            (atA[k], atB[k]) = (value(a), value(b));
            within += atA[k] >= low && atA[k] <= high ? 1 : 0;
            lost += double.IsFinite(atA[k]) ? 0 : 1;
            for (int i = 0; i < n; i++)
            {
                a.CopyTo(row, 0);
                row[i] = b[i];
                mixed[k, i] = value(row);
            }
        }

        var (mean, variance) = Spread(atA, atB);
        var shares = new VarianceShare[n];
        for (int i = 0; i < n; i++)
        {
            shares[i] = Share(i, atA, atB, mixed, mean, variance);
        }

        const double All = RankOneLattice.Points;
        return new VarianceShares(shares, mean, Math.Sqrt(variance), within / All, lost / All);
    }

    private static double Deviation(double u, bool uniform) => uniform ? Math.Sqrt(3) * ((2 * u) - 1) : NormalDistribution.Quantile(u);

    private static (double Mean, double Variance) Spread(double[] a, double[] b)
    {
        double sum = 0, square = 0;
        int count = 0;
        foreach (double f in a.Concat(b).Where(double.IsFinite))
        {
            (sum, count) = (sum + f, count + 1);
        }

        double mean = count > 0 ? sum / count : 0;
        foreach (double f in a.Concat(b).Where(double.IsFinite))
        {
            square += (f - mean) * (f - mean);
        }

        return (mean, count > 1 ? square / count : 0);
    }

    private static VarianceShare Share(int i, double[] a, double[] b, double[,] mixed, double mean, double variance)
    {
        double first = 0, total = 0;
        int count = 0;
        for (int k = 0; k < a.Length; k++)
        {
            double ab = mixed[k, i];
            if (double.IsFinite(a[k]) && double.IsFinite(b[k]) && double.IsFinite(ab))
            {
                // The mean taken off: the same expectation, far less noise.
                first += (b[k] - mean) * (ab - a[k]);
                total += (a[k] - ab) * (a[k] - ab) / 2;
                count++;
            }
        }

        return count > 0 && variance > 0
            ? new VarianceShare(Math.Clamp(first / count / variance, 0, 1), Math.Clamp(total / count / variance, 0, 1))
            : default;
    }
}
