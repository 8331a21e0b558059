using System.Globalization;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A judgement in one or two sentences, the worst thing first.</summary>
public static class Headline
{
    public static string Of(Judgement judgement)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        if (judgement.Findings.Count == 0)
        {
            return "Nothing can be judged yet: choose parts and enter the first readings.";
        }

        var worst = judgement.Findings[0];
        string counts = string.Join(", ", VerdictWords.WorstFirst.Select(v => Count(v, judgement.Count(v))).Where(s => s.Length > 0));
        string all = judgement.Findings.Count.ToString(CultureInfo.InvariantCulture);
        string fits = judgement.Relations.OpenWords is { Length: > 0 } words ? Capital(words) + ". " : "";
        string told = fits + judgement.Worst switch
        {
            Verdict.Holds when judgement.Relations.Contradicts =>
                $"Each of {all} checks holds by them, which says nothing until they are right.",
            Verdict.Holds when judgement.Verdict != Verdict.Holds => $"Each of {all} checks holds, but not surely enough all together.",
            Verdict.Holds => $"All {all} checks hold.",
            Verdict.Unknown => $"Nothing fails, but not everything is known: {counts}.",
            _ => $"{Capital(counts)}. First: {worst.Title.ToLowerInvariant()}, {worst.Where}{Short(worst)}.",
        };

        // The chance of each is not the chance of all.
        return judgement.Verdict != Verdict.Fails && !judgement.Relations.Contradicts && judgement.Probability is { } chance
            ? $"{told} Chance that all that is known holds at once: {Px.Percent(Rounded(judgement, chance))}{Wanted(judgement, chance)}."
            : told;
    }

    // What is not enough must not be rounded up to what would be.
    private static double Rounded(Judgement judgement, double all) =>
        all < judgement.Certainty ? Math.Floor(all * 100) / 100 : all;

    private static string Wanted(Judgement judgement, double all) =>
        all < judgement.Certainty ? $", {Px.Percent(judgement.Certainty)} wanted" : "";

    private static string Short(Finding finding) => finding.Margin is not { } margin ? ""
        : margin.Si < 0 ? ", short by " + margin.With(-margin.Si).Text
        : ", " + margin.Text + " in hand";

    private static string Count(Verdict verdict, int n) => (verdict, n) switch
    {
        (_, 0) => "",
        (Verdict.Fails, 1) => "1 check fails",
        (Verdict.Fails, _) => $"{n} checks fail",
        (Verdict.Tight, 1) => "1 is tight",
        (Verdict.Tight, _) => $"{n} are tight",
        (Verdict.Unknown, 1) => "1 waits for a reading",
        (Verdict.Unknown, _) => $"{n} wait for readings",
        (_, 1) => "1 holds",
        _ => $"{n} hold",
    };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
