using Cornerwright.Mechanics.Bars;

namespace Cornerwright.PublishedChecks;

/// <summary>Torsion bars and anti-roll bars.</summary>
internal static class BarEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["bar.stress"] = (_, x) => TorsionBar.ShearStress(x["T"], x["d"], x.Has("di") ? x["di"] : 0),
        ["bar.twist"] = (_, x) => Twist(x, "1") + Twist(x, "2"),
        ["bar.stiffness"] = (_, x) => TorsionBar.Stiffness(x["d"], x["L"], x["G"]),
        ["bar.solid-over-tube"] = (_, x) => TorsionBar.PolarMoment(1) / TorsionBar.PolarMoment(1, x["hollow"]),
        ["bar.puhn"] = (_, x) => AntiRollBar.PuhnRate(x["D"], x["A"], x["B"], x["C"]),

        // 500000 D⁴ over the formula is force per deflection in lbf/in: two arms of 1 in, 1 in thick, bend by the constant over 500000.
        ["bar.puhn-arms"] = (_, x) => 500_000 * 2 * AntiRollBar.ArmCompliance(0.0254, 0.0254, x["E"]) * CheckUnits.Factor("lbf/in"),
    };

    private static double Twist(CheckInputs x, string part) =>
        x["L" + part] > 0 ? TorsionBar.Twist(x["T" + part], x["d"], x["L" + part], x["G"]) : 0;
}
