using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Corners;

/// <summary>What ends a corner's travel, m; infinite where never or unknown.</summary>
/// <param name="Droop">Full droop; minus infinity where nothing known ends it.</param>
/// <param name="Touch">The bump stop is touched.</param>
/// <param name="Spent">It is fully compressed.</param>
/// <param name="Shut">The damper is at its end.</param>
/// <param name="Bind">The stack is solid.</param>
/// <param name="Metal">Metal meets metal.</param>
internal readonly record struct TravelEnds(double Droop, double Touch, double Spent, double Shut, double Bind, double Metal)
{
    public static TravelEnds Unknown => new(
        double.NegativeInfinity, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity,
        double.PositiveInfinity);
}

/// <summary>
/// One corner solved for one row of inputs: where its travel ends, where it rides in each load case, how near everything comes to its
/// wheel. Made once for a corner and solved again for every row, without allocating beyond the motion itself. Read through a
/// <see cref="CornerReader"/>.
/// </summary>
internal sealed class SolvedCorner
{
    /// <summary>
    /// What pushes back once coils or rubber are solid, N/m. Steel on steel is
    /// stiffer still; the exact figure moves the balance by less than 0.2 mm.
    /// </summary>
    internal const double SolidRate = 2e7;

    internal const double Gravity = 9.80665;
    internal const double TravelAccuracy = 1e-8;

    private readonly CornerPlan _plan;
    private readonly StackElement[] _stack;
    private readonly double[] _ride;
    private readonly double[] _gaps;
    private readonly ReadSet _one = new();
    private TravelEnds _ends;

    public SolvedCorner(CornerPlan plan)
    {
        _plan = plan;
        _stack = new StackElement[plan.Station.Stack.Count];
        _ride = new double[plan.Loads.Count];
        Values = plan.Inputs.Values();
        Clearance = new ClearanceNumbers(plan);
        _gaps = new double[plan.Clearance.Items.Count];
    }

    public CornerPlan Plan => _plan;

    /// <summary>
    /// The row of inputs, SI, by place; change it, then <see cref="Solve"/> or <see cref="Follow(SolvedCorner, ReadSet, ReadSet?)"/>.
    /// </summary>
    public double[] Values { get; }

    /// <summary>This corner as somebody reads it who need not know what he read.</summary>
    public CornerReader Read => new(this, null);

    /// <summary>What each step was worked out from; null unless it was noted.</summary>
    public CornerReads? Reads { get; private set; }

    /// <summary>True after <see cref="Solve"/>; false where the row only follows a solved one.</summary>
    public bool Whole { get; private set; }

    public ClearanceNumbers Clearance { get; }

    internal TravelEnds Ends => _ends;

    internal double TyreTouch { get; private set; } = double.PositiveInfinity;

    internal ReadOnlySpan<StackElement> StackElements => _stack;

    internal ReadOnlySpan<double> RideTravels => _ride;

    internal CornerMotion? MotionOrNone { get; private set; }

    internal CornerMotion? MotionNowOrNone { get; private set; }

    internal double GapOf(int obstacle) => _gaps[obstacle];

    /// <summary>Moves one input of the row.</summary>
    public void Set(Handle input, double value) => Values[input.Index] = value;

    /// <summary>Solves everything for the present row and searches the worst state of every clearance.</summary>
    /// <param name="note">True to note what each step was worked out from, so that other rows can follow this one.</param>
    public void Solve(bool note = false)
    {
        Whole = true;
        Reads = note ? new CornerReads(_ride.Length, _gaps.Length) : null;
        SolveTravel(null, null);
        Clearance.Search(this);
        TyreTouch = Clearance.Touch.Travel;
        for (int i = 0; i < _gaps.Length; i++)
        {
            _gaps[i] = Clearance.Worst[i].Clearing.Gap;
        }
    }

    /// <summary>Solves a row that differs from a searched one in a single input.</summary>
    public void Follow(SolvedCorner searched, int moved)
    {
        _one.Become(moved);
        Follow(searched, _one, null);
    }

    /// <summary>
    /// Solves a row that differs from a searched one only in these inputs. Clearances are read in the worst states found there; what
    /// was not worked out from any of the inputs is taken over.
    /// </summary>
    /// <param name="searched">Solved with notes.</param>
    /// <param name="moved">The inputs that differ.</param>
    /// <param name="wanted">What will be asked of the row: gaps that are not in it are not followed. Null for everything.</param>
    public void Follow(SolvedCorner searched, ReadSet moved, ReadSet? wanted)
    {
        Whole = false;
        Reads = null;
        SolveTravel(searched, moved);
        searched._gaps.CopyTo(_gaps, 0);
        TyreTouch = Clearance.Follow(this, _gaps, searched, moved, wanted);
    }

    /// <summary>Makes the motion and the stack of the present row, without solving anything.</summary>
    /// <param name="note">True to note what they were worked out from.</param>
    public void MakeMotion(bool note = false)
    {
        Reads = note ? new CornerReads(_ride.Length, _gaps.Length) : null;
        SolveMotion(null, null);
        FillStack(new Reader(Values, Reads?.Stack));
    }

    /// <summary>Solves the motion and the ends of travel of the present row, and no clearance.</summary>
    /// <param name="solved">A row that differs in the inputs moved only; null to solve, and note, all.</param>
    /// <param name="moved">The inputs that differ.</param>
    public void SolveEnds(SolvedCorner? solved = null, ReadSet? moved = null)
    {
        Reads = solved is null ? new CornerReads(_ride.Length, _gaps.Length) : null;
        SolveTravel(solved, moved);
    }

