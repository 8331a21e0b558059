using System.Collections.Concurrent;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// A search among parts for the builds of an axle that hold most surely and fit the wishes best. It works in small batches, so
/// that it can be stopped after any of them and go on later where it was; what it finds does not depend on how often that
/// happens, nor on the number of threads. docs/theory/ranking.md.
/// </summary>
public sealed class BuildSearch
{
    /// <summary>More combinations than this are refused: tick fewer parts. About a minute of quick checks.</summary>
    public const long MostCombinations = 200_000_000;

    /// <summary>
    /// More pairs of suspension and wheels that pass the quick checks than this would not fit the memory of a small machine.
    /// </summary>
    public const int MostPairs = 1_000_000;

    private const int StacksABatch = 64, WheelsABatch = 64, BoundsABatch = 64, PairsABatch = 64, MostMisses = 12;

    private enum Stage
    {
        Wheels,
        Stacks,
        Bounds,
        Pairs,
        Misses,
        Done,
    }

    private readonly SearchSpace _space;
    private readonly ChoiceJudge _judge;
    private readonly WheelSet?[] _wheels;
    private readonly List<SuspensionCandidate> _suspensions = [];
    private readonly SortedDictionary<string, long> _refused = new(StringComparer.Ordinal);
    private readonly MissList _misses = new();
    private readonly PairQueue _pairs;
    private readonly List<NearMiss> _explained = [];
    private readonly HashSet<(string, string)> _explainedParts = [];
    private IReadOnlyList<Miss> _toExplain = [];
    private int[] _goodWheels = [];
    private Stage _stage = Stage.Wheels;
    private int _next;

    private BuildSearch(SearchSpace space)
    {
        (_space, _judge) = (space, new ChoiceJudge(space));
        _wheels = new WheelSet?[space.Pool.WheelSets];
        _pairs = new PairQueue(space, _judge, _suspensions, _wheels, _misses, Refuse);
    }

    public Wishes Wishes => _space.Wishes;

    public bool Done => _stage == Stage.Done;

    public long Combinations => _space.Pool.Suspensions * _space.Pool.WheelSets;

    /// <summary>Lays a search out; nothing is searched yet.</summary>
    /// <param name="car">The car.</param>
    /// <param name="wishes">What is looked for.</param>
    /// <param name="scans">The car's scans, placed; null to go by the readings alone.</param>
    public static Checked<BuildSearch> Prepare(Car car, Wishes wishes, ScanShelf? scans = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(wishes);
        var problems = new List<Problem>();
        string known = string.Join(", ", car.Builds.Select(b => b.Id)),
            startId = wishes.StartingBuild.Length > 0 ? wishes.StartingBuild : car.MeasuredBuild;
        if (car.Build(startId) is not { } start)
        {
            problems.Add(new("starting from", wishes.StartingBuild, known.Length > 0 ? known : "a build of the car",
                "Choose the build from which everything else is taken."));
            return Checked<BuildSearch>.Wrong(problems);
        }

        var pool = PartsPool.Of(car, wishes);
        if (pool.StackCount == 0)
        {
            problems.Add(new("springs", $"{pool.Springs.Count} springs", "at least one main spring", wishes.Helper == HelperWish.With
                ? "Tick a main spring and a helper, or do not insist on a helper." : "Tick a main spring, or put one on the shelf."));
        }

        if (pool.StackCount > PartsPool.MostStacks || pool.Suspensions > MostCombinations / Math.Max(1, pool.WheelSets)
            || pool.WheelSets > MostPairs)
        {
            problems.Add(new("parts", $"{pool.Suspensions} combinations of springs and dampers, {pool.WheelSets} of wheels",
                $"at most {PartsPool.MostStacks} stacks, {MostPairs} sets of wheels, {MostCombinations} together",
                "Tick fewer parts of the kinds that matter least."));
        }

        return problems.Count > 0 ? Checked<BuildSearch>.Wrong(problems)
            : Checked<BuildSearch>.From(new BuildSearch(new SearchSpace(car, wishes, start, pool, scans)));
    }

