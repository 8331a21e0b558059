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
        ["ride.strut-top"] = (_, x) => StrutTop.CamberLost(x["shift"], x["distance"]),
    };

    private static QuarterCarFrequencies Quarter(CheckInputs x) => QuarterCar.Frequencies(x["ms"], x["mu"], x["ks"], x["kt"]);
}
