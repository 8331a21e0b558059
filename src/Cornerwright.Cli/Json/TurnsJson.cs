using System.Text.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Setting;

namespace Cornerwright.Cli.Json;

/// <summary>A turn table for scripts; metres, newtons, radians.</summary>
internal static class TurnsJson
{
    public static string Write(Car car, TurnTable table, TurnVerdict verdict) => JsonPage.Write("turns", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("build", table.Build.Id);
        writer.WriteString("from", JsonNamingPolicy.CamelCase.ConvertName(table.From.ToString()));
        writer.WriteNumber("moves", table.Moves);
        writer.Number("crossNow", table.CrossNow);
        writer.Number("crossWanted", table.Wish.CrossWeight?.Si);
        writer.Number("crossThen", table.CrossPredicted);
        writer.Number("crossLeast", table.CrossRange.Least);
        writer.Number("crossGreatest", table.CrossRange.Greatest);
        writer.Objects("corners", table.Corners, c =>
        {
            writer.WriteString("corner", c.Corner.Name());
            writer.Number("collarTurns", c.Collar?.Turns);
            writer.Number("collarTurnsExact", c.Collar?.Exact);
            writer.Number("perchNow", c.Collar?.Before);
            writer.Number("perchThen", c.Collar?.After);
            writer.Number("plate", c.Plate);
            writer.Number("clamp", c.Clamp);
            writer.Number("tieRodFlats", c.Flats);
            writer.Number("toeChange", c.ToeChange);
            writer.Number("heightWanted", c.Wanted.Height?.Si);
            writer.Number("camberWanted", c.Wanted.Camber?.Si);
            writer.Number("toeWanted", c.Wanted.Toe?.Si);
            State(writer, "now", c.Present);
            State(writer, "then", c.Predicted);
        });
        writer.Objects("steps", table.Steps, s =>
        {
            writer.Text("corner", s.Corner is { } corner ? corner.Name() : null);
            writer.WriteString("words", s.Words);
            writer.WriteString("caution", s.Caution);
        });
        writer.WriteString("verdictThen", VerdictWords.Word(verdict.Then.Verdict));
        writer.Objects("failsThen", verdict.Then.Findings.Where(f => f.Verdict == Verdict.Fails), f =>
        {
            writer.WriteString("key", f.Key);
            writer.WriteString("sentence", f.Sentence);
        });
        writer.Texts("shortfalls", table.Shortfalls);
        writer.Texts("assumptions", table.Assumptions);
    });

    private static void State(Utf8JsonWriter writer, string name, WheelState state)
    {
        writer.WriteStartObject(name);
        writer.Number("height", state.Height);
        writer.Number("load", state.Load);
        writer.Number("camber", state.Camber);
        writer.Number("toe", state.Toe);
        writer.WriteEndObject();
    }
}
