using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Mechanics.Numerics;


namespace Cornerwright.Mechanics.Loads;

/// <summary>
/// Balance of a rigid body on four corners and four tyres: Newton's method on heave, roll, pitch and four hubs, with exact derivatives.
/// </summary>
/// <remarks>
/// Seven conditions: each wheel in vertical balance, the body in heave, roll and pitch. Small angles of the body: at 1° of roll
/// a track of 1.5 m shortens by 0.2 mm. Source: statics; docs/theory/setting.md §1.
/// </remarks>
public static class CarBalance
{
    private const int Wheels = 4, Unknowns = 7;

    /// <summary>Forces balance to this share of the car's weight: 1e-9 of 15 kN is far below a gram.</summary>
    private const double ForceAccuracy = 1e-9;

    /// <summary>A Newton step is cut to this, m: longer ones jump across the corners of helpers and stops.</summary>
    private const double LongestStep = 0.03;

    private const int MostIterations = 200;

    /// <summary>Finds how the car stands.</summary>
    /// <param name="car">Wheels, bars and weights.</param>
    /// <param name="forces">By corner.</param>
    /// <param name="seatRise">By corner, m: how far each lower seat was raised.</param>
    /// <param name="guess">A stance close by, or null to begin at the reference.</param>
    /// <remarks>
    /// Newton with halving of steps that do not bring the forces nearer to balance. Source: Press et al., Numerical
    /// Recipes, 3rd ed. (2007), §9.7; docs/theory/setting.md §1.
    /// </remarks>
    public static CarStance Solve(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, ReadOnlySpan<double> seatRise, CarStance? guess = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(forces);
        Span<double> v = stackalloc double[Unknowns], trial = stackalloc double[Unknowns], r = stackalloc double[Unknowns],
            step = stackalloc double[Unknowns];
        Span<double> matrix = stackalloc double[Unknowns * Unknowns];
        Span<CornerForce> at = stackalloc CornerForce[Wheels];
        if (guess is { Why: BalanceStop.Converged })
        {
            (v[0], v[1], v[2]) = (guess.Heave, guess.Roll, guess.Pitch);
            for (int i = 0; i < Wheels; i++)
            {
                v[3 + i] = guess.HubRise[i];
            }
        }

        double weight = 0;
        foreach (var w in car.Weights)
        {
            weight += Math.Abs(w.Newtons);
        }

        if (!Forces(car, forces, seatRise, v, at))
        {
            return Answer(car, v, BalanceStop.OutOfReach, 0);
        }

        double miss = Residual(car, v, at, r);
        for (int k = 1; k <= MostIterations; k++)
        {
            if (!double.IsFinite(miss))
            {
                return Answer(car, v, BalanceStop.NotHeld, k);
            }

            if (miss <= ForceAccuracy * Math.Max(weight, 1))
            {
                return Answer(car, v, BalanceStop.Converged, k);
            }

            Matrix(car, v, at, matrix);
            for (int i = 0; i < Unknowns; i++)
            {
                step[i] = -r[i];
            }

            if (Lu.Solve(matrix, step, Unknowns) == 0)
            {
                return Answer(car, v, BalanceStop.NotHeld, k);
            }

            var (moved, reached) = Nearer(car, forces, seatRise, v, step, trial, at, r, ref miss);
            if (!moved)
            {
                // Nothing nearer: rounding has been reached, or there is no balance here.
                bool close = miss <= 1e-6 * Math.Max(weight, 1);
                return Answer(car, v, close ? BalanceStop.Converged : reached ? BalanceStop.NotHeld : BalanceStop.OutOfReach, k);
            }

            trial.CopyTo(v);
        }

        return Answer(car, v, BalanceStop.IterationLimit, MostIterations);
    }

