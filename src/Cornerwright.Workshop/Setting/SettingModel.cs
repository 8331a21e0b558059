using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Bars;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Workshop.Setting;

/// <summary>The car as the collar search sees it: present state, people changed, targets, knobs.</summary>
internal sealed record SettingModel
{
    /// <summary>Vertical rate of a car tyre nobody knows the pressure of, N/m. Common practice, no source.</summary>
    private const double UsualTyreRate = 200_000;

    /// <summary>A thread nobody measured is taken this far either way, m.</summary>
    private const double UsualThread = 0.040;

    /// <summary>A cross weight that nobody asked for is kept to this. Common practice, no source.</summary>
    private const double KeptCrossBand = 0.01;

    private const double Gravity = RideRates.StandardGravity;

    public required Car Owner { get; init; }
    public required PresentState Present { get; init; }
    public required SettingWish Wish { get; init; }
    public required IReadOnlyList<SettingCorner> Corners { get; init; }
    public required CarOnWheels Car { get; init; }
    public required CollarTargets Targets { get; init; }
    public required IReadOnlyList<CollarKnob> Knobs { get; init; }
    public required IReadOnlyList<string> Assumptions { get; init; }
    public required bool BarFront { get; init; }
    public required bool BarRear { get; init; }

    public double HeightBand => Targets.TravelBand;

    public static SettingModel Of(Car car, PresentState present, SettingCorner[] corners, SettingWish wish)
    {
        var assumptions = new SortedSet<string>(StringComparer.Ordinal);
        double length = car.Wheelbase!.Si;
        WheelUnderCar[] wheels = [.. Places.Corners.Select((place, i) =>
        {
            double track = car.At(place.Axle()).Track!.Si;
            return new WheelUnderCar(place.Axle() == AxlePlace.Front ? 0 : -length, place.IsLeft() ? track / 2 : -track / 2,
                corners[i].UnsprungWeight, TyreRate(corners[i], assumptions), present.Wheels[i].Load);
        })];
        double[] held = [.. wheels.Select((w, i) => w.LoadAtReference - corners[i].UnsprungWeight)];
        var weights = new List<WeightOnBody> { CarOnWheels.Resultant(wheels, held) };
        weights.AddRange(present.Aboard.Where(l => l.IsComplete).Select(l => Placed(l, -1)));
        weights.AddRange(wish.Aboard.Where(l => l.IsComplete).Select(l => Placed(l, +1)));
        BarUnderCar front = Bar(corners[0], corners[1], assumptions), rear = Bar(corners[2], corners[3], assumptions);
        bool hasFront = front.RateOneEnd > 0, hasRear = rear.RateOneEnd > 0;
        if (hasFront || hasRear)
        {
            assumptions.Add(wish.LinksOn ? "the anti-roll bars carry nothing as the car stands now"
                : "the anti-roll bars carry nothing: a link is off while the collars turn, and goes back without force");
        }

        foreach (var place in Places.Corners)
        {
            if (car.Build(present.Build.Id)?.At(place).PerchHeight is { } now && present.Build.At(place).PerchHeight is { } then
                && Math.Abs(now.Si - then.Si) > 1e-6)
            {
                assumptions.Add($"{place.Words()}: the build says {TurnWords.Mm(now.Si)} of perch height "
                    + $"now, {TurnWords.Mm(then.Si)} when it was read; turns count from where it was read");
            }
        }

        // Nobody asked for a cross weight: then it stays, or four heights a millimetre off would be bought with it.
        var onBoard = new CarOnWheels(wheels, wish.LinksOn ? front : default, wish.LinksOn ? rear : default, weights);
        var untouched = CarBalance.Solve(onBoard, corners, [0, 0, 0, 0]);
        double? kept = untouched.Why == BalanceStop.Converged ? untouched.CrossWeight : null;
        return new SettingModel
        {
            Owner = car,
            Present = present,
            Wish = wish,
            Corners = corners,
            Car = onBoard,
            Targets = new CollarTargets(
                [.. Places.Corners.Select((p, i) => wish.At(p).Height is { } h ? present.Wheels[i].Height - h.Si : (double?)null)],
                wish.HeightBand?.Si ?? TurnTableMaker.UsualHeightBand, wish.CrossWeight?.Si ?? kept,
                wish.CrossBand?.Si ?? (wish.CrossWeight is null ? KeptCrossBand : TurnTableMaker.UsualCrossBand)),
            Knobs = [.. corners.Select(c => Knob(c, assumptions))],
            Assumptions = [.. assumptions],
            BarFront = hasFront,
            BarRear = hasRear,
        };
    }

