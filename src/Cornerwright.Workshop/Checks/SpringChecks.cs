using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>
/// Does the stack stay seated, do helper and tender work as planned, is there room between the coils, does the wire bear it.
/// </summary>
internal static class SpringChecks
{
    /// <summary>Pitch used to turn a limit in turns into millimetres where the perch has no thread. Common practice, no source.</summary>
    internal const double UsualPitch = 0.0015;

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        if (plan.Parts.Stack.Count == 0)
        {
            yield return Seated(plan);
            yield break;
        }

        yield return Seated(plan);
        for (int i = 0; i < plan.Station.Stack.Count; i++)
        {
            if (plan.Station.Stack[i].Spring is not { } spring)
            {
                continue;
            }

            if (spring.Role == SpringRole.Helper)
            {
                yield return HelperShut(plan, i, spring);
            }
            else if (spring.Role == SpringRole.Tender)
            {
                yield return Crossover(plan, i, spring);
            }
            else
            {
                yield return CoilRoom(plan, i, spring);
                yield return Deflection(plan, i, spring);
                yield return Stress(plan, i, spring);
                yield return Buckling(plan, i, spring);
            }
        }
    }

    private static CornerCheck Seated(CornerPlan plan)
    {
        double turns = Limit(plan.Limits.PreloadTurns);
        bool threaded = plan.Station.Pitch is > 0;
        double pitch = threaded ? plan.Station.Pitch!.Value : UsualPitch;
        return new CornerCheck
        {
            Kind = CheckCatalogue.SeatedAtDroop,
            OwnUnit = threaded ? Units.Turn : null,
            Missing = [.. plan.MissingForSpring().Union(plan.MissingForDamper())],
            Value = n => Squeeze(n) / (threaded ? pitch : 1),
            Low = threaded ? turns : turns * pitch,
            Sentence = (n, _) => Squeeze(n) is var squeeze && squeeze >= 0
                ? $"With the wheel hanging the stack is still squeezed "
                + $"{Mm(squeeze)}{(threaded ? $", {Turns(squeeze / pitch)} of the collar" : "")}: it stays seated."
                : $"With the wheel hanging the stack is {Mm(-squeeze)} shorter than its space: it goes loose and can jump off its seat.",
            Worst = n => new WorstState("at full droop", n.Droop),
            Assumptions = threaded ? [] : ["preload limit in turns: counted at 1.5 mm a turn, because the perch has no thread"],
        };
    }

    private static CornerCheck HelperShut(CornerPlan plan, int slot, Spring spring)
    {
        int lightest = Math.Max(0, plan.Lightest);
        string load = LoadName(plan, lightest);
        return new CornerCheck
        {
            Kind = CheckCatalogue.HelperShut,
            PartId = spring.Id,
            PartName = spring.Name,
            Missing = plan.MissingForRide(lightest),
            Value = n => n.SpringForce(n.Ride[lightest]) - n.Stack[slot].ClosingForce,
            Low = Limit(plan.Limits.HelperReserve),
            Sentence = (n, value) => value >= 0
                ? $"At ride the stack carries {N(n.SpringForce(n.Ride[lightest]))}; {spring.Name} "
                + $"shuts at {N(n.Stack[slot].ClosingForce)}, so only the main spring works on the road."
                : $"At ride the stack carries {N(n.SpringForce(n.Ride[lightest]))}, but {spring.Name} needs "
                + $"{N(n.Stack[slot].ClosingForce)} to shut: it works all the time and the car rides soft and low.",
            Worst = n => new WorstState($"at ride, load case {load}", n.Ride[lightest]),
        };
    }

    private static CornerCheck Crossover(CornerPlan plan, int slot, Spring spring)
    {
        double band = Limit(plan.Limits.CrossoverBand), planned = spring.PlannedCrossover?.Si ?? 0;
        return new CornerCheck
        {
            Kind = CheckCatalogue.Crossover,
            PartId = spring.Id,
            PartName = spring.Name,
            Missing = [.. plan.MissingForSpring(), .. MissingReading.If(spring.PlannedCrossover is null,
                $"parts/springs/{spring.Id}/plannedCrossover", $"planned crossover of {spring.Name}")],
            Value = n => (n.Stack[slot].ClosingForce / planned) - 1,
            Low = -band,
            High = band,
            Sentence = (n, value) => $"{spring.Name} shuts at {N(n.Stack[slot].ClosingForce)} in the stack, {Percent(Math.Abs(value))} "
                + $"{(value < 0 ? "below" : "above")} the planned {N(planned)}.",
            Worst = n => new WorstState("where the tender shuts", FiniteOrNull(HelperShutTravel(n, slot))),
        };
    }

    private static CornerCheck CoilRoom(CornerPlan plan, int slot, Spring spring) => new()
    {
        Kind = CheckCatalogue.CoilRoom,
        PartId = spring.Id,
        PartName = spring.Name,
        Missing = [.. plan.MissingForSpring().Union(plan.MissingForSpent())],
        Value = n => Room(n, slot, n.Beyond(n.Spent)),
        Low = Limit(plan.Limits.CoilRoom),
        Sentence = (n, value) => value >= 0
            ? $"With the bump stop spent, {spring.Name} still has {Mm(value)} before its coils touch."
            : $"{spring.Name} goes solid {Mm(-value)} of spring travel before the bump stop is spent: the car lands on a bound coil.",
        Worst = n => new WorstState("bump stop spent", FiniteOrNull(n.Spent)),
    };

    private static CornerCheck Deflection(CornerPlan plan, int slot, Spring spring) => new()
    {
        Kind = CheckCatalogue.SpringTravel,
        PartId = spring.Id,
        PartName = spring.Name,
        Missing = [.. CoilRoom(plan, slot, spring).Missing, .. MissingReading.If(spring.GreatestDeflection is null,
            $"parts/springs/{spring.Id}/greatestDeflection", $"greatest working deflection of {spring.Name}")],
        Value = n => n.Stack[slot].Travel - Math.Max(Room(n, slot, n.Spent), 0),
        High = spring.GreatestDeflection?.Si ?? double.PositiveInfinity,
        Sentence = (_, value) =>
            $"At full bump {spring.Name} is squeezed {Mm(value)}; its maker allows {Mm(spring.GreatestDeflection!.Si)}.",
        Worst = n => new WorstState("bump stop spent", FiniteOrNull(n.Spent)),
    };

    private static CornerCheck Stress(CornerPlan plan, int slot, Spring spring)
    {
        double wire = spring.WireDiameter?.Si ?? double.NaN, strength = spring.TensileStrength?.Si ?? double.NaN;
        double? mean = MeanDiameter(spring);
        return new CornerCheck
        {
            Kind = CheckCatalogue.SpringStress,
            PartId = spring.Id,
            PartName = spring.Name,
            Missing = [.. CoilRoom(plan, slot, spring).Missing, .. MissingMean(spring, mean),
                .. MissingReading.If(spring.WireDiameter is null, $"parts/springs/{spring.Id}/wireDiameter",
                    $"wire diameter of {spring.Name}"),
                .. MissingReading.If(spring.TensileStrength is null, $"parts/springs/{spring.Id}/tensileStrength",
                    $"tensile strength of the wire of {spring.Name}"),
                .. MissingReading.If(mean is { } coil && coil <= wire, $"parts/springs/{spring.Id}/wireDiameter",
                    $"a wire of {spring.Name} thinner than its coil is wide")],
            Value = n => Force(n, slot) is var force && force >= 0
                ? new WireSpring(wire, mean!.Value, 1, SpringSteel.ShearModulusOilTempered).ShearStress(force) / strength : double.NaN,
            High = Limit(plan.Limits.StressShare),
            Sentence = (_, value) => $"At full bump the wire of {spring.Name} bears {Percent(value)} of "
                + $"its tensile strength in shear (EN 13906-1 allows 56 % at solid height).",
            Worst = n => new WorstState("bump stop spent", FiniteOrNull(n.Spent)),
        };
    }

    private static CornerCheck Buckling(CornerPlan plan, int slot, Spring spring)
    {
        double mean = MeanDiameter(spring) ?? double.NaN;
        return new CornerCheck
        {
            Kind = CheckCatalogue.Buckling,
            PartId = spring.Id,
            PartName = spring.Name,
            Missing = [.. CoilRoom(plan, slot, spring).Missing, .. MissingMean(spring, MeanDiameter(spring))],
            Value = n => CriticalDeflection(n.Stack[slot], mean) - (n.Stack[slot].Travel - Math.Max(Room(n, slot, n.Spent), 0)),
            Low = 0,
            Sentence = (n, value) => value >= 0
                ? $"{spring.Name} would bow out only {Mm(value)} beyond its travel at full bump."
                : $"{spring.Name} is slim for its travel: it bows out {Mm(-value)} before full bump and rubs on the tube.",
            Worst = n => new WorstState("bump stop spent", FiniteOrNull(n.Spent)),
            Assumptions = ["both ends of the spring seated flat and parallel (seating coefficient 0.5)"],
        };
    }

    private static IEnumerable<MissingReading> MissingMean(Spring spring, double? mean) => MissingReading.If(mean is null,
        spring.InnerDiameter is null ? $"parts/springs/{spring.Id}/innerDiameter" : $"parts/springs/{spring.Id}/outerDiameter",
        $"inner and outer diameter of {spring.Name}");

    /// <summary>
    /// Deflection at which the spring bows out; its whole travel plus its free length where it never does, so that the margin stays finite.
    /// </summary>
    internal static double CriticalDeflection(in StackElement spring, double meanDiameter) =>
        SpringBuckling.CriticalDeflection(
            spring.FreeLength, meanDiameter, SpringBuckling.SeatingCoefficient(SpringSeating.BothFixed),
            SpringSteel.ShearModulusOilTempered, SpringSteel.YoungModulus) is { } critical
            ? critical : spring.FreeLength + spring.Travel;

    private static double Squeeze(CornerReader n) => SpringStack.FreeLength(n.Stack) - n.SpringSpace(n.Droop);

    /// <summary>What the spring has left before it is solid, less what the stack lacks when it is bound, m.</summary>
    private static double Room(CornerReader n, int slot, double travel)
    {
        var stack = n.StackAt(travel);
        return n.Stack[slot].LengthAt(stack.Force) - n.Stack[slot].SolidLength - stack.Overrun;
    }

    private static double Force(CornerReader n, int slot) => Math.Min(n.SpringForce(n.Spent), n.Stack[slot].ClosingForce);

    /// <summary>Travel at which an element of the stack shuts; infinite where it never does.</summary>
    internal static double HelperShutTravel(CornerReader n, int slot) =>
        n.TravelAtSpace(SpringStack.LengthAt(n.Stack, n.Stack[slot].ClosingForce));

    internal static double? MeanDiameter(Spring spring) => (spring.InnerDiameter, spring.OuterDiameter, spring.WireDiameter) switch
    {
        ({ } inner, { } outer, _) => (inner.Si + outer.Si) / 2,
        ({ } inner, null, { } wire) => inner.Si + wire.Si,
        (null, { } outer, { } wire) => outer.Si - wire.Si,
        _ => null,
    };

    private static double? FiniteOrNull(double x) => double.IsFinite(x) ? x : null;

    private static string LoadName(CornerPlan plan, int loadCase) => loadCase < plan.Loads.Count ? plan.Loads[loadCase].Case.Name : "";
}