    // Shortens the step to what the corners of the curves allow, then halves it until the forces come nearer to balance.
    private static (bool Moved, bool Reached) Nearer(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, ReadOnlySpan<double> seatRise, ReadOnlySpan<double> v,
        ReadOnlySpan<double> step,
        Span<double> trial, Span<CornerForce> at, Span<double> r, ref double miss)
    {
        double longest = 0;
        foreach (double move in step)
        {
            longest = Math.Max(longest, Math.Abs(move));
        }

        double share = Math.Min(1, LongestStep / Math.Max(longest, 1e-12));
        bool reached = false;
        for (int h = 0; h < 40; h++, share *= 0.5)
        {
            for (int i = 0; i < Unknowns; i++)
            {
                trial[i] = v[i] + (share * step[i]);
            }

            if (!Forces(car, forces, seatRise, trial, at))
            {
                continue;
            }

            reached = true;
            double now = Residual(car, trial, at, r);
            if (now < miss)
            {
                miss = now;
                return (true, true);
            }
        }

        return (false, reached);
    }

    /// <summary>How the stance follows small moves of the lower seats; null where it does not hold.</summary>
    /// <param name="car">As solved.</param>
    /// <param name="forces">As solved.</param>
    /// <param name="seatRise">As solved.</param>
    /// <param name="stance">Converged.</param>
    /// <remarks>Implicit function theorem on the conditions of balance. Source: docs/theory/setting.md §1.</remarks>
    public static SeatSensitivity? Sensitivity(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, ReadOnlySpan<double> seatRise, CarStance stance)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(forces);
        ArgumentNullException.ThrowIfNull(stance);
        Span<double> v =
            [stance.Heave, stance.Roll, stance.Pitch, stance.HubRise[0], stance.HubRise[1], stance.HubRise[2], stance.HubRise[3]];
        Span<double> matrix = stackalloc double[Unknowns * Unknowns], moves = stackalloc double[Unknowns * Wheels];
        Span<CornerForce> at = stackalloc CornerForce[Wheels];
        if (stance.Why != BalanceStop.Converged || !Forces(car, forces, seatRise, v, at))
        {
            return null;
        }

        Matrix(car, v, at, matrix);
        for (int j = 0; j < Wheels; j++)
        {
            moves[(0 * Wheels) + j] = -at[j].PerSeat;
            moves[(1 * Wheels) + j] = -car.Wheels[j].Y * at[j].PerSeat;
            moves[(2 * Wheels) + j] = car.Wheels[j].X * at[j].PerSeat;
            moves[((3 + j) * Wheels) + j] = at[j].PerSeat;
        }

        if (Lu.Solve(matrix, moves, Unknowns) == 0)
        {
            return null;
        }

        var (travel, load) = (new double[Wheels, Wheels], new double[Wheels, Wheels]);
        for (int i = 0; i < Wheels; i++)
        {
            var wheel = car.Wheels[i];
            for (int j = 0; j < Wheels; j++)
            {
                double hub = moves[((3 + i) * Wheels) + j];
                travel[i, j] = hub - moves[j] - (wheel.Y * moves[Wheels + j]) + (wheel.X * moves[(2 * Wheels) + j]);
                load[i, j] = stance.Load[i] > 0 ? -wheel.TyreRate * hub : 0;
            }
        }