    private void SolveTravel(SolvedCorner? searched, ReadSet? moved)
    {
        var noted = Reads;
        var known = searched?.Reads;
        SolveMotion(searched, moved);
        if (Moved(known?.Stack))
        {
            FillStack(new Reader(Values, noted?.Stack));
        }
        else
        {
            searched!._stack.CopyTo(_stack, 0);
        }

        // What was found for the searched row is a good guess for this one.
        var near = searched?._ends ?? default;
        _ends = searched?._ends ?? TravelEnds.Unknown;
        _ends = _ends with
        {
            Metal = Moved(known?.Metal) ? new Reader(Values, noted?.Metal).Or(_plan.Station.Metal, double.PositiveInfinity) : _ends.Metal,
            Droop = Moved(known?.Droop) ? SolveDroop(new(this, noted?.Droop), near.Droop) : _ends.Droop,
            Shut = Moved(known?.Shut) ? SolveRod(new(this, noted?.Shut), _plan.Station.RodClosed, false, near.Shut) : _ends.Shut,
            Touch = Moved(known?.Touch) ? SolveRod(new(this, noted?.Touch), _plan.Station.StopLength, true, near.Touch) : _ends.Touch,
            Spent = Moved(known?.Spent) ? SolveRod(new(this, noted?.Spent), _plan.Station.StopSpent, true, near.Spent) : _ends.Spent,
            Bind = Moved(known?.Bind) ? SolveBind(new(this, noted?.Bind), near.Bind) : _ends.Bind,
        };
        for (int i = 0; i < _ride.Length; i++)
        {
            _ride[i] = Moved(known?.Ride[i]) ? SolveRide(new(this, noted?.Ride[i]), _plan.Loads[i].Load, searched?._ride[i] ?? 0)
                : searched!._ride[i];
        }

        bool Moved(ReadSet? from) => from is null || from.Meets(moved!);
    }

    private void SolveMotion(SolvedCorner? searched, ReadSet? moved)
    {
        if (!_plan.HasMotion)
        {
            return;
        }

        var known = searched?.Reads;
        bool make = known is null || known.Motion.Meets(moved!), makeNow = known is null || known.MotionNow.Meets(moved!);
        MotionOrNone = make ? _plan.Motion.Make(new Reader(Values, Reads?.Motion)) : searched!.MotionOrNone;
        if (!makeNow)
        {
            MotionNowOrNone = searched!.MotionNowOrNone;
            return;
        }

        // As long as plate and clamp stand as they stood, it is the same motion.
        var now = new CornerReader(this, Reads?.MotionNow);
        MotionNowOrNone = _plan.Motion.AsMeasured(now.X) ? now.Motion : _plan.Motion.MakeNow(now.X);
    }

    private double SolveDroop(in CornerReader n, double guess)
    {
        var s = _plan.Station;
        double droop = _plan.HasDamper ? n.TravelAt(Station.Damper, n.X[s.RodOpen] + (n.X[s.RodDrop] + n.X[s.Body]), guess)
            : double.NegativeInfinity;
        return Math.Max(droop, n.X.Or(s.DroopLimit, double.NegativeInfinity));
    }

    // Where the rod shows a length.
    private double SolveRod(in CornerReader n, Handle length, bool packed, double guess)
    {
        var s = _plan.Station;
        return _plan.HasDamper && length.IsGiven
            ? n.TravelAt(Station.Damper, n.X[length] + (packed ? n.X[s.Packer] : 0) + (n.X[s.RodDrop] + n.X[s.Body]), guess)
            : double.PositiveInfinity;
    }

    private double SolveBind(in CornerReader n, double guess) =>
        _plan.HasSpring
            ? n.TravelAt(Station.Spring, SpringStack.SolidLength(n.Stack) + n.X[_plan.Station.SeatDrop] + n.X[_plan.Station.Perch], guess)
            : double.PositiveInfinity;

    private double SolveRide(in CornerReader n, Handle load, double guess) =>
        _plan.CanRide && load.IsGiven ? n.TravelUnder(n.X[load] * Gravity, guess) + n.X.Or(_plan.RideFriction, 0) : double.NaN;

    private void FillStack(Reader x)
    {
        for (int i = 0; i < _stack.Length && _plan.HasSpring; i++)
        {
            _stack[i] = ElementOf(_plan.Station.Stack[i], x);
        }
    }

    /// <summary>
    /// One complete piece of a stack with the numbers of a row; what no coil
    /// can be, far out in a doubt, is taken as the nearest that one can.
    /// </summary>
    internal static StackElement ElementOf(StackSlot slot, Reader x)
    {
        // A tolerance as large as its value leads below nothing, and one of a short spring to a coil that is longer solid than free.
        const double LeastTravel = 1e-4, LeastRate = 1;
        if (slot.Sheet is not null)
        {
            return StackElement.Rigid(Math.Max(0, x[slot.Free]));
        }

        double solid = Math.Max(0, x[slot.Solid]), free = Math.Max(x[slot.Free] - slot.Settles, solid + LeastTravel);
        return slot.Curve is { } curve ? StackElement.Progressive(free, solid, curve)
            : StackElement.Linear(free, solid, Math.Max(LeastRate, x[slot.Rate]));
    }
}
