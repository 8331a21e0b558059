using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// One corner solved for one row of inputs: where its travel ends, where it rides in each load case. Made once for a
/// corner and solved again for every row, without allocating beyond the motion itself.
/// </summary>
internal sealed class CornerNumbers
{
    /// <summary>What pushes back once coils or rubber are solid, N/m. Steel on steel is stiffer still; the exact figure moves the balance by less than 0.2 mm.</summary>
    internal const double SolidRate = 2e7;

    internal const double Gravity = 9.80665;
    internal const double TravelAccuracy = 1e-8;

    private readonly CornerPlan _plan;
    private readonly StackElement[] _stack;
    private readonly double[] _ride;
    private readonly double[] _gaps;
    private CornerMotion? _motion, _motionNow;

    public CornerNumbers(CornerPlan plan)
    {
        _plan = plan;
        _stack = new StackElement[plan.Station.Stack.Count];
        _ride = new double[plan.Loads.Count];
        X = plan.Inputs.Values();
        Clearance = new ClearanceNumbers(plan);
        _gaps = new double[plan.Clearance.Items.Count];
    }

    public CornerPlan Plan => _plan;

    /// <summary>True after <see cref="Solve"/>; false where the row only follows a solved one.</summary>
    public bool Whole { get; private set; }

    public ClearanceNumbers Clearance { get; }

    /// <summary>Least gap of each thing near the wheel, m; not finite where it cannot be computed.</summary>
    public ReadOnlySpan<double> Gaps => _gaps;

    /// <summary>Travel at which the wheel first touches something of the body; infinite where it does not.</summary>
    public double TyreTouch { get; private set; } = double.PositiveInfinity;

    /// <summary>The row of inputs; change it, then <see cref="Solve"/>.</summary>
    public double[] X { get; }

    public ReadOnlySpan<StackElement> Stack => _stack;

    public CornerMotion Motion => _motion ?? throw new InvalidOperationException("No motion: ask the plan what is missing first.");

    /// <summary>The motion as it was when the car was measured.</summary>
    public CornerMotion MotionNow => _motionNow ?? Motion;

    /// <summary>Travel at which each load case rides, m; NaN where it is unknown or out of reach.</summary>
    public ReadOnlySpan<double> Ride => _ride;

    /// <summary>Travel of full droop; minus infinity where nothing known ends it.</summary>
    public double Droop { get; private set; }

    /// <summary>Travel at which the bump stop is touched, spent; the damper shut; the stack solid; metal met. Infinity where never or unknown.</summary>
    public double Touch { get; private set; }

    public double Spent { get; private set; }

    public double Shut { get; private set; }

    public double Bind { get; private set; }

    public double Metal { get; private set; }

    /// <summary>The first of what ends the bump travel, tyre contact aside.</summary>
    public double FullBump => Math.Min(Math.Min(Spent, Shut), Math.Min(Bind, Metal));

    /// <summary>Solves everything for the present row and searches the worst state of every clearance.</summary>
    public void Solve()
    {
        Whole = true;
        SolveTravel(InputEffect.Everything);
        Clearance.Search(this);
        TyreTouch = Clearance.Touch.Travel;
        for (int i = 0; i < _gaps.Length; i++)
        {
            _gaps[i] = Clearance.Worst[i].Clearing.Gap;
        }
    }

    /// <summary>
    /// Solves a row that differs from a searched one only in inputs of this effect. Clearances are read in the worst states
    /// found there; what the effect does not reach is taken over.
    /// </summary>
    public void Follow(CornerNumbers searched, InputEffect effect)
    {
        Whole = false;
        if (effect.Travel)
        {
            _motion = searched._motion;
            _motionNow = searched._motionNow;
            SolveTravel(effect);
        }
        else
        {
            TakeTravel(searched);
        }

        searched._gaps.CopyTo(_gaps, 0);
        TyreTouch = Clearance.Follow(this, _gaps, searched.Clearance, effect);
    }

    private void TakeTravel(CornerNumbers other)
    {
        (_motion, _motionNow) = (other._motion, other._motionNow);
        (Droop, Touch, Spent, Shut, Bind, Metal) = (other.Droop, other.Touch, other.Spent, other.Shut, other.Bind, other.Metal);
        other._ride.CopyTo(_ride, 0);
        other._stack.CopyTo(_stack, 0);
    }

