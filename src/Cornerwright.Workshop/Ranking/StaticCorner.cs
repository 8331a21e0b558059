using Cornerwright.Garage.Builds;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A perch as the quick evaluation needs it.</summary>
/// <param name="Pitch">m a turn; not above 0 for a seat that cannot be turned.</param>
/// <param name="Register">m; NaN where nobody gave it.</param>
/// <param name="FixedHeight">By side (left, right): where a seat that cannot be turned stands, m; NaN where no build says it.</param>
internal readonly record struct StaticPerch(double Pitch, double Register, (double Left, double Right) FixedHeight)
{
    public bool Turns => Pitch > 0;
}

/// <summary>Values and margins of one quick evaluation, by <see cref="StaticCheck"/>. NaN where a check cannot speak.</summary>
internal sealed class StaticSheet
{
    public double[] Value { get; } = new double[StaticChecks.Count];

    public double[] Margin { get; } = new double[StaticChecks.Count];

    /// <summary>The first check that does not hold; -1 for none.</summary>
    public int Broken { get; private set; }

    /// <summary>How many do not hold, of those evaluated.</summary>
    public int BrokenCount { get; private set; }

    /// <summary>Height of the perch, solved where it turns, m.</summary>
    public double Perch { get; set; }

    /// <summary>Travel at ride in the wanted load case, m.</summary>
    public double Ride { get; set; }

    /// <summary>Wheel rate at ride, N/m, without the tyre.</summary>
    public double WheelRate { get; set; }

    /// <summary>Travel at which the first of stop, damper, coils and metal ends the bump, m; infinite where nothing known does.</summary>
    public double FullBump { get; set; }

    public void Clear()
    {
        Array.Fill(Value, double.NaN);
        Array.Fill(Margin, double.NaN);
        (Broken, BrokenCount, Ride, WheelRate, FullBump) = (-1, 0, double.NaN, double.NaN, double.NaN);
    }

    /// <returns>True if the check holds or cannot speak.</returns>
    public bool Put(StaticCheck check, double value, double low, double high)
    {
        Value[(int)check] = value;
        if (!double.IsFinite(value))
        {
            return true;
        }

        return Margined(check, Math.Min(value - low, high - value));
    }

    public bool Margined(StaticCheck check, double margin)
    {
        Margin[(int)check] = margin;
        bool holds = !(margin < 0);
        if (!holds)
        {
            Broken = Broken < 0 ? (int)check : Broken;
            BrokenCount++;
        }

        return holds;
    }
}

/// <summary>
/// The quick evaluation of one corner: solves the collar for the height wanted, then every check that springs, damper and
/// seats decide, at the best estimate, without allocating. Same values as the judge's to rounding; docs/theory/ranking.md §2.
/// </summary>
internal sealed class StaticCorner
{
    /// <summary>Collars are set to this, m: a tape does not read finer.</summary>
    public const double PerchStep = 1e-4;

    private const double LowestPerch = -0.050, HighestPerch = 0.900;   // the file format's range

    private readonly bool _left;
    private readonly double _preloadTurns, _helperReserve, _crossover, _coilRoom, _stopLead, _bump, _droop, _stopUse, _offMiddle, _thread;
    private readonly double _tightest, _loosest, _stress, _heightLow, _heightHigh, _camberLow, _camberHigh, _frequencyLow;

    public StaticCorner(bool left, Limits limits, double heightTarget, bool judgeHeight, (double Low, double High) camber,
        double frequencyLow)
    {
        _left = left;
        _preloadTurns = Say.Limit(limits.PreloadTurns);
        _helperReserve = Say.Limit(limits.HelperReserve);
        _crossover = Say.Limit(limits.CrossoverBand);
        _coilRoom = Say.Limit(limits.CoilRoom);
        _stopLead = Say.Limit(limits.StopLead);
        _bump = Say.Limit(limits.BumpTravel);
        _droop = Say.Limit(limits.DroopTravel);
        _stopUse = Say.Limit(limits.StopUse);
        _offMiddle = Say.Limit(limits.DamperOffMiddle);
        _thread = Say.Limit(limits.ThreadInHand);
        _tightest = Say.Limit(limits.FitTightest);
        _loosest = Say.Limit(limits.FitLoosest);
        _stress = Say.Limit(limits.StressShare);
        double band = Say.Limit(limits.HeightBand);
        (_heightLow, _heightHigh) = judgeHeight ? (heightTarget - band, heightTarget + band)
            : (double.NegativeInfinity, double.PositiveInfinity);
        (_camberLow, _camberHigh) = camber;
        _frequencyLow = frequencyLow;
    }

