using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Does the wheel go on the hub, and what centres it: the hub's collar, a spacer's, or a ring between.</summary>
internal static class HubChecks
{
    /// <summary>
    /// Two bolt circles are the same within this, m: half of the 0.3 mm
    /// between circles that are known not to mix. Common practice, no source.
    /// </summary>
    private const double CirclePlay = 0.00015;

    /// <summary>A bore this much larger than the collar still centres the wheel, m. Common practice, no source.</summary>
    private const double CentringPlay = 0.0002;

    /// <summary>
    /// A collar that reaches less than this into the wheel's bore centres nothing, m: its chamfer and the bore's take about as much.
    /// Common practice, no source.
    /// </summary>
    private const double LeastReach = 0.003;

    public static IEnumerable<CornerCheck> For(CornerPlan plan, RimDesignation rim)
    {
        var spacer = plan.Parts.Spacer;
        yield return BoltCircle(plan, rim);
        yield return Bore(plan);
        if (plan.Parts.Held<CentringRing>() is { } ring)
        {
            yield return Ring(plan, ring);
        }

        if (spacer is { HubCentric: true })
        {
            yield return OnHub(plan, spacer);
        }
        else if (spacer is not null)
        {
            yield return Reach(plan);
        }

        if (spacer is { Bolted: true } && plan.Axle.Hub.Studs)
        {
            yield return StudRoom(plan);
        }
    }

