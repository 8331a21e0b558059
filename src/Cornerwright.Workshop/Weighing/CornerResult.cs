using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Weighing;

/// <summary>One value with its doubt.</summary>
internal readonly record struct DoubtfulValue(double Value, LinearDoubt Doubt);

/// <summary>One corner judged: every check's value, and how each input moves it.</summary>
internal sealed class CornerResult
{
    /// <summary>
    /// Where the value is lost one standard deviation to one side of an input,
    /// so much is left at most: the share of a normal number below that.
    /// </summary>
    private const double KnownOneWay = 0.8413;

    private readonly CornerValue[] _all;   // checks, then figures, marks and what axles are made of
    private readonly double[][] _contributions;   // [value][input]: change of the value for one standard deviation
    private readonly double[] _values;
    private readonly double[] _meanShifts, _blind;
    // by value: an input that, moved both ways or one, takes it out of what can be worked out; -1 for none
    private readonly int[] _lost, _lostOneWay;
    private readonly ReadSet[] _reads;   // by value: what it was worked out from
    private readonly SolvedCorner _moved;

    private CornerResult(CornerPlan plan, IReadOnlyList<CornerCheck> checks, IEnumerable<CornerValue> others, SolvedCorner numbers)
    {
        (Plan, Checks, Numbers) = (plan, checks, numbers);
        _all = [.. checks, .. others];
        _values = new double[_all.Length];
        _meanShifts = new double[_all.Length];
        _blind = new double[_all.Length];
        _contributions = new double[_all.Length][];

        // One set of numbers is moved; the solved one stays as it is for sentences and pictures.
        _moved = new SolvedCorner(plan);
        _reads = new ReadSet[_all.Length];
        (_lost, _lostOneWay) = (new int[_all.Length], new int[_all.Length]);
        Array.Fill(_lost, -1);
        Array.Fill(_lostOneWay, -1);
    }

    public CornerPlan Plan { get; }

    public IReadOnlyList<CornerCheck> Checks { get; }

    /// <summary>Each with its place among all values.</summary>
    public IEnumerable<(CornerFigure Figure, int Index)> Figures => Others<CornerFigure>();

    /// <inheritdoc cref="Figures"/>
    public IEnumerable<(CornerMark Mark, int Index)> Marks => Others<CornerMark>();

    /// <summary>Solved at the best estimate.</summary>
    public SolvedCorner Numbers { get; }

    /// <summary>Compiles, solves, and moves every input by one standard deviation, either way where it matters.</summary>
    public static CornerResult Of(CornerPlan plan, IEnumerable<PlacedScan>? scans = null)
    {
        var result = AtBest(plan, scans);
        result.AddDoubt();
        return result;
    }

    /// <summary>Compiles and solves: values at the best estimate, no doubt yet.</summary>
    public static CornerResult AtBest(CornerPlan plan, IEnumerable<PlacedScan>? scans = null)
    {
        // Checks first: some bring inputs of their own.
        var checks = new List<CornerCheck>(80);
        checks.AddRange(SpringChecks.For(plan));
        checks.AddRange(TravelChecks.For(plan));
        checks.AddRange(ReachChecks.For(plan));
        checks.AddRange(DamperChecks.For(plan));
        checks.AddRange(FitChecks.For(plan));
        checks.AddRange(HeightChecks.For(plan));
        checks.AddRange(WheelChecks.For(plan));
        List<CornerValue> others = [.. FiguresAndMarks.Figures(plan), .. FiguresAndMarks.Marks(plan), .. HeightChecks.Carried(plan)];
        var leasts = ScanChecks.Prepare(plan, scans ?? []);
        plan.Inputs.AddBystanders();
        var numbers = new SolvedCorner(plan);
        numbers.Solve(note: true);
        checks.AddRange(ClearanceChecks.For(plan, numbers));
        checks.AddRange(ScanChecks.For(plan, leasts, numbers));
        var result = new CornerResult(plan, checks, others, numbers);
        for (int c = 0; c < result._all.Length; c++)
        {
            result._reads[c] = new ReadSet();
            result._values[c] = result._all[c].CanSpeak ? result._all[c].Value(new(numbers, result._reads[c])) : double.NaN;
        }

        return result;
    }

    public double Value(int check) => _values[check];

