using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Whether links and arms let the wheel go as far as damper and stops would: asked only where hardpoints know it.</summary>
internal static class ReachChecks
{
    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        if (plan.Linkage is not { } range || (range.StopsLeast is null && range.StopsMost is null))
        {
            yield break;
        }

        yield return new CornerCheck
        {
            Kind = CheckCatalogue.LinkageReach,
            Missing = plan.MissingForDamper(),
            Value = n => Math.Min(DroopRoom(plan, n, range), BumpRoom(plan, n, range)),
            Low = 0,
            Sentence = (n, value) =>
            {
                bool bump = BumpRoom(plan, n, range) < DroopRoom(plan, n, range);
                var stops = bump ? range.StopsMost : range.StopsLeast;
                string where = $"at {Mm(bump ? range.Most : range.Least, 0)} of travel "
                    + $"{(stops is null ? "the search ends" : $"the {stops.Tie} goes no further")}";
                return value >= 0
                    ? $"Links and arms reach {Mm(value)} further than {(bump ? "full bump" : "full droop")}: {where}."
                    : $"Links and arms stop the wheel {Mm(-value)} short of {(bump ? "full bump" : "full droop")}: {where}.";
            },
            Worst = n => BumpRoom(plan, n, range) < DroopRoom(plan, n, range)
                ? new WorstState("where the links end the bump", range.Most) : new WorstState("where the links end the droop", range.Least),
            Assumptions = ["swing of ball joints and squeeze of bushings: not looked at"],
            Curable = false,
        };
    }

    private static double DroopRoom(CornerPlan plan, CornerReader n, LinkageRange range) =>
        double.IsFinite(n.Droop) ? n.Droop - range.Least
            : -Short(n, range.Least + Hair, n.X[plan.Station.RodOpen] - n.RodShowing(range.Least + Hair));

    private static double BumpRoom(CornerPlan plan, CornerReader n, LinkageRange range)
    {
        if (double.IsFinite(n.FullBump))
        {
            return range.Most - n.FullBump;
        }

        double end = plan.Station.StopSpent.IsGiven ? n.X[plan.Station.StopSpent] + n.X[plan.Station.Packer]
            : plan.Station.RodClosed.IsGiven ? n.X[plan.Station.RodClosed] : double.NaN;
        return double.IsNaN(end) ? double.PositiveInfinity : -Short(n, range.Most - Hair, n.RodShowing(range.Most - Hair) - end);
    }

    // What the damper would still move, turned into travel by its motion ratio where the links end.
    private static double Short(CornerReader n, double travel, double left) =>
        n.Motion.StationAt(travel, Station.Damper, out var state).IsUsable() && Math.Abs(state.MotionRatio) > 1e-3
            ? left / Math.Abs(state.MotionRatio) : double.NaN;

    /// <summary>As the search for travel keeps away from the linkage's end, m.</summary>
    private const double Hair = 1e-3;
}
