using System.Text.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Cli.Json;

/// <summary>A ranking for scripts.</summary>
internal static class RankingJson
{
    public static string Write(Car car, RankingResult result, string taken) => JsonPage.Write("ranking", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("axle", result.Wishes.Axle.Words());
        writer.WriteNumber("combinations", result.Combinations);
        writer.WriteNumber("held", result.Held);
        writer.WriteNumber("setAside", result.SetAside);
        writer.WriteNumber("leftOut", result.LeftOut);
        writer.WriteNumber("judgedInFull", result.JudgedInFull);
        writer.Text("taken", taken.Length > 0 ? taken : null);
        writer.Objects("listed", result.Listed, b => Fields(writer, b));
        writer.Objects("front", result.Front, b => Fields(writer, b));
        writer.Objects("refused", result.Refused, r =>
        {
            writer.WriteString("check", r.Title);
            writer.WriteNumber("count", r.Count);
        });
        writer.Objects("nearMisses", result.NearMisses, m =>
        {
            writer.Texts("parts", m.Parts.Select(p => p.Id));
            writer.WriteString("check", m.Check);
            writer.WriteString("where", m.Where);
            writer.Measure("shortBy", m.ShortBy);
            writer.Texts("others", m.Others);
            writer.Objects("cures", m.Cures, c =>
            {
                writer.WriteString("sentence", c.Sentence);
                writer.Measure("marginAfter", c.MarginAfter);
                writer.WriteString("side", c.Side);
                writer.WriteBoolean("cornerHolds", c.CornerHolds);
                writer.WriteString("setting", c.Setting);
                writer.WriteString("newValue", c.NewValue);
            });
        });
    });

    private static void Fields(Utf8JsonWriter writer, RankedBuild build)
    {
        writer.WriteNumber("rank", build.Rank);
        writer.Texts("parts", build.Parts.Select(p => p.Id));
        writer.WriteString("verdict", build.Verdict.Word());
        writer.Number("probability", Math.Round(build.Probability, 6));
        writer.Number("probabilityLow", Math.Round(build.Bounds.Low, 6));
        writer.Number("probabilityHigh", Math.Round(build.Bounds.High, 6));
        writer.WriteNumber("unknown", build.Unknown);
        writer.WriteNumber("cost", build.Cost);
        writer.Texts("unpriced", build.Unpriced.Select(p => p.Id));
        writer.Measure("frequency", build.Frequency);
        writer.Measure("heightMiss", build.HeightMiss);
        writer.Measure("perchLeft", build.PerchHeight?.Left);
        writer.Measure("perchRight", build.PerchHeight?.Right);
        writer.WriteBoolean("onFront", build.OnFront);
        writer.Text("tightest", build.Tightest?.Title);
        writer.Measure("tightestMargin", build.Tightest?.Margin);
    }
}