    /// <summary>What a check's value was worked out from at the best estimate.</summary>
    public ReadSet ReadsOf(int check) => _reads[check];

    /// <summary>Place of a figure among all values; -1 where this corner has none of the kind.</summary>
    public int Find(FigureKind kind) => Array.FindIndex(_all, v => v is CornerFigure figure && figure.Kind == kind);

    /// <summary>Place of a carried value among all values.</summary>
    public int Find(CarriedKind kind) => Array.FindIndex(_all, v => v is CarriedValue carried && carried.Kind == kind);

    /// <summary>
    /// A reading whose tolerance is so wide that the value cannot be worked out at either end of it: then nothing can be said of how surely
    /// it holds, and more doubt must not make it surer. Null where there is none.
    /// </summary>
    public MissingReading? TooWide(int value) => _lost[value] < 0 ? null : Tighter(_lost[value]);

    /// <summary>A reading of which that is so at one end of its tolerance.</summary>
    public MissingReading? TooWideOneWay(int value) => _lostOneWay[value] < 0 ? null : Tighter(_lostOneWay[value]);

    private MissingReading Tighter(int input)
    {
        var wide = Plan.Inputs.Inputs[input];
        return new(wide.Path, $"a finer reading of {wide.Label}: within its tolerance the value cannot be worked out");
    }

    /// <summary>What keeps a value from being known; empty where nothing does.</summary>
    public IReadOnlyList<MissingReading> MissingFor(int value) => _all[value].Missing;

    /// <summary>Place of a check; -1 where this corner has none of the id.</summary>
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

