using System.Globalization;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>Does tyre or rim touch a scan at any travel and steer: one check for each scan at the corner.</summary>
internal static class ScanChecks
{
    /// <summary>What the scans need in the row of inputs; to be asked before the row is solved.</summary>
    public static IReadOnlyList<ScanLeast> Prepare(CornerPlan plan, IEnumerable<PlacedScan> scans)
    {
        return [.. scans.Select(scan => new ScanLeast(scan, Lie(plan, scan)))];
    }

    public static IEnumerable<CornerCheck> For(CornerPlan plan, IReadOnlyList<ScanLeast> scans, SolvedCorner solved)
    {
        foreach (ScanLeast least in scans)
        {
            bool ready = plan.Clearance.Missing.Count == 0 && plan.HasMotion;
            if (ready)
            {
                least.Keep(solved, Limit(plan.Limits.TyreToBody));
            }

            CertifiedGap? found = least.Found;
            WheelPart part = found is { Obstacle: 0 } ? found.Clearing.Part : WheelPart.Tyre;
            bool body = ScanObstacles.Of(least.Scan).Frame == ObstacleFrame.Body;
            string name = least.Scan.Scan.Name;

            // The tyre may stand hardly further off than a rim that is nearest: the larger of both counts then.
            double tyre = Limit(body ? plan.Limits.TyreToBody : plan.Limits.TyreToKnuckle);
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.Scan,
                PartId = least.Scan.Scan.Id,
                PartName = $"{(part == WheelPart.Tyre ? "Tyre" : "Rim")} to scan: {name}",
                Missing = [.. plan.Clearance.Missing, .. ready ? Failed(plan, found) : []],
                MissingAtLock = body ? plan.Clearance.MissingAtLock : [],
                MissingAtEnds = body ? ClearanceChecks.MissingAtEnds(plan, solved.Read) : [],
                Value = least.Value,
                Low = part == WheelPart.Tyre ? tyre : Math.Max(tyre, Limit(plan.Limits.RimToAnything)),
                Sentence = (_, value) => Sentence(name, found!, value),
                Worst = n => Worst(found!, n, body),
                Proved = true,
                OwnCure = body && found is not null ? (value, wanted) => ArchWork(plan, part, found, value, wanted) : null,
                Assumptions = Assumptions(plan, least, body),
            };
        }
    }

    private static Handle Lie(CornerPlan plan, PlacedScan scan) => plan.Inputs.Assume(
        $"scans/{scan.Scan.Id}/alignment/doubt{(scan.Mirrored ? "/mirrored" : "")}", $"where the scan {scan.Scan.Name} lies", 0,
        scan.Deviation,
        string.Create(CultureInfo.InvariantCulture,
            $"scan {scan.Scan.Name}: alignment and roughness together good for ± {2000 * scan.Deviation:0.0} mm"));

    private static MissingReading[] Failed(CornerPlan plan, CertifiedGap? found) => found switch
    {
        null => [new(plan.BuildPath + "/tyre", "a tyre and a rim whose sizes go together")],
        { Why: CertifyingStop.Unreachable } => [new(plan.Path + "/motion", "a motion that reaches some of the travel")],
        { Obstacle: 0 } when double.IsFinite(found.Lower) => [],
        _ => [new(plan.Path + "/motion", "a smoother motion: the least gap to the scan could not be proved")],
    };

    private static string Sentence(string name, CertifiedGap found, double value)
    {
        string part = PartWords(found.Clearing.Part), clock = ClockWords.Of(found.Clearing.ClockHours);
        return found.Why == CertifyingStop.DeepOverlap ? $"The {part} runs at least {Mm(-value)} into the scanned {name} at {clock}."
            : value < 0 ? $"The {part} runs {Mm(-value)} into the scanned {name} at {clock}, and in no pose deeper."
            : $"The {part} stays {Mm(value)} clear of the scanned {name} in every pose; it is nearest at {clock}.";
    }

    private static WorstState Worst(CertifiedGap found, CornerReader n, bool body)
    {
        if (!body)
        {
            return new WorstState("at every travel: it moves with the wheel", Clock: found.Clearing.ClockHours);
        }

        var (droop, bump) = n.Swept();
        double travel = found.Place.Travel, steer = found.Place.Steer;
        string where = travel - droop < 0.001 ? "at full droop" : bump - travel < 0.001 ? "at full bump" : $"at {Mm(travel, 0)} of travel";
        string turned = Math.Abs(steer) < 0.005 ? "straight ahead"
            : $"steered {new Measure(Math.Abs(steer), Units.Degree, 0).Text} to the {(steer > 0 ? "left" : "right")}";
        string other = ClearanceChecks.OtherWheel(n, travel, found.Place.Third);
        return new WorstState($"{where}, {turned}{other}", travel, steer, found.Clearing.ClockHours,
            n.Plan.Other is null ? null : found.Place.Third);
    }

    private static List<string> Assumptions(CornerPlan plan, ScanLeast least, bool body)
    {
        List<string> list = [.. least.Scan.Notes];
        list.AddRange(body ? AxlePlan.Assumptions(plan.Motion) : []);
        list.AddRange(body ? ClearanceChecks.NotAtLock(plan) : []);
        return list;
    }

    /// <summary>What would have to go where the wheel comes nearest; whatever else is too near goes with it.</summary>
    private static Cure ArchWork(CornerPlan plan, WheelPart part, CertifiedGap found, double value, double wanted)
    {
        double limit = Limit(part == WheelPart.Tyre ? plan.Limits.TyreToBody : plan.Limits.RimToAnything), gain = limit + wanted - value;
        double rounded = Math.Ceiling(gain * 1000) / 1000;
        var unit = new Measure(0, Units.Millimetre, 1);
        string sentence = $"Work the arch back {Mm(rounded, 0)} at {ClockWords.Of(found.Clearing.ClockHours)}, and wherever else it "
            + $"stands nearer than {Mm(limit + wanted, 0)} to the moving wheel.";
        return new Cure(sentence, unit.With(rounded), unit.With(value + rounded - limit),
            "Bare metal needs paint; what carries load or covers wiring stays.") { CornerHolds = true };
    }

    private static string PartWords(WheelPart part) => part switch
    {
        WheelPart.Tyre => "tyre",
        WheelPart.RimOuterLip => "rim's outer lip",
        WheelPart.RimInnerLip => "rim's inner lip",
        WheelPart.Spokes => "spokes",
        _ => "rim's barrel",
    };
}
