using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Loads;

/// <summary>Which collars to turn how far: whole steps on the car's true curves.</summary>
/// <remarks>Source: docs/theory/setting.md §3.</remarks>
public static class CollarSearch
{
    /// <summary>
    /// Price of touching a collar, in squares of a band: it is left alone where turning it would gain less than half a band on
    /// one reading. A choice of ours: dearer means fewer moves and larger misses.
    /// </summary>
    public const double Price = 0.25;

    /// <summary>Weight of a millimetre of seat, in bands: keeps collars still that no target asks for, and loses to any target.</summary>
    private const double PerMillimetre = 0.02;

    private const int Rounds = 8;

    /// <summary>Finds the steps.</summary>
    /// <param name="car">In its present state at seat rise 0.</param>
    /// <param name="forces">By corner.</param>
    /// <param name="targets">What is wanted.</param>
    /// <param name="knobs">By corner.</param>
    /// <param name="price">Of touching a collar; see <see cref="Price"/>.</param>
    /// <remarks>
    /// Gauss-Newton for the exact turns; then <see cref="StepSearch"/> on the car straightened where it stands, again until nothing
    /// changes, and last every neighbour one step away, on the true curves. Source: docs/theory/setting.md §3.
    /// </remarks>
    public static CollarChoice Find(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, CollarTargets targets, IReadOnlyList<CollarKnob> knobs, double price = Price)
    {
        ArgumentNullException.ThrowIfNull(targets);
        ArgumentNullException.ThrowIfNull(knobs);
        int[] turning = [.. Enumerable.Range(0, 4).Where(i => knobs[i].Turns)];
        double[] seats = new double[4];
        var start = CarBalance.Solve(car, forces, seats);
        if (start.Why != BalanceStop.Converged)
        {
            return new CollarChoice(start.Why, new int[4], new double[4], start, null, double.NaN);
        }

        var (exact, exactStance) = Exact(car, forces, targets, knobs, turning, start);
        var trial = new Trial(car, forces, targets, knobs, price, start);
        if (turning.Length > 0)
        {
            int[] k = new int[4];
            for (int round = 0; round < Rounds; round++)
            {
                int[]? next = Straightened(trial, turning, k, price);
                if (next is null || next.AsSpan().SequenceEqual(k))
                {
                    break;
                }

                k = next;
                trial.Look(k);
            }

            // The curves bend: every neighbour on the true car, until none is better.
            for (int round = 0; round < Rounds && trial.LookRound(turning); round++)
            {
            }
        }

        return new CollarChoice(trial.Best.Why, trial.BestSteps, exact, trial.Best, exactStance, trial.BestCost);
    }

    /// <summary>Misses of a stance, in bands: wanted minus reached, travels first and the cross weight last; only what is wanted.</summary>
    /// <param name="targets">What is wanted.</param>
    /// <param name="stance">What is.</param>
    /// <remarks>Source: definition.</remarks>
    public static double[] Misses(CollarTargets targets, CarStance stance)
    {
        ArgumentNullException.ThrowIfNull(targets);
        ArgumentNullException.ThrowIfNull(stance);
        var misses = new List<double>(5);
        for (int i = 0; i < 4; i++)
        {
            if (targets.Travel[i] is { } travel)
            {
                misses.Add((travel - stance.Travel[i]) / targets.TravelBand);
            }
        }

        if (targets.CrossWeight is { } cross)
        {
            misses.Add((cross - stance.CrossWeight) / targets.CrossBand);
        }

        return [.. misses];
    }

    // Rows: how each wanted result moves with one step of each turning collar, in bands; then the seats themselves.
    private static double[,] Rows(
        CollarTargets targets, SeatSensitivity s, CarStance stance, IReadOnlyList<CollarKnob> knobs, int[] turning, double perMetre)
    {
        int wanted = targets.Travel.Count(t => t is not null) + (targets.CrossWeight is null ? 0 : 1), n = turning.Length;
        double[,] rows = new double[wanted + n, n];
        for (int c = 0; c < n; c++)
        {
            int j = turning[c], r = 0;
            double step = knobs[j].Step;
            for (int i = 0; i < 4; i++)
            {
                if (targets.Travel[i] is not null)
                {
                    rows[r++, c] = s.Travel[i, j] * step / targets.TravelBand;
                }
            }

            if (targets.CrossWeight is not null)
            {
                double total = s.Load[0, j] + s.Load[1, j] + s.Load[2, j] + s.Load[3, j];
                rows[r, c] = (s.Load[1, j] + s.Load[2, j] - (stance.CrossWeight * total)) / stance.Total * step / targets.CrossBand;
            }

            rows[wanted + c, c] = perMetre * step;
        }

        return rows;
    }

    private static int[]? Straightened(Trial trial, int[] turning, int[] k, double price)
    {
        double[] seats = trial.Seats(k);
        var stance = CarBalance.Solve(trial.Car, trial.Forces, seats, trial.Start);
        if (CarBalance.Sensitivity(trial.Car, trial.Forces, seats, stance) is not { } s)
        {
            return null;
        }

        double[,] rows = Rows(trial.Targets, s, stance, trial.Knobs, turning, PerMillimetre * 1000);
        double[] misses = Misses(trial.Targets, stance), wanted = new double[rows.GetLength(0)];
        for (int r = 0; r < misses.Length; r++)
        {
            wanted[r] = misses[r];
            for (int c = 0; c < turning.Length; c++)
            {
                wanted[r] += rows[r, c] * k[turning[c]];
            }
        }

        int[] least = [.. turning.Select(j => trial.Knobs[j].Least)], most = [.. turning.Select(j => trial.Knobs[j].Most)];
        var found = StepSearch.Find(rows, wanted, least, most, price);
        int[] next = new int[4];
        for (int c = 0; c < turning.Length; c++)
        {
            next[turning[c]] = found.Steps[c];
        }

        return next;
    }

