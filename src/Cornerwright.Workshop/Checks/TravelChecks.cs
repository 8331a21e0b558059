using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>What ends the travel, in which order, and how much of it is left at ride.</summary>
internal static class TravelChecks
{
    public const string StopOrder = "stop-order";

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        var stop = plan.MissingForStop();
        var spent = plan.MissingForSpent();
        int heaviest = Math.Max(0, plan.Heaviest), wanted = CornerPlan.Wanted;
        double stopUse = Limit(plan.Limits.StopUse);
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.StopOrder,
            Missing = [.. spent, .. plan.MissingForSpring().Except(spent), .. plan.Inputs.Lacking(plan.Station.RodClosed)],
            Value = n => FirstHard(n).Travel - n.Spent,
            Low = Limit(plan.Limits.StopLead),
            Sentence = (n, value) => FirstHard(n) is var (_, words) && value >= 0
                ? $"The bump stop is spent {Mm(value)} of wheel travel before {words}."
                : $"{Capital(FirstHard(n).Words)} {Mm(-value)} of wheel travel before the bump stop is spent.",
            Worst = n => FirstHard(n) is var (travel, words) && double.IsFinite(travel) ? new WorstState(words, travel) : null,
        };
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.BumpTravel,
            Missing = [.. stop, .. plan.MissingForRide(wanted).Except(stop)],
            Value = n => n.Touch - n.Ride[wanted],
            Low = Limit(plan.Limits.BumpTravel),
            Sentence = (_, value) => value >= 0
                ? $"From ride the wheel rises {Mm(value)} before it meets the bump stop."
                : $"The car stands {Mm(-value)} into its bump stop.",
            Worst = n => new WorstState($"at ride, load case {plan.Loads[wanted].Case.Name}", n.Ride[wanted]),
        };
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.DroopTravel,
            Missing = [.. plan.MissingForDamper().Union(plan.MissingForRide(wanted))],
            Value = n => n.Ride[wanted] - n.Droop,
            Low = Limit(plan.Limits.DroopTravel),
            Sentence = (_, value) => value >= 0
                ? $"From ride the wheel drops {Mm(value)} before it hangs."
                : $"The spring holds the wheel {Mm(-value)} below where the damper lets it hang: the damper is pulled out at rest.",
            Worst = n => new WorstState($"at ride, load case {plan.Loads[wanted].Case.Name}", n.Ride[wanted]),
        };
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.StopUse,
            Missing = [.. spent, .. plan.MissingForRide(heaviest).Except(spent)],
            Value = n => StopShare(plan, n, n.Ride[heaviest]),
            High = stopUse,
            Sentence = (n, value) => value > 0
                ? $"Standing in load case {plan.Loads[heaviest].Case.Name}, the bump stop is squeezed by {Percent(value)} of what it has."
                : !double.IsFinite(n.Touch)
                ? $"Standing in load case {plan.Loads[heaviest].Case.Name}, the wheel is nowhere near the bump stop."
                : $"Standing in load case {plan.Loads[heaviest].Case.Name}, the wheel "
                + $"still has {Mm(n.Touch - n.Ride[heaviest])} before it meets the bump stop.",
            Worst = n => new WorstState($"at ride, load case {plan.Loads[heaviest].Case.Name}", n.Ride[heaviest]),
        };
    }

    /// <summary>What would stop the wheel if the bump stop were not there, and where.</summary>
    private static (double Travel, string Words) FirstHard(CornerReader n)
    {
        var first = (Travel: n.Shut, Words: "the damper is shut");
        double beyond = n.Plan.Allowed.BumpBeyond;   // the wheel goes on while the damper's mounts give
        first = n.Bind - beyond < first.Travel ? (n.Bind - beyond, "the coils touch") : first;
        first = n.Metal - beyond < first.Travel ? (n.Metal - beyond, "metal meets metal") : first;
        return n.TyreTouch - beyond < first.Travel ? (n.TyreTouch - beyond, "the tyre touches" + Steered(n.TouchSteer)) : first;
    }

    private static string Steered(double steer) => Math.Abs(steer) < 0.5 * Math.PI / 180 ? ""
        : $" steered {new Measure(Math.Abs(steer), Units.Degree, 0).Text} to the {(steer > 0 ? "left" : "right")}";

    private static double StopShare(CornerPlan plan, CornerReader n, double travel)
    {
        var s = plan.Station;
        double usable = n.X[s.StopLength] - n.X[s.StopSpent];
        return (n.X[s.StopLength] + n.X[s.Packer] - n.RodShowing(travel)) / usable;
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
