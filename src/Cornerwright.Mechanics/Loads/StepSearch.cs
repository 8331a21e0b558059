using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Loads;

/// <summary>The best whole steps found, and what they leave.</summary>
/// <param name="Steps">By knob.</param>
/// <param name="Cost">Squares of the misses plus the price of each knob that is moved.</param>
/// <param name="Proven">True when nothing better exists; false when the search was cut at its limit.</param>
public sealed record StepChoice(IReadOnlyList<int> Steps, double Cost, bool Proven);

/// <summary>Whole steps of a few knobs that bring linear results nearest to what is wanted: exact, by branch and bound.</summary>
public static class StepSearch
{
    /// <summary>Looked at before the search gives up proving; five knobs need some hundreds.</summary>
    private const int MostNodes = 400_000;

    /// <summary>Least Σ(row·k - wanted)² + price·(knobs moved) over whole k within bounds.</summary>
    /// <param name="rows">
    /// [result, knob]: change of a result for one step, in units of what may be missed. Its columns must be independent.
    /// </param>
    /// <param name="wanted">By result: change wanted, same unit.</param>
    /// <param name="least">By knob, at most 0 where not moving must stay possible.</param>
    /// <param name="most">By knob.</param>
    /// <param name="price">
    /// Of touching a knob at all, at least 0: a knob whose turning improves the sum of squares by less is left alone.
    /// </param>
    /// <exception cref="ArgumentException">Columns that depend on each other, or bounds the wrong way round.</exception>
    /// <remarks>
    /// Triangular by Cholesky, then knob after knob from the last, nearest values first, cut where the sum so far is no better than
    /// the best known. Source: C. P. Schnorr and M. Euchner, Lattice basis reduction, Math. Programming 66 (1994) 181; E. Agrell et al.,
    /// Closest point search in lattices, IEEE Trans. Inf. Theory 48 (2002) 2201.
    /// </remarks>
    public static StepChoice Find(
        double[,] rows, ReadOnlySpan<double> wanted, ReadOnlySpan<int> least, ReadOnlySpan<int> most, double price)
    {
        ArgumentNullException.ThrowIfNull(rows);
        Require.NotNegative(price);
        int m = rows.GetLength(0), n = rows.GetLength(1);
        for (int j = 0; j < n; j++)
        {
            if (least[j] > most[j])
            {
                throw new ArgumentException($"Knob {j}: {least[j]} above {most[j]}.", nameof(least));
            }
        }

        // Normal equations, Cholesky: AᵀA = L Lᵀ, y = L⁻¹ Aᵀ b.
        var equations = new NormalEquations(new double[n * n], new double[n]);
        double rest = 0;
        for (int i = 0; i < m; i++)
        {
            equations.Add([.. Enumerable.Range(0, n).Select(j => rows[i, j])], wanted[i]);
            rest += wanted[i] * wanted[i];
        }

        double[] l = equations.Matrix.ToArray(), y = equations.Unknowns.ToArray();
        if (!Cholesky.Factor(l, n, Cholesky.OfCovariance))
        {
            throw new ArgumentException("Two knobs do the same.", nameof(rows));
        }

        Cholesky.Forward(l, y);
        rest -= y.Sum(v => v * v);
        var search = new Branches(l, y, least.ToArray(), most.ToArray(), price);
        search.Down(n - 1, 0);
        return new StepChoice(search.Best, search.BestCost + Math.Max(0, rest), search.Nodes < MostNodes);
    }

    private sealed class Branches(double[] l, double[] y, int[] least, int[] most, double price)
    {
        private readonly int[] _k = new int[y.Length];

        public int[] Best { get; private set; } = [];

        public double BestCost { get; private set; } = double.PositiveInfinity;

        public int Nodes { get; private set; }

        public void Down(int j, double cost)
        {
            if (j < 0)
            {
                if (cost < BestCost)
                {
                    (BestCost, Best) = (cost, [.. _k]);
                }

                return;
            }

            double centre = y[j];
            for (int i = j + 1; i < y.Length; i++)
            {
                centre -= l[(i * y.Length) + j] * _k[i];
            }

            double pivot = l[(j * y.Length) + j];
            centre /= pivot;
            int near = (int)Math.Clamp(Math.Round(centre), least[j], most[j]);

            // Outward from the nearest, both ways: each way ends at its bound or where its square alone costs too much.
            for (int d = 0, open = 3; open != 0; d++)
            {
                for (int side = 0; side < 2; side++)
                {
                    int bit = 1 << side, k = side == 0 ? near + d : near - d;
                    if ((open & bit) == 0 || (d == 0 && side == 1))
                    {
                        continue;
                    }

                    double off = pivot * (k - centre), square = cost + (off * off);
                    if (k < least[j] || k > most[j] || !(square < BestCost) || (Nodes >= MostNodes && Best.Length > 0))
                    {
                        open &= ~bit;
                        if (d == 0)
                        {
                            open = !(square < BestCost) || Nodes >= MostNodes ? 0 : open;
                        }

                        continue;
                    }

                    Nodes++;
                    double with = square + (k == 0 ? 0 : price);
                    if (with < BestCost)
                    {
                        _k[j] = k;
                        Down(j - 1, with);
                    }
                }
            }
        }
    }
}
