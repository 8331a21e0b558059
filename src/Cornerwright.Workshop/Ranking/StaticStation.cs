using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// One corner with one top mount, damper and bump stop: everything that does not depend on the springs, worked out once
/// by the judge's own plan. What nobody gave is NaN.
/// </summary>
internal sealed class StaticStation
{
    private StaticStation(CornerPlan plan, CornerReader numbers, Handle height, double targetHeight)
    {
        var s = plan.Station;
        var x = numbers.X;
        HasMotion = plan.HasMotion;
        Motion = plan.HasMotion ? numbers.Motion : null;
        (LowestTravel, HighestTravel) = (plan.LowestTravel, plan.HighestTravel);
        HasDamper = plan.HasDamper;
        BumpBeyond = plan.Allowed.BumpBeyond;
        (SeatDrop, RodDrop, Body) = (At(s.SeatDrop), At(s.RodDrop), At(s.Body));
        (RodOpen, RodClosed, RodForce) = (At(s.RodOpen), At(s.RodClosed), x.Or(s.RodForce, 0));
        (StopLength, StopSpent, Packer, StopCurve) = (At(s.StopLength), At(s.StopSpent), x[s.Packer], s.StopCurve);
        Unsprung = At(s.Unsprung);
        HasStop = plan.MissingForStop().Count == 0;
        (Droop, Touch, Spent, Shut, Metal) = (numbers.Droop, numbers.Touch, numbers.Spent, numbers.Shut, numbers.Metal);
        Wanted = Load(CornerPlan.Wanted);
        Heaviest = Load(plan.Heaviest);
        Lightest = Load(Math.Max(0, plan.Lightest));
        (HeaviestIsWanted, LightestIsWanted) =
            (Math.Max(0, plan.Heaviest) == CornerPlan.Wanted, Math.Max(0, plan.Lightest) == CornerPlan.Wanted);
        Height = At(height);
        TargetTravel = double.IsNaN(targetHeight) || double.IsNaN(Height) ? 0 : Height - targetHeight;
        MountRegister = plan.Parts.TopMount?.Register?.Si ?? double.NaN;
        if (plan.Parts.Damper is { } damper)
        {
            (WindowLow, WindowHigh) = damper is { WindowLow: { } low, WindowHigh: { } high } ? (low.Si, high.Si) : (double.NaN, double.NaN);
            (ThreadLow, ThreadHigh) = damper is { ThreadLow: { } from, ThreadHigh: { } to } ? (from.Si, to.Si) : (double.NaN, double.NaN);
            (BodyLow, BodyHigh) = damper is { BodyLow: { } least, BodyHigh: { } most } ? (least.Si, most.Si) : (double.NaN, double.NaN);
        }

        double At(Handle input) => x.Or(input, double.NaN);

        double Load(int loadCase) => plan.HasLoad(loadCase) ? x[plan.Loads[loadCase].Load] : double.NaN;
    }

    public bool HasMotion { get; }
    public CornerMotion? Motion { get; }
    public double LowestTravel { get; }
    public double HighestTravel { get; }

    /// <summary>m of wheel travel, as allowed.</summary>
    public double BumpBeyond { get; }

    public bool HasDamper { get; }
    public bool HasStop { get; }
    public double SeatDrop { get; }
    public double RodDrop { get; }
    public double Body { get; }
    public double RodOpen { get; }
    public double RodClosed { get; }
    public double RodForce { get; }
    public double StopLength { get; }
    public double StopSpent { get; }
    public double Packer { get; }
    public SpringCurve? StopCurve { get; }

    /// <summary>kg.</summary>
    public double Unsprung { get; }

    public double Droop { get; }
    public double Touch { get; }
    public double Spent { get; }
    public double Shut { get; }
    public double Metal { get; }

    /// <summary>Corner loads, kg: of the case in which heights are wanted, the heaviest and the lightest.</summary>
    public double Wanted { get; }
    public double Heaviest { get; }
    public double Lightest { get; }
    public bool HeaviestIsWanted { get; }
    public bool LightestIsWanted { get; }

    /// <summary>Hub to arch at the reference state, m.</summary>
    public double Height { get; }

    /// <summary>Travel at which the wheel stands at the height wanted, m; 0 where none is.</summary>
    public double TargetTravel { get; }

    public double MountRegister { get; } = double.NaN;
    public double WindowLow { get; } = double.NaN;
    public double WindowHigh { get; } = double.NaN;
    public double ThreadLow { get; } = double.NaN;
    public double ThreadHigh { get; } = double.NaN;
    public double BodyLow { get; } = double.NaN;
    public double BodyHigh { get; } = double.NaN;

    /// <summary>True where a spring of known data in the seats would have a known force and the corner a known load.</summary>
    public bool CanRide => HasMotion && !double.IsNaN(SeatDrop) && !double.IsNaN(Unsprung);

    /// <param name="car">The car.</param>
    /// <param name="build">With this mount, damper and stop, and its plate where it is to stand.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="targetHeight">Hub to arch, m; NaN for as measured.</param>
    public static StaticStation Compile(Car car, Build build, CornerPlace place, double targetHeight)
    {
        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));

        // Before the numbers: what was learned of the height counts.
        var height = plan.Inputs.Add(plan.Path + "/rideHeight", "hub centre to arch edge", plan.Corner.RideHeight);
        var numbers = new SolvedCorner(plan);
        numbers.Solve();
        return new StaticStation(plan, numbers.Read, height, targetHeight);
    }

    /// <summary>Camber at a travel, rad; NaN out of reach.</summary>
    public double CamberAt(double travel) => Motion is not null && Motion.WheelAt(travel, out var wheel).IsUsable() ? wheel.Camber
        : double.NaN;
}
