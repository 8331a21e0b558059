using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Learning;

/// <summary>All evidence over all numbers of the car that have a doubt: least squares with priors by Gauss and Newton.</summary>
/// <remarks>Source: docs/theory/learning.md §2.</remarks>
internal sealed class LearningProblem
{
    private const int MostRounds = 12;

    /// <summary>A number that was typed wrong is off by tens of its tolerance: this much wider, and the readings decide.</summary>
    private const double MuchWider = 30;

    /// <summary>Settled when no number moves by more than this share of its standard deviation.</summary>
    private const double Settled = 1e-3;

    private readonly IReadOnlyList<CornerEvidence> _corners;
    private readonly List<Input> _parameters = [];
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly List<double> _loosened = [];
    private readonly int[][] _parameterOf;   // [corner][input], -1 without doubt

    public LearningProblem(IReadOnlyList<CornerEvidence> corners)
    {
        _corners = corners;
        _parameterOf = [.. corners.Select(c => c.Plan.Inputs.Inputs.Select(Place).ToArray())];
        Rows = [.. corners.SelectMany((c, i) => c.Rows.Select((_, r) => (i, r)))];
    }

    public IReadOnlyList<Input> Parameters => _parameters;

    /// <summary>By parameter: how many times its own standard deviation the prior is given; 1 but for one that was found to be wrong.</summary>
    public IReadOnlyList<double> Loosened => _loosened;

    /// <summary>Takes what was typed for a number as hardly more than a guess.</summary>
    public void Loosen(int parameter) => _loosened[parameter] = MuchWider;

    /// <summary>Corner and row of every piece of evidence, in one list.</summary>
    public IReadOnlyList<(int Corner, int Row)> Rows { get; }

    public EvidenceRow At(int row) => _corners[Rows[row].Corner].Rows[Rows[row].Row];

    /// <summary>What every row expects at these shifts (standard deviations of the parameters); NaN where it cannot be worked out.</summary>
    public double[] Expect(double[] shifts) => [.. _corners.SelectMany((c, i) => c.Expect(X(i, shifts)))];

    /// <summary>The most probable numbers with the rows in use, from a start.</summary>
    /// <returns>Null where the evidence cannot be worked out.</returns>
    public (double[] Shifts, Posterior Posterior)? Solve(bool[] used, double[] start)
    {
        double[] shifts = [.. start];
        double cost = Cost(used, shifts);
        Posterior? posterior = null;
        for (int round = 0; round < MostRounds; round++)
        {
            if (!double.IsFinite(cost) || Posterior.Of(shifts, Straighten(used, shifts)) is not { } next)
            {
                return null;
            }

            posterior = next;
            double[] target = [.. next.Shifts];
            double move = 0, share = 1;
            bool better = false;
            for (int h = 0; h < 8 && !better; h++, share *= 0.5)
            {
                double[] trial = [.. shifts.Select((s, p) => s + (share * (target[p] - s)))];
                double there = Cost(used, trial);
                better = there <= cost + 1e-9;
                if (better)
                {
                    move = trial.Select((t, p) => Math.Abs(t - shifts[p])).DefaultIfEmpty(0).Max();
                    (shifts, cost) = (trial, there);
                }
            }

            if (!better || move < Settled)
            {
                break;
            }
        }

        return posterior is null ? null : (shifts, posterior);
    }

    private double Cost(bool[] used, double[] shifts)
    {
        double cost = 0;
        double[] expected = Expect(shifts);
        for (int r = 0; r < used.Length; r++)
        {
            double miss = used[r] ? (At(r).Read - expected[r]) / At(r).Sigma : 0;
            cost += miss * miss;
        }

        return cost + shifts.Sum(s => s * s);
    }

    // Slopes by moving each number one standard deviation either way, as the judge does.
    private List<Observation> Straighten(bool[] used, double[] shifts)
    {
        var list = new List<Observation>();
        int row = 0;
        for (int c = 0; c < _corners.Count; c++)
        {
            var corner = _corners[c];
            double[] x = X(c, shifts), at = corner.Expect(x);
            double[][] slopes = [.. at.Select(_ => new double[_parameters.Count])];
            for (int i = 0; i < x.Length; i++)
            {
                int parameter = _parameterOf[c][i];
                if (parameter < 0)
                {
                    continue;
                }

                double home = x[i], sigma = corner.Plan.Inputs.Inputs[i].Sigma;
                x[i] = home + sigma;
                double[] up = corner.Expect(x);
                x[i] = home - sigma;
                double[] down = corner.Expect(x);
                x[i] = home;
                for (int r = 0; r < at.Length; r++)
                {
                    double slope = double.IsFinite(up[r]) && double.IsFinite(down[r]) ? (up[r] - down[r]) / 2 : double.IsFinite(up[r]) ? up[r] - at[r] : at[r] - down[r];
                    slopes[r][parameter] += double.IsFinite(slope) ? slope * _loosened[parameter] : 0;
                }
            }

            for (int r = 0; r < at.Length; r++, row++)
            {
                if (used[row])
                {
                    list.Add(new Observation(corner.Rows[r].Read - at[r], corner.Rows[r].Sigma, slopes[r]));
                }
            }
        }

        return list;
    }

    private double[] X(int corner, double[] shifts)
    {
        var inputs = _corners[corner].Plan.Inputs.Inputs;
        double[] x = new double[inputs.Count];
        for (int i = 0; i < x.Length; i++)
        {
            int parameter = _parameterOf[corner][i];
            x[i] = inputs[i].Value + (parameter < 0 ? 0 : shifts[parameter] * _loosened[parameter] * inputs[i].Sigma);
        }

        return x;
    }

    private int Place(Input input)
    {
        if (!(input.Sigma > 0))
        {
            return -1;
        }

        string key = LearnedState.Key(input);
        if (!_index.TryGetValue(key, out int place))
        {
            _index[key] = place = _parameters.Count;
            _parameters.Add(input);
            _loosened.Add(1);
        }

        return place;
    }
}