    /// <summary>Evaluates one choice.</summary>
    /// <param name="stack">Springs and sheets.</param>
    /// <param name="perch">Its height is solved where it turns.</param>
    /// <param name="station">Mount, damper and stop at this corner.</param>
    /// <param name="sheet">Out: values and margins; what was not reached stays NaN.</param>
    /// <param name="toTheEnd">False to stop at the first check that does not hold.</param>
    /// <returns>True if nothing that was evaluated fails.</returns>
    public bool Evaluate(StaticStack stack, in StaticPerch perch, StaticStation station, StaticSheet sheet, bool toTheEnd = false)
    {
        sheet.Clear();
        bool good = Seats(stack, perch, station, sheet);
        if (!good && !toTheEnd)
        {
            return false;
        }

        double stands = _left ? perch.FixedHeight.Left : perch.FixedHeight.Right;
        sheet.Perch = !perch.Turns ? stands : CanSolve(stack, station) ? SolvePerch(stack, station) : ToStep(stands);
        return Settled(stack, perch, station, sheet, good, toTheEnd);
    }

    /// <summary>The same with the perch where it is put.</summary>
    public bool EvaluateAt(double perchHeight, StaticStack stack, in StaticPerch perch, StaticStation station, StaticSheet sheet)
    {
        sheet.Clear();
        bool good = Seats(stack, perch, station, sheet);
        sheet.Perch = perchHeight;
        return Settled(stack, perch, station, sheet, good, toTheEnd: true);
    }

    /// <summary>Distance of a stack's fit on a perch from the nearer limit, m; NaN where nobody gave the diameters.</summary>
    public double PerchMargin(StaticStack stack, in StaticPerch perch)
    {
        double play = stack.LowestBore - perch.Register;
        return Math.Min(play + _tightest, _loosest - play);
    }

    private static bool CanSolve(StaticStack stack, StaticStation station) =>
        stack.Complete && station.CanRide && !double.IsNaN(station.Wanted);

    // Only dimensions of the parts.
    private bool Seats(StaticStack stack, in StaticPerch perch, StaticStation station, StaticSheet sheet)
    {
        bool good = double.IsInfinity(stack.FitMargin) || sheet.Margined(StaticCheck.FitBetween, stack.FitMargin);
        good &= sheet.Put(StaticCheck.FitPerch, stack.LowestBore - perch.Register, -_tightest, _loosest);
        good &= sheet.Put(StaticCheck.FitMount, stack.HighestBore - station.MountRegister, -_tightest, _loosest);
        return good & (double.IsNaN(station.BodyLow) || sheet.Put(StaticCheck.BodyThread, station.Body, station.BodyLow, station.BodyHigh));
    }

    // At the height wanted the springs carry what the load leaves them; the stack's length under that force puts the perch.
    private static double SolvePerch(StaticStack stack, StaticStation station)
    {
        double z = station.TargetTravel, ignored = 0;
        if (!station.Motion!.StationAt(z, Station.Spring, out var at).IsUsable() || !(at.MotionRatio > 0))
        {
            return double.NaN;
        }

        double left = ((station.Wanted - station.Unsprung) * SolvedCorner.Gravity) - CornerBalance.DamperLoad(station, z, ref ignored);
        double force = Math.Max(0, left / at.MotionRatio);
        double length = force >= stack.BindForce ? stack.SolidLength : SpringStack.LengthAt(stack.Elements, force);
        return Math.Clamp(ToStep(at.Length - station.SeatDrop - length), LowestPerch, HighestPerch);
    }

    private static double ToStep(double height) => Math.Round(height / PerchStep, MidpointRounding.AwayFromZero) * PerchStep;

    private bool Settled(StaticStack stack, in StaticPerch perch, StaticStation station, StaticSheet sheet, bool good, bool toTheEnd)
    {
        double height = sheet.Perch;
        if (!double.IsNaN(station.ThreadLow))
        {
            good &= sheet.Put(StaticCheck.CollarThread, height, station.ThreadLow + _thread, station.ThreadHigh - _thread);
        }

        if (!stack.Complete || !station.HasMotion || double.IsNaN(station.SeatDrop) || double.IsNaN(height))
        {
            return good;
        }

        good &= (!good && !toTheEnd) || Hanging(stack, perch, station, sheet, height);
        good &= (!good && !toTheEnd) || Bumped(stack, station, sheet, height);
        return good & ((!good && !toTheEnd) || !station.CanRide || Riding(stack, station, sheet, height, toTheEnd));
    }

