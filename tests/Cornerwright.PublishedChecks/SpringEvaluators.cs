using Cornerwright.Mechanics.Springs;

namespace Cornerwright.PublishedChecks;

/// <summary>Single springs, stacks and collars.</summary>
internal static class SpringEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["coil.k-wahl"] = (_, x) => CoilStressFactor.Wahl(x["C"]),
        ["coil.k-en13906"] = (_, x) => CoilStressFactor.En13906(Coil(x).Index),
        ["coil.mean-diameter"] = (_, x) => Coil(x).MeanDiameter,
        ["coil.index"] = (_, x) => Coil(x).Index,
        ["coil.rate"] = (_, x) => Coil(x).Rate(),
        ["coil.force-at"] = (_, x) => Coil(x).Rate() * x["y"],
        ["coil.wire"] = (_, x) => WireChoice.WireDiameter(x["P"], x["C"], x["tau"], CoilStressFactor.Wahl(x["C"])),
        ["coil.active"] = (_, x) => WireChoice.ActiveCoils(x["k"], x["d"], Coil(x).MeanDiameter, x["G"]),
        ["coil.index-for-rate"] = (_, x) => WireChoice.IndexForRate(x["k"], x["d"], x["n"], x["G"]),
        ["coil.stress-wahl"] = (_, x) => CoilStressFactor.Wahl(Coil(x).Index) * Coil(x).ShearStress(x["F"]),
        ["coil.force-wahl"] = (_, x) => Coil(x).ForceAtStress(x["tau"], CoilStressFactor.Wahl(Coil(x).Index)),
        ["coil.force-direct"] = (_, x) => ForceDirect(x),
        ["coil.deflection-per-coil"] = (_, x) => ForceDirect(x) / (Coil(x) with { ActiveCoils = 1 }).Rate(),
        ["coil.surge"] = (_, x) => Coil(x).SurgeFrequency(x["rho"]),
        ["coil.least-gaps"] = (_, x) => Coil(x).LeastGapSum(),
        ["coil.solid-en13906"] = (_, x) => SolidLengthRule.En13906ColdCoiled(x["nt"], x["d"], ground: true),
        ["coil.slenderness"] = (_, x) => SpringBuckling.Slenderness(x["L0"], x["D"]),
        ["coil.buckling-force"] = (_, x) => SpringBuckling.BucklingForce(x["k"], x["share"], x["L0"]),
        ["coil.buckles"] = (_, x) => SpringBuckling.CriticalDeflection(
            x["L0"], x["D"], x["nu"], SpringSteel.ShearModulusOilTempered, SpringSteel.YoungModulus) is { } deflection
                ? $"buckles at {deflection * 1000:0.0} mm"
                : "never buckles",
        ["steel.g-oil-tempered"] = (_, _) => SpringSteel.ShearModulusOilTempered,
        ["steel.g-hot-rolled"] = (_, _) => SpringSteel.ShearModulusHotRolled,


        ["stack.rate"] = (_, x) => SpringStack.TangentRateAt(Stack(x), x["F"])!.Value,
        ["stack.closing"] = (_, x) => SpringStack.ClosingForce(Stack(x), 0),
        ["stack.deflection"] = (_, x) => SpringStack.FreeLength(Stack(x)) - SpringStack.LengthAt(Stack(x), x["F"]),

        ["collar.advance"] = (_, x) => Collar.Advance(x["turns"], x["pitch"]),
        ["collar.vertical"] = (_, x) => Collar.VerticalPart(x["x"], x["angle"]),
    };

    /// <summary>
    /// The spring of the inputs: mean diameter as D, from the outer one Do, or from the index C. What a check does not need
    /// (wire of 1 m for a pure index, one coil, 80 GPa) is filled in and cancels.
    /// </summary>
    internal static WireSpring Coil(CheckInputs x)
    {
        double d = x.Has("d") ? x["d"] : 1;
        double mean = x.Has("D") ? x["D"] : x.Has("Do") ? x["Do"] - d : x["C"] * d;
        return new(d, mean, x.Has("n") ? x["n"] : 1, x.Has("G") ? x["G"] : 80e9);
    }

    private static double ForceDirect(CheckInputs x) =>
        Coil(x).ForceAtStress(x["tau"], CoilStressFactor.DirectShear(Coil(x).Index));

    // Helper first; lengths beyond its travel do not matter to rate, closing force and deflection.
    private static StackElement[] Stack(CheckInputs x) =>
    [
        StackElement.Linear(0.02 + x["travel"], 0.02, x["helper"]),
        StackElement.Linear(0.25, 0.08, x["main"]),
    ];
}
