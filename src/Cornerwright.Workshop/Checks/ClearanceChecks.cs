using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Does tyre or rim touch anything at any travel and steer.</summary>
internal static class ClearanceChecks
{
    public static IEnumerable<CornerCheck> For(CornerPlan plan, SolvedCorner solved)
    {
        var items = plan.Clearance.Items;
        for (int i = 0; i < items.Count; i++)
        {
            var item = items[i];
            int index = i;
            var worst = solved.Clearance.Worst[i];
            bool tyre = worst.Clearing.Part == WheelPart.Tyre;
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.Clear,
                PartId = item.Id,
                PartName = $"{(tyre ? "Tyre" : "Rim")} to {item.Name}",
                Missing = [.. plan.Clearance.Missing, .. item.Missing],
                MissingAtLock = item.AttachedTo == AttachedTo.Body ? plan.Clearance.MissingAtLock : [],
                MissingAtEnds = item.AttachedTo == AttachedTo.Body ? MissingAtEnds(plan, solved.Read) : [],
                Value = n => n.Gap(index),
                Low = solved.Clearance.Wanted(index),
                Sentence = (_, value) => Sentence(item, worst, value),
                Worst = n => Worst(item, worst, n, solved.Clearance.LoadWords(index)),
                Clearance = index,
                Assumptions = Assumptions(plan, item),
            };
        }
    }

    private static string Sentence(ClearanceItem item, in WorstPose worst, double value)
    {
        string part = PartWords(worst.Clearing.Part), clock = Clock(worst);
        return value >= 0
            ? $"The {part} comes within {Mm(value)} of the {item.Name} at {clock}."
            : $"The {part} runs {Mm(-value)} into the {item.Name} at {clock}.";
    }

    private static WorstState Worst(ClearanceItem item, WorstPose worst, CornerReader n, string load)
    {
        if (item.AttachedTo == AttachedTo.Knuckle)
        {
            return new WorstState("at every travel: it moves with the wheel", Clock: worst.Clearing.ClockHours);
        }

        var (droop, bump) = n.Swept();
        double travel = droop + (worst.Share * (bump - droop));
        string where = worst.Share < 0.01 ? "at full droop" : worst.Share > 0.99 ? "at full bump" : $"at {Mm(travel, 0)} of travel";
        var (otherDroop, otherBump) = n.SweptOther();
        double other = otherDroop + (worst.Other * (otherBump - otherDroop));
        string steer = worst.Steer == 0 ? "straight ahead"
            : $"steered {new Measure(Math.Abs(worst.Steer), Units.Degree, 0).Text} to the {(worst.Steer > 0 ? "left" : "right")}";
        string under = load.Length > 0 ? ", " + load : "";
        return new WorstState($"{where}, {steer}{OtherWheel(n, travel, other)}{under}", travel, worst.Steer, worst.Clearing.ClockHours,
            n.Plan.Other is null ? null : other);
    }

    /// <summary>What the axle's other wheel does then: ", other wheel at full droop"; empty where each wheel moves for itself.</summary>
    internal static string OtherWheel(CornerReader n, double travel, double other)
    {
        const double Near = 0.001;
        if (n.Plan.Other is null)
        {
            return "";
        }

        var (droop, bump) = n.SweptOther();
        return Math.Abs(other - travel) < Near ? ", both wheels alike" : other - droop < Near ? ", other wheel at full droop"
            : bump - other < Near ? ", other wheel at full bump" : $", other wheel at {Mm(other, 0)} of travel";
    }

    /// <summary>What keeps the ends of travel from being known; empty where something ends it either way.</summary>
    internal static IReadOnlyList<MissingReading> MissingAtEnds(CornerPlan plan, CornerReader solved)
    {
        var damper = plan.MissingForDamper();
        IEnumerable<MissingReading> droop = double.IsFinite(solved.Droop) ? [] : damper.Count > 0 ? damper
            : [new(plan.Path + "/droopLimit", "where droop ends")];
        var spent = plan.MissingForSpent();
        IEnumerable<MissingReading> bump = double.IsFinite(solved.FullBump) ? [] : spent.Count > 0 ? spent
            : [new(plan.Path + "/metalContact", "where bump ends")];
        return [.. droop.Union(bump)];
    }

    private static List<string> Assumptions(CornerPlan plan, ClearanceItem item)
    {
        var list = new List<string>();
        if (item.AttachedTo == AttachedTo.Body)
        {
            list.AddRange(AxlePlan.Assumptions(plan.Motion));
            list.AddRange(NotAtLock(plan));
        }

        return list;
    }

    /// <summary>What is left open where the wheel's steering is not known: a gap too small without it is too small all the same.</summary>
    internal static IEnumerable<string> NotAtLock(CornerPlan plan) =>
        plan.Clearance.LockNote.Length > 0 ? [plan.Clearance.LockNote]
        : plan.Clearance.MissingAtLock is { Count: > 0 } missing
            ? [$"lock to lock is not judged, for want of: {MissingReading.Words(missing)}"] : [];

    // To the half hour: a tape does not read a clock face more finely.
    private static string Clock(in WorstPose worst)
    {
        int halves = (int)Math.Round(worst.Clearing.ClockHours * 2, MidpointRounding.AwayFromZero) % 24;
        int hour = halves / 2 == 0 ? 12 : halves / 2;
        return halves % 2 == 0 ? $"{hour} o'clock" : $"half past {hour}";
    }

    private static string PartWords(WheelPart part) => part switch
    {
        WheelPart.Tyre => "tyre",
        WheelPart.RimOuterLip => "rim's outer lip",
        WheelPart.RimInnerLip => "rim's inner lip",
        _ => "rim's barrel",
    };
}
