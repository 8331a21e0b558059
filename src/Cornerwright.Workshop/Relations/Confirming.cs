using Cornerwright.Garage.Cars;

namespace Cornerwright.Workshop.Relations;

/// <summary>Keeps in the car why numbers that look wrong are right, as long as none of them changes.</summary>
public static class Confirming
{
    /// <summary>The same car with these numbers confirmed.</summary>
    /// <param name="car">Whose.</param>
    /// <param name="relation">What looked wrong.</param>
    /// <param name="why">A word of why it is so; not empty.</param>
    public static Car With(Car car, Relation relation, string why)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(relation);
        ArgumentException.ThrowIfNullOrWhiteSpace(why);
        var entry = new Confirmation { Relation = relation.Id, Numbers = Kept(relation.Ties), Why = why.Trim() };
        return car with { Confirmed = [.. car.Confirmed.Where(c => c.Relation != relation.Id), entry] };
    }

    /// <summary>The same car with the confirmation of this relation taken back.</summary>
    public static Car Without(Car car, string relationId)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car with { Confirmed = [.. car.Confirmed.Where(c => c.Relation != relationId)] };
    }

    /// <summary>Why somebody said that it is so; empty where nobody did, or of other numbers.</summary>
    internal static string WhyOf(Car car, string id, Tie[] ties) =>
        car.Confirmed.LastOrDefault(c => c.Relation == id) is { } kept && kept.Numbers == Kept(ties) ? kept.Why : "";

    /// <summary>"parts/wheels/w-now/loadRating = 1380 kg; loadCases/full/rearLeft = 488 kg".</summary>
    private static string Kept(IEnumerable<Tie> ties) => string.Join("; ", ties.Select(t => t.Kept));
}
