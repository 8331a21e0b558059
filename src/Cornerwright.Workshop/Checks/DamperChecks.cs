using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Where the damper works in its stroke, and whether collar and body stay on their threads.</summary>
internal static class DamperChecks
{
    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        if (plan.Parts.Damper is not { } damper)
        {
            yield break;
        }

        int wanted = CornerPlan.Wanted;
        IReadOnlyList<MissingReading> ride = [.. plan.MissingForDamper().Union(plan.MissingForRide(wanted))];
        double low = damper.WindowLow?.Si ?? double.NegativeInfinity, high = damper.WindowHigh?.Si ?? double.PositiveInfinity;
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.DamperWindow,
            Missing = [.. ride, .. Lacking(damper, damper.WindowLow, "windowLow", "least rod showing at ride that the maker allows"),
                .. Lacking(damper, damper.WindowHigh, "windowHigh", "most rod showing at ride that the maker allows")],
            Value = n => n.RodShowing(n.Ride[wanted]),
            Low = low,
            High = high,
            Sentence = (_, value) => $"At ride {Mm(value)} of rod show; the maker wants {Mm(low, 0)} to {Mm(high, 0)}.",
            Worst = n => new WorstState("at ride", n.Ride[wanted]),
        };

        double share = Limit(plan.Limits.DamperOffMiddle);
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.DamperMiddle,
            Missing = [.. ride, .. plan.Inputs.Lacking(plan.Station.RodClosed)],
            Value = n => OffMiddle(plan, n, n.Ride[wanted]),
            Low = -share,
            High = share,
            Sentence = (n, value) => $"At ride the damper stands {Percent(Math.Abs(value))} of its stroke "
                + $"{(value < 0 ? "below" : "above")} its middle ({Mm(n.RodShowing(n.Ride[wanted]))} of rod show).",
            Worst = n => new WorstState("at ride", n.Ride[wanted]),
        };

        // A collar that turns stands on a thread, round the damper where the spring does.
        bool turns = plan.Parts.Perch?.Pitch is not null && plan.Axle.Layout == SpringLayout.Coilover;
        if (turns || damper.ThreadLow is not null || damper.ThreadHigh is not null)
        {
            double threadLow = damper.ThreadLow?.Si ?? double.NegativeInfinity, threadHigh = damper.ThreadHigh?.Si
                ?? double.PositiveInfinity;
            double spare = Limit(plan.Limits.ThreadInHand);
            var perch = plan.Station.Perch;
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.CollarThread,
                Missing = [.. plan.Inputs.Lacking(perch), .. Lacking(damper, damper.ThreadLow, "threadLow",
                    "where the collar's thread begins"),
                    .. Lacking(damper, damper.ThreadHigh, "threadHigh", "where the collar's thread ends")],
                Value = n => n.X[perch],
                Low = threadLow + spare,
                High = threadHigh - spare,
                Sentence = (_, value) => value < threadLow || value > threadHigh
                    ? $"At {Mm(value)} the perch stands off its thread, which reaches from {Mm(threadLow, 0)} to {Mm(threadHigh, 0)}."
                    : $"At {Mm(value)} the perch has {Mm(value - threadLow)} of thread below it and {Mm(threadHigh - value)} above.",
            };
        }

        foreach (var check in Body(plan, damper))
        {
            yield return check;
        }
    }

    private static IEnumerable<CornerCheck> Body(CornerPlan plan, Damper damper)
    {
        // A body whose height a build sets, or that has a range, screws into its clamp.
        if (damper.BodyLow is not null || damper.BodyHigh is not null || plan.Build.At(plan.Place).BodyHeight is not null)
        {
            double bodyLow = damper.BodyLow?.Si ?? double.NegativeInfinity, bodyHigh = damper.BodyHigh?.Si ?? double.PositiveInfinity;
            var body = plan.Station.Body;
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.BodyThread,
                Missing = [.. plan.Inputs.Lacking(body), .. Lacking(damper, damper.BodyLow, "bodyLow", "least body height"),
                    .. Lacking(damper, damper.BodyHigh, "bodyHigh", "greatest body height")],
                Value = n => n.X[body],
                Low = bodyLow,
                High = bodyHigh,
                Sentence = (_, value) =>
                    $"The body stands {Mm(value)} above the lower reference; it may stand {Mm(bodyLow, 0)} to {Mm(bodyHigh, 0)}.",
            };
        }
    }

    private static IEnumerable<MissingReading> Lacking(Damper damper, Reading? reading, string field, string label) =>
        MissingReading.If(reading is null, $"parts/dampers/{damper.Id}/{field}", $"{label} ({damper.Name})");

    private static double OffMiddle(CornerPlan plan, CornerReader n, double travel)
    {
        double open = n.X[plan.Station.RodOpen], closed = n.X[plan.Station.RodClosed];
        return (n.RodShowing(travel) - ((open + closed) / 2)) / (open - closed);
    }
}
