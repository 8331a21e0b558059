using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Ranking;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Cornerwright.Cli.Text;

/// <summary>A ranking as a person reads it: what holds, best first; what stands on the front; why the rest does not.</summary>
internal static class RankingText
{
    private const int Indent = 2, MostCures = 2, MostMisses = 8;

    public static void Write(IAnsiConsole console, Car car, RankingResult result, string taken, string file)
    {
        string held = result.Listed.Count == 0 ? "none holds" : $"{Count(result.Held)} judged in full hold";
        console.Line($"{car.Name}, {result.Wishes.Axle.Words()} axle: {Count(result.Combinations)} combinations, {held}.");
        if (result.SetAside > 0)
        {
            console.Line($"{Count(result.SetAside)} more pass the quick checks but could not come among those listed.");
        }

        if (result.LeftOut > 0)
        {
            console.Line($"{Count(result.LeftOut)} more pass the quick checks and were not looked at: name fewer parts.");
        }

        if (result.Listed.Count > 0)
        {
            console.Heading("Best first");
            Table(console, car, result.Listed);
            console.Heading("Not beaten in cost, certainty, height and softness at once");
            Table(console, car, result.Front);
        }

        Refused(console, result);
        Misses(console, result);
        if (taken.Length > 0)
        {
            console.Line("");
            console.Line($"Put into {file} as build \"{taken}\".");
        }
    }

    private static void Table(IAnsiConsole console, Car car, IReadOnlyList<RankedBuild> builds) => console.Table(
        [">#", ">sure", $">to buy{(car.Currency.Length > 0 ? " " + car.Currency : "")}", ">ride", ">perch", "tightest", "parts"],
        builds.Select(b => new[]
        {
            b.Rank == 0 ? "-" : b.Rank.ToString(CultureInfo.InvariantCulture),
            b.Sure + (b.Unknown > 0 ? "?" : ""),
            ComparisonText.Money(b.Cost) + (b.Unpriced.Count > 0 ? "+" : ""),
            b.Frequency?.Text ?? "",
            b.PerchHeight is { } perch ? $"{perch.Left.Number} {perch.Right.Number}" : "",
            b.Tightest is { } tight ? $"{tight.Title} {JudgementText.Signed(tight.Margin)} {tight.Margin.Unit.Symbol}".TrimEnd() : "",
            string.Join(" ", b.Parts.Select(p => p.Id)),
        }),
        Indent);

    private static void Refused(IAnsiConsole console, RankingResult result)
    {
        if (result.Refused.Count > 0)
        {
            console.Heading("Refused first by");
            console.Table([">combinations", "check"], result.Refused.Select(r => new[] { Count(r.Count), r.Title }), Indent);
        }
    }

    private static void Misses(IAnsiConsole console, RankingResult result)
    {
        if (result.NearMisses.Count == 0)
        {
            return;
        }

        console.Heading("Nearly");
        foreach (var miss in result.NearMisses.Take(MostMisses))
        {
            console.Sentence(string.Join(" ", miss.Parts.Select(p => p.Id)), Indent, new Style(decoration: Decoration.Bold));
            string short_ = miss.ShortBy.Si > 0 ? $", short by {miss.ShortBy.Text}" : "";
            string others = miss.Others.Count > 0 ? $"; also {string.Join(", ", miss.Others.Select(LowerFirst))}" : "";
            console.Sentence($"{miss.Check}, {miss.Where}{short_}{others}.", Indent + 2);
            foreach (var cure in miss.Cures.OrderByDescending(c => c.CornerHolds).Take(MostCures))
            {
                string word = cure.CornerHolds ? "Would hold" : "Cures that alone";
                console.Sentence($"{word}: {cure.Sentence}{(cure.Side.Length > 0 ? " But: " + cure.Side : "")}", Indent + 2);
            }
        }
    }

    private static string LowerFirst(string title) =>
        title.Length > 1 && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    private static string Count(long count) => count.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ');
}
