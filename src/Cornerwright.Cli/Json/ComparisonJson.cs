using System.Text.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Cli.Json;

/// <summary>Two builds side by side for scripts; "gain" and "change" are to minus from.</summary>
internal static class ComparisonJson
{
    public static string Write(BuildComparison comparison) => JsonPage.Write("comparison", writer =>
    {
        Side(writer, "from", comparison.Left, comparison.LeftPrice);
        Side(writer, "to", comparison.Right, comparison.RightPrice);
        writer.Objects("swaps", comparison.Swaps, swap =>
        {
            writer.WriteString("corner", swap.Corner.Name());
            writer.WriteString("what", swap.Place);
            writer.WriteString("from", swap.Before);
            writer.WriteString("to", swap.After);
        });
        writer.Objects("findings", comparison.Findings, pair =>
        {
            writer.WriteString("key", pair.Key);
            writer.WriteString("title", pair.Either.Title);
            writer.WriteString("where", pair.Either.Where);
            Half(writer, "from", pair.Left);
            Half(writer, "to", pair.Right);
            writer.Measure("marginGain", pair.MarginGain);
            writer.Number("probabilityGain", pair.ProbabilityGain is { } gain ? Math.Round(gain, 6) : null);
        });
        writer.Objects("figures", comparison.Figures, pair =>
        {
            writer.WriteString("key", pair.Key);
            writer.WriteString("title", pair.Either.Title);
            writer.WriteString("where", pair.Either.Where);
            writer.Measure("from", pair.Left?.Value);
            writer.Measure("to", pair.Right?.Value);
            writer.Measure("change", pair.Change);
        });
    });

    private static void Side(Utf8JsonWriter writer, string name, Judgement judgement, BuildPrice price)
    {
        writer.WriteStartObject(name);
        JudgementJson.Head(writer, judgement);
        CarJson.Price(writer, price);
        writer.WriteEndObject();
    }

    private static void Half(Utf8JsonWriter writer, string name, Finding? finding)
    {
        if (finding is null)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.WriteString("verdict", finding.Verdict.Word());
        writer.Measure("margin", finding.Margin);
        writer.Number("probability", finding.Probability is { } p ? Math.Round(p, 6) : null);
        writer.WriteEndObject();
    }
}