    /// <summary>The same car with plates and clamps set as in this build; the collars still stand where they stand.</summary>
    public SettingModel With(Build build) => this with { Corners = [.. Corners.Select((c, i) => c.With(build))] };

    /// <summary>Camber and toe, as read now and moved by the wheel's motion to another travel and setting; null out of reach.</summary>
    public (double Camber, double Toe)? At(CornerPlace place, CornerBuild set, double travelFromNow)
    {
        int i = (int)place;
        var start = Present.Build;
        var here = SettingCorner.Of(Owner, start, place, Corners[i].PresentTravel);
        var there = SettingCorner.Of(Owner, start.With(place, set), place, Corners[i].PresentTravel);
        return here.Wheel(here.PresentTravel) is { } now && there.Wheel(here.PresentTravel + travelFromNow) is { } then
            ? ((Present.Wheels[i].Camber ?? now.Camber) + then.Camber - now.Camber, (Present.Wheels[i].Toe ?? now.Toe) + then.Toe - now.Toe)
            : null;
    }

    private static WeightOnBody Placed(PlacedLoad load, int sign) => new(sign * load.Mass!.Si * Gravity, -load.Behind!.Si, load.Left!.Si);

    private static double TyreRate(SettingCorner corner, SortedSet<string> assumptions)
    {
        var plan = corner.Plan;
        double rate = plan.Build.At(plan.Place).Pressure is { } pressure && plan.Parts.TyreSize is { } tyre
            ? tyre.VerticalStiffness(pressure.Si) : double.NaN;
        if (rate > 0)
        {
            return rate;
        }

        assumptions.Add("tyres without a size or pressure: 200 N/mm");
        return UsualTyreRate;
    }

    private static BarUnderCar Bar(SettingCorner left, SettingCorner right, SortedSet<string> assumptions)
    {
        if (left.Plan.Parts.AntiRollBar is not { } bar || right.Plan.Parts.AntiRollBar is null || Rate(bar) is not { } rate)
        {
            return default;
        }

        return new BarUnderCar(rate, Ratio(left), Ratio(right), 0);

        double Ratio(SettingCorner corner)
        {
            if (corner.Plan.Corner.Motion.BarRatio is { } given)
            {
                return given.Si;
            }

            assumptions.Add("motion ratio of the bar's end: not given, taken as 1");
            return 1;
        }
    }

    private static double? Rate(Garage.Parts.AntiRollBar bar)
    {
        if (bar.Rate is { } rate)
        {
            return rate.Si;
        }

        return bar is { Diameter: { } d, StraightLength: { } straight, Arm: { } arm } && (bar.Bore?.Si ?? 0) < d.Si
            ? Mechanics.Bars.AntiRollBar.RateOneEnd(
                TorsionBar.Stiffness(d.Si, straight.Si, SpringSteel.ShearModulusHotRolled, bar.Bore?.Si ?? 0), arm.Si)
            : null;
    }

    private static CollarKnob Knob(SettingCorner corner, SortedSet<string> assumptions)
    {
        var (plan, damper) = (corner.Plan, corner.Plan.Parts.Damper);
        if (!(plan.Station.Pitch > 0))
        {
            return CollarKnob.Fixed;
        }

        double step = plan.Station.Pitch!.Value / 4, perch = plan.Inputs[plan.Station.Perch].Value;
        if (damper?.ThreadLow is null || damper.ThreadHigh is null)
        {
            assumptions.Add($"{plan.Place.Words()}: the collar's thread was not measured; taken as 40 mm either way");
        }

        double down = damper?.ThreadLow is { } low ? low.Si - perch
            : -UsualThread, up = damper?.ThreadHigh is { } high ? high.Si - perch : UsualThread;

        // A collar that already stands beyond its thread may stay or come back, no more.
        int least = (int)Math.Ceiling(Math.Min(0, down / step) - 1e-9), most = (int)Math.Floor(Math.Max(0, up / step) + 1e-9);
        return new CollarKnob(step, least, most);
    }
}
