using System.Runtime.CompilerServices;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Learning;

/// <summary>The verb: what the readings after the work say about the car's numbers.</summary>
public static class CarLearning
{
    /// <summary>
    /// A reading further from everything else than this, in standard deviations, is set aside: chance makes one in two thousand.
    /// </summary>
    public const double FarOff = 3.5;

    /// <summary>
    /// A typed number is blamed only where it lies this much further off than any single reading: then several readings stand against it.
    /// </summary>
    private const double Clearly = 0.5;

    private const string OfOccasions = "occasions/";

    /// <summary>A number is worth showing when its doubt shrank by this share, or it moved by as much of its doubt.</summary>
    private const double WorthShowing = 0.03;

    private static readonly ConditionalWeakTable<IReadOnlyList<Occasion>, Kept> Known = [];

    /// <summary>Learns from all occasions that are not left out. The same car's answer is kept while anyone holds its readings.</summary>
    public static Learned Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        if (car.Occasions.Count == 0)
        {
            return Learned.Nothing;
        }

        if (Known.TryGetValue(car.Occasions, out var kept) && kept.Fits(car))
        {
            return kept.Learned;
        }

        var learned = Learn(car);
        Known.AddOrUpdate(car.Occasions, new Kept(car, learned));
        return learned;
    }

    /// <summary>
    /// What a judgement of the car goes by: null where nothing was learned or the car is to be judged by what was typed alone.
    /// </summary>
    internal static LearnedState? InUse(Car car) => car.UseLearned ? Of(car).State : null;

    private static Learned Learn(Car car)
    {
        var unused = new List<string>();
        var corners = new List<CornerEvidence>();
        foreach (var occasion in car.Occasions.Where(o => !o.Ignored))
        {
            Gather(car, occasion, corners, unused);
        }

        var problem = new LearningProblem(corners);
        double[] first = problem.Expect(new double[problem.Parameters.Count]);
        bool[] used = [.. first.Select(double.IsFinite)];
        unused.AddRange(problem.Rows.Where((_, r) => !used[r])
            .Select((row, _) => $"{corners[row.Corner].Occasion.Name}, {corners[row.Corner].Place.Words()}: "
                + $"{corners[row.Corner].Rows[row.Row].Label} lies outside what the car's numbers can reach"));
        if (!used.Any(u => u))
        {
            return Learned.Nothing with { Unused = unused };
        }

        double[] shifts = new double[problem.Parameters.Count], sigmas = new double[used.Length];
        bool[] aside = new bool[used.Length];
        var solved = problem.Solve(used, shifts);

        // What agrees least goes first, a new reading or a number typed long ago; the others are then asked again.
        for (int round = 0; round < (used.Length / 2) + 1 && solved is { } s; round++)
        {
            int[] rows = [.. Enumerable.Range(0, used.Length).Where(r => used[r])];
            for (int k = 0; k < rows.Length; k++)
            {
                sigmas[rows[k]] = s.Posterior.Deleted[k];
            }

            int worst = rows.MaxBy(r => Math.Abs(sigmas[r])),
                number = Enumerable.Range(0, problem.Parameters.Count).MaxBy(p => Typed(problem, s.Posterior, p));
            double reading = Math.Abs(sigmas[worst]), typed = Typed(problem, s.Posterior, number);
            if (!(Math.Max(reading, typed) > FarOff) || rows.Length < 2)
            {
                break;
            }

            double[] from = [.. s.Shifts];
            if (typed > reading + Clearly)
            {
                from[number] /= problem.Loosen(number);
            }
            else
            {
                (used[worst], aside[worst]) = (false, true);
            }

            solved = problem.Solve(used, from);
        }

        if (solved is not { } answer)
        {
            return Learned.Nothing with { Unused = [.. unused, "the readings could not be brought together with the car's numbers"] };
        }

        double[] now = problem.Expect(answer.Shifts);
        return new Learned
        {
            State = new LearnedState(problem.Parameters, problem.Loosened, answer.Posterior),
            Readings = [.. problem.Rows.Select((row, r) => (row, r)).Where(x => (used[x.r] || aside[x.r]) && double.IsFinite(now[x.r]))
                .Select(x => Read(corners[x.row.Corner], x.row.Row, first[x.r], now[x.r], problem.DoubtOf(x.r, answer.Posterior),
                    sigmas[x.r], aside[x.r]))],
            Numbers = Numbers(car, problem, answer.Posterior),
            Unused = unused,
        };
    }

    private static void Gather(Car car, Occasion occasion, List<CornerEvidence> corners, List<string> unused)
    {
        var evidence = Places.Corners.Select(p => CornerEvidence.Of(car, occasion, p)).ToList();
        corners.AddRange(evidence.Where(e => e.Rows.Count > 0));
        if (evidence.All(e => e.Rows.Count == 0))
        {
            string missing = string.Join(", ", evidence.SelectMany(e => e.Plan.MissingForSpring()).Distinct());
            unused.Add($"{occasion.Name}: nothing was read that the car's numbers could be held against. {missing}".TrimEnd(' ', '.'));
        }
    }

    /// <summary>How far a typed number lies from what all readings expect of it, in standard deviations of the difference.</summary>
    private static double Typed(LearningProblem problem, Mechanics.Doubt.Posterior posterior, int p)
    {
        double left = posterior.Left(p), known = Math.Sqrt(Math.Max(0, 1 - (left * left)));
        return problem.Loosened[p] > 1 || known < 0.05 || problem.Parameters[p].Path.StartsWith(OfOccasions, StringComparison.Ordinal) ? 0
            : Math.Abs(posterior.Shifts[p]) / known;
    }

    private static LearnedReading Read(CornerEvidence corner, int row, double first, double now, (double First, double Now) doubt,
        double sigmas, bool aside)
    {
        var e = corner.Rows[row];
        var measure = new Measure(e.Read, e.Unit, e.Decimals);
        return new LearnedReading(corner.Occasion.Id, corner.Place, e.Label, measure, measure.With(first), measure.With(now),
            measure.With(doubt.First), measure.With(doubt.Now), sigmas, aside);
    }

    private static IReadOnlyList<LearnedNumber> Numbers(Car car, LearningProblem problem, Mechanics.Doubt.Posterior posterior)
    {
        var list = new List<(LearnedNumber Number, double Gain)>();
        for (int p = 0; p < problem.Parameters.Count; p++)
        {
            var input = problem.Parameters[p];
            double wide = problem.Loosened[p], left = posterior.Left(p) * wide, shift = posterior.Shifts[p] * wide;
            if (input.Path.StartsWith(OfOccasions, StringComparison.Ordinal)
                || !(1 - left > WorthShowing || Math.Abs(shift) > WorthShowing * 5))
            {
                continue;
            }

            var measure = MeasureOf(car, input);
            list.Add((new LearnedNumber(
                input.Path, input.Label, measure, measure.With(2 * input.Sigma), measure.With(input.Value + (shift * input.Sigma)),
                measure.With(2 * left * input.Sigma), wide > 1), Math.Max(1 - left, Math.Abs(shift) / 5)));
        }

        return [.. list.OrderByDescending(n => n.Number.Suspect).ThenByDescending(n => n.Gain)
            .ThenBy(n => n.Number.Path, StringComparer.Ordinal).Select(n => n.Number)];
    }

    private static Measure MeasureOf(Car car, in Input input)
    {
        var unit = CarPath.Find(car, input.Path)?.Field.Unit ?? Units.One;

        // As many decimals as the doubt deserves.
        double doubt = unit.FromSi(2 * input.Sigma) - unit.FromSi(0);
        int decimals = Math.Clamp((int)Math.Ceiling(1 - Math.Log10(Math.Max(Math.Abs(doubt), 1e-9))), 0, 6);
        return new Measure(input.Value, unit, decimals);
    }

    /// <summary>An answer and what it was worked out from: a slider that moves a build leaves all of it as it is.</summary>
    private sealed class Kept(Car car, Learned learned)
    {
        private readonly object?[] _from = From(car);

        public Learned Learned => learned;

        public bool Fits(Car other)
        {
            object?[] now = From(other);
            return _from.Zip(now).All(x => ReferenceEquals(x.First, x.Second));
        }

        private static object?[] From(Car car) =>
            [car.Occasions, car.FrontLeft, car.FrontRight, car.RearLeft, car.RearRight, car.Front, car.Rear, car.Parts, car.LoadCases,
                car.Limits, car.Wheelbase, car.MeasuredLoadCase, car.Build(car.MeasuredBuild)];
    }
}
