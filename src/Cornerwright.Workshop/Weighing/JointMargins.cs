using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Weighing;

/// <summary>
/// The probability that many checks hold at once. Each check keeps its own probability as the judge states it; how they hang
/// together comes from the inputs they share, in first order (a normal copula). docs/theory/ranking.md §4.
/// </summary>
internal sealed class JointMargins
{
    /// <summary>A check that fails more rarely is not joined; its chance of failing is taken off the result instead.</summary>
    private const double Negligible = 1e-5;

    /// <summary>
    /// Of the chance of failing: the joint is right to this, and never worse
    /// than <see cref="MostError"/>. Measured; docs/theory/ranking.md §4.
    /// </summary>
    private const double ErrorShare = 0.05;

    private const double LeastError = 2e-4, MostError = 0.004;

    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private readonly List<Row> _rows = [];
    private double _rest;

    private sealed record Row(double Low, double High, double Fails, bool Suspension, (int Column, double Contribution)[] Parts,
        double Sigma);

    /// <summary>Sum of all chances of failing.</summary>
    public double FailuresSum { get; private set; }

    /// <summary>The smallest single chance of holding.</summary>
    public double Least { get; private set; } = 1;

    /// <summary>Takes a check in; one without doubt is certain and adds nothing.</summary>
    /// <param name="value">SI.</param>
    /// <param name="low">Lower limit, may be minus infinity.</param>
    /// <param name="high">Upper limit, may be infinity.</param>
    /// <param name="doubt">Of the value.</param>
    /// <param name="parts">Change of the value for one standard deviation of each input.</param>
    /// <param name="suspension">True for a check that the wheels have no part in.</param>
    public void Add(double value, double low, double high, in LinearDoubt doubt, IEnumerable<(Input Input, double Contribution)> parts,
        bool suspension)
    {
        double holds = doubt.Within(value, low, high), fails = 1 - holds;
        FailuresSum += fails;
        Least = Math.Min(Least, holds);
        if (fails < Negligible)
        {
            _rest += fails;
            return;
        }

        var columns = new List<(int, double)>();
        foreach (var (input, contribution) in parts)
        {
            if (contribution != 0)
            {
                if (!_columns.TryGetValue(input.Path, out int column))
                {
                    _columns[input.Path] = column = _columns.Count;
                }

                columns.Add((column, contribution));
            }
        }

        double sigma = Math.Sqrt(columns.Sum(c => c.Item2 * c.Item2));
        _rows.Add(new Row(Score(doubt.Below(low - value)), Score(doubt.Below(high - value)), fails, suspension, [.. columns], sigma));
    }

    /// <summary>That all checks hold.</summary>
    public double Probability()
    {
        var rows = _rows.OrderByDescending(r => r.Fails).ToList();
        double beyond = rows.Skip(JointNormal.MostNumbers).Sum(r => r.Fails);

        // What is left out of the joint can only take away. However the margins hang together, the result lies between what is
        // left of all failures apart and the least single chance.
        double joint = JointOf([.. rows.Take(JointNormal.MostNumbers)]);
        return Math.Clamp(joint - _rest - beyond, Math.Max(0, 1 - FailuresSum), Least);
    }

    private double JointOf(IReadOnlyList<Row> rows)
    {
        int n = rows.Count;
        double[] low = new double[n], high = new double[n], correlation = new double[n * n], dense = new double[_columns.Count];
        for (int i = 0; i < n; i++)
        {
            (low[i], high[i]) = (rows[i].Low, rows[i].High);
            Spread(rows[i], dense, 1);
            for (int j = 0; j < n; j++)
            {
                correlation[(i * n) + j] = i == j ? 1 : Shared(rows[j], dense) / (rows[i].Sigma * rows[j].Sigma);
            }

            Spread(rows[i], dense, 0);
        }

        return JointNormal.Within(low, high, correlation);
    }

    /// <summary>What the probability of these checks and any more cannot be above.</summary>
    public double Bound(bool suspensionOnly)
    {
        double joint =
            JointOf([.. _rows.Where(r => !suspensionOnly || r.Suspension).OrderByDescending(r => r.Fails).Take(JointNormal.MostNumbers)]);
        return Math.Min(Least, joint + Math.Min(MostError, LeastError + (ErrorShare * (1 - joint))));
    }

    private static void Spread(Row row, double[] dense, double times)
    {
        foreach (var (column, contribution) in row.Parts)
        {
            dense[column] = times * contribution;
        }
    }

    private static double Shared(Row row, double[] dense)
    {
        double sum = 0;
        foreach (var (column, contribution) in row.Parts)
        {
            sum += contribution * dense[column];
        }

        return sum;
    }

    // The normal number that is as rare as the share below a limit.
    private static double Score(double below) =>
        below <= 0 ? double.NegativeInfinity : below >= 1 ? double.PositiveInfinity : NormalDistribution.Quantile(below);
}