    private bool Hanging(StaticStack stack, in StaticPerch perch, StaticStation station, StaticSheet sheet, double height)
    {
        bool good = true;
        if (station.HasDamper)
        {
            double space = Space(station, station.Droop, height), squeeze = stack.FreeLength - space;
            good = perch.Turns
                ? sheet.Put(StaticCheck.SeatedAtDroop, squeeze / perch.Pitch, _preloadTurns, double.PositiveInfinity)
                : sheet.Put(StaticCheck.SeatedAtDroop, squeeze, _preloadTurns * SpringChecks.UsualPitch, double.PositiveInfinity);
            good &= double.IsInfinity(stack.LeastCollar)
                || sheet.Put(StaticCheck.Captive, stack.LeastCollar + squeeze, 0, double.PositiveInfinity);
        }

        return good & (double.IsNaN(stack.PlannedCrossover)
            || sheet.Put(StaticCheck.Crossover, (stack.Elements[stack.Helper].ClosingForce / stack.PlannedCrossover) - 1, -_crossover,
                _crossover));
    }

    // The tyre's touch is not known here: the true lead of the bump stop is this or less.
    private bool Bumped(StaticStack stack, StaticStation station, StaticSheet sheet, double height)
    {
        double bind = TravelAt(station, Station.Spring, stack.SolidLength + station.SeatDrop + height), beyond = station.BumpBeyond;
        double hard = station.Metal < bind || double.IsNaN(bind) ? station.Metal : bind;
        sheet.FullBump = Math.Min(hard < station.Shut ? hard : station.Shut, station.Spent);
        double first = hard - beyond < station.Shut ? hard - beyond : station.Shut;
        if (!station.HasStop || double.IsNaN(station.StopSpent))
        {
            return true;
        }

        // A damper of unknown closed length may shut before.
        bool good = double.IsNaN(station.RodClosed)
            || sheet.Put(StaticCheck.StopOrder, first - station.Spent, _stopLead, double.PositiveInfinity);

        // With the stop spent: room between the coils, travel used, stress in the wire.
        ref readonly var main = ref stack.Elements[stack.Main];
        double space = Space(station, station.Spent, height);
        if (!(double.IsFinite(space) && space > 0))
        {
            return good;
        }

        var spent = SpringStack.ForceAt(stack.Elements, space);
        double room = Room(stack, space), used = main.Travel - Math.Max(room, 0);
        double past = Space(station, Math.Max(station.Spent, Math.Min(station.Spent + beyond, station.HighestTravel)), height);
        good &= sheet.Put(StaticCheck.CoilRoom, past > 0 ? Room(stack, past) : double.NaN, _coilRoom, double.PositiveInfinity);
        good &= double.IsNaN(stack.GreatestDeflection)
            || sheet.Put(StaticCheck.SpringTravel, used, double.NegativeInfinity, stack.GreatestDeflection);
        good &= sheet.Put(StaticCheck.SpringStress, Math.Min(spent.Force, main.ClosingForce) * stack.StressPerNewton,
            double.NegativeInfinity, _stress);
        return good & sheet.Put(StaticCheck.Buckling, stack.CriticalDeflection - used, 0, double.PositiveInfinity);
    }

    // What the main spring has left before it is solid, less what the stack lacks.
    private static double Room(StaticStack stack, double space)
    {
        var force = SpringStack.ForceAt(stack.Elements, space);
        return stack.Elements[stack.Main].LengthAt(force.Force) - stack.Elements[stack.Main].SolidLength - force.Overrun;
    }

    private bool Riding(StaticStack stack, StaticStation station, StaticSheet sheet, double height, bool toTheEnd)
    {
        var balance = new CornerBalance(station, stack.Elements, height);
        if (double.IsNaN(station.Wanted))
        {
            return OtherLoads(stack, station, sheet, balance, double.NaN);
        }

        double ride = sheet.Ride = RideAt(balance, station, station.Wanted);
        if (!double.IsFinite(ride))
        {
            sheet.Margined(StaticCheck.Rides, -1);
            return toTheEnd && OtherLoads(stack, station, sheet, balance, double.NaN) && false;
        }

        bool good = sheet.Put(StaticCheck.RideHeight, station.Height - ride, _heightLow, _heightHigh);
        good &= sheet.Put(StaticCheck.BumpTravel, station.HasStop ? station.Touch - ride : double.NaN, _bump, double.PositiveInfinity);
        good &= sheet.Put(StaticCheck.Camber, _camberLow > double.NegativeInfinity ? station.CamberAt(ride) : double.NaN, _camberLow,
            _camberHigh);
        if (station.HasDamper)
        {
            good &= sheet.Put(StaticCheck.DroopTravel, ride - station.Droop, _droop, double.PositiveInfinity);
            double rod = RodShowing(station, ride), stroke = station.RodOpen - station.RodClosed;
            good &= double.IsNaN(station.WindowLow) || sheet.Put(StaticCheck.DamperWindow, rod, station.WindowLow, station.WindowHigh);
            good &=
                sheet.Put(StaticCheck.DamperMiddle, (rod - ((station.RodOpen + station.RodClosed) / 2)) / stroke, -_offMiddle, _offMiddle);
        }

        good &= Rate(stack, station, sheet, height, ride);
        return good & ((!good && !toTheEnd) || OtherLoads(stack, station, sheet, balance, ride));
    }

