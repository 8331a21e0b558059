using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
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
        foreach (var kind in RecordShape.Of<PartsShelf>().Fields)
        {
            var shelf = ((IEnumerable<Part>)kind.Get(car.Parts)!).ToList();
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
    internal static IEnumerable<string> UsedIn(Car car, FieldShape kind, string id) =>
        car.Builds.Where(b => Places.Corners.Any(c => Holds(b.At(c), "parts/" + kind.Name, id))).Select(b => b.Id);

    private static bool Holds(CornerBuild corner, string shelf, string id) =>
        RecordShape.Of<CornerBuild>().Fields
            .Where(f => f.Words.RefersTo.Split(',').Contains(shelf, StringComparer.Ordinal))
            .Any(f => f.Get(corner) switch
            {
                string one => one == id,
                IReadOnlyList<string> several => several.Contains(id, StringComparer.Ordinal),
                _ => false,
            });

    private static IReadOnlyList<string> Row(Car car, Build build)
    {
        var price = BuildPrice.Of(car, build);
        string measured = car.MeasuredBuild == build.Id ? "(measured on this) " : "";
        return [build.Id, build.Name, ComparisonText.Money(price.All), ComparisonText.Money(price.ToBuy), measured + build.Note];
    }
}
