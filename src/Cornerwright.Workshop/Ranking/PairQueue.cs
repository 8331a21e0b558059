using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// Pairs of suspension and wheel set, most promising first. A pair is judged in full only if it could still come into the
/// list or on the front: what is known of it before bounds what it can become.
/// </summary>
internal sealed class PairQueue(
    SearchSpace space, ChoiceJudge judge, List<SuspensionCandidate> suspensions, WheelSet?[] wheels, MissList misses,
    Action<string, long> refuse)
{
    private const string Budget = "To spend at most";

    private readonly ClearancePruning _pruning = new(space, suspensions);
    private readonly List<HeldChoice> _listed = [];
    private double[] _bound = [];
    private int[] _unknown = [];
    private BrokenCheck?[] _brokenAlone = [];
    private (int Suspension, int WheelSet)[] _order = [];
    private int[] _goodWheels = [];
    private int _next;

    public IReadOnlyList<HeldChoice> Listed => _listed;
    public ParetoFront Front { get; } = new();
    public long Judged { get; private set; }
    public long Held { get; private set; }
    public long SetAside { get; private set; }

    /// <summary>Pairs beyond what memory is kept for; those on the least sure springs.</summary>
    public long LeftOut { get; private set; }

    /// <summary>0 to 1.</summary>
    public double Share => _order.Length == 0 ? 1 : (double)_next / _order.Length;

    public void Lay(int[] goodWheels)
    {
        _goodWheels = goodWheels;
        _bound = new double[suspensions.Count];
        _unknown = new int[suspensions.Count];
        _brokenAlone = new BrokenCheck?[suspensions.Count];
    }

    /// <summary>How surely one suspension holds, wheels left out: no pair that it is part of can be surer.</summary>
    public void FindBound(int i)
    {
        var candidate = suspensions[i];
        var (bound, unknown, broken) =
            judge.WithoutWheels(space.Make(candidate.Choice, NoWheels, candidate.Perch.Left, candidate.Perch.Right));
        (_bound[i], _unknown[i], _brokenAlone[i]) = (bound, unknown, broken);
    }

    /// <summary>Puts all pairs in the order in which they are looked at; pairs that a wish refuses drop out here.</summary>
    public void Sort()
    {
        var pairs = new List<(int, int)>();
        foreach (int s in Enumerable.Range(0, suspensions.Count).OrderByDescending(i => _bound[i]))
        {
            if (_brokenAlone[s] is { } broken)
            {
                refuse(broken.Title, _goodWheels.Length);
                continue;
            }

            foreach (int w in _goodWheels)
            {
                if (suspensions[s].Cost + wheels[w]!.Cost > (space.Wishes.Budget ?? decimal.MaxValue))
                {
                    refuse(Budget, 1);
                }
                else if (!FrequencySuits(suspensions[s].FrequencyOn(wheels[w]!)))
                {
                    refuse(StaticChecks.Title(StaticCheck.Frequency), 1);
                }
                else if (pairs.Count < BuildSearch.MostPairs)
                {
                    pairs.Add((s, w));
                }
                else
                {
                    LeftOut++;
                }
            }
        }

        _order = [.. pairs];
        var keys = new RankKey[_order.Length];
        for (int i = 0; i < keys.Length; i++)
        {
            keys[i] = KeyOf(_order[i].Suspension, _order[i].WheelSet, BoundOf(_order[i].Suspension, _order[i].WheelSet));
        }

        Array.Sort(keys, _order);
    }

    /// <summary>Judges the next batch.</summary>
    /// <returns>False when every pair has been dealt with.</returns>
    public bool Step(ParallelOptions parallel, int count)
    {
        var batch = new List<(int Suspension, int WheelSet)>(count);
        while (_next < _order.Length && batch.Count < count)
        {
            var (s, w) = _order[_next++];
            if (!CouldMatter(s, w))
            {
                SetAside++;
            }
            else if (_pruning.Refuses(s, w) is { } title)
            {
                refuse(title, 1);
            }
            else
            {
                batch.Add((s, w));
            }
        }

        var verdicts = new ChoiceVerdict[batch.Count];
        Parallel.For(0, batch.Count, parallel, i => verdicts[i] = Judge(batch[i].Suspension, batch[i].WheelSet));
        for (int i = 0; i < verdicts.Length; i++)
        {
            Take(batch[i].Suspension, batch[i].WheelSet, verdicts[i]);
        }

        return _next < _order.Length || batch.Count > 0;
    }

    private static WheelChoice NoWheels => new(-1, -1, -1);

    private ChoiceVerdict Judge(int s, int w)
    {
        var candidate = suspensions[s];
        return judge.Judge(space.Make(candidate.Choice, wheels[w]!.Choice, candidate.Perch.Left, candidate.Perch.Right));
    }

    private void Take(int s, int w, ChoiceVerdict verdict)
    {
        Judged++;
        if (!verdict.Holds)
        {
            var broken = verdict.Broken[0];
            refuse(broken.Title, 1);
            _pruning.Note(s, w, verdict.Broken);
            misses.Add(new Miss($"{broken.Check}/{wheels[w]!.Choice.Wheel}/{wheels[w]!.Choice.Tyre}", suspensions[s], w,
                verdict.Broken.Select(b => b.Check).Distinct().Count(), MissList.StepsOf(broken)));
            return;
        }

        Held++;
        var held = new HeldChoice(s, w, KeyOf(s, w, verdict.Probability), WeighedOf(s, w, verdict.Probability), verdict);
        Front.Add(held);
        int at = _listed.BinarySearch(held, Comparer<HeldChoice>.Create((a, b) => a.Key.CompareTo(b.Key)));
        _listed.Insert(at < 0 ? ~at : at, held);
        if (_listed.Count > space.Wishes.ListLength)
        {
            _listed.RemoveAt(_listed.Count - 1);
        }
    }

    // At its bound, would it come into the list, or on the front?
    private bool CouldMatter(int s, int w) =>
        _listed.Count < space.Wishes.ListLength
        || KeyOf(s, w, BoundOf(s, w)).CompareTo(_listed[^1].Key) < 0
        || !Front.Covers(WeighedOf(s, w, BoundOf(s, w)));

    // What stands on no common input multiplies; else the smaller chance bounds both.
    private double BoundOf(int s, int w) => wheels[w]!.Apart ? _bound[s] * wheels[w]!.Bound : Math.Min(_bound[s], wheels[w]!.Bound);

    private bool FrequencySuits((double Left, double Right) frequency) => Suits(frequency.Left) && Suits(frequency.Right);

    // A hair wider than the wish: on the line the judge decides.
    private bool Suits(double frequency) =>
        !double.IsFinite(frequency) || (frequency >= space.Frequency.Low * (1 - 1e-9) && frequency <= space.Frequency.High * (1 + 1e-9));

    private RankKey KeyOf(int s, int w, double probability)
    {
        var suspension = suspensions[s];
        decimal cost = suspension.Cost + wheels[w]!.Cost;
        double frequency = Frequency(s, w), miss = Math.Round(suspension.HeightMiss, 4);
        return new RankKey(
            _unknown[s] + wheels[w]!.Unknown, RankKey.DoubtOf(probability),
            RankKey.PreferenceOf(space.Wishes.Prefer, cost, miss, frequency), cost, miss, Math.Round(frequency, 3), s, w);
    }

    private Weighed WeighedOf(int s, int w, double probability)
    {
        const double Step = 0.05;
        double frequency = Frequency(s, w), miss = suspensions[s].HeightMiss;
        int softness = double.IsFinite(frequency) ? (int)Math.Round(frequency / Step) : 0;
        return new Weighed(
            suspensions[s].Cost + wheels[w]!.Cost, RankKey.DoubtOf(probability),
            double.IsFinite(miss) ? (int)Math.Round(miss * 1000) : int.MaxValue,
            space.Wishes.Prefer == Garage.Builds.Preference.Stiffest ? -softness : softness);
    }

    private double Frequency(int s, int w)
    {
        var (left, right) = suspensions[s].FrequencyOn(wheels[w]!);
        return (left + right) / 2;
    }
}