    private bool OtherLoads(StaticStack stack, StaticStation station, StaticSheet sheet, in CornerBalance balance, double ride)
    {
        bool good = true;
        if (station.HasStop && station.HasDamper && !double.IsNaN(station.StopSpent) && !double.IsNaN(station.Heaviest))
        {
            double heaviest = station.HeaviestIsWanted ? ride : RideAt(balance, station, station.Heaviest);
            double usable = station.StopLength - station.StopSpent;
            good = sheet.Put(StaticCheck.StopUse, (station.StopLength + station.Packer - RodShowing(station, heaviest)) / usable,
                double.NegativeInfinity, _stopUse);
        }

        if (stack.HelperSpring is { Role: Garage.Parts.SpringRole.Helper } && !double.IsNaN(station.Lightest))
        {
            double lightest = station.LightestIsWanted ? ride : RideAt(balance, station, station.Lightest);
            double space = Space(station, lightest, sheet.Perch);
            double force = double.IsFinite(space) && space > 0 ? SpringStack.ForceAt(stack.Elements, space).Force : double.NaN;
            good &= sheet.Put(StaticCheck.HelperShut, force - stack.Elements[stack.Helper].ClosingForce, _helperReserve,
                double.PositiveInfinity);
        }

        return good;
    }

    // The tyre can only make the ride softer: a corner too soft without it is too soft with it.
    private bool Rate(StaticStack stack, StaticStation station, StaticSheet sheet, double height, double ride)
    {
        if (!station.Motion!.StationAt(ride, Station.Spring, out var at).IsUsable())
        {
            return true;
        }

        var force = SpringStack.ForceAt(stack.Elements, at.Length - station.SeatDrop - height);
        double rate = force.State == StackState.Seated && SpringStack.TangentRateAt(stack.Elements, force.Force) is { } tangent
            ? RideRates.WheelRate(tangent, at.MotionRatio, force.Force, at.MotionRatioSlope) : double.NaN;
        sheet.WheelRate = rate;
        return sheet.Put(StaticCheck.Frequency, FrequencyOf(rate, station.Wanted - station.Unsprung, double.NaN), _frequencyLow,
            double.PositiveInfinity);
    }

    /// <summary>Ride frequency, Hz; NaN where it cannot be said.</summary>
    /// <param name="wheelRate">N/m.</param>
    /// <param name="sprung">kg.</param>
    /// <param name="tyre">Stiffness, N/m; NaN to leave the tyre out.</param>
    public static double FrequencyOf(double wheelRate, double sprung, double tyre)
    {
        double rate = double.IsNaN(tyre) ? wheelRate : wheelRate > 0 && tyre > 0 ? RideRates.Series(wheelRate, tyre) : double.NaN;
        return rate > 0 && sprung > 0 ? RideRates.BodyFrequency(rate, sprung) : double.NaN;
    }

    // Begun where the judge begins, so that a load that does not rise all the way is met at the same place.
    private static double RideAt(in CornerBalance balance, StaticStation station, double load)
    {
        const double Guess = 0;
        var root = RisingRoot.Find(balance, load * SolvedCorner.Gravity, station.LowestTravel, station.HighestTravel, Guess,
            SolvedCorner.TravelAccuracy);
        return root.Why == RootStop.Converged ? root.X : double.NaN;
    }

    private static double Space(StaticStation station, double travel, double perch) =>
        station.Motion!.StationAt(travel, Station.Spring, out var at).IsUsable() ? at.Length - station.SeatDrop - perch : double.NaN;

    private static double RodShowing(StaticStation station, double travel) =>
        station.Motion!.StationAt(travel, Station.Damper, out var at).IsUsable() ? at.Length - station.RodDrop - station.Body : double.NaN;

    private static double TravelAt(StaticStation station, Station axis, double length)
    {
        var root = RisingRoot.Find(new StationFalls(station.Motion!, axis), -length, station.LowestTravel, station.HighestTravel, 0,
            SolvedCorner.TravelAccuracy);
        return root.Why switch
        {
            RootStop.Converged => root.X,
            RootStop.BelowRange => double.NegativeInfinity,
            RootStop.AboveRange => double.PositiveInfinity,
            _ => double.NaN,
        };
    }

    private readonly struct StationFalls(CornerMotion motion, Station station) : IRisingFunction
    {
        public double ValueAt(double x, out double slope)
        {
            motion.StationAt(x, station, out var state);
            slope = state.MotionRatio;
            return -state.Length;
        }
    }
}
