using System.Globalization;
using Cornerwright.Mechanics.Bolts;
using Cornerwright.Mechanics.Springs;

namespace Cornerwright.PublishedChecks;

/// <summary>Threads, classes, tightening, joints, engagement.</summary>
internal static class BoltEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["thread.pitch"] = (_, x) => Pitch(x),
        ["thread.stress-area"] = (_, x) => Thread(x).StressArea,
        ["thread.pitch-diameter"] = (_, x) => Thread(x).PitchDiameter,
        ["collar.advance-thread"] = (_, x) => Collar.Advance(x["turns"], Thread(x).Pitch),
        ["class.proof-stress"] = (_, x) => PropertyClass.Strength(x.Text("class"), x["d"])!.Value.ProofStress,
        ["class.proof-load"] = (_, x) => PropertyClass.ProofLoad(PrintedArea(x), Strength(x)),
        ["class.tensile-load"] = (_, x) => PropertyClass.TensileLoad(PrintedArea(x), Strength(x)),
        ["bolt.preload"] = (_, x) => Preload(x),
        ["bolt.torque"] = (_, x) => Tightening.Torque(
            Preload(x), Thread(x), x["mu"], x["mu"], Tightening.HexBearingDiameter(Thread(x).Diameter)!.Value),
        ["bolt.nut-factor"] = (_, x) => Tightening.NutFactor(Thread(x), x["mu"], x["collar"]),
        ["bolt.torque-k"] = (_, x) => Tightening.TorqueByNutFactor(x["K"], x["F"], x["d"]),
        ["bolt.torque-proof"] = (_, x) => Tightening.TorqueByNutFactor(x["K"], ProofShare(x), x["d"]),
        ["bolt.engagement"] = (_, x) => string.Create(
            CultureInfo.InvariantCulture, $"at least {ThreadEngagement.Least(1, x.Choice<TappedMaterial>("material"))} d"),
    };

    // "M12x1.5", or "M12" for the coarse pitch.
    private static MetricThread Thread(CheckInputs x)
    {
        string[] parts = x.Text("thread")[1..].Split('x');
        double diameter = double.Parse(parts[0], CultureInfo.InvariantCulture);
        double pitch = parts.Length > 1
            ? double.Parse(parts[1], CultureInfo.InvariantCulture)
            : MetricThread.CoarsePitchMm(diameter)!.Value;
        return MetricThread.Of(diameter / 1000, pitch / 1000);
    }

    private static CheckValue Pitch(CheckInputs x)
    {
        var thread = Thread(x);
        bool coarse = !x.Text("thread").Contains('x');
        return MetricThread.IsInGeneralPlan(thread.Diameter * 1000, thread.Pitch * 1000) && thread.IsCoarse == coarse
            ? thread.Pitch
            : "not in the general plan as such";
    }

    private static BoltStrength Strength(CheckInputs x) => PropertyClass.Strength(x.Text("class"), Thread(x).Diameter)!.Value;

    // The standard's load tables are built on the area as it prints it, to three digits.
    private static double PrintedArea(CheckInputs x) =>
        double.Parse((Thread(x).StressArea * 1e6).ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) * 1e-6;

    private static double Preload(CheckInputs x) => Tightening.AssemblyPreload(Thread(x), Strength(x).YieldStrength, x["mu"]);

    private static double ProofShare(CheckInputs x) => Tightening.PreloadFromProof(x["share"], x["At"], x["Sp"]);
}