    private static (double[] Steps, CarStance? Stance) Exact(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, CollarTargets targets, IReadOnlyList<CollarKnob> knobs, int[] turning,
        CarStance start)
    {
        // Far weaker than in the whole steps: the exact turns shall hit the targets where they can.
        const double Slight = 1e-3;
        double[] steps = new double[4], seats = new double[4];
        var stance = start;
        for (int round = 0; round < 30 && turning.Length > 0; round++)
        {
            if (CarBalance.Sensitivity(car, forces, seats, stance) is not { } s)
            {
                return (steps, null);
            }

            double[,] rows = Rows(targets, s, stance, knobs, turning, PerMillimetre * 1000 * Slight);
            double[] misses = Misses(targets, stance);
            int n = turning.Length;
            var equations = new NormalEquations(new double[n * n], new double[n]);
            for (int r = 0; r < rows.GetLength(0); r++)
            {
                double miss = r < misses.Length ? misses[r] : -rows[r, r - misses.Length] * steps[turning[r - misses.Length]];
                equations.Add([.. Enumerable.Range(0, n).Select(a => rows[r, a])], miss);
            }

            // The seats' own rows are weak on purpose, and rounding is all that may stand against them.
            if (!equations.Solve(Cholesky.OfCovariance))
            {
                return (steps, null);
            }

            double[] move = equations.Unknowns.ToArray();
            double largest = 0;
            for (int a = 0; a < n; a++)
            {
                largest = Math.Max(largest, Math.Abs(move[a] * knobs[turning[a]].Step));
            }

            // No longer move than 30 mm at once: beyond, other curves rule. Halved until the car stands there.
            double share = Math.Min(1, 0.03 / Math.Max(largest, 1e-12));
            CarStance? next = null;
            for (int h = 0; h < 12 && next is null; h++, share *= 0.5)
            {
                double[] trial = [.. steps.Select((k, i) => k + (share * Of(turning, move, i)))];
                double[] at = [.. trial.Select((k, i) => k * knobs[i].Step)];
                var there = CarBalance.Solve(car, forces, at, stance);
                if (there.Why == BalanceStop.Converged)
                {
                    (steps, seats, next) = (trial, at, there);
                }
            }

            if (next is null)
            {
                return (steps, null);
            }

            stance = next;
            if (largest < 1e-8)
            {
                break;
            }
        }

        return (steps, stance);
    }

    private static double Of(int[] turning, double[] move, int corner) =>
        Array.IndexOf(turning, corner) is var a and >= 0 ? move[a] : 0;

    /// <summary>Tries steps on the true car and remembers the best.</summary>
    private sealed class Trial
    {
        private readonly double _price;
        private readonly Dictionary<(int, int, int, int), double> _seen = [];

        public Trial(
            CarOnWheels car, IReadOnlyList<ICornerForce> forces, CollarTargets targets, IReadOnlyList<CollarKnob> knobs, double price,
            CarStance start)
        {
            (Car, Forces, Targets, Knobs, Start, Best, _price) = (car, forces, targets, knobs, start, start, price);
            BestCost = double.PositiveInfinity;
            Look([0, 0, 0, 0]);
        }

        public CarOnWheels Car { get; }
        public IReadOnlyList<ICornerForce> Forces { get; }
        public CollarTargets Targets { get; }
        public IReadOnlyList<CollarKnob> Knobs { get; }
        public CarStance Start { get; }
        public CarStance Best { get; private set; }
        public int[] BestSteps { get; private set; } = [0, 0, 0, 0];
        public double BestCost { get; private set; }

        public double[] Seats(int[] k) => [k[0] * Knobs[0].Step, k[1] * Knobs[1].Step, k[2] * Knobs[2].Step, k[3] * Knobs[3].Step];

        public bool Look(int[] k)
        {
            if (!_seen.TryAdd((k[0], k[1], k[2], k[3]), 0)
                || Enumerable.Range(0, 4).Any(i => k[i] != 0 && (k[i] < Knobs[i].Least || k[i] > Knobs[i].Most)))
            {
                return false;
            }

            double[] seats = Seats(k);
            var stance = CarBalance.Solve(Car, Forces, seats, Best.Why == BalanceStop.Converged ? Best : Start);
            if (stance.Why != BalanceStop.Converged)
            {
                return false;
            }

            double cost = _price * k.Count(x => x != 0);
            foreach (double miss in Misses(Targets, stance))
            {
                cost += miss * miss;
            }

            foreach (double seat in seats)
            {
                cost += PerMillimetre * 1000 * seat * PerMillimetre * 1000 * seat;
            }

            if (!(cost < BestCost - 1e-12))
            {
                return false;
            }

            (Best, BestSteps, BestCost) = (stance, [.. k], cost);
            return true;
        }

        public bool LookRound(int[] turning)
        {
            int[] from = [.. BestSteps], k = new int[4];
            bool better = false;
            int count = (int)Math.Pow(3, turning.Length);
            for (int code = 0; code < count; code++)
            {
                from.CopyTo(k, 0);
                for (int c = 0, rest = code; c < turning.Length; c++, rest /= 3)
                {
                    k[turning[c]] += (rest % 3) - 1;
                }

                better |= Look(k);
            }

            // Leaving a collar alone may be more than one step away.
            foreach (int j in turning)
            {
                from.CopyTo(k, 0);
                k[j] = 0;
                better |= Look(k);
            }

            return better;
        }
    }
}