    /// <summary>Searches until done or asked to stop; to be called again to go on.</summary>
    /// <param name="stop">Looked at after every batch, a fraction of a second.</param>
    /// <param name="progress">Told after every batch; may be null.</param>
    /// <param name="threads">At most this many; 0 for all of the machine.</param>
    public void Run(CancellationToken stop, IProgress<SearchProgress>? progress = null, int threads = 0)
    {
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = threads > 0 ? threads : -1 };
        while (!Done && !stop.IsCancellationRequested)
        {
            Step(parallel);
            progress?.Report(Progress);
        }
    }

    public SearchProgress Progress => _stage switch
    {
        Stage.Wheels => new(0.05 * _next / Math.Max(1, _wheels.Length), "wheels on hubs, tyres on rims", 0, 0),
        Stage.Stacks => new(0.05 + (0.2 * _next / Math.Max(1, _space.Stacks.Length)), "springs, seats and travel", 0, 0),
        Stage.Bounds => new(0.25 + (0.25 * _next / Math.Max(1, _suspensions.Count)), "how surely the springs hold", 0, 0),
        Stage.Pairs => new(0.5 + (0.45 * _pairs.Share), "wheels in the arch, judged in full", _pairs.Judged, _pairs.Held),
        Stage.Misses =>
            new(0.95 + (0.05 * _next / Math.Max(1, _toExplain.Count)), "what the nearest misses lack", _pairs.Judged, _pairs.Held),
        _ => new(1, "done", _pairs.Judged, _pairs.Held),
    };

    /// <summary>What is found so far; may be asked at any time between runs.</summary>
    public RankingResult Result()
    {
        var listed = _pairs.Listed.Select((held, i) => Describe(held, i + 1, _pairs.Front.Members.Contains(held))).ToList();
        var ranks = _pairs.Listed.Select((held, i) => (held, i)).ToDictionary(p => p.held, p => p.i);
        return new RankingResult
        {
            Wishes = Wishes,
            Combinations = Combinations,
            Held = _pairs.Held,
            SetAside = _pairs.SetAside,
            LeftOut = _pairs.LeftOut,
            JudgedInFull = _pairs.Judged,
            Refused = [.. _refused.Select(r => new RefusalCount(r.Key, r.Value)).OrderByDescending(r => r.Count)
                .ThenBy(r => r.Title, StringComparer.Ordinal)],
            Listed = listed,
            Front = [.. _pairs.Front.Members.OrderBy(m => m.Weighed.Cost).ThenBy(m => m.Key)
                .Select(m => ranks.TryGetValue(m, out int i) ? listed[i] : Describe(m, 0, true))],
            NearMisses = [.. _explained],
            Done = Done,
        };
    }

    private void Step(ParallelOptions parallel)
    {
        switch (_stage)
        {
            case Stage.Wheels:
                LookAtWheels(parallel);
                break;
            case Stage.Stacks:
                SweepStacks(parallel);
                break;
            case Stage.Bounds:
                FindBounds(parallel);
                break;
            case Stage.Pairs:
                if (!_pairs.Step(parallel, PairsABatch))
                {
                    (_stage, _next, _toExplain) = (Stage.Misses, 0, _misses.Nearest(3 * MostMisses));
                }

                break;
            default:
                ExplainOne();
                break;
        }
    }

    private void LookAtWheels(ParallelOptions parallel)
    {
        int end = Math.Min(_next + WheelsABatch, _wheels.Length);
        Parallel.For(_next, end, parallel, i => _wheels[i] = WheelSet.Of(_space, i));
        for (int i = _next; i < end; i++)
        {
            if (_wheels[i]!.Broken is { Count: > 0 } broken)
            {
                Refuse(broken[0].Title, _space.Pool.Suspensions);
                _misses.Add(new Miss($"{broken[0].Check}/{_wheels[i]!.Choice.Wheel}", null, i,
                    broken.Select(b => b.Check).Distinct().Count(), MissList.StepsOf(broken[0])));
            }
        }

        _next = end;
        if (end == _wheels.Length)
        {
            _goodWheels = [.. Enumerable.Range(0, _wheels.Length).Where(i => _wheels[i]!.Broken.Count == 0)];
            (_stage, _next) = (Stage.Stacks, 0);
        }
    }

    private void SweepStacks(ParallelOptions parallel)
    {
        int end = Math.Min(_next + StacksABatch, _space.Stacks.Length), start = _next;
        var sweeps = new StackSweep[end - start];
        Parallel.For(start, end, parallel, i => sweeps[i - start] = StackSweep.Of(_space, i));
        foreach (var sweep in sweeps)
        {
            _suspensions.AddRange(sweep.Candidates);
            _misses.Add(sweep.Misses);
            for (int c = 0; c < sweep.Refused.Length; c++)
            {
                Refuse(StaticChecks.Title((StaticCheck)c), sweep.Refused[c] * _goodWheels.Length);
            }
        }

        _next = end;
        if (end == _space.Stacks.Length)
        {
            (_stage, _next) = (Stage.Bounds, 0);
            _pairs.Lay(_goodWheels);
        }
    }

    private void FindBounds(ParallelOptions parallel)
    {
        int end = Math.Min(_next + BoundsABatch, _suspensions.Count);
        Parallel.For(_next, end, parallel, _pairs.FindBound);
        _next = end;
        if (end == _suspensions.Count)
        {
            _pairs.Sort();
            (_stage, _next) = (Stage.Pairs, 0);
        }
    }

    private void ExplainOne()
    {
        if (_next >= _toExplain.Count)
        {
            // Those that one change would mend come first; else the nearest, as they stand.
            var best = _explained.OrderByDescending(m => m.WouldHold.Any()).Take(MostMisses).ToList();
            _explained.Clear();
            _explained.AddRange(best);
            _stage = Stage.Done;
            return;
        }

        var miss = _toExplain[_next++];
        int wheel = miss.WheelSet >= 0 ? miss.WheelSet : _goodWheels.Length > 0 ? _goodWheels[0] : 0;
        var suspension = miss.Suspension ?? (_suspensions.Count > 0 ? _suspensions[0] : (SuspensionCandidate?)null);
        if (suspension is { } candidate && MissExplainer.Explain(_space, _judge, candidate, _wheels[wheel]!) is { } explained
            && _explainedParts.Add((string.Join('+', explained.Parts.Select(p => p.Id)), explained.Check)))
        {
            _explained.Add(explained);
        }
    }

    private void Refuse(string title, long count)
    {
        if (count > 0)
        {
            _refused[title] = _refused.GetValueOrDefault(title) + count;
        }
    }

    private RankedBuild Describe(HeldChoice held, int rank, bool onFront)
    {
        var suspension = _suspensions[held.Suspension];
        var wheels = _wheels[held.WheelSet]!;
        var parts = _space.PartsOf(suspension.Choice, wheels.Choice);
        bool turns = _space.Perches[suspension.Choice.Perch].Turns;
        var mm = new Measure(0, Units.Millimetre, 1);
        return new RankedBuild
        {
            Rank = rank,
            Build = _space.Make(suspension.Choice, wheels.Choice, suspension.Perch.Left, suspension.Perch.Right),
            Parts = parts,
            Probability = held.Verdict.Probability,
            Bounds = held.Verdict.Bounds,
            Unknown = held.Verdict.Unknown,
            Verdict = WholeBuild.Verdict(held.Verdict.Probability, held.Verdict.Unknown, _space.Certainty),
            Tightest = held.Verdict.Tightest,
            Cost = held.Key.Cost,
            Unpriced = [.. parts.Where(p => !p.Owned && p.Price is null).Distinct()],
            Frequency = double.IsFinite(held.Verdict.Frequency) ? new Measure(held.Verdict.Frequency, Units.Hertz, 2) : null,
            HeightMiss = double.IsFinite(held.Verdict.HeightMiss) ? mm.With(held.Verdict.HeightMiss) : null,
            PerchHeight = turns && double.IsFinite(suspension.Perch.Left) && double.IsFinite(suspension.Perch.Right)
                ? (mm.With(suspension.Perch.Left), mm.With(suspension.Perch.Right)) : null,
            OnFront = onFront,
        };
    }
}
