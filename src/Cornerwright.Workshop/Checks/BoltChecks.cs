using System.Globalization;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Bolts;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>
/// Bolts and nuts of the wheel: enough thread and not too much, the wheel's own seat, the hub's thread, a class no lower.
/// What the maker of car or wheel says comes before all of these numbers.
/// </summary>
internal static class BoltChecks
{
    /// <summary>
    /// A bolt's end keeps this from what stands behind the hub, m: what turns there runs out. Common practice, no source.
    /// </summary>
    private const double FreeEnd = 0.001;

    /// <summary>
    /// Bolts that turn freely now may go this much deeper, m: half a millimetre is within what two wheels of one kind differ by.
    /// Common practice, no source.
    /// </summary>
    private const double AsNow = 0.0005;

    /// <summary>Two threads are the same within this, m: finer than any two of the general plan differ.</summary>
    private const double SameThread = 0.00005;

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        var fixing = new WheelFixing(plan);
        yield return Engagement(plan, fixing);
        if (fixing.OnSpacer)
        {
            yield return SpacerEngagement(plan);
        }

        // An open nut has nothing to bottom on.
        if (!fixing.OnStuds || fixing.Bolt is not { Closed: false })
        {
            yield return Depth(plan, fixing);
        }

        yield return Seat(plan, fixing);
        if (fixing.Bolt is not null || fixing.OnSpacer)
        {
            yield return Thread(plan, fixing);
        }

