using System.Text.Json;
using Cornerwright.Workshop.WorkOrders;

namespace Cornerwright.Cli.Json;

/// <summary>A work order for scripts; torques in newton metres, angles in radians.</summary>
internal static class OrderJson
{
    public static string Write(WorkOrder order) => JsonPage.Write("order", writer =>
    {
        writer.WriteString("car", order.Car.Id);
        writer.WriteString("from", order.From.Id);
        writer.WriteString("to", order.To.Id);
        writer.Number("minutes", order.Minutes);
        writer.WriteNumber("untimed", order.Untimed);
        writer.Objects("parts", order.Parts, part =>
        {
            writer.WriteString("id", part.Part.Id);
            writer.WriteString("name", part.Part.Name);
            writer.WriteNumber("count", part.Count);
            writer.WritePropertyName("sum");
            if (part.Sum is { } sum)
            {
                writer.WriteNumberValue(sum);
            }
            else
            {
                writer.WriteNullValue();
            }

            writer.WriteBoolean("owned", part.Part.Owned);
            writer.WriteString("for", part.Where);
        });
        writer.Texts("tools", order.Tools);
        writer.Texts("consumables", order.Consumables);
        writer.Texts("gaps", order.Gaps);
        writer.Objects("steps", order.Steps, step =>
        {
            writer.WriteString("id", step.Id);
            writer.WriteString("phase", JsonNamingPolicy.CamelCase.ConvertName(step.Phase.ToString()));
            writer.WriteString("place", step.Place);
            writer.WriteString("title", step.Title);
            writer.Texts("details", step.Details);
            writer.Texts("cautions", step.Cautions);
            writer.Number("minutes", step.Minutes);
            writer.Objects("fasteners", step.Fasteners, f => Fastener(writer, f));
        });
    });

    private static void Fastener(Utf8JsonWriter writer, FastenerLine line)
    {
        writer.WriteString("component", line.Node.Component);
        writer.WriteString("where", line.Where);
        writer.WriteString("id", line.Fastener.Id);
        writer.WriteString("name", line.Fastener.Name);
        writer.Number("count", line.Count);
        writer.Number("torque", line.Fastener.Torque?.Si);
        writer.Number("thenTurn", line.Fastener.ThenTurn?.Si);
        writer.WriteString("torqueText", line.Torque);
        writer.WriteString("pattern", JsonNamingPolicy.CamelCase.ConvertName(line.Fastener.Pattern.ToString()));
        writer.WriteString("tightened", JsonNamingPolicy.CamelCase.ConvertName(line.Fastener.When.ToString()));
        writer.WriteBoolean("singleUse", line.Fastener.SingleUse);
        writer.WriteString("warning", line.Warning);
    }
}