    private static CornerCheck BoltCircle(CornerPlan plan, RimDesignation rim)
    {
        var hub = plan.Axle.Hub;
        bool bolted = plan.Parts.Spacer is { Bolted: true };
        var circle = bolted ? plan.Parts.Spacer!.BoltCircle : hub.BoltCircle;
        string owner = bolted ? "spacer" : "hub";
        bool countsDiffer = !bolted && hub.Bolts is { } bolts && rim.BoltCount is { } holes && bolts != holes;
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltCircle,
            Missing = [.. MissingReading.If(circle is null, bolted ? SpacerPath(plan, "boltCircle") : HubPath(plan, "boltCircle"),
                    bolted ? "bolt circle of the spacer toward the wheel" : "bolt circle of the hub"),
                .. MissingReading.If(rim.BoltCircleMm is null, RimPath(plan), "bolt circle in the rim designation")],
            Value = _ => countsDiffer ? 1 : (rim.BoltCircleMm!.Value / 1000) - circle!.Si,
            Low = -CirclePlay,
            High = CirclePlay,
            Sentence = (_, value) => countsDiffer ? $"The wheel has {rim.BoltCount} holes, the hub {hub.Bolts} bolts: it does not go on."
                : Math.Abs(value) <= CirclePlay
                ? FormattableString.Invariant($"Wheel and {owner} share the {rim.BoltCircleMm:0.#} mm bolt circle.")
                : $"The wheel's bolt circle is {Mm(Math.Abs(value))} {(value > 0 ? "larger" : "smaller")} than the "
                + $"{owner}'s: it does not go on.",
            Assumptions = bolted ? ["bolted spacer: taken as made for this hub's bolt circle and thread"] : [],
        };
    }

    private static CornerCheck Bore(CornerPlan plan)
    {
        var wheel = plan.Parts.Wheel!;
        double? stamped = plan.Parts.Rim?.CentreBoreMm is { } mm ? mm / 1000 : null;
        var bore = wheel.CentreBore is null && stamped is { } value
            ? plan.Inputs.Define($"parts/wheels/{wheel.Id}/stampedBore", "stamped centre bore", value)
            : plan.Inputs.Add($"parts/wheels/{wheel.Id}/centreBore", "centre bore of the wheel", wheel.CentreBore);
        var ring = plan.Parts.Held<CentringRing>();
        var (collar, owner) = Collar(plan);
        var inside = ring is null ? collar
            : plan.Inputs.Add($"parts/centringRings/{ring.Id}/outerDiameter", "outer diameter of the centring ring", ring.OuterDiameter);
        string what = ring is null ? owner : "ring";
        return new CornerCheck
        {
            Kind = CheckCatalogue.CentreBore,
            Missing = [.. plan.Inputs.Lacking(bore, inside)],
            Value = n => n.X[bore] - n.X[inside],
            Low = 0,
            High = CentringPlay,
            Sentence = (n, value) => value < 0 ? $"The {what} is {Mm(-value, 2)} larger than the wheel's bore: it does not go on."
                : value <= CentringPlay ? $"The {what} centres the wheel."
                : ring is not null ? $"The bore is {Mm(value, 2)} larger than the ring: it centres nothing."
                : $"The bore is {Mm(value, 2)} larger than the {owner}: a centring ring is needed, {Mm(n.X[bore], 2)} outside and "
                + $"{Mm(n.X[collar], 2)} inside. Choose it among the parts.",
        };
    }

    private static CornerCheck Ring(CornerPlan plan, CentringRing ring)
    {
        var inner =
            plan.Inputs.Add($"parts/centringRings/{ring.Id}/innerDiameter", "inner diameter of the centring ring", ring.InnerDiameter);
        var (collar, owner) = Collar(plan);
        return new CornerCheck
        {
            Kind = CheckCatalogue.CentringRing,
            Missing = [.. plan.Inputs.Lacking(inner, collar)],
            Value = n => n.X[inner] - n.X[collar],
            Low = 0,
            High = CentringPlay,
            Sentence = (_, value) => value < 0 ? $"The ring is {Mm(-value, 2)} too narrow for the {owner}: it does not go on."
                : value <= CentringPlay ? $"The ring sits on the {owner}."
                : $"The ring is {Mm(value, 2)} wider than the {owner}: it centres nothing.",
        };
    }

    /// <summary>A spacer with a collar must itself be centred.</summary>
    private static CornerCheck OnHub(CornerPlan plan, Spacer spacer)
    {
        var bore = plan.Inputs.Add(SpacerPath(plan, "bore"), "bore of the spacer", spacer.Bore);
        var collar = plan.Inputs.Add(HubPath(plan, "centring"), "centring diameter of the hub", plan.Axle.Hub.Centring);
        return new CornerCheck
        {
            Kind = CheckCatalogue.SpacerOnHub,
            Missing = [.. plan.Inputs.Lacking(bore, collar)],
            Value = n => n.X[bore] - n.X[collar],
            Low = 0,
            High = CentringPlay,
            Sentence = (_, value) => value < 0 ? $"The hub is {Mm(-value, 2)} larger than the spacer's bore: it does not go on."
                : value <= CentringPlay ? "The hub centres the spacer."
                : $"The spacer's bore is {Mm(value, 2)} larger than the hub: nothing centres it.",
        };
    }

    /// <summary>Behind a spacer without a collar the wheel is centred by what of the hub's collar comes through.</summary>
    private static CornerCheck Reach(CornerPlan plan)
    {
        var length =
            plan.Inputs.Add(HubPath(plan, "spigotLength"), "how far the hub's centring collar stands out", plan.Axle.Hub.SpigotLength);
        var thickness = Thickness(plan);
        return new CornerCheck
        {
            Kind = CheckCatalogue.CentringReach,
            Missing = [.. plan.Inputs.Lacking(length, thickness)],
            Value = n => n.X[length] - n.X[thickness],
            Low = LeastReach,
            Sentence = (n, value) => value >= LeastReach
                ? $"The hub's collar reaches {Mm(value)} through the spacer into the wheel."
                : $"The hub's collar stands out {Mm(n.X[length])} and the spacer is {Mm(n.X[thickness])} thick: "
                + (value > 0 ? $"{Mm(value)} are too little to centre the wheel." : "nothing centres the wheel.")
                + " A spacer with a collar of its own does.",
        };
    }

    /// <summary>The hub's studs end within a spacer that is bolted to them, or in hollows of the wheel.</summary>
    private static CornerCheck StudRoom(CornerPlan plan)
    {
        var stud = plan.Inputs.Add(HubPath(plan, "studLength"), "how far the hub's studs stand out", plan.Axle.Hub.StudLength);
        var thickness = Thickness(plan);
        var pockets = plan.Parts.Wheel!.Pockets is { } given
            ? plan.Inputs.Add($"parts/wheels/{plan.Parts.Wheel.Id}/pockets", "pockets in the wheel's face", given) : Handle.None;
        return new CornerCheck
        {
            Kind = CheckCatalogue.StudRoom,
            Missing = [.. plan.Inputs.Lacking(stud, thickness)],
            Value = n => n.X[thickness] + (pockets.IsGiven ? n.X[pockets] : 0) - n.X[stud],
            Low = 0,
            Sentence = (n, value) => value >= 0 ? $"The hub's studs end {Mm(value)} before they reach the wheel."
                : $"The hub's studs stand out {Mm(n.X[stud])}: {Mm(-value)} too far for this spacer, they keep the wheel off its face. "
                + "Only a wheel with pockets there, or a thicker spacer, goes on.",
        };
    }

    /// <summary>What the wheel, or the ring in it, sits on.</summary>
    private static (Handle Diameter, string Owner) Collar(CornerPlan plan) => plan.Parts.Spacer is { HubCentric: true } spacer
        ? (plan.Inputs.Add(SpacerPath(plan, "collar"), "collar of the spacer toward the wheel", spacer.Collar), "spacer's collar")
        : (plan.Inputs.Add(HubPath(plan, "centring"), "centring diameter of the hub", plan.Axle.Hub.Centring), "hub");

    /// <summary>Thickness of the spacer, m; 0 where there is none.</summary>
    internal static Handle Thickness(CornerPlan plan) => plan.Parts.Spacer is { } spacer
        ? plan.Inputs.Add(SpacerPath(plan, "thickness"), "thickness of the spacer", spacer.Thickness)
        : plan.Inputs.Define(plan.BuildPath + "/spacer", "spacer", 0);

    internal static string HubPath(CornerPlan plan, string field) => $"{plan.Place.Axle().Words()}/hub/{field}";

    internal static string SpacerPath(CornerPlan plan, string field) => $"parts/spacers/{plan.Parts.Spacer!.Id}/{field}";

    internal static string RimPath(CornerPlan plan) =>
        plan.Parts.Wheel is { } wheel ? $"parts/wheels/{wheel.Id}/designation" : plan.BuildPath + "/wheel";
}
