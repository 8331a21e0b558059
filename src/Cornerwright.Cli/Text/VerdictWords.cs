using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>Verdicts in words, and in colours that no meaning depends on.</summary>
public static class VerdictWords
{
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.Fails => "fails",
        Verdict.Tight => "tight",
        Verdict.Unknown => "unknown",
        _ => "holds",
    };

    public static Style Look(this Verdict verdict) => verdict switch
    {
        Verdict.Fails => new Style(Color.DarkOrange, decoration: Decoration.Bold),
        Verdict.Tight => new Style(Color.Yellow),
        Verdict.Unknown => new Style(Color.Grey),
        _ => new Style(Color.DeepSkyBlue3),
    };

    /// <summary>
    /// "fails: of 42 checks 3 fail, 5 are tight, 2 cannot be answered, 32 hold; chance that all that is known holds at once: 91 %."
    /// </summary>
    public static string Headline(Judgement judgement)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        int fails = judgement.Count(Verdict.Fails), tight = judgement.Count(Verdict.Tight);
        int unknown = judgement.Count(Verdict.Unknown), holds = judgement.Count(Verdict.Holds);
        string[] parts =
        [
            .. Some(fails, "1 fails", "fail"), .. Some(tight, "1 is tight", "are tight"),
            .. Some(unknown, "1 cannot be answered", "cannot be answered"), .. Some(holds, "1 holds", "hold"),
        ];
        return judgement.Findings.Count == 0
            ? "unknown: nothing could be checked."
            : $"{judgement.Verdict.Word()}: {DoNotFit(judgement)}of {judgement.Findings.Count} checks "
                + $"{string.Join(", ", parts)}{AllAtOnce(judgement)}.";
    }

    private static string DoNotFit(Judgement judgement) => judgement.Relations.OpenWords is { Length: > 0 } words ? words + "; " : "";

    // The chance of each is not the chance of all.
    private static string AllAtOnce(Judgement judgement) =>
        judgement.Verdict != Verdict.Fails && !judgement.Relations.Contradicts && judgement.Probability is { } all
            ? $"; chance that all that is known holds at once: {Percent(Rounded(judgement, all))}{Wanted(judgement, all)}" : "";

    // What is not enough must not be rounded up to what would be.
    private static double Rounded(Judgement judgement, double all) =>
        all < judgement.Certainty ? Math.Floor(all * 100) / 100 : all;

    private static string Wanted(Judgement judgement, double all) =>
        all < judgement.Certainty ? $", {Percent(judgement.Certainty)} wanted" : "";

    /// <summary>"97 %"; never 0 or 100, which no reading can promise, unless it is exact.</summary>
    public static string Percent(double probability) => probability switch
    {
        <= 0 => "0 %",
        >= 1 => "100 %",
        < 0.01 => "<1 %",
        > 0.99 => ">99 %",
        _ => FormattableString.Invariant($"{Math.Round(probability * 100, MidpointRounding.AwayFromZero):F0} %"),
    };

    private static IEnumerable<string> Some(int count, string one, string many) =>
        count switch { 0 => [], 1 => [one], _ => [$"{count} {many}"] };
}
