using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Doubt;

/// <summary>
/// One observation at the present estimate: what was read less what is expected, its own standard deviation, and how
/// the expectation moves with each parameter.
/// </summary>
/// <param name="Residual">Read minus expected, in the reading's unit.</param>
/// <param name="Sigma">Of the reading, above 0.</param>
/// <param name="Slopes">Change of the expectation for one prior standard deviation of each parameter.</param>
public sealed record Observation(double Residual, double Sigma, double[] Slopes);

/// <summary>
/// Parameters after some readings: shifts in prior standard deviations, and how much of their doubt is left. Where the readings
/// say nothing, the prior stays.
/// </summary>
/// <remarks>
/// With prior N(0, 1) for every parameter: covariance 1 - V Vᵀ, of rank as many as there are observations.
/// Source: A. Tarantola, Inverse Problem Theory (SIAM, 2005), §3.2 (linear least squares with priors, eq. 3.37 and 3.38);
/// docs/theory/learning.md §2.
/// </remarks>
public sealed class Posterior
{
    private readonly double[,] _modes;   // parameter × mode, orthonormal columns
    private readonly double[] _kept;     // by mode: standard deviation left, 0 to 1

    private Posterior(double[] shifts, double[,] modes, double[] kept, double[] deleted) =>
        (Shifts, _modes, _kept, Deleted) = (shifts, modes, kept, deleted);

    /// <summary>
    /// By parameter: most probable value, in prior standard deviations from the prior. Source: Tarantola (2005), eq. 3.37.
    /// </summary>
    public IReadOnlyList<double> Shifts { get; }

    /// <summary>
    /// By observation: how far it lies from what all others and the priors expect, in standard deviations of that difference.
    /// Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), §2.2.
    /// </summary>
    public IReadOnlyList<double> Deleted { get; }

    /// <summary>Parameters known only by their priors. Source: definition.</summary>
    /// <param name="parameters">How many.</param>
    public static Posterior Prior(int parameters) => new(new double[parameters], new double[parameters, 0], [], []);

    /// <summary>Takes the observations, straightened at the present shifts, into account.</summary>
    /// <param name="at">Present shifts, by parameter.</param>
    /// <param name="observations">Straightened there.</param>
    /// <returns>Null where the numbers do not allow it (not finite).</returns>
    /// <remarks>δ = Hᵀ (H Hᵀ + R)⁻¹ (r + H δ₀). Source: Tarantola (2005), eq. 3.37.</remarks>
    public static Posterior? Of(ReadOnlySpan<double> at, IReadOnlyList<Observation> observations)
    {
        ArgumentNullException.ThrowIfNull(observations);
        int n = at.Length, m = observations.Count;
        if (m == 0)
        {
            return Prior(n);
        }

        // S = H Hᵀ + R, each row in its own sigma, so that R is the unit matrix.
        double[] s = new double[m * m], weights = new double[m];
        for (int i = 0; i < m; i++)
        {
            double sigma = observations[i].Sigma;
            weights[i] = observations[i].Residual / sigma;
            for (int p = 0; p < n; p++)
            {
                weights[i] += observations[i].Slopes[p] / sigma * at[p];
            }

            for (int j = 0; j <= i; j++)
            {
                double dot = 0;
                for (int p = 0; p < n; p++)
                {
                    dot += observations[i].Slopes[p] * observations[j].Slopes[p];
                }

                s[(i * m) + j] = (dot / (sigma * observations[j].Sigma)) + (i == j ? 1 : 0);
            }
        }

        if (!Cholesky.Factor(s, m, Cholesky.OfCovariance))
        {
            return null;
        }

        Cholesky.Solve(s, weights);
        double[] shifts = new double[n], deleted = new double[m];
        for (int i = 0; i < m; i++)
        {
            double[] unit = new double[m];
            unit[i] = 1;
            Cholesky.Solve(s, unit);
            deleted[i] = weights[i] / Math.Sqrt(unit[i]);
            for (int p = 0; p < n; p++)
            {
                shifts[p] += observations[i].Slopes[p] / observations[i].Sigma * weights[i];
            }
        }

        var (modes, kept) = Modes(n, observations, s);
        return new Posterior(shifts, modes, kept, deleted);
    }

    /// <summary>Multiplies by the symmetric square root of the covariance, in place.</summary>
    /// <param name="vector">
    /// By parameter. Slopes of a value become slopes in independent units, whose squares add up to its variance; independent
    /// deviations become the parameters' own.
    /// </param>
    /// <remarks>1 - U diag(1 - √(1 - s²)) Uᵀ. Source: docs/theory/learning.md §3.</remarks>
    public void Narrow(Span<double> vector)
    {
        Span<double> along = stackalloc double[_kept.Length];
        for (int m = 0; m < along.Length; m++)
        {
            double dot = 0;
            for (int p = 0; p < vector.Length; p++)
            {
                dot += _modes[p, m] * vector[p];
            }

            along[m] = (1 - _kept[m]) * dot;
        }

        for (int p = 0; p < vector.Length; p++)
        {
            for (int m = 0; m < along.Length; m++)
            {
                vector[p] -= _modes[p, m] * along[m];
            }
        }
    }

    /// <summary>Standard deviation of one parameter that is left, as a share of its prior's. Source: diagonal of 1 - V Vᵀ.</summary>
    public double Left(int parameter)
    {
        double left = 1;
        for (int m = 0; m < _kept.Length; m++)
        {
            left -= _modes[parameter, m] * _modes[parameter, m] * (1 - (_kept[m] * _kept[m]));
        }

        return Math.Sqrt(Math.Max(0, left));
    }

    // V = Hᵀ L⁻ᵀ; its singular values say how much of each combination of parameters is now known.
    private static (double[,] Modes, double[] Kept) Modes(int n, IReadOnlyList<Observation> observations, double[] factor)
    {
        int m = observations.Count;
        double[,] v = new double[n, m], gram = new double[m, m];
        double[] row = new double[m];
        for (int p = 0; p < n; p++)
        {
            for (int i = 0; i < m; i++)
            {
                row[i] = observations[i].Slopes[p] / observations[i].Sigma;
            }

            Cholesky.Forward(factor, row);
            for (int i = 0; i < m; i++)
            {
                v[p, i] = row[i];
                for (int j = 0; j <= i; j++)
                {
                    gram[i, j] += row[i] * row[j];
                    gram[j, i] = gram[i, j];
                }
            }
        }

        var (values, vectors) = SymmetricEigen.Of(gram);
        const double Nothing = 1e-12;
        int[] live = [.. Enumerable.Range(0, m).Where(i => values[i] > Nothing)];
        double[,] modes = new double[n, live.Length];
        double[] kept = new double[live.Length];
        for (int k = 0; k < live.Length; k++)
        {
            double square = values[live[k]], size = Math.Sqrt(square);
            kept[k] = Math.Sqrt(Math.Max(0, 1 - square));
            for (int p = 0; p < n; p++)
            {
                for (int i = 0; i < m; i++)
                {
                    modes[p, k] += v[p, i] * vectors[i, live[k]] / size;
                }
            }
        }

        return (modes, kept);
    }
}
