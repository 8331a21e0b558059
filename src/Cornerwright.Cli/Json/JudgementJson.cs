using System.Text.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Settling;

namespace Cornerwright.Cli.Json;

/// <summary>A judgement for scripts: every finding in full.</summary>
internal static class JudgementJson
{
    public static string Write(Judgement judgement, Func<Finding, bool> shows, Func<Figure, bool> showsFigure,
        IReadOnlyList<Settlement>? settlements = null) =>
        JsonPage.Write("judgement", writer =>
        {
            Head(writer, judgement);
            RelationJson.Fields(writer, judgement.Relations);
            WriteAllowances(writer, judgement);
            writer.Objects("findings", judgement.Findings.Where(shows), f => Fields(writer, f));
            writer.Objects("figures", judgement.Figures.Where(showsFigure), f => Fields(writer, f));
            if (settlements is not null)
            {
                writer.Objects("settlements", settlements, s => SettlementJson.Fields(writer, s));
            }
        });

    /// <summary>Car, build, verdict and counts of the whole build, whatever is shown of it.</summary>
    public static void Head(Utf8JsonWriter writer, Judgement judgement)
    {
        writer.WriteString("car", judgement.Car.Id);
        writer.WriteString("build", judgement.Build.Id);
        writer.WriteString("verdict", judgement.Verdict.Word());
        if (judgement.Probability is { } all)
        {
            writer.WriteNumber("probability", Math.Round(all, 4));
        }

        if (judgement.Car.UseLearned)
        {
            writer.WriteBoolean("withLearned", true);
        }

        writer.WriteStartObject("counts");
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            writer.WriteNumber(verdict.Word(), judgement.Count(verdict));
        }

        writer.WriteEndObject();
    }

    public static void Fields(Utf8JsonWriter writer, Finding finding)
    {
        writer.WriteString("key", finding.Key);
        writer.WriteString("check", finding.Check);
        writer.WriteString("title", finding.Title);
        writer.WriteString("where", finding.Where);
        writer.Text("corner", finding.Corner is { } corner ? corner.Name() : null);
        writer.Text("axle", finding.Axle?.Words());
        writer.WriteString("verdict", finding.Verdict.Word());
        writer.Measure("value", finding.Value);
        writer.Measure("low", finding.Low);
        writer.Measure("high", finding.High);
        writer.Measure("margin", finding.Margin);
        writer.Measure("doubt", finding.Doubt);
        writer.Measure("takenByAllowances", finding.Allowed);
        writer.Number("probability", finding.Probability is { } p ? Math.Round(p, 6) : null);
        writer.WriteBoolean("firstOrderEnough", finding.FirstOrderEnough);
        WriteWorst(writer, finding.Worst);
        writer.WriteString("sentence", finding.Sentence);
        writer.Objects("cures", finding.Cures, cure =>
        {
            writer.WriteString("sentence", cure.Sentence);
            writer.Measure("gain", cure.Gain);
            writer.Measure("marginAfter", cure.MarginAfter);
            writer.WriteString("side", cure.Side);
            writer.WriteString("setting", cure.Setting);
            writer.WriteString("newValue", cure.NewValue);
        });
        writer.Objects("deciding", finding.Deciding, reading =>
        {
            writer.WriteString("path", reading.Path);
            writer.WriteString("label", reading.Label);
            writer.Number("share", Math.Round(reading.Share, 6));
        });
        writer.Texts("assumptions", finding.Assumptions);
        writer.Texts("missing", finding.Missing.Select(m => m.Label));
    }

    public static void Fields(Utf8JsonWriter writer, Figure figure)
    {
        writer.WriteString("key", figure.Key);
        writer.WriteString("name", figure.Name);
        writer.WriteString("title", figure.Title);
        writer.WriteString("where", figure.Where);
        writer.Text("corner", figure.Corner is { } corner ? corner.Name() : null);
        writer.Measure("value", figure.Value);
        writer.Measure("doubt", figure.Doubt);
        writer.WriteString("note", figure.Note);
    }

    private static void WriteAllowances(Utf8JsonWriter writer, Judgement judgement)
    {
        var allowed = AllowancesInForce.Of(judgement.Car, judgement.Build);
        writer.WriteString("use", JsonNamingPolicy.CamelCase.ConvertName(allowed.Use.ToString()));
        writer.Objects("allowances", allowed.Lines, line =>
        {
            writer.WriteString("id", line.Id);
            writer.WriteString("label", line.Label);
            writer.WriteString("value", line.Value.Typed);
            writer.WriteBoolean("doubt", line.IsDoubt);
            writer.WriteString("from", JsonNamingPolicy.CamelCase.ConvertName(line.Origin.ToString()));
            writer.Text("source", line.Source.Length > 0 ? line.Source : null);
        });
    }

    private static void WriteWorst(Utf8JsonWriter writer, WorstState? worst)
    {
        if (worst is null)
        {
            writer.WriteNull("worst");
            return;
        }

        writer.WriteStartObject("worst");
        writer.WriteString("words", worst.Words);
        writer.Number("travelMetres", worst.Travel);
        writer.Number("steerRadians", worst.Steer);
        writer.Number("clockHours", worst.Clock);
        if (worst.OtherTravel is not null)
        {
            writer.Number("otherTravelMetres", worst.OtherTravel);
        }

        writer.WriteEndObject();
    }
}
