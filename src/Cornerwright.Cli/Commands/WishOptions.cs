using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Cli.Commands;

/// <summary>Reads wishes from the options of a search; every problem at once.</summary>
internal static class WishOptions
{
    public static Checked<Wishes> Read(RankSettings typed, Car car)
    {
        var problems = new List<Problem>();
        var wishes = new Wishes { Id = "search", Name = "search" };
        if (typed.Search is { Length: > 0 } id)
        {
            string known = car.Searches.Count > 0 ? string.Join(", ", car.Searches.Select(s => s.Id)) : "(the file keeps no search)";
            wishes = car.Searches.FirstOrDefault(s => s.Id == id) ?? wishes;
            problems.AddRange(wishes.Id == id ? [] : [new Problem("search", id, known,
                "Name a search by its id as it stands in the file, or leave it out and use the options.")]);
        }

        wishes = wishes with
        {
            Axle = Choice(problems, "--axle", typed.Axle, wishes.Axle),
            StartingBuild = typed.From ?? wishes.StartingBuild,
            Height = Quantity(problems, "--height", nameof(Wishes.Height), typed.Height) ?? wishes.Height,
            LeastGap = Quantity(problems, "--gap", nameof(Wishes.LeastGap), typed.Gap) ?? wishes.LeastGap,
            FrequencyLow = Quantity(problems, "--softest", nameof(Wishes.FrequencyLow), typed.FrequencyLow) ?? wishes.FrequencyLow,
            FrequencyHigh = Quantity(problems, "--stiffest", nameof(Wishes.FrequencyHigh), typed.FrequencyHigh) ?? wishes.FrequencyHigh,
            Camber = Quantity(problems, "--camber", nameof(Wishes.Camber), typed.Camber) ?? wishes.Camber,
            Budget = Money(problems, typed.Budget) ?? wishes.Budget,
            Helper = Choice(problems, "--helper", typed.Helper, wishes.Helper),
            Prefer = Choice(problems, "--prefer", typed.Prefer, wishes.Prefer),
            Listed = typed.Listed ?? wishes.Listed,
        };
        if (typed.Listed is < 1 or > Wishes.MostListed)
        {
            problems.Add(new Problem("--list", typed.Listed.Value.ToString(CultureInfo.InvariantCulture), $"1 to {Wishes.MostListed}",
                "Ask for fewer builds, or more."));
        }

        foreach (string parts in typed.Parts)
        {
            wishes = Parts(problems, parts, wishes);
        }

        if (problems.Count == 0)
        {
            // The whole car with these wishes must hang together: ids that exist, ranges in order.
            problems.AddRange(Consistency.Check(car with { Searches = [wishes] })
                .Where(p => p.Field.StartsWith("search ", StringComparison.Ordinal)));
        }

        return problems.Count > 0 ? Checked<Wishes>.Wrong(problems) : Checked<Wishes>.From(wishes);
    }

    private static Reading? Quantity(List<Problem> problems, string option, string property, string? typed)
    {
        if (string.IsNullOrEmpty(typed))
        {
            return null;
        }

        var field = RecordShape.Of<Wishes>().Fields.First(f => f.PropertyName == property);
        var read = Reading.Parse(option, field.Words.Dimension, typed, source: ReadingSource.Setting);
        problems.AddRange(read.Problems);
        if (read.Try(out var reading) && field.RangeProblem(option, reading) is { } range)
        {
            problems.Add(range);
        }

        return reading;
    }

    private static decimal? Money(List<Problem> problems, string? typed)
    {
        if (string.IsNullOrEmpty(typed))
        {
            return null;
        }

        if (decimal.TryParse(typed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal money))
        {
            return money;
        }

        problems.Add(new Problem("--budget", typed, "a number, 0 or more",
            "Write it with a point for the decimals and without a currency: 1250.50."));
        return null;
    }

    private static T Choice<T>(List<Problem> problems, string option, string? typed, T otherwise)
        where T : struct, Enum
    {
        if (string.IsNullOrEmpty(typed))
        {
            return otherwise;
        }

        foreach (var value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), typed, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        string allowed = string.Join(", ", Enum.GetNames<T>().Select(System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName));
        problems.Add(new Problem(option, typed, allowed, "Choose one of these."));
        return otherwise;
    }

    private static Wishes Parts(List<Problem> problems, string typed, Wishes wishes)
    {
        string[] halves = typed.Split('=', 2);
        var kinds = RecordShape.Of<Wishes>().Fields.Where(f => f.Kind == FieldKind.TextList).ToList();
        if (halves.Length == 2 && kinds.Find(f => f.Name == halves[0].Trim()) is { } kind)
        {
            string[] ids = halves[1].Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            return RecordShape.Of<Wishes>().With(wishes, kind, ids);
        }

        problems.Add(new Problem("--parts", typed, $"KIND=ID,ID with a kind of {string.Join(", ", kinds.Select(k => k.Name))}",
            "Write the kind, an equals sign, and ids with commas."));
        return wishes;
    }
}
