using Cornerwright.Garage.Quantities;
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
        if (damper.WindowLow is { } low && damper.WindowHigh is { } high)
        {
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.DamperWindow,
                Missing = ride,
                Value = n => n.RodShowing(n.Ride[wanted]),
                Low = low.Si,
                High = high.Si,
                Sentence = (_, value) => $"At ride {Mm(value)} of rod show; the maker wants {Mm(low.Si, 0)} to {Mm(high.Si, 0)}.",
                Worst = n => new WorstState("at ride", n.Ride[wanted]),
            };
        }

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
        if (damper.ThreadLow is { } threadLow && damper.ThreadHigh is { } threadHigh)
        {
            double spare = Limit(plan.Limits.ThreadInHand);
            var perch = plan.Station.Perch;
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.CollarThread,
                Missing = [.. plan.Inputs.Lacking(perch)],
                Value = n => n.X[perch],
                Low = threadLow.Si + spare,
                High = threadHigh.Si - spare,
                Sentence = (_, value) => value < threadLow.Si || value > threadHigh.Si
                    ? $"At {Mm(value)} the perch stands off its thread, which reaches from {Mm(threadLow.Si, 0)} to {Mm(threadHigh.Si, 0)}."
                    : $"At {Mm(value)} the perch has {Mm(value - threadLow.Si)} of thread below it and {Mm(threadHigh.Si - value)} above.",
            };
        }

        if (damper.BodyLow is { } bodyLow && damper.BodyHigh is { } bodyHigh)
        {
            var body = plan.Station.Body;
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.BodyThread,
                Missing = [.. plan.Inputs.Lacking(body)],
                Value = n => n.X[body],
                Low = bodyLow.Si,
                High = bodyHigh.Si,
                Sentence = (_, value) =>
                    $"The body stands {Mm(value)} above the lower reference; it may stand {Mm(bodyLow.Si, 0)} to {Mm(bodyHigh.Si, 0)}.",
            };
        }
    }

    private static double OffMiddle(CornerPlan plan, CornerReader n, double travel)
    {
        double open = n.X[plan.Station.RodOpen], closed = n.X[plan.Station.RodClosed];
        return (n.RodShowing(travel) - ((open + closed) / 2)) / (open - closed);
    }
}
