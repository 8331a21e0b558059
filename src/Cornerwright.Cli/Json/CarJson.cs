using System.Text.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Relations;

namespace Cornerwright.Cli.Json;

/// <summary>What a car file holds, for scripts. The car itself is in its own file, which is JSON already.</summary>
internal static class CarJson
{
    public static string WriteCheck(Car car, CarRelations relations, bool normal, bool tidied) => JsonPage.Write("check", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("name", car.Name);
        writer.WriteBoolean("normalForm", normal || tidied);
        writer.WriteBoolean("rewritten", tidied);
        writer.WriteStartArray("problems");
        writer.WriteEndArray();
        RelationJson.Fields(writer, relations);
    });

    public static string WriteList(Car car, bool builds, bool parts) => JsonPage.Write("list", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("name", car.Name);
        writer.WriteString("currency", car.Currency);
        if (builds)
        {
            writer.Objects("builds", car.Builds, build =>
            {
                writer.WriteString("id", build.Id);
                writer.WriteString("name", build.Name);
                writer.WriteString("note", build.Note);
                writer.WriteBoolean("measuredOnThis", build.Id == car.MeasuredBuild);
                Price(writer, BuildPrice.Of(car, build));
            });
        }

        if (parts)
        {
            writer.Objects("parts", PartKind.All.SelectMany(k => k.On(car.Parts).Select(p => (Kind: k, Part: p))), item =>
            {
                writer.WriteString("kind", item.Kind.Name);
                writer.WriteString("id", item.Part.Id);
                writer.WriteString("name", item.Part.Name);
                Money(writer, "price", item.Part.Price);
                writer.WriteBoolean("owned", item.Part.Owned);
                writer.Texts("usedIn", ListText.UsedIn(car, item.Kind, item.Part.Id));
            });
        }
    });

    public static void Price(Utf8JsonWriter writer, BuildPrice price)
    {
        writer.WriteStartObject("price");
        Money(writer, "allParts", price.All);
        Money(writer, "toBuy", price.ToBuy);
        writer.Texts("noPriceKnown", price.Unpriced.Select(p => p.Id));
        writer.WriteEndObject();
    }

    private static void Money(Utf8JsonWriter writer, string name, decimal? sum)
    {
        if (sum is { } money)
        {
            writer.WriteNumber(name, money);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