        if (fixing.Chosen is { } chosen && chosen.Id != fixing.Present?.Id)
        {
            yield return Class(fixing, chosen);
        }
    }

    private static CornerCheck Engagement(CornerPlan plan, WheelFixing fixing)
    {
        var hub = plan.Axle.Hub;
        double? diameter = fixing.OnSpacer ? Parsed(plan.Parts.Spacer!.Thread)?.Diameter : hub.Thread?.Si;
        double limit = Limit(plan.Limits.ThreadEngagement);
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltEngagement,
            Missing = [.. fixing.Missing, .. MissingReading.If(diameter is null,
                fixing.OnSpacer ? HubChecks.SpacerPath(plan, "thread") : HubChecks.HubPath(plan, "thread"),
                fixing.OnSpacer ? "thread of the spacer toward the wheel" : "thread diameter of the wheel bolts")],
            Value = n => fixing.Engaged(n.X) / diameter!.Value,
            Low = limit,
            Sentence = (n, value) =>
            {
                double lost = fixing.ByLengths || !fixing.HasPresent ? 0 : -fixing.Gain(n.X);
                string taken = lost > 0 ? $"; spacer and wheel take {Mm(lost)} of what there was" : "";
                string longer = value < limit
                    ? $" Longer {(fixing.OnStuds ? "studs" : "bolts")} are needed, of the maker's grade." : "";
                string times = new Measure(value, Units.One, 2).Text;
                return $"{Mm(fixing.Engaged(n.X))} of thread engaged, {times} times its diameter{taken}.{longer}";
            },
            Assumptions = fixing.ByLengths && !fixing.OnStuds ? ["hub: its thread taken to begin at the face, without a chamfer"] : [],
        };
    }

    private static CornerCheck SpacerEngagement(CornerPlan plan)
    {
        var engaged = plan.Inputs.Add(HubChecks.SpacerPath(plan, "hubEngagement"), "thread engaged between spacer and hub",
            plan.Parts.Spacer!.HubEngagement);
        double? diameter = plan.Axle.Hub.Thread?.Si;
        double limit = Limit(plan.Limits.ThreadEngagement);
        return new CornerCheck
        {
            Kind = CheckCatalogue.SpacerEngagement,
            Missing = [.. plan.Inputs.Lacking(engaged), .. MissingReading.If(diameter is null, HubChecks.HubPath(plan, "thread"),
                "thread diameter of the wheel bolts")],
            Value = n => n.X[engaged] / diameter!.Value,
            Low = limit,
            Sentence = (n, value) => $"The spacer is held by {Mm(n.X[engaged])} of thread, {new Measure(value, Units.One, 2).Text} "
                + $"times its diameter.{(value < limit ? " That is too little." : "")}",
        };
    }

    /// <summary>Too much: a bolt reaches what lies behind the hub, a stud the end of a closed nut.</summary>
    private static CornerCheck Depth(CornerPlan plan, WheelFixing fixing)
    {
        bool nut = fixing.OnStuds;
        var room = nut ? fixing.Bolt is { } closed
                ? plan.Inputs.Add($"parts/wheelBolts/{closed.Id}/threadDepth", "thread in the closed nut", closed.ThreadDepth)
                : Inputs.Handle.None
            : plan.Inputs.Add(HubChecks.HubPath(plan, "boltDepth"), "free depth behind the hub's face", plan.Axle.Hub.BoltDepth);
        if (!room.IsGiven && fixing.PresentShows && fixing.Gain(plan.Inputs.Best()) <= AsNow)
        {
            return new CornerCheck
            {
                Kind = CheckCatalogue.BoltDepth,
                Value = n => -fixing.Gain(n.X),
                Low = -AsNow,
                Sentence = (_, value) => value > AsNow ? $"The {fixing.Words} end {Mm(value)} less deep than those on the car now."
                    : $"The {fixing.Words} go no deeper than those on the car now.",
                Assumptions = [$"wheel {fixing.Words}: those on the car now are tight on the wheel and touch nothing"],
            };
        }

        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltDepth,
            Missing = [.. nut ? fixing.MissingByLengths : fixing.Missing, .. plan.Inputs.Lacking(room),
                .. MissingReading.If(nut && fixing.Bolt is null, fixing.BoltPath, "the wheel nuts, open or closed")],
            Value = n => n.X[room] - (nut ? fixing.ReachByLengths(n.X) : fixing.Reach(n.X)),
            Low = FreeEnd,
            Sentence = (_, value) => nut
                ? value >= FreeEnd ? $"The stud ends {Mm(value)} before the closed nut does."
                    : value >= 0 ? $"Only {Mm(value)} are left before the stud stops the closed nut."
                    : $"The stud is {Mm(-value)} too long for the closed nut: it stops the nut before the wheel is tight."
                : value >= FreeEnd ? $"The bolts end {Mm(value)} before what lies behind the hub."
                : value >= 0 ? $"Only {Mm(value)} are left between the bolts and what lies behind the hub."
                : $"The bolts reach {Mm(-value)} into what lies behind the hub: shorter ones are needed.",
        };
    }

    private static CornerCheck Seat(CornerPlan plan, WheelFixing fixing)
    {
        var (wheel, bolt) = (plan.Parts.Wheel!, fixing.Bolt);
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltSeat,
            Missing =
            [
                .. MissingReading.If(wheel.Seat is null, $"parts/wheels/{wheel.Id}/seat", "the shape of the wheel's bolt seats"),
                .. MissingReading.If(bolt is null, fixing.BoltPath, $"the wheel {fixing.Words}"),
                .. MissingReading.If(bolt is { Seat: null }, fixing.BoltPath + "/seat", $"the seat of the wheel {fixing.Words}"),
            ],
            Value = _ => bolt!.Seat == wheel.Seat ? 0 : 1,
            Low = -Half,
            High = Half,
            Sentence = (_, value) => value < Half ? $"Wheel and {fixing.Words} have the same seat, {Words(wheel.Seat)}."
                : $"The wheel's seats are for {Words(wheel.Seat)}, the {fixing.Words} have {Words(bolt!.Seat)}: they bear on a line "
                + $"and work loose. {(fixing.OnStuds ? "Nuts" : "Bolts")} with the wheel's own seat are needed.",
        };
    }

    /// <summary>Between the same (0) and not the same (1).</summary>
    private const double Half = 0.5;

    private static CornerCheck Thread(CornerPlan plan, WheelFixing fixing)
    {
        var (hub, bolt, spacer) = (plan.Axle.Hub, fixing.Bolt, plan.Parts.Spacer);
        var own = Parsed(bolt?.Thread);
        var other = fixing.OnSpacer ? Parsed(spacer!.Thread)
            : hub.Thread is { } d && hub.ThreadPitch is { } p ? MetricThread.Of(d.Si, p.Si) : null;
        string owner = fixing.OnSpacer ? "spacer" : "hub";
        bool wrongKind = bolt is not null && bolt.Nut != fixing.OnStuds;
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltThread,
            Missing = wrongKind ? [] :
            [
                .. MissingReading.If(bolt is null, fixing.BoltPath, $"the wheel {fixing.Words}"),
                .. MissingReading.If(bolt is not null && own is null, fixing.BoltPath + "/thread",
                    $"the thread of the wheel {fixing.Words}"),
                .. MissingReading.If(fixing.OnSpacer && other is null, fixing.OnSpacer ? HubChecks.SpacerPath(plan, "thread") : "",
                    "thread of the spacer toward the wheel"),
                .. MissingReading.If(!fixing.OnSpacer && hub.Thread is null, HubChecks.HubPath(plan, "thread"),
                    "thread diameter of the hub"),
                .. MissingReading.If(!fixing.OnSpacer && hub.ThreadPitch is null, HubChecks.HubPath(plan, "threadPitch"),
                    "thread pitch of the hub"),
            ],
            Value = _ => !wrongKind && Same(own!.Value, other!.Value) ? 0 : 1,
            Low = -Half,
            High = Half,
            Sentence = (_, value) => wrongKind
                ? $"{bolt!.Name} is a {(bolt.Nut ? "nut" : "bolt")}, and the {owner} wants {fixing.Words}: it does not hold."
                : value < Half ? $"The {fixing.Words} have the {owner}'s thread, {Written(own!.Value)}."
                : $"The {fixing.Words} have {Written(own!.Value)}, the {owner} has {Written(other!.Value)}: they do not go in.",
        };
    }

    /// <summary>Other bolts than now, and none softer.</summary>
    private static CornerCheck Class(WheelFixing fixing, WheelBolt chosen)
    {
        var present = fixing.Present;
        double? own = Strength(chosen), now = Strength(present);
        bool alike = present is null || present.Nut == chosen.Nut;
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltClass,
            Missing =
            [
                .. MissingReading.If(own is null, $"parts/wheelBolts/{chosen.Id}/class", $"property class of {chosen.Name}"),
                .. MissingReading.If(present is null, fixing.NowPath, $"the wheel {fixing.Words} that are on the car now"),
                .. MissingReading.If(present is not null && now is null, $"parts/wheelBolts/{present?.Id}/class",
                    $"property class of {present?.Name}"),
                .. MissingReading.If(!alike, fixing.NowPath, "a class to compare a nut's with"),
            ],
            Value = _ => (own!.Value / now!.Value) - 1,
            Low = -1e-9,
            Sentence = (_, value) => value >= -1e-9 ? $"Class {chosen.Class}, no lower than the {present!.Class} on the car now."
                : $"Class {chosen.Class}, where the car has {present!.Class} now: too soft. Take the maker's grade.",
        };
    }

    /// <summary>
    /// Yield strength of a bolt as its class says, Pa: "10.9" is 1000 MPa tensile, 0.9 of it yield; a nut's number is the tensile
    /// strength of the bolt it may hold. Source: ISO 898-1:2013, 5; ISO 898-2, 6 (from memory).
    /// </summary>
    private static double? Strength(WheelBolt? bolt)
    {
        string[] parts = bolt?.Class.Trim().Split('.') ?? [];
        const double Hundred = 1e8;
        return parts.Length == 0 || Whole(parts[0]) is not { } tensile ? null
            : parts.Length > 1 && Whole(parts[1]) is { } yield ? tensile * Hundred * yield / 10 : tensile * Hundred;

        static int? Whole(string text) =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
    }

    private static MetricThread? Parsed(string? thread) =>
        thread is { Length: > 0 } && ThreadDesignation.Parse(thread, "thread").Try(out var read) ? read : null;

    private static bool Same(MetricThread a, MetricThread b) =>
        Math.Abs(a.Diameter - b.Diameter) < SameThread && Math.Abs(a.Pitch - b.Pitch) < SameThread;

    private static string Written(MetricThread t) => FormattableString.Invariant($"M{t.Diameter * 1000:0.##}x{t.Pitch * 1000:0.##}");

    private static string Words(BoltSeat? seat) => seat switch
    {
        BoltSeat.Cone => "a cone",
        BoltSeat.Ball => "a ball",
        _ => "a flat seat",
    };
}