        return new SeatSensitivity(travel, load);
    }

    private static double BodyRise(CarOnWheels car, ReadOnlySpan<double> v, int i) =>
        v[0] + (car.Wheels[i].Y * v[1]) - (car.Wheels[i].X * v[2]);

    private static double Travel(CarOnWheels car, ReadOnlySpan<double> v, int i) => v[3 + i] - BodyRise(car, v, i);

    private static double TyreLoad(in WheelUnderCar wheel, double hubRise) =>
        Math.Max(0, wheel.LoadAtReference - (wheel.TyreRate * hubRise));

    // Spring forces with the bars' share put on: bars couple the wheels of an axle, their slopes are added in Matrix.
    private static bool Forces(
        CarOnWheels car, IReadOnlyList<ICornerForce> forces, ReadOnlySpan<double> seatRise, ReadOnlySpan<double> v, Span<CornerForce> at)
    {
        for (int i = 0; i < Wheels; i++)
        {
            if (!forces[i].At(Travel(car, v, i), seatRise[i], out at[i]) || !double.IsFinite(at[i].Newtons))
            {
                return false;
            }
        }

        for (int axle = 0; axle < 2; axle++)
        {
            var bar = axle == 0 ? car.Front : car.Rear;
            int left = 2 * axle, right = left + 1;
            double twist = (bar.LeftRatio * Travel(car, v, left)) - (bar.RightRatio * Travel(car, v, right)) + bar.Twist,
                force = bar.RateOneEnd * twist;
            at[left] = at[left] with { Newtons = at[left].Newtons + (bar.LeftRatio * force) };
            at[right] = at[right] with { Newtons = at[right].Newtons - (bar.RightRatio * force) };
        }

        return true;
    }

    // Heave, roll, pitch of the body, then the four wheels; moments are divided by a metre, so that all are newtons.
    private static double Residual(CarOnWheels car, ReadOnlySpan<double> v, ReadOnlySpan<CornerForce> at, Span<double> r)
    {
        r[0] = r[1] = r[2] = 0;
        foreach (var w in car.Weights)
        {
            r[0] -= w.Newtons;
            r[1] -= w.Newtons * w.Y;
            r[2] += w.Newtons * w.X;
        }

        double square = 0;
        for (int i = 0; i < Wheels; i++)
        {
            var wheel = car.Wheels[i];
            double held = at[i].Newtons;
            r[0] += held;
            r[1] += held * wheel.Y;
            r[2] -= held * wheel.X;
            r[3 + i] = TyreLoad(wheel, v[3 + i]) - wheel.UnsprungWeight - held;
            square += r[3 + i] * r[3 + i];
        }

        return Math.Sqrt(square + (r[0] * r[0]) + (r[1] * r[1]) + (r[2] * r[2]));
    }

    // Rows as in Residual; columns heave, roll, pitch, hubs.
    private static void Matrix(CarOnWheels car, ReadOnlySpan<double> v, ReadOnlySpan<CornerForce> at, Span<double> m)
    {
        m.Clear();
        Span<double> arm = stackalloc double[3], other = stackalloc double[3];
        for (int i = 0; i < Wheels; i++)
        {
            var wheel = car.Wheels[i];
            Arms(wheel, arm);
            double tyre = wheel.LoadAtReference - (wheel.TyreRate * v[3 + i]) > 0 ? wheel.TyreRate : 0;
            m[((3 + i) * Unknowns) + 3 + i] -= tyre;
            int across = i ^ 1;
            Arms(car.Wheels[across], other);
            var bar = i < 2 ? car.Front : car.Rear;
            double mine = i % 2 == 0 ? bar.LeftRatio : bar.RightRatio, theirs = i % 2 == 0 ? bar.RightRatio : bar.LeftRatio;

            // The force held at i, by the travel of i itself and of the wheel across.
            Couple(m, i, i, arm, arm, at[i].PerTravel + (bar.RateOneEnd * mine * mine));
            Couple(m, i, across, arm, other, -bar.RateOneEnd * mine * theirs);
        }
    }

    private static void Couple(Span<double> m, int i, int j, ReadOnlySpan<double> armHeld, ReadOnlySpan<double> armMoved, double rate)
    {
        for (int k = 0; k < 3; k++)
        {
            m[(k * Unknowns) + 3 + j] += armHeld[k] * rate;
            m[((3 + i) * Unknowns) + k] += armMoved[k] * rate;
            for (int l = 0; l < 3; l++)
            {
                m[(k * Unknowns) + l] -= armHeld[k] * armMoved[l] * rate;
            }
        }

        m[((3 + i) * Unknowns) + 3 + j] -= rate;
    }

    private static void Arms(in WheelUnderCar wheel, Span<double> arm) => (arm[0], arm[1], arm[2]) = (1, wheel.Y, -wheel.X);

    private static CarStance Answer(CarOnWheels car, ReadOnlySpan<double> v, BalanceStop why, int iterations)
    {
        double[] travel = new double[Wheels], load = new double[Wheels];
        for (int i = 0; i < Wheels; i++)
        {
            travel[i] = Travel(car, v, i);
            load[i] = TyreLoad(car.Wheels[i], v[3 + i]);
        }

        return new CarStance(why, v[0], v[1], v[2], travel, [v[3], v[4], v[5], v[6]], load, iterations);
    }
}
