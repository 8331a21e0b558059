using Cornerwright.Mechanics.Loads;

namespace Cornerwright.PublishedChecks;

/// <summary>Rates, sags and frequencies of a corner.</summary>
internal static class RideEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["ride.quarter-body"] = (_, x) => Quarter(x).Body,
        ["ride.quarter-wheel"] = (_, x) => Quarter(x).Wheel,
        ["ride.hop"] = (_, x) => RideRates.WheelHopFrequency(x["ks"], x["kt"], x["mu"]),
        ["ride.weight"] = (_, x) => RideRates.WheelWeight(x["m"], x["share"], x["g"]),
        ["ride.series"] = (_, x) => RideRates.Series(x["ks"], x["kt"]),
        ["ride.sag"] = (_, x) => RideRates.StaticDeflection(x["F"], x["k"]),
        ["ride.wheel-rate"] = (_, x) => RideRates.WheelRate(x["k"], x["MR"]),
        ["ride.sag-frequency"] = (_, x) => RideRates.FrequencyOfSag(x["y"]),
        ["ride.warp-front"] = (_, x) => Warped(x).Load[0],
        ["ride.warp-rear"] = (_, x) => Warped(x).Load[3],
        ["ride.warp-rise"] = (_, x) => Warped(x).Rise,
        ["ride.strut-top"] = (_, x) => StrutTop.CamberLost(x["shift"], x["distance"]),
    };

    private static QuarterCarFrequencies Quarter(CheckInputs x) => QuarterCar.Frequencies(x["ms"], x["mu"], x["ks"], x["kt"]);

    /// <summary>
    /// Changes of load and the left front body corner's rise when the left front
    /// perch goes up; tyres as stiff as steel, since ride rates are given.
    /// </summary>
    private static (double[] Load, double Rise) Warped(CheckInputs x)
    {
        const double Stiff = 1e12, Held = 3000;
        WheelUnderCar Wheel(double along, double across) => new(along, across, 0, Stiff, Held);
        WheelUnderCar[] wheels = [Wheel(1.3, x["tf"] / 2), Wheel(1.3, -x["tf"] / 2), Wheel(-1.3, x["tr"] / 2), Wheel(-1.3, -x["tr"] / 2)];
        var car = new CarOnWheels(wheels, default, default, [CarOnWheels.Resultant(wheels, [Held, Held, Held, Held])]);
        ICornerForce[] corners =
            [new RideSpring(x["kf"], Held), new RideSpring(x["kf"], Held), new RideSpring(x["kr"], Held), new RideSpring(x["kr"], Held)];
        var after = CarBalance.Solve(car, corners, [x["h"], 0, 0, 0]);
        return ([.. after.Load.Select(load => load - Held)], after.BodyRise(0));
    }

    private sealed record RideSpring(double Rate, double Held) : ICornerForce
    {
        public bool At(double travel, double seatRise, out CornerForce force)
        {
            force = new CornerForce(Held + (Rate * (travel + seatRise)), Rate, Rate);
            return true;
        }
    }
}
