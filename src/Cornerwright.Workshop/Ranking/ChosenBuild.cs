using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;

namespace Cornerwright.Workshop.Ranking;

/// <summary>Makes a ranked build one of the car's own.</summary>
public static class ChosenBuild
{
    private const string Stem = "choice-";

    /// <summary>"choice-1", or the next number that is free.</summary>
    public static string FreshId(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var taken = car.Builds.Select(b => b.Id).ToHashSet(StringComparer.Ordinal);
        int number = Enumerable.Range(1, taken.Count + 1)
            .First(n => !taken.Contains(Stem + n.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        return Stem + number.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>The build under an id of its own, with its springs and wheel as its name.</summary>
    public static Build Named(RankedBuild ranked, string id)
    {
        ArgumentNullException.ThrowIfNull(ranked);
        return Named(ranked.Build, ranked.Parts, id,
            $"Found by a search, {ranked.Sure} sure that all holds; collars were solved for each side.");
    }

    /// <summary>A near miss, to be worked on.</summary>
    public static Build Named(NearMiss miss, string id)
    {
        ArgumentNullException.ThrowIfNull(miss);
        return Named(miss.Build, miss.Parts, id, $"Found by a search: nearly holds, short at {miss.Check} ({miss.Where}).");
    }

    private static Build Named(Build build, IReadOnlyList<Garage.Parts.Part> parts, string id, string note)
    {
        var main = parts.OfType<Garage.Parts.Spring>().LastOrDefault();
        string with = parts.OfType<Garage.Parts.Spring>().Count() > 1 ? $" with {parts.OfType<Garage.Parts.Spring>().First().Name}" : "";
        string wheel = parts.OfType<Garage.Parts.Wheel>().FirstOrDefault()?.Name ?? "";
        return build with { Id = id, Name = $"{main?.Name}{with}{(wheel.Length > 0 ? ", " + wheel : "")}", Note = note };
    }
}
