using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Settling;

/// <summary>The verb: which reading, measured better, would settle a check.</summary>
public static class SettlingFinder
{
    /// <summary>More readings than this to measure again are no answer.</summary>
    private const int MostChosen = 3;

    /// <summary>A further reading is asked for only where it takes off at least this much of the doubt.</summary>
    private const double WorthIt = 0.9;

    private const string TreadShare = "/treadShare";

    /// <summary>A reading that the judge does not name is added from this sampled share on.</summary>
    private const double LeastUnseen = 0.05;

    /// <summary>
    /// Answers for one finding of a build's judgement; null where the check is unknown or nothing it stands on is in doubt.
    /// </summary>
    /// <param name="car">As judged.</param>
    /// <param name="build">As judged.</param>
    /// <param name="finding">One of the judgement's.</param>
    /// <param name="sample">False to spare the sampling.</param>
    /// <param name="scans">The scans with which it was judged; null for none.</param>
    public static Settlement? Of(Car car, Build build, Finding finding, bool sample = true, ScanShelf? scans = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Probability is not { } holds || finding.Deciding.Count == 0)
        {
            return null;
        }

        double enough = 1 - Say.Limit(LimitsInForce.Of(car, build).Certainty);
        var judge = new Again(car, build, finding, scans);
        var (shares, sampled) = sample ? Sample(car, build, finding, scans) : (new Dictionary<string, VarianceShare>(), (double?)null);
        var readings = finding.Deciding.Concat(Unseen(finding, shares, judge))
            .Select(d => Describe(judge, d, shares, enough))
            .OrderByDescending(r => r.Total ?? r.Share).ToList();
        double doubt = Doubt(holds);
        var (chosen, then) = Choose(judge, readings, doubt, enough);
        return new Settlement(finding, doubt, readings, chosen, then, then <= enough, sampled,
            Sentence(chosen, readings, doubt, then, enough));
    }

    /// <summary>Chance that what a probability says is wrong: it says the likelier of the two.</summary>
    public static double Doubt(double probability) => Math.Min(probability, 1 - probability);

    private static (IReadOnlyDictionary<string, VarianceShare> Shares, double? Within) Sample(Car car, Build build, Finding finding,
        ScanShelf? scans)
    {
        if (finding.Corner is not { } place)
        {
            return (new Dictionary<string, VarianceShare>(), null);
        }

        var corner = CornerResult.Of(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)), scans?.At(place));
        int check = corner.Find(finding.Check);
        if (check < 0 || !double.IsFinite(corner.Value(check)))
        {
            return (new Dictionary<string, VarianceShare>(), null);
        }

        var (byInput, within) = SampledShares.Of(corner, check);
        return (byInput.ToDictionary(s => corner.Plan.Inputs.Inputs[s.Key].Path, s => s.Value, StringComparer.Ordinal), within);
    }

    // What the judge's straight line does not see, and sampling does: an input behind a kink.
    private static IEnumerable<DecidingReading> Unseen(Finding finding, IReadOnlyDictionary<string, VarianceShare> shares, Again judge) =>
        shares.Where(s => s.Value.Total >= LeastUnseen && finding.Deciding.All(d => d.Path != s.Key))
        .OrderBy(s => s.Key, StringComparer.Ordinal)
            .Select(s => new DecidingReading(s.Key, judge.Input(s.Key)!.Value.Label, 0));

    /// <summary>The field that would hold a reading: a share that was assumed stands for a width that can be measured.</summary>
    private static string Measurable(string path) =>
        path.EndsWith(TreadShare, StringComparison.Ordinal) ? path[..^TreadShare.Length] + "/treadWidth" : path;

    private static SettlingReading Describe(Again judge, DecidingReading deciding, IReadOnlyDictionary<string, VarianceShare> shares,
        double enough)
    {
        VarianceShare? share = shares.TryGetValue(deciding.Path, out var s) ? s : null;
        var blank = new SettlingReading(Measurable(deciding.Path), deciding.Label, deciding.Share, share?.First, share?.Total, "",
            "", 0, null);
        if (judge.Input(blank.Path) is not { } input || CarPath.Find(judge.Car, blank.Path) is not { } found)
        {
            return blank;
        }

        blank = blank with { Now = FinerReading.Words(found.Field, input.Value, 2 * input.Sigma) };
        var best = blank;
        foreach (double step in FinerReading.Steps(found.Field, input.Value, input.Sigma))
        {
            // Coarse first: the coarsest that settles it is what to ask for, else the finest.
            if (judge.With([(blank.Path, input.Value, step)]) is { } probability)
            {
                best = blank with { Within = FinerReading.Words(found.Field, input.Value, step), TwoSigma = step,
                    DoubtThen = Doubt(probability) };
                if (best.DoubtThen <= enough)
                {
                    break;
                }
            }
        }

        return best;
    }

    // One that settles it, if there is one; else the best, and to it the next that helps most.
    private static (IReadOnlyList<SettlingReading> Chosen, double Doubt) Choose(Again judge, List<SettlingReading> readings, double doubt,
        double enough)
    {
        var usable = readings.Where(r => r.DoubtThen < doubt).OrderBy(r => r.DoubtThen).ToList();
        var chosen = new List<SettlingReading>();
        var moves = new List<(string Path, double Value, double TwoSigma)>();
        while (usable.Count > 0 && chosen.Count < MostChosen && doubt > enough)
        {
            (SettlingReading Reading, (string, double, double) Move, double Doubt)? best = null;
            foreach (var reading in usable)
            {
                var input = judge.Input(reading.Path)!.Value;
                var found = CarPath.Find(judge.Car, reading.Path)!.Value;
                foreach (double step in FinerReading.Steps(found.Field, input.Value, input.Sigma))
                {
                    double then = judge.With([.. moves, (reading.Path, input.Value, step)]) is { } p ? Doubt(p) : doubt;
                    if (best is null || (then < best.Value.Doubt && best.Value.Doubt > enough))
                    {
                        best = (reading with { Within = FinerReading.Words(found.Field, input.Value, step), TwoSigma = step,
                            DoubtThen = then }, (reading.Path, input.Value, step), then);
                    }
                }
            }

            if (best is not { } b || !(b.Doubt < WorthIt * doubt))
            {
                break;
            }

            chosen.Add(b.Reading);
            moves.Add(b.Move);
            usable.RemoveAll(r => r.Path == b.Reading.Path);
            doubt = b.Doubt;
        }

        return (chosen, doubt);
    }

    // A linkage that tape readings cannot show is no reading that could be taken finer: another level of knowing it is asked for.
    private static string Elsewhere(IReadOnlyList<SettlingReading> readings) =>
        readings.FirstOrDefault() is { Within.Length: 0 } first && first.Path.Contains("/motion/", StringComparison.Ordinal)
            ? $"What decides most is the {first.Label}, which no single "
            + $"reading gives: cycle the wheel in steps, or write down its hardpoints."
            : "more margin would settle it.";

    private static string Sentence(IReadOnlyList<SettlingReading> chosen, IReadOnlyList<SettlingReading> readings, double doubt,
        double then, double enough)
    {
        if (doubt <= enough)
        {
            return $"It is settled: the doubt is {Percent(doubt)}.";
        }

        if (chosen.Count == 0)
        {
            return $"No reading measured better by hand takes much off the doubt of {Percent(doubt)}. {Capital(Elsewhere(readings))}";
        }

        string what = string.Join(chosen.Count > 2 ? ", and " : " and ", chosen.Select(c => $"the {c.Label} to within {c.Within}"));
        return $"Measure {what}: doubt falls from {Percent(doubt)} to "
            + $"{Percent(then)}{(then <= enough ? "." : $", which does not settle it alone. {Capital(Elsewhere(readings))}")}";
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Percent(double share) => share is > 0 and < 0.005 ? "less than 1 %" : Say.Percent(share);

    /// <summary>Judges the finding again with readings made finer, and remembers the inputs it stands on.</summary>
    private sealed class Again
    {
        private readonly Build _build;
        private readonly Finding _finding;
        private readonly List<Input> _shares = [];
        private readonly Dictionary<string, Input> _inputs = new(StringComparer.Ordinal);

        private readonly ScanShelf? _scans;

        public Again(Car car, Build build, Finding finding, ScanShelf? scans)
        {
            (Car, _build, _finding, _scans) = (car, build, finding, scans);
            foreach (var place in finding.Corner is { } only ? [only] : Places.Corners)
            {
                foreach (var input in CornerResult.Of(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)), scans?.At(place))
                    .Plan.Inputs.Inputs)
                {
                    _inputs.TryAdd(input.Path, input);
                    if (input.Path.EndsWith(TreadShare, StringComparison.Ordinal))
                    {
                        // Added before the width of the section is asked: looked up when all are in.
                        _shares.Add(input);
                    }
                }
            }

            foreach (var share in _shares)
            {
                string tyre = share.Path[..^TreadShare.Length];
                if (_inputs.TryGetValue(tyre + "/sectionWidth", out var width)
                    || _inputs.TryGetValue(tyre + "/sectionWidth/greatest", out width))
                {
                    _inputs.TryAdd(tyre + "/treadWidth",
                        share with { Path = tyre + "/treadWidth", Value = share.Value * width.Value, Sigma = share.Sigma * width.Value });
                }
            }

            if (car.GroundClearance is { } clearance)
            {
                _inputs.TryAdd("groundClearance",
                    new Input("groundClearance", "ground clearance", clearance.Si, clearance.StandardDeviation, clearance.Spread));
            }
        }

        public Car Car { get; }

        public Input? Input(string path) => _inputs.TryGetValue(path, out var input) ? input : null;

        public double? With(IReadOnlyList<(string Path, double Value, double TwoSigma)> moves)
        {
            var car = Car;
            foreach (var (path, value, twoSigma) in moves)
            {
                if (FinerReading.With(car, path, value, twoSigma) is not { } finer)
                {
                    return null;
                }

                car = finer;
            }

            // A build of the car may itself have been measured finer.
            var build = car.Build(_build.Id) ?? _build;
            if (_finding.Corner is { } place)
            {
                var corner = CornerResult.Of(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)), _scans?.At(place));
                int check = corner.Find(_finding.Check);
                return check < 0 ? null : FindingWriter.Of(corner, check, Say.Limit(LimitsInForce.Of(car, build).Certainty)).Probability;
            }

            return Judge.Build(car, build, JudgeOptions.FindingsOnly with { Scans = _scans })
                .Findings.FirstOrDefault(f => f.Key == _finding.Key)?.Probability;
        }
    }
}
