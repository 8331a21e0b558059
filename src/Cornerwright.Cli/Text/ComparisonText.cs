using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Findings;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Cornerwright.Cli.Text;

/// <summary>Two builds side by side: what is bolted on otherwise, what turns better or worse, what it costs.</summary>
internal static class ComparisonText
{
    private const int Indent = 2;

    public static void Write(IAnsiConsole console, BuildComparison comparison, bool all)
    {
        var (left, right) = (comparison.Left, comparison.Right);
        console.Line(right.Car.Name);
        foreach (var (name, judgement) in new[] { ("from", left), ("to  ", right) })
        {
            console.Line([new Segment($"  {name} \"{judgement.Build.Name}\" "),
                new Segment(VerdictWords.Headline(judgement), judgement.Verdict.Look())]);
        }

        WriteSwaps(console, comparison.Swaps);
        WriteFindings(console, comparison.Findings, all);
        WriteFigures(console, comparison.Figures, all);
        WritePrices(console, comparison);
    }

    private static void WriteSwaps(IAnsiConsole console, IReadOnlyList<PartSwap> swaps)
    {
        console.Heading("Bolted or set otherwise");
        if (swaps.Count == 0)
        {
            console.Line("  nothing");
            return;
        }

        // Corners that change alike share a line.
        var alike = swaps.GroupBy(s => (s.Place, s.Before, s.After))
            .Select(g => new[] { WhereAlike([.. g.Select(s => s.Corner)]), g.Key.Place, Shown(g.Key.Before), "->", Shown(g.Key.After) });
        console.Table(["where", "what", "from", "", "to"], alike, Indent);
    }

    private static void WriteFindings(IAnsiConsole console, IReadOnlyList<FindingPair> pairs, bool all)
    {
        var shown = pairs.Where(p => all || IsWanting(p.Left) || IsWanting(p.Right)).ToList();
        console.Heading(all ? "Checks" : "Checks that do not hold in one of the two");
        if (shown.Count == 0)
        {
            console.Line("  none");
            return;
        }

        console.Table(
            ["where", "check", "from", "to", ">margin from", ">to", ">change", ">sure from", ">to"],
            shown.Select(p => new[]
            {
                p.Either.Where, p.Either.Title, Word(p.Left), Word(p.Right),
                Margin(p.Left), Margin(p.Right),
                p.MarginGain is { } gain ? $"{JudgementText.Signed(gain)} {gain.Unit.Symbol}".TrimEnd() : "",
                Chance(p.Left), Chance(p.Right),
            }),
            Indent);
    }

    private static void WriteFigures(IAnsiConsole console, IReadOnlyList<FigurePair> pairs, bool all)
    {
        var shown = pairs.Where(p => all || p.Change is not { } change || change.Number != change.With(0).Number).ToList();
        if (shown.Count == 0)
        {
            return;
        }

        console.Heading(all ? "Figures" : "Figures that change");
        console.Table(
            ["where", "what", ">from", ">to", ">change"],
            shown.Select(p => new[]
            {
                p.Either.Where, p.Either.Title, p.Left?.Value.Text ?? "", p.Right?.Value.Text ?? "",
                p.Change is { } change ? $"{JudgementText.Signed(change)} {change.Unit.Symbol}".TrimEnd() : "",
            }),
            Indent);
    }

    private static void WritePrices(IAnsiConsole console, BuildComparison comparison)
    {
        console.Heading("Prices" + (comparison.Right.Car.Currency.Length > 0 ? $", {comparison.Right.Car.Currency}" : ""));
        console.Table(
            ["", ">all parts", ">to buy", "no price known"],
            new[] { ("from", comparison.LeftPrice), ("to", comparison.RightPrice) }.Select(p => new[]
            {
                p.Item1, Money(p.Item2.All), Money(p.Item2.ToBuy), string.Join(", ", p.Item2.Unpriced.Select(u => u.Name)),
            }),
            Indent);
    }

    /// <summary>"front", "left" or "all" where the corners make up just that; else their names.</summary>
    internal static string WhereAlike(IReadOnlyList<CornerPlace> corners) => corners.Count switch
    {
        4 => "all",
        2 when corners[0].Axle() == corners[1].Axle() => corners[0].Axle().Words(),
        2 when corners[0].IsLeft() == corners[1].IsLeft() => corners[0].IsLeft() ? "left" : "right",
        _ => string.Join(", ", corners.Select(c => c.Words())),
    };

    internal static string Money(decimal sum) => sum.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);

    private static bool IsWanting(Finding? finding) => finding is not null && finding.Verdict != Verdict.Holds;

    private static string Shown(string words) => words.Length == 0 ? "(none)" : words;

    private static string Word(Finding? finding) => finding?.Verdict.Word() ?? "-";

    private static string Margin(Finding? finding) =>
        finding?.Margin is { } margin ? $"{JudgementText.Signed(margin)} {margin.Unit.Symbol}".TrimEnd() : "";

    private static string Chance(Finding? finding) => finding?.Probability is { } p ? VerdictWords.Percent(p) : "";
}
