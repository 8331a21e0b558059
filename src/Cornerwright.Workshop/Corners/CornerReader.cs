using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// A solved corner as somebody reads it: every number and every result asked for is noted together with all that it was worked out
/// from. So what a check stands on is what it has read, and nobody has to declare it.
/// </summary>
/// <param name="corner">Solved.</param>
/// <param name="noted">Takes what is read; null where nobody wants to know.</param>
internal readonly struct CornerReader(SolvedCorner corner, ReadSet? noted)
{
    public CornerPlan Plan => corner.Plan;

    /// <summary>The row of inputs.</summary>
    public Reader X => new(corner.Values, noted);

    /// <summary>Whose numbers these are; for telling rows apart, not for reading them.</summary>
    public SolvedCorner Corner => corner;

    public CornerMotion Motion => Known(corner.MotionOrNone, Reads?.Motion);

    /// <summary>The motion as it was when the car was measured.</summary>
    public CornerMotion MotionNow => Known(corner.MotionNowOrNone, Reads?.MotionNow);

    /// <summary>Travel at which each load case rides, m; NaN where it is unknown or out of reach.</summary>
    public Rides Ride => new(corner, noted);

    /// <summary>Travel of full droop; minus infinity where nothing known ends it.</summary>
    public double Droop => Noted(corner.Ends.Droop, Reads?.Droop);

    /// <summary>Travel at which the bump stop is touched, m; infinite where never or unknown, as for all that follow.</summary>
    public double Touch => Noted(corner.Ends.Touch, Reads?.Touch);

    public double Spent => Noted(corner.Ends.Spent, Reads?.Spent);

    public double Shut => Noted(corner.Ends.Shut, Reads?.Shut);

    public double Bind => Noted(corner.Ends.Bind, Reads?.Bind);

    public double Metal => Noted(corner.Ends.Metal, Reads?.Metal);

    /// <summary>The first of what ends the bump travel, tyre contact aside.</summary>
    public double FullBump => Math.Min(Math.Min(Spent, Shut), Math.Min(Bind, Metal));

    /// <summary>
    /// How far the wheel goes under load where it ends at this travel by hand, m: mounts give. Not beyond what the motion covers.
    /// </summary>
    public double Beyond(double travel) =>
        double.IsFinite(travel) ? Math.Max(travel, Math.Min(travel + Plan.Allowed.BumpBeyond, Plan.HighestTravel)) : travel;

    /// <summary>Travel at which the wheel first touches something of the body; infinite where it does not.</summary>
    public double TyreTouch
    {
        get
        {
            if (corner.Clearance.Touch.Item is var touched and >= 0)
            {
                noted?.AddGap(touched);
            }

            return Noted(corner.TyreTouch, Reads?.TyreTouch);
        }
    }

    /// <summary>How far the wheel is steered where it first touches, rad; for words.</summary>
    public double TouchSteer => corner.Clearance.Touch.Way.Steer;

    public ReadOnlySpan<StackElement> Stack
    {
        get
        {
            Note(Reads?.Stack);
            return corner.StackElements;
        }
    }

    private CornerReads? Reads => noted is null ? null : corner.Reads;

    /// <summary>Least gap to an obstacle, m; not finite where it cannot be computed.</summary>
    public double Gap(int obstacle)
    {
        noted?.AddGap(obstacle);
        return Noted(corner.GapOf(obstacle), Reads?.Gap[obstacle]);
    }

    /// <summary>Takes in what something was worked out from that is kept elsewhere.</summary>
    public void Note(ReadSet? from)
    {
        if (noted is not null && from is not null)
        {
            noted.Add(from);
        }
    }

    /// <summary>Space between the spring's seats, m.</summary>
    public double SpringSpace(double travel) =>
        Motion.StationAt(travel, Station.Spring, out var state).IsUsable()
            ? state.Length - X[Plan.Station.SeatDrop] - X[Plan.Station.Perch] : double.NaN;

    /// <summary>Travel at which the spring's space has a length, m; infinite where it never has.</summary>
    public double TravelAtSpace(double space) => TravelAt(Station.Spring, space + X[Plan.Station.SeatDrop] + X[Plan.Station.Perch]);

    /// <summary>Exposed rod, m.</summary>
    public double RodShowing(double travel) =>
        Motion.StationAt(travel, Station.Damper, out var state).IsUsable()
            ? state.Length - X[Plan.Station.RodDrop] - X[Plan.Station.Body] : double.NaN;

    public StationState SpringStation(double travel) =>
        Motion.StationAt(travel, Station.Spring, out var state).IsUsable() ? state : new StationState(double.NaN, double.NaN, double.NaN);

    public StackForce StackAt(double travel)
    {
        double space = SpringSpace(travel);
        return double.IsFinite(space) && space > 0 ? SpringStack.ForceAt(Stack, space) : new StackForce(double.NaN, StackState.Loose, 0, 0);
    }

    /// <summary>
    /// Spring force at ride in a load case, by what the load leaves for it: exact even where the stack is nearly solid. N.
    /// </summary>
    public double SpringForce(double travel) => StackAt(travel).Force;

    /// <summary>Contact load at a travel and its slope, N and N/m.</summary>
    public double ContactLoad(double travel, out double slope) => ContactLoad(travel, 0, out slope, out _);

    /// <summary>Contact load with the spring's lower seat raised, m, and its slopes with travel and with the seat, N/m.</summary>
    public double ContactLoad(double travel, double seatRise, out double slope, out double perSeat)
    {
        var s = Plan.Station;
        var x = X;
        bool spring = Motion.StationAt(travel, Station.Spring, out var at).IsUsable();
        if (!spring)
        {
            (slope, perSeat) = (0, 0);
            return double.NaN;
        }

        // The stack: its force and tangent rate; metal once it is solid.
        var pieces = Stack;
        var stack = SpringStack.ForceAt(pieces, Math.Max(1e-4, at.Length - x[s.SeatDrop] - x[s.Perch] - seatRise));
        double force = stack.Force, rate = 0;
        if (stack.State == StackState.Bound)
        {
            (force, rate) = (force + (SolvedCorner.SolidRate * stack.Overrun), SolvedCorner.SolidRate);
        }
        else if (stack.State == StackState.Seated)
        {
            rate = SpringStack.TangentRateAt(pieces, force) ?? SolvedCorner.SolidRate;
        }

        perSeat = at.MotionRatio * rate;
        double load = (x[s.Unsprung] * SolvedCorner.Gravity) + (at.MotionRatio * force);
        slope = RideRates.WheelRate(rate, at.MotionRatio, force, at.MotionRatioSlope);

        // The damper's rod force and the bump stop, on their own axis.
        if (Plan.HasDamper && Motion.StationAt(travel, Station.Damper, out var damper).IsUsable())
        {
            double rod = Math.Max(0, x.Or(s.RodForce, 0)) + StopForce(damper.Length - x[s.RodDrop] - x[s.Body], out double stopRate);
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
        var root = RisingRoot.Find(new StationFalls(Motion, station), -length, Plan.LowestTravel, Plan.HighestTravel, guess,
            SolvedCorner.TravelAccuracy);
        return root.Why switch
        {
            RootStop.Converged => root.X,
            RootStop.BelowRange => double.NegativeInfinity,
            RootStop.AboveRange => double.PositiveInfinity,
            _ => double.NaN,
        };
    }

    /// <summary>Travel at which the corner carries a contact load, N; NaN where it does not within reach.</summary>
    public double TravelUnder(double load, double guess = 0)
    {
        var root = RisingRoot.Find(new Contact(this), load, Plan.LowestTravel, Plan.HighestTravel, guess, SolvedCorner.TravelAccuracy);
        return root.Why == RootStop.Converged ? root.X : double.NaN;
    }

    /// <summary>The gap to one obstacle at a travel and steer; the corner must have been searched.</summary>
    public Clearing GapAt(int obstacle, double travel, double steer)
    {
        Note(Reads?.Outline);
        Note(Reads?.Place[obstacle]);
        return corner.Clearance.At(this, obstacle, travel, steer);
    }

    /// <summary>Ends of the travel swept, m.</summary>
    public (double Droop, double Bump) Swept() => corner.Clearance.Range(this);

    /// <summary>Ends of the other wheel's travel on an axle that carries both, m; 0 to 0 elsewhere.</summary>
    public (double Droop, double Bump) SweptOther() => Plan.Other?.Range(X) ?? default;

    private double StopForce(double rodShowing, out double rate)
    {
        var (s, x) = (Plan.Station, X);
        rate = 0;
        if (!s.StopLength.IsGiven)
        {
            return 0;
        }

        double squeezed = x[s.StopLength] + x[s.Packer] - rodShowing;
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

        double beyond = s.StopSpent.IsGiven ? x[s.StopSpent] + x[s.Packer] - rodShowing : 0;
        if (beyond > 0)
        {
            force += SolvedCorner.SolidRate * beyond;
            rate += SolvedCorner.SolidRate;
        }

        return force;
    }

    private double Noted(double value, ReadSet? from)
    {
        Note(from);
        return value;
    }

    private CornerMotion Known(CornerMotion? motion, ReadSet? from)
    {
        Note(from);
        return motion ?? throw new InvalidOperationException("No motion: ask the plan what is missing first.");
    }

    /// <summary>Travel at ride, by load case.</summary>
    internal readonly struct Rides(SolvedCorner corner, ReadSet? noted)
    {
        public int Length => corner.RideTravels.Length;

        public double this[int load]
        {
            get
            {
                if (noted is not null && corner.Reads is { } reads)
                {
                    noted.Add(reads.Ride[load]);
                }

                return corner.RideTravels[load];
            }
        }
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

    private readonly struct Contact(CornerReader reader) : IRisingFunction
    {
        public double ValueAt(double x, out double slope) => reader.ContactLoad(x, out slope);
    }
}
