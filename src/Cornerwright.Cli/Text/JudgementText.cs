using Cornerwright.Cli.Commands;
using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Cornerwright.Cli.Text;

/// <summary>A judgement as a person reads it at the bench: the verdict, what is worst first, what to do about it.</summary>
internal static class JudgementText
{
    private const int Indent = 2;
    private const int MostCures = 3;
    private const int MostDeciding = 3;

    public static void Write(IAnsiConsole console, Judgement judgement, Func<Finding, bool> shows,
        Func<Figure, bool> showsFigure, bool brief)
    {
        console.Line(
        [
            new Segment($"{judgement.Car.Name}, build \"{judgement.Build.Name}\" "),
            new Segment(VerdictWords.Headline(judgement), judgement.Verdict.Look()),
        ]);
        if (judgement.Car.UseLearned && judgement.Car.Occasions.Count > 0)
        {
            console.Line("Judged with what the readings after the work taught (cornerwright learn).");
        }

        RelationText.Write(console, judgement.Relations);
        var shown = judgement.Findings.Where(shows).ToList();
        if (shown.Count < judgement.Findings.Count)
        {
            console.Line($"{shown.Count} of {judgement.Findings.Count} findings shown.");
        }

        if (shown.Count > 0)
        {
            console.Line("A line gives the margin to the limit with its doubt (two sigma), and the chance that it holds.");
        }

        // What needs a decision in full, what holds in one line each.
        foreach (var group in shown.GroupBy(f => f.Verdict).OrderBy(g => g.Key))
        {
            console.Heading(Title(group.Key));
            foreach (var finding in group)
            {
                OneLine(console, finding);
                if (!brief && finding.Verdict != Verdict.Holds)
                {
                    Detail(console, finding);
                }
            }
        }

        if (brief)
        {
            return;
        }

        var figures = judgement.Figures.Where(showsFigure).ToList();
        if (figures.Count > 0)
        {
            console.Heading("Figures without a limit");
            console.Table(["where", "what", ">value", "doubt", "note"], figures.Select(Row), Indent);
        }

        if (shown.Count > 0)
        {
            var allowed = AllowancesInForce.Of(judgement.Car, judgement.Build);
            console.Heading($"Allowed for, {allowed.Use.ToString().ToLowerInvariant()} use");
            console.Table(["what", ">how much", "whose"],
                allowed.Lines.Select(l => new[] { l.Label, (l.IsDoubt ? "±" : "") + l.Value.Typed, Whose(l.Origin) }), Indent);
        }

        var assumptions = shown.SelectMany(f => f.Assumptions).Distinct(StringComparer.Ordinal).ToList();
        if (assumptions.Count > 0)
        {
            console.Heading("Taken for granted, since nobody typed it");
            foreach (string assumption in assumptions)
            {
                console.Sentence("- " + assumption, Indent);
            }
        }
    }

    /// <summary>"-12.3 ±2.0 mm, &lt;1 %": the numbers of a finding in one place.</summary>
    public static string Numbers(Finding finding)
    {
        if (finding.Margin is not { } margin)
        {
            return "";
        }

        string doubt = finding.Doubt is { } d ? $" ±{d.Number}" : "";
        string chance = finding.Probability is { } p ? $", {VerdictWords.Percent(p)}" : "";
        return $"{Signed(margin)}{doubt} {margin.Unit.Symbol}".TrimEnd() + chance;
    }

    public static string Signed(Measure measure) => (measure.Number.StartsWith('-') ? "" : "+") + measure.Number;

    private static string Title(Verdict verdict) => verdict switch
    {
        Verdict.Fails => "Fails",
        Verdict.Tight => "Tight: holds, but not surely enough",
        Verdict.Unknown => "Unknown: a reading is missing",
        _ => "Holds",
    };

    private static void OneLine(IAnsiConsole console, Finding finding)
    {
        const int WhereWidth = 12, TitleWidth = 38;
        console.Line(
        [
            new Segment(new string(' ', Indent) + finding.Verdict.Word().PadRight(8), finding.Verdict.Look()),
            new Segment($"{finding.Where.PadRight(WhereWidth)} {finding.Title.PadRight(TitleWidth)} {Numbers(finding)}".TrimEnd()),
        ]);
    }

    private static void Detail(IAnsiConsole console, Finding finding)
    {
        const int Inner = Indent + 8;
        console.Sentence(finding.Sentence, Inner);
        if (finding.Worst is { } worst && worst.Words.Length > 0)
        {
            console.Sentence("Worst " + worst.Words + Limits(finding), Inner);
        }

        if (finding.Allowed is { } allowed)
        {
            console.Sentence(allowed.Si > 0
                ? $"Allowances take {allowed} of the margin; ± is what the readings leave open."
                : $"Allowances add {allowed.With(-allowed.Si)} to the margin; ± is what the readings leave open.", Inner);
        }

        foreach (var cure in finding.Cures.Take(MostCures))
        {
            string side = cure.Side.Length > 0 ? " But: " + cure.Side : "";
            console.Sentence(
                $"Cure: {cure.Sentence} Gains {cure.Gain}, then {Signed(cure.MarginAfter)} {cure.MarginAfter.Unit.Symbol} in hand.{side}",
                Inner);
        }

        if (finding.Deciding.Count > 0 && finding.Verdict != Verdict.Unknown)
        {
            console.Sentence("Decided by: " + string.Join(", ",
                finding.Deciding.Take(MostDeciding).Select(d => $"{d.Label} ({VerdictWords.Percent(d.Share)})")), Inner);
        }

        if (finding.Missing.Count > 0)
        {
            console.Sentence("Missing: " + MissingReading.Words(finding.Missing), Inner);
        }

        if (!finding.FirstOrderEnough)
        {
            console.Sentence("The value bends within its doubt: take the percentage as rough.", Inner);
        }
    }

    private static string Whose(LimitOrigin origin) => origin switch
    {
        LimitOrigin.Build => "this build's",
        LimitOrigin.Car => "the car's",
        _ => "default",
    };

    private static string Limits(Finding finding) => (finding.Value, finding.Low, finding.High) switch
    {
        ({ } value, { } low, { } high) => $": {value}, allowed {low.Number} to {high}.",
        ({ } value, { } low, null) => $": {value}, at least {low}.",
        ({ } value, null, { } high) => $": {value}, at most {high}.",
        _ => ".",
    };

    private static IReadOnlyList<string> Row(Figure figure) =>
        [figure.Where, figure.Title, figure.Value.Text, figure.Doubt is { } doubt ? "±" + doubt.Text : "", figure.Note];
}
