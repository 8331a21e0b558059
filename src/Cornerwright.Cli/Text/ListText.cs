using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Comparing;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>What a car file holds, in tables.</summary>
internal static class ListText
{
    private const int Indent = 2;

    public static void Write(IAnsiConsole console, Car car, bool builds, bool parts)
    {
        console.Line(car.Name + (car.Note.Length > 0 ? ": " + car.Note : ""));
        if (builds)
        {
            console.Heading("Builds");
            console.Table(
                ["id", "name", ">all parts", ">to buy", "note"],
                car.Builds.Select(b => Row(car, b)),
                Indent);
        }

        if (parts)
        {
            WriteParts(console, car);
        }
    }

    private static void WriteParts(IAnsiConsole console, Car car)
    {
        foreach (var kind in PartKind.All)
        {
            var shelf = kind.On(car.Parts);
            if (shelf.Count > 0)
            {
                console.Heading(kind.Label);
                console.Table(
                    ["id", "name", ">price each", "", "used in"],
                    shelf.Select(p => new[] { p.Id, p.Name, p.Price is { } price ? ComparisonText.Money(price) : "", p.Owned ? "owned" : "",
                        string.Join(", ", UsedIn(car, kind, p.Id)) }),
                    Indent);
            }
        }
    }

    /// <summary>Ids of the builds that hold a part of this kind.</summary>
    internal static IEnumerable<string> UsedIn(Car car, PartKind kind, string id) =>
        car.Builds.Where(b => Places.Corners.Any(c => CornerSlot.Of(kind).Any(s => s.Holds(b.At(c), kind, id)))).Select(b => b.Id);

    private static IReadOnlyList<string> Row(Car car, Build build)
    {
        var price = BuildPrice.Of(car, build);
        string measured = car.MeasuredBuild == build.Id ? "(measured on this) " : "";
        return [build.Id, build.Name, ComparisonText.Money(price.All), ComparisonText.Money(price.ToBuy), measured + build.Note];
    }
}