        return new DoubtfulValue(_values[check], LinearDoubt.Of(_contributions[check], uniform));
    }

    /// <summary>By how much the check's mean lies above its best estimate, to second order.</summary>
    public double MeanShift(int check) => _meanShifts[check];

    /// <summary>
    /// Of the check's standard deviation, what comes from inputs that can be moved only one way before the value is lost.
    /// </summary>
    public double Blind(int check) => _blind[check];

    /// <summary>
    /// By how much the first-order probability of a check is off, about; above <see cref="BentProbability.Noticeable"/> it is not enough.
    /// </summary>
    public double ProbabilityOff(int check)
    {
        double[] deviations = new double[Plan.Inputs.Count];
        double sigma = Doubtful(check).Doubt.StandardDeviation;
        double bent =
            BentProbability.Off(_values[check], sigma, Checks[check].Low, Checks[check].High, _meanShifts[check], _blind[check], Along);
        return Math.Max(bent, Checks[check].Kind == CheckCatalogue.StopOrder ? TouchInDoubt(check, sigma, appears: false) : 0);

        double Along(double far)
        {
            for (int i = 0; i < deviations.Length; i++)
            {
                deviations[i] = far * _contributions[check][i] / sigma;
            }

            return ValueAt(check, deviations);
        }
    }

    /// <summary>
    /// What the chance of a check that holds at the best estimate cannot be above, whatever first order says: where it is known to one side
    /// of an input only, and where a touch may come that the best estimate does not have.
    /// </summary>
    public double ChanceAtMost(int check)
    {
        double most = TooWideOneWay(check) is null ? 1 : KnownOneWay;
        return Checks[check].Kind == CheckCatalogue.StopOrder && double.IsFinite(_values[check])
            ? Math.Min(most, 1 - TouchInDoubt(check, Doubtful(check).Doubt.StandardDeviation, appears: true)) : most;
    }

    /// <summary>
    /// Probability that a touch which counts for the stop order vanishes within the doubt, or that one appears which the best
    /// estimate does not have: a travel that comes and goes all at once has no slope to follow.
    /// </summary>
    /// <param name="check">The stop order.</param>
    /// <param name="sigma">Of its value.</param>
    /// <param name="appears">True to leave out the touch that decides: it can only vanish.</param>
    private double TouchInDoubt(int check, double sigma, bool appears)
    {
        var touch = Numbers.Clearance.Touch;
        double beyond = Plan.Allowed.BumpBeyond, lead = Numbers.Read.Spent + Checks[check].Low + beyond, far = lead + (3 * sigma), most = 0;
        for (int c = 0; c < Checks.Count; c++)
        {
            int item = Checks[c].Clearance;
            if (item < 0 || !Checks[c].CanSpeak || Plan.Clearance.Items[item].AttachedTo != Garage.Chassis.AttachedTo.Body)
            {
                continue;
            }

            // The touch that decides may vanish; any other may come before the stop is spent, where nothing followed it.
            bool decides = touch.Item == item && Math.Abs(Numbers.TyreTouch - beyond - Numbers.Read.Spent - _values[check]) < 1e-9,
                grazes = touch.Graze.Item == item && Math.Min(touch.Graze.Travel, Numbers.TyreTouch) <= far;
            double gap = grazes && !(appears && decides) ? Math.Abs(touch.Graze.Gap) : double.PositiveInfinity;
            if (!decides && double.IsFinite(lead))
            {
                double at = Math.Clamp(lead, Plan.LowestTravel, Plan.HighestTravel), steer = Numbers.Clearance.Worst[item].Steer;
                double there = Math.Min(Numbers.Read.GapAt(item, at, 0).Gap, Numbers.Read.GapAt(item, at, steer).Gap);
                gap = there > 0 ? Math.Min(gap, there) : gap;
            }

            double spread = Doubtful(c).Doubt.StandardDeviation;
            most = spread > 0 && double.IsFinite(gap) ? Math.Max(most, NormalDistribution.Below(-gap / spread)) : most;
        }

        return most;
    }

    /// <summary>
    /// A check's value when every input is moved by so many of its own standard deviations. Where readings after the work tie
    /// inputs together, by so many of independent units, from which the inputs' own follow.
    /// </summary>
    public double ValueAt(int check, ReadOnlySpan<double> deviations)
    {
        var inputs = Plan.Inputs.Inputs;
        if (Plan.Inputs.Learned is not null)
        {
            deviations = LearnedDoubt.Deviations(Plan.Inputs, deviations);
        }

        // A corner that is remembered may be asked by several at once, and one row is moved for all.
        lock (_moved)
        {
            for (int i = 0; i < inputs.Count; i++)
            {
                _moved.Values[i] = inputs[i].Value + (deviations[i] * inputs[i].Sigma);
            }

            // What the check did not read may stay as it is.
            _moved.Follow(Numbers, _reads[check], _reads[check]);
            double value = _all[check].Value(_moved.Read);
            for (int i = 0; i < inputs.Count; i++)
            {
                _moved.Values[i] = inputs[i].Value;
            }

            return value;
        }
    }

    /// <summary>Moves every input by one standard deviation, either way where it matters: to be asked once.</summary>
    public void AddDoubt()
    {
        int inputs = Plan.Inputs.Count;
        for (int c = 0; c < _all.Length; c++)
        {
            _contributions[c] = new double[inputs];
        }

        // One side first. The other side shows how a value bends; it is asked for only where that can change an answer. Gaps are made
        // smaller first: made larger, the gap beside them may be the nearest, and their own doubt would not be seen.
        int[] side = new int[inputs];
        Array.Fill(side, 1);
        foreach (var gap in Plan.Clearance.Items.SelectMany(i => i.Gaps).Where(g => g.Gap.IsGiven))
        {
            side[gap.Gap.Index] = -1;
        }

        double[] moved = new double[_all.Length];
        for (int i = 0; i < inputs; i++)
        {
            double sigma = Plan.Inputs.Inputs[i].Sigma;
            if (sigma > 0)
            {
                Move(i, side[i] * sigma, moved);
                for (int c = 0; c < moved.Length; c++)
                {
                    _contributions[c][i] = moved[c] - _values[c];
                }
            }
        }

        double[] least = LeastOfInterest();
        for (int i = 0; i < inputs; i++)
        {
            double sigma = Plan.Inputs.Inputs[i].Sigma;
            bool other = sigma > 0 && OtherSideMatters(i, least);
            if (other)
            {
                Move(i, -side[i] * sigma, moved);
            }

            for (int c = 0; c < moved.Length; c++)
            {
                double first = _contributions[c][i], second = other ? moved[c] - _values[c] : double.NaN;
                Combine(c, i, side[i] > 0 ? new(first, second, true, other) : new(second, first, other, true));
            }
        }

        for (int c = 0; c < _all.Length && Plan.Inputs.Learned is not null; c++)
        {
            _contributions[c] = LearnedDoubt.Slopes(Plan.Inputs, _contributions[c]);
        }
    }

    /// <summary>What a value changes by when an input grows and when it falls, and which of both was asked.</summary>
    private readonly record struct Moves(double Up, double Down, bool UpAsked, bool DownAsked);

    private void Combine(int c, int i, in Moves moves)
    {
        var (up, down) = (moves.Up, moves.Down);
        bool upKnown = double.IsFinite(up), downKnown = double.IsFinite(down), asked = moves.UpAsked && moves.DownAsked;
        bool upLost = moves.UpAsked && IsLost(c, up), downLost = moves.DownAsked && IsLost(c, down);
        _lost[c] = upLost && downLost && _lost[c] < 0 ? i : _lost[c];
        _lostOneWay[c] = upLost != downLost && _lostOneWay[c] < 0 ? i : _lostOneWay[c];
        _contributions[c][i] = upKnown && downKnown ? Slope(up, down, _all[c] is CornerCheck { Clearance: >= 0 }) : upKnown ? up : downKnown
            ? -down : 0;
        _meanShifts[c] += upKnown && downKnown ? (up + down) / 2 : 0;
        _blind[c] += asked && upKnown != downKnown ? Math.Abs(_contributions[c][i]) : 0;
    }

    // A value that grows without end on the side where it has no limit is not lost: it holds all the more.
    private bool IsLost(int c, double change)
    {
        (double low, double high) = _all[c] is CornerCheck check ? (check.Low, check.High) : (0, 0);
        return double.IsFinite(_values[c]) && (double.IsNaN(change)
            || (double.IsNegativeInfinity(change) && double.IsFinite(low)) || (double.IsPositiveInfinity(change) && double.IsFinite(high)));
    }

    // A least gap counts as it falls: where something else becomes the nearest it rises less, or not at all, and a mean of both would halve
    // the doubt. One that falls whichever way an input goes has no slope, but it does have a doubt: the larger fall.
    private static double Slope(double up, double down, bool least) =>
        least && Math.Min(up, down) < 0 && Math.Abs(Math.Min(up, down)) >= Math.Max(up, down) ? (up < down ? up : -down) : (up - down) / 2;

    /// <summary>
    /// By check: the smallest change by one input that is worth a look at the input's other side; infinite where the value
    /// lies so far from its limits that no bend could change what is said.
    /// </summary>
    private double[] LeastOfInterest()
    {
        const double FarAway = 5, LeastShare = 0.002;
        var least = new double[_all.Length];
        for (int c = 0; c < least.Length; c++)
        {
            double variance = 0;
            foreach (double up in _contributions[c])
            {
                variance += double.IsFinite(up) ? up * up : 0;
            }

            // A figure or a mark has no limit near which a bend could matter; what axles are made of may have.
            bool certain = _all[c] is CornerCheck check
                ? Math.Abs(Math.Min(_values[c] - check.Low, check.High - _values[c])) > FarAway * Math.Sqrt(variance)
                : _all[c] is not CarriedValue;
            least[c] = certain || !double.IsFinite(_values[c]) ? double.PositiveInfinity : Math.Sqrt(LeastShare * variance);
        }

        return least;
    }

    private bool OtherSideMatters(int input, double[] least)
    {
        for (int c = 0; c < least.Length; c++)
        {
            double up = _contributions[c][input];
            // A least gap that does not rise may fall all the same: something else may be nearest already.
            bool hidden = _all[c] is CornerCheck { Clearance: >= 0 } && up >= 0 && double.IsFinite(least[c]) && _reads[c].Has(input);
            if (hidden || Math.Abs(up) > least[c] || (!double.IsFinite(up) && double.IsFinite(_values[c])))
            {
                return true;
            }
        }

        return false;
    }

    private void Move(int input, double by, double[] values)
    {
        double home = _moved.Values[input];
        _moved.Values[input] = home + by;
        _moved.Follow(Numbers, input);
        for (int c = 0; c < values.Length; c++)
        {
            values[c] = !double.IsFinite(_values[c]) ? double.NaN : _reads[c].Has(input) ? _all[c].Value(_moved.Read) : _values[c];
        }

        _moved.Values[input] = home;
    }

    private IEnumerable<(T Value, int Index)> Others<T>()
        where T : CornerValue
    {
        for (int i = Checks.Count; i < _all.Length; i++)
        {
            if (_all[i] is T value)
            {
                yield return (value, i);
            }
        }
    }
}
