using Cornerwright.Mechanics.Springs;

namespace Cornerwright.PublishedChecks;

/// <summary>Textbook examples that lead from wire and wish to a finished spring.</summary>
internal static class SpringDesignEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        // Shigley, example 10-1: a given spring, taken to its torsional yield.
        ["coil.tensile-strength"] = (_, x) => Tensile(x),
        ["coil.torsional-yield"] = (_, x) => Yield(x),
        ["coil.yield-force-en13906"] = (_, x) => YieldForce(x),
        ["coil.active-from-total"] = (_, x) => Active(x),
        ["coil.rate-from-total"] = (_, x) => FromTotal(x).Rate(),
        ["coil.yield-deflection-en13906"] = (_, x) => YieldForce(x) / FromTotal(x).Rate(),
        ["coil.solid-length"] = (_, x) => Solid(x),
        ["coil.free-length-solid-at-yield"] = (_, x) => FreeSolidAtYield(x),
        ["coil.always-stable-steel"] = (_, x) => SpringBuckling.AlwaysStableBelowSteel(SpringEvaluators.Coil(x).MeanDiameter, x["alpha"]),

        // Shigley, example 10-2: a spring for a force at a deflection, wire given.
        ["design.allowed-stress"] = (_, x) => Yield(x) / x["safety"],
        ["design.beta"] = (_, x) => Designed(x).ShearStress(SolidForce(x)) / Designed(x).Index,
        ["design.index"] = (_, x) => Designed(x).Index,
        ["design.mean-diameter"] = (_, x) => Designed(x).MeanDiameter,
        ["design.k"] = (_, x) => CoilStressFactor.En13906(Designed(x).Index),
        ["design.active"] = (_, x) => Designed(x).ActiveCoils,
        ["design.solid"] = (_, x) => DesignedSolid(x),
        ["design.free"] = (_, x) => SolidLengthRule.FreeLengthFor(DesignedSolid(x), x["y"], x["clash"]),
        ["design.always-stable"] = (_, x) => SpringBuckling.AlwaysStableBelowSteel(Designed(x).MeanDiameter, x["alpha"]),

        // Bhandari, example 10.1: wire chosen for the stress, rounded up to d, coils rounded to the next whole one.
        ["bh101.wire"] = (_, x) => WireChoice.WireDiameter(x["P"], x["C"], x["tau"], CoilStressFactor.Wahl(x["C"])),
        ["bh101.mean"] = (_, x) => SpringEvaluators.Coil(x).MeanDiameter,
        ["bh101.total"] = (_, x) => BhandariTotal(x),
        ["bh101.free"] = (_, x) => BhandariFree(x),

        // Jindal, examples 8-6 and 8-7: direct shear only.
        ["jindal.yield-force"] = (_, x) => JindalForce(x),
        ["jindal.yield-deflection"] = (_, x) => JindalForce(x) / SpringEvaluators.Coil(x).Rate(),
        ["jindal.solid"] = (_, x) => SolidLengthRule.WithAllowance(x["nt"], x["d"], x["coilsMore"]),
        ["jindal.free"] = (_, x) => SolidLengthRule.FreeLengthFor(
            SolidLengthRule.WithAllowance(x["nt"], x["d"], x["coilsMore"]), JindalForce(x) / SpringEvaluators.Coil(x).Rate(), x["clash"]),

        // Wentzell, example 8.2: coils for a rate, and the rate of those coils.
        ["wentzell.total"] = (_, x) =>
            WireChoice.ActiveCoils(x["F"] / x["y"], x["d"], x["D"], x["G"]) + SolidLengthRule.DeadCoils(x.Choice<CoilEnds>("ends")),
        ["wentzell.rate"] = (_, x) => FromTotal(x).Rate(),
    };

    // Tables give A for d in mm or in: "per" is that unit.
    private static double Tensile(CheckInputs x) =>
        WireChoice.TensileStrength(x["A"] * Math.Pow(x["per"], x["m"]), x["m"], x["d"]);

    private static double Yield(CheckInputs x) => x["share"] * Tensile(x);

    private static double YieldForce(CheckInputs x)
    {
        var coil = SpringEvaluators.Coil(x);
        return coil.ForceAtStress(Yield(x), CoilStressFactor.En13906(coil.Index));
    }

    private static double Active(CheckInputs x) => x["nt"] - SolidLengthRule.DeadCoils(x.Choice<CoilEnds>("ends"));

    private static WireSpring FromTotal(CheckInputs x) => SpringEvaluators.Coil(x) with { ActiveCoils = Active(x) };

    private static double Solid(CheckInputs x) => SolidLengthRule.Textbook(x["nt"], x["d"], x.Choice<CoilEnds>("ends"));

    private static double FreeSolidAtYield(CheckInputs x) =>
        SolidLengthRule.FreeLengthFor(Solid(x), YieldForce(x) / FromTotal(x).Rate(), 0);

    private static double SolidForce(CheckInputs x) => (1 + x["clash"]) * x["F"];

    private static WireSpring Designed(CheckInputs x)
    {
        double index = WireChoice.IndexForStress(SolidForce(x), x["d"], Yield(x) / x["safety"])!.Value;
        double mean = index * x["d"];
        return new(x["d"], mean, WireChoice.ActiveCoils(x["F"] / x["y"], x["d"], mean, x["G"]), x["G"]);
    }

    private static double DesignedSolid(CheckInputs x)
    {
        var ends = x.Choice<CoilEnds>("ends");
        return SolidLengthRule.Textbook(Designed(x).ActiveCoils + SolidLengthRule.DeadCoils(ends), x["d"], ends);
    }

    private static double BhandariActive(CheckInputs x) =>
        Math.Ceiling(WireChoice.ActiveCoils(x["P"] / x["y"], x["d"], SpringEvaluators.Coil(x).MeanDiameter, x["G"]));

    private static double BhandariTotal(CheckInputs x) => BhandariActive(x) + SolidLengthRule.DeadCoils(CoilEnds.ClosedAndGround);

    private static double BhandariFree(CheckInputs x)
    {
        double total = BhandariTotal(x);
        double deflection = x["P"] / (SpringEvaluators.Coil(x) with { ActiveCoils = BhandariActive(x) }).Rate();
        return SolidLengthRule.Textbook(total, x["d"], CoilEnds.ClosedAndGround) + ((total - 1) * x["gap"]) + deflection;
    }

    private static double JindalForce(CheckInputs x)
    {
        var coil = SpringEvaluators.Coil(x);
        return coil.ForceAtStress(Yield(x), CoilStressFactor.DirectShear(coil.Index));
    }
}
