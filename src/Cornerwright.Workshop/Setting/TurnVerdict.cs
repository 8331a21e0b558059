using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Setting;

/// <summary>
/// The build with everything of a turn table done, judged as any other: a height that is reached says nothing of what it costs.
/// </summary>
public sealed class TurnVerdict
{
    private readonly HashSet<string> _failed;

    private TurnVerdict(Judgement then, HashSet<string> failed) => (Then, _failed) = (then, failed);

    /// <summary>All checks with everything done; the heights asked for are those of the wish.</summary>
    public Judgement Then { get; }

    /// <summary>True if anything fails then.</summary>
    public bool Fails => Then.Worst == Verdict.Fails;

    /// <summary>"Set like this the build fails: 11 of 153 checks fail, 2 are tight."</summary>
    public string Summary
    {
        get
        {
            int all = Then.Findings.Count, fails = Then.Count(Verdict.Fails), tight = Then.Count(Verdict.Tight),
                unknown = Then.Count(Verdict.Unknown);
            string others = (tight > 0 ? $", {tight} {(tight == 1 ? "is" : "are")} tight" : "")
                + (unknown > 0 ? $", {unknown} {(unknown == 1 ? "waits" : "wait")} for readings" : "");
            return fails > 0 ? $"Set like this the build fails: {fails} of {all} checks {(fails == 1 ? "fails" : "fail")}{others}."
                : others.Length > 0 ? $"Set like this nothing fails, but of {all} checks {others[2..]}."
                : Then.Verdict == Verdict.Holds ? $"Set like this all {all} checks hold."
                : $"Set like this each of {all} checks holds, but not surely enough all together.";
        }
    }

    /// <summary>What fails only then, and what is tight, the worst first.</summary>
    public IReadOnlyList<string> Changed =>
        [.. Then.Findings.Where(f => f.Verdict == Verdict.Tight || (f.Verdict == Verdict.Fails && !_failed.Contains(f.Key))).Select(Line)];

    /// <summary>What fails then as it does now, the worst first.</summary>
    public IReadOnlyList<string> AsNow =>
        [.. Then.Findings.Where(f => f.Verdict == Verdict.Fails && _failed.Contains(f.Key)).Select(Line)];

    /// <summary>What fails then, and what is tight: what is new about it first.</summary>
    public IReadOnlyList<string> Lines => [.. Changed, .. AsNow];

    /// <param name="car">Whose build it is.</param>
    /// <param name="table">To be carried out.</param>
    public static TurnVerdict Of(Car car, TurnTable table)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(table);
        var now = Judge.Build(car, table.Build, JudgeOptions.FindingsOnly);
        var then = Judge.Build(car, Wished(table), JudgeOptions.FindingsOnly);
        return new(then, [.. now.Findings.Where(f => f.Verdict == Verdict.Fails).Select(f => f.Key)]);
    }

    private string Line(Finding finding)
    {
        string word = finding.Verdict == Verdict.Tight ? "Tight" : _failed.Contains(finding.Key) ? "Fails, as now" : "Fails";
        return $"{word}: {finding.Where}, {finding.Title}. {finding.Sentence}";
    }

    // What is wanted now stands for what was wanted when the limits were written.
    private static Build Wished(TurnTable table)
    {
        var build = table.AfterTurning;
        return build with
        {
            Limits = build.Limits with
            {
                FrontHeight = table.Wish.At(CornerPlace.FrontLeft).Height ?? build.Limits.FrontHeight,
                RearHeight = table.Wish.At(CornerPlace.RearLeft).Height ?? build.Limits.RearHeight,
            },
        };
    }
}