    private void SolveTravel(InputEffect effect)
    {
        var s = _plan.Station;
        if (_plan.HasMotion && effect.Motion)
        {
            _motion = _plan.Motion.Make(X);
            _motionNow = _plan.Motion.AsMeasured(X) ? _motion : _plan.Motion.MakeNow(X);
        }

        FillStack();
        // What was found for the row before is a good guess for this one.
        var before = (Droop, Touch, Spent, Shut, Bind);
        Droop = double.NegativeInfinity;
        (Touch, Spent, Shut, Bind) = (double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
        Metal = At(s.Metal, double.PositiveInfinity);
        if (_plan.HasDamper)
        {
            double top = X[s.RodDrop] + X[s.Body], packer = X[s.Packer];
            Droop = TravelAt(Station.Damper, X[s.RodOpen] + top, before.Droop);
            Shut = s.RodClosed == InputTable.None ? double.PositiveInfinity : TravelAt(Station.Damper, X[s.RodClosed] + top, before.Shut);
            Touch = s.StopLength == InputTable.None ? double.PositiveInfinity : TravelAt(Station.Damper, X[s.StopLength] + packer + top, before.Touch);
            Spent = s.StopSpent == InputTable.None ? double.PositiveInfinity : TravelAt(Station.Damper, X[s.StopSpent] + packer + top, before.Spent);
        }

        Droop = Math.Max(Droop, At(s.DroopLimit, double.NegativeInfinity));
        if (_plan.HasSpring)
        {
            Bind = TravelAt(Station.Spring, SpringStack.SolidLength(_stack) + X[s.SeatDrop] + X[s.Perch], before.Bind);
        }

        for (int i = 0; i < _ride.Length; i++)
        {
            _ride[i] = _plan.CanRide && _plan.Loads[i].Index != InputTable.None ? RideAt(X[_plan.Loads[i].Index] * Gravity, _ride[i]) : double.NaN;
        }
    }

    /// <summary>Space between the spring's seats, m.</summary>
    public double SpringSpace(double travel) =>
        Motion.StationAt(travel, Station.Spring, out var state).IsUsable()
            ? state.Length - X[_plan.Station.SeatDrop] - X[_plan.Station.Perch] : double.NaN;

    /// <summary>Travel at which the spring's space has a length, m; infinite where it never has.</summary>
    public double TravelAtSpace(double space) => TravelAt(Station.Spring, space + X[_plan.Station.SeatDrop] + X[_plan.Station.Perch]);

    /// <summary>Exposed rod, m.</summary>
    public double RodShowing(double travel) =>
        Motion.StationAt(travel, Station.Damper, out var state).IsUsable()
            ? state.Length - X[_plan.Station.RodDrop] - X[_plan.Station.Body] : double.NaN;

    public StationState SpringStation(double travel) =>
        Motion.StationAt(travel, Station.Spring, out var state).IsUsable() ? state : new StationState(double.NaN, double.NaN, double.NaN);

    public StackForce StackAt(double travel)
    {
        double space = SpringSpace(travel);
        return double.IsFinite(space) && space > 0 ? SpringStack.ForceAt(_stack, space) : new StackForce(double.NaN, StackState.Loose, 0, 0);
    }

    /// <summary>Spring force at ride in a load case, by what the load leaves for it: exact even where the stack is nearly solid. N.</summary>
    public double SpringForce(double travel) => StackAt(travel).Force;

    /// <summary>Makes the motion and the stack of the present row, without solving anything.</summary>
    public void MakeMotion()
    {
        _motion = _plan.Motion.Make(X);
        _motionNow = _plan.Motion.AsMeasured(X) ? _motion : _plan.Motion.MakeNow(X);
        FillStack();
    }

    /// <summary>Contact load at a travel and its slope, N and N/m.</summary>
    public double ContactLoad(double travel, out double slope) => ContactLoad(travel, 0, out slope, out _);

    /// <summary>Contact load with the spring's lower seat raised, m, and its slopes with travel and with the seat, N/m.</summary>
    public double ContactLoad(double travel, double seatRise, out double slope, out double perSeat)
    {
        var s = _plan.Station;
        bool spring = Motion.StationAt(travel, Station.Spring, out var at).IsUsable();
        if (!spring)
        {
            (slope, perSeat) = (0, 0);
            return double.NaN;
        }

        // The stack: its force and tangent rate; metal once it is solid.
        var stack = SpringStack.ForceAt(_stack, Math.Max(1e-4, at.Length - X[s.SeatDrop] - X[s.Perch] - seatRise));
        double force = stack.Force, rate = 0;
        if (stack.State == StackState.Bound)
        {
            (force, rate) = (force + (SolidRate * stack.Overrun), SolidRate);
        }
        else if (stack.State == StackState.Seated)
        {
            rate = SpringStack.TangentRateAt(_stack, force) ?? SolidRate;
        }

        perSeat = at.MotionRatio * rate;
        double load = (X[s.Unsprung] * Gravity) + (at.MotionRatio * force);
        slope = RideRates.WheelRate(rate, at.MotionRatio, force, at.MotionRatioSlope);

        // The damper's rod force and the bump stop, on their own axis.
        if (_plan.HasDamper && Motion.StationAt(travel, Station.Damper, out var damper).IsUsable())
        {
            double rod = Math.Max(0, At(s.RodForce, 0)) + StopForce(damper.Length - X[s.RodDrop] - X[s.Body], out double stopRate);
            load += damper.MotionRatio * rod;
            slope += RideRates.WheelRate(stopRate, damper.MotionRatio, rod, damper.MotionRatioSlope);
        }

        return load;
    }

    /// <summary>Travel at which a station has a length, m; infinite where it never has.</summary>
    /// <param name="station">Spring or damper.</param>
    /// <param name="length">m.</param>
    /// <param name="guess">Where to begin, m: what it was for a row close by.</param>
    public double TravelAt(Station station, double length, double guess = 0)
    {
        var function = new StationFalls(this, station);
        var root = RisingRoot.Find(function, -length, _plan.LowestTravel, _plan.HighestTravel, guess, TravelAccuracy);
        return root.Why switch
        {
            RootStop.Converged => root.X,
            RootStop.BelowRange => double.NegativeInfinity,
            RootStop.AboveRange => double.PositiveInfinity,
            _ => double.NaN,
        };
    }

    /// <summary>Travel at which the corner carries a contact load, N; NaN where it does not within reach.</summary>
    public double TravelUnder(double load) => RideAt(load, 0);

    private double RideAt(double load, double guess)
    {
        var root = RisingRoot.Find(new Contact(this), load, _plan.LowestTravel, _plan.HighestTravel, guess, TravelAccuracy);
        return root.Why == RootStop.Converged ? root.X : double.NaN;
    }

    private double StopForce(double rodShowing, out double rate)
    {
        var s = _plan.Station;
        rate = 0;
        if (s.StopLength == InputTable.None)
        {
            return 0;
        }

        double squeezed = X[s.StopLength] + X[s.Packer] - rodShowing;
        if (!(squeezed > 0))
        {
            return 0;
        }

        double force = 0;
        if (s.StopCurve is { } curve)
        {
            force = curve.ForceAt(squeezed);
            rate = 1 / curve.ComplianceAt(force);
        }

        double beyond = s.StopSpent == InputTable.None ? 0 : X[s.StopSpent] + X[s.Packer] - rodShowing;
        if (beyond > 0)
        {
            force += SolidRate * beyond;
            rate += SolidRate;
        }

        return force;
    }

    private void FillStack()
    {
        if (!_plan.HasSpring)
        {
            return;
        }

        for (int i = 0; i < _stack.Length; i++)
        {
            _stack[i] = ElementOf(_plan.Station.Stack[i], X);
        }
    }

    /// <summary>One complete piece of a stack with the numbers of a row.</summary>
    internal static StackElement ElementOf(StackSlot slot, double[] x)
    {
        // A draw far out in the doubt of a short spring must not make it longer when solid than when free.
        const double LeastTravel = 1e-4;
        return slot.Sheet is not null ? StackElement.Rigid(Math.Max(0, x[slot.Free]))
            : slot.Curve is { } curve ? StackElement.Progressive(Math.Max(x[slot.Free], x[slot.Solid] + LeastTravel), x[slot.Solid], curve)
            : StackElement.Linear(Math.Max(x[slot.Free], x[slot.Solid] + LeastTravel), x[slot.Solid], Math.Max(1, x[slot.Rate]));
    }

    private double At(int index, double otherwise) => index == InputTable.None ? otherwise : X[index];

    private readonly struct StationFalls(CornerNumbers corner, Station station) : IRisingFunction
    {
        public double ValueAt(double x, out double slope)
        {
            corner.Motion.StationAt(x, station, out var state);
            slope = state.MotionRatio;
            return -state.Length;
        }
    }

    private readonly struct Contact(CornerNumbers corner) : IRisingFunction
    {
        public double ValueAt(double x, out double slope) => corner.ContactLoad(x, out slope);
    }
}
