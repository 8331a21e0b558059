using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Seen: "holds: of 137 checks 137 hold" beside a chance of 85 % that all of them do. Thirty checks at 98 % are not a build at 98 %.
/// </summary>
public class WholeBuildVerdictTests
{
    [Theory]
    [InlineData(0.96, 0, Verdict.Holds)]
    [InlineData(0.94, 0, Verdict.Tight)]
    [InlineData(0.94, 2, Verdict.Tight)]
    [InlineData(0.96, 2, Verdict.Unknown)]
    [InlineData(double.NaN, 0, Verdict.Tight)]
    public void A_build_holds_where_all_is_known_and_surely_enough_at_once(double all, int unknown, Verdict told) =>
        Assert.Equal(told, WholeBuild.Verdict(all, unknown, 0.95));

    [Fact]
    public void A_build_of_which_nothing_is_known_is_unknown() => Assert.Equal(Verdict.Unknown, WholeBuild.Verdict(null, 0, 0.95));

    [Fact]
    public void A_build_each_of_whose_checks_holds_is_tight_where_they_do_not_hold_surely_enough_together()
    {
        var car = DemoCar.Read();
        var judged = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly);
        double all = judged.Probability!.Value, least = judged.Findings.Min(f => f.Probability!.Value);
        Assert.True(all < least - 0.001, $"all at once {all}, least {least}");

        // Asked for more than all together give, but less than each alone does; then for less than both.
        var between = Asking((all + least) / 2);
        Assert.Equal((Verdict.Holds, Verdict.Tight), (between.Worst, between.Verdict));
        var below = Asking(all - 0.002);
        Assert.Equal((Verdict.Holds, Verdict.Holds), (below.Worst, below.Verdict));

        Judgement Asking(double certainty) => Judge.Build(car, Sure(certainty), JudgeOptions.FindingsOnly);

        Garage.Builds.Build Sure(double certainty)
        {
            var build = car.Build(Demo.Holding)!;
            string text = FormattableString.Invariant($"{certainty * 100:F3} %");
            return build with { Limits = build.Limits with { Certainty = Reading.Of(text, Dimension.Ratio) } };
        }
    }
}
