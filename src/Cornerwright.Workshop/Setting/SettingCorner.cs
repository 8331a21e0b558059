using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Setting;

/// <summary>One corner as it stands now: its true curves, put through the height and load that were read.</summary>
internal sealed class SettingCorner : ICornerForce
{
    /// <summary>What holds a hanging wheel, N/m: stiff against any spring, soft enough for the search.</summary>
    private const double DroopRate = 2e6;

    /// <summary>Readings that would need a spring longer or shorter by more than this contradict each other, m.</summary>
    private const double MostCorrection = 0.04;

    private const double Gravity = RideRates.StandardGravity;

    private readonly CornerReader _numbers;
    private readonly double _droop;
    private double _offset;

    private SettingCorner(CornerPlan plan, double travel)
    {
        (Plan, PresentTravel) = (plan, travel);
        var solved = new SolvedCorner(plan);
        solved.MakeMotion();
        _numbers = solved.Read;
        var s = plan.Station;
        double top = plan.HasDamper ? _numbers.X[s.RodDrop] + _numbers.X[s.Body] + _numbers.X[s.RodOpen] : double.NaN;
        double droop = plan.HasDamper ? _numbers.TravelAt(Station.Damper, top) : double.NegativeInfinity;
        _droop = Math.Max(double.IsNaN(droop) ? double.NegativeInfinity : droop, _numbers.X.Or(s.DroopLimit, double.NegativeInfinity));
    }

    public CornerPlan Plan { get; }

    /// <summary>Travel at which the wheel stands now, m, from the car's reference.</summary>
    public double PresentTravel { get; }

    /// <summary>How much longer the stack would have to be for its force to agree with the readings, m along the axis.</summary>
    public double Correction => _offset;

    public double UnsprungWeight => _numbers.X[Plan.Station.Unsprung] * Gravity;

    public static SettingCorner Of(Car car, Build build, CornerPlace place, double travel) =>
        new(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)), travel);

    /// <summary>The same corner after its plate or clamp was set otherwise.</summary>
    public SettingCorner With(Build build) =>
        new(CornerPlan.Compile(Plan.Car, build, Plan.Place, CarLearning.InUse(Plan.Car)), PresentTravel) { _offset = _offset };

    /// <summary>Puts the curve through the load read: as if the stack were longer or shorter by the <see cref="Correction"/>.</summary>
    /// <param name="load">Contact load now, N.</param>
    /// <returns>False where no believable correction does it.</returns>
    public bool PassThrough(double load)
    {
        var root = RisingRoot.Find(new OverSeat(this), load, -MostCorrection, MostCorrection, 0, 1e-9);
        _offset = root.Why == RootStop.Converged ? root.X : 0;
        return root.Why == RootStop.Converged;
    }

    /// <summary>Travel here counts from where the wheel stands now.</summary>
    public bool At(double travel, double seatRise, out CornerForce force)
    {
        double z = PresentTravel + travel;
        double load = z >= Plan.LowestTravel - 0.05 && z <= Plan.HighestTravel
            ? _numbers.ContactLoad(z, seatRise + _offset, out double slope, out double perSeat) : Nowhere(out slope, out perSeat);
        double hanging = _droop - z;
        (load, slope) = hanging > 0 ? (load - (DroopRate * hanging), slope + DroopRate) : (load, slope);
        force = new CornerForce(load - UnsprungWeight, slope, perSeat);
        return double.IsFinite(load);

        static double Nowhere(out double slope, out double perSeat)
        {
            (slope, perSeat) = (0, 0);
            return double.NaN;
        }
    }

    /// <summary>Camber, toe and shift of the wheel by its motion; null out of reach.</summary>
    /// <param name="travel">From the car's reference, m.</param>
    public WheelMotionState? Wheel(double travel) => _numbers.Motion.WheelAt(travel, out var state).IsUsable() ? state : null;

    public double TravelOf(double height) => Plan.Corner.RideHeight!.Si - height;

    private readonly struct OverSeat(SettingCorner corner) : IRisingFunction
    {
        public double ValueAt(double x, out double slope) => corner._numbers.ContactLoad(corner.PresentTravel, x, out _, out slope);
    }
}
