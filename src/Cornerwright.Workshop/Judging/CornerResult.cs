using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging.Checks;

namespace Cornerwright.Workshop.Judging;

/// <summary>One value with its doubt.</summary>
/// <param name="Bend">How far the value bends within its doubt, in its own unit: first order is not enough where it is a large share of the doubt.</param>
internal readonly record struct DoubtfulValue(double Value, LinearDoubt Doubt, double Bend)
{
    /// <summary>Above this share of the standard deviation the bend is named. At it, a probability near 95 % is off by about 2 points.</summary>
    private const double NoticeableBend = 0.25;

    public bool FirstOrderEnough => !(Bend > NoticeableBend * Doubt.StandardDeviation) || !(Doubt.StandardDeviation > 0);
}

/// <summary>One corner judged: every check's value, and how each input moves it.</summary>
internal sealed class CornerResult
{
    private readonly double[][] _contributions;   // [check][input]: change of the value for one standard deviation
    private readonly double[] _values;
    private readonly double[] _bends;

    private CornerResult(CornerPlan plan, IReadOnlyList<CornerCheck> checks, CornerNumbers numbers)
    {
        (Plan, Checks, Numbers) = (plan, checks, numbers);
        _values = new double[checks.Count];
        _bends = new double[checks.Count];
        _contributions = new double[checks.Count][];
    }

    public CornerPlan Plan { get; }

    public IReadOnlyList<CornerCheck> Checks { get; }

    /// <summary>Solved at the best estimate.</summary>
    public CornerNumbers Numbers { get; }

    /// <summary>Compiles, solves, and moves every input by one standard deviation either way.</summary>
    public static CornerResult Of(CornerPlan plan)
    {
        // Checks first: some bring inputs of their own.
        var checks = new List<CornerCheck>(80);
        checks.AddRange(SpringChecks.For(plan));
        checks.AddRange(TravelChecks.For(plan));
        checks.AddRange(DamperChecks.For(plan));
        checks.AddRange(FitChecks.For(plan));
        checks.AddRange(HeightChecks.For(plan));
        checks.AddRange(WheelChecks.For(plan));
        checks.AddRange(SilentValues.For(plan));
        var numbers = new CornerNumbers(plan);
        numbers.Solve();
        checks.AddRange(ClearanceChecks.For(plan, numbers));
        var result = new CornerResult(plan, checks, numbers);
        result.Evaluate();
        return result;
    }

    public double Value(int check) => _values[check];

    public int Find(string id)
    {
        for (int i = 0; i < Checks.Count; i++)
        {
            if (Checks[i].Id == id)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Change of a check's value for one standard deviation of each input, by input.</summary>
    public ReadOnlySpan<double> Contributions(int check) => _contributions[check];

    public DoubtfulValue Doubtful(int check)
    {
        Span<bool> uniform = stackalloc bool[Plan.Inputs.Count];
        for (int i = 0; i < uniform.Length; i++)
        {
            uniform[i] = Plan.Inputs.Inputs[i].Spread == ToleranceKind.HalfRange;
        }

        return new DoubtfulValue(_values[check], LinearDoubt.Of(_contributions[check], uniform), _bends[check]);
    }

    private void Evaluate()
    {
        int inputs = Plan.Inputs.Count;
        for (int c = 0; c < Checks.Count; c++)
        {
            _values[c] = Checks[c].CanSpeak ? Checks[c].Value(Numbers) : double.NaN;
            _contributions[c] = new double[inputs];
        }

        // One set of numbers is moved; the solved one stays as it is for sentences and pictures.
        var moved = new CornerNumbers(Plan);
        double[] above = new double[Checks.Count], below = new double[Checks.Count];
        for (int i = 0; i < inputs; i++)
        {
            double sigma = Plan.Inputs.Inputs[i].Sigma;
            if (!(sigma > 0))
            {
                continue;
            }

            var effect = Plan.Inputs.EffectOf(i);
            Move(moved, effect, i, +sigma, above);
            Move(moved, effect, i, -sigma, below);
            for (int c = 0; c < Checks.Count; c++)
            {
                double up = above[c] - _values[c], down = below[c] - _values[c];
                bool upKnown = double.IsFinite(up), downKnown = double.IsFinite(down);
                _contributions[c][i] = upKnown && downKnown ? (up - down) / 2 : upKnown ? up : downKnown ? -down : 0;
                _bends[c] += upKnown && downKnown ? Math.Abs(up + down) / 2 : upKnown || downKnown ? Math.Abs(_contributions[c][i]) : 0;
            }
        }
    }

    private void Move(CornerNumbers moved, InputEffect effect, int input, double by, double[] values)
    {
        double home = moved.X[input];
        moved.X[input] = home + by;
        moved.Follow(Numbers, effect);
        for (int c = 0; c < values.Length; c++)
        {
            values[c] = !double.IsFinite(_values[c]) ? double.NaN : Checks[c].Feels(effect) ? Checks[c].Value(moved) : _values[c];
        }

        moved.X[input] = home;
    }
}
