using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Learning;

/// <summary>All evidence over all numbers of the car that have a doubt: least squares with priors by Gauss and Newton.</summary>
/// <remarks>Source: docs/theory/learning.md §2.</remarks>
internal sealed class LearningProblem
{
    private const int MostRounds = 12;

    /// <summary>A number that was typed wrong is off by tens of its tolerance: this much wider, and the readings decide.</summary>
    private const double MuchWider = 30;

    /// <summary>
    /// Slopes are worked out anew when a number has moved by more than this since, in its standard deviations; most of the work lies there.
    /// </summary>
    private const double SlopesHold = 0.7;

    private const int MostStraightenings = 3;

    /// <summary>
    /// No number is moved further than this from what was typed, in its standard deviations: beyond, it has been taken for wrong.
    /// </summary>
    private const double Furthest = 8;

    /// <summary>Settled when no number moves by more than this share of its standard deviation.</summary>
    private const double Settled = 1e-3;

    private readonly IReadOnlyList<CornerEvidence> _corners;
    private readonly List<Input> _parameters = [];
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly List<double> _loosened = [];
    private double[][]? _slopes;   // [row][parameter]: for one of the parameter's own standard deviations
    private double[] _slopesAt = [];
    private readonly int[][] _parameterOf;   // [corner][input], -1 without doubt

    public LearningProblem(IReadOnlyList<CornerEvidence> corners)
    {
        _corners = corners;
        _parameterOf = [.. corners.Select(c => c.Plan.Inputs.Inputs.Select(Place).ToArray())];
        Rows = [.. corners.SelectMany((c, i) => c.Rows.Select((_, r) => (i, r)))];
    }

    public IReadOnlyList<Input> Parameters => _parameters;

    /// <summary>
    /// By parameter: how many times its own standard deviation the prior is given; 1 but for one that was found to be wrong.
    /// </summary>
    public IReadOnlyList<double> Loosened => _loosened;

    /// <summary>Takes what was typed for a number as hardly more than a guess.</summary>
    /// <returns>How many times wider its prior is now.</returns>
    public double Loosen(int parameter) => _loosened[parameter] = MuchWider;

    /// <summary>Corner and row of every piece of evidence, in one list.</summary>
    public IReadOnlyList<(int Corner, int Row)> Rows { get; }

    public EvidenceRow At(int row) => _corners[Rows[row].Corner].Rows[Rows[row].Row];

    /// <summary>
    /// What every row expects at these shifts (standard deviations of the parameters); NaN where it cannot be worked out.
    /// </summary>
    public double[] Expect(double[] shifts) => [.. _corners.SelectMany((c, i) => c.Expect(X(i, shifts)))];

    /// <summary>The most probable numbers with the rows in use, from a start.</summary>
    /// <returns>Null where the evidence cannot be worked out.</returns>
    public (double[] Shifts, Posterior Posterior)? Solve(bool[] used, double[] start)
    {
        double[] shifts = [.. start], expected = Expect(shifts);
        double cost = Cost(used, shifts, expected);
        Posterior? posterior = null;
        int straightened = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            if (_slopes is null || (Distance(shifts, _slopesAt) > SlopesHold && straightened < MostStraightenings))
            {
                Straighten(shifts);
                straightened++;
            }

            if (!double.IsFinite(cost) || Posterior.Of(shifts, Observations(used, expected)) is not { } next)
            {
                return null;
            }

            posterior = next;
            double[] target = [.. next.Shifts.Select(s => Math.Clamp(s, -Furthest, Furthest))];
            double move = 0, share = 1;
            bool better = false;
            for (int h = 0; h < 8 && !better; h++, share *= 0.5)
            {
                double[] trial = [.. shifts.Select((s, p) => s + (share * (target[p] - s)))], there = Expect(trial);
                double costThere = Cost(used, trial, there);
                better = costThere <= cost + 1e-9;
                if (better)
                {
                    move = Distance(trial, shifts);
                    (shifts, cost, expected) = (trial, costThere, there);
                }
            }

            if (!better || move < Settled)
            {
                break;
            }
        }

        return posterior is null ? null : (shifts, posterior);
    }

    /// <summary>
    /// Two standard deviations of what a row expects: before anything was learned, and after; 0 before anything was solved.
    /// </summary>
    public (double First, double Now) DoubtOf(int row, Posterior posterior)
    {
        if (_slopes is null)
        {
            return (0, 0);
        }

        double[] narrowed = [.. _slopes[row].Select((s, p) => s * _loosened[p])];
        posterior.Narrow(narrowed);
        return (2 * Math.Sqrt(_slopes[row].Sum(s => s * s)), 2 * Math.Sqrt(narrowed.Sum(s => s * s)));
    }

    private double Cost(bool[] used, double[] shifts, double[] expected)
    {
        double cost = 0;
        for (int r = 0; r < used.Length; r++)
        {
            double miss = used[r] ? (At(r).Read - expected[r]) / At(r).Sigma : 0;
            cost += miss * miss;
        }

        return cost + shifts.Sum(s => s * s);
    }

    private List<Observation> Observations(bool[] used, double[] expected)
    {
        var list = new List<Observation>();
        for (int r = 0; r < used.Length; r++)
        {
            if (used[r])
            {
                list.Add(new Observation(At(r).Read - expected[r], At(r).Sigma, [.. _slopes![r].Select((s, p) => s * _loosened[p])]));
            }
        }

        return list;
    }

    // Slopes by moving each number one standard deviation either way, as the judge does; all rows, in use or not.
    private void Straighten(double[] shifts)
    {
        double[][] all = [.. Rows.Select(_ => new double[_parameters.Count])];
        int first = 0;
        for (int c = 0; c < _corners.Count; c++)
        {
            var corner = _corners[c];
            double[] x = X(c, shifts), at = corner.Expect(x);
            for (int i = 0; i < x.Length; i++)
            {
                int parameter = _parameterOf[c][i];
                if (parameter < 0 || !corner.Matters(i))
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
                    double slope = double.IsFinite(up[r]) && double.IsFinite(down[r]) ? (up[r] - down[r]) / 2 : double.IsFinite(up[r])
                        ? up[r] - at[r] : at[r] - down[r];
                    all[first + r][parameter] += double.IsFinite(slope) ? slope : 0;
                }
            }

            first += at.Length;
        }

        (_slopes, _slopesAt) = (all, [.. shifts]);
    }

    private static double Distance(double[] a, double[] b)
    {
        double most = 0;
        for (int p = 0; p < a.Length; p++)
        {
            most = Math.Max(most, Math.Abs(a[p] - b[p]));
        }

        return most;
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
