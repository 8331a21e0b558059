using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Benches;

/// <summary>What a build costs: pieces to buy, pieces owned, and pieces without a price.</summary>
/// <param name="ToBuy">Sum of the prices of pieces that are not owned, in the car's currency.</param>
/// <param name="Unpriced">Pieces to buy that have no price: the sum is too low by these.</param>
public sealed record BuildPrice(decimal ToBuy, int Pieces, int Unpriced)
{
    public static BuildPrice Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        var pieces = Places.Corners.SelectMany(c => PartsOf(car.Parts, build.At(c)))
            .Concat(PerAxle(car.Parts, build))
            .Where(p => !p.Owned).ToList();
        return new BuildPrice(pieces.Sum(p => p.Price ?? 0), pieces.Count, pieces.Count(p => p.Price is null));
    }

    /// <summary>Everything bolted to one corner, one piece each; the bar belongs to the axle and is not among them.</summary>
    public static IEnumerable<Part> PartsOf(PartsShelf shelf, CornerBuild corner)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(corner);
        Part?[] single =
        [
            Find(shelf.Wheels, corner.Wheel), Find(shelf.Tyres, corner.Tyre), Find(shelf.Spacers, corner.Spacer),
            .. corner.Stack.Select(id => (Part?)Find(shelf.Springs, id) ?? Find(shelf.Sheets, id)),
            Find(shelf.Perches, corner.Perch), Find(shelf.TopMounts, corner.TopMount), Find(shelf.Dampers, corner.Damper),
            Find(shelf.BumpStops, corner.BumpStop), Find(shelf.BarLinks, corner.BarLink),
        ];
        return single.OfType<Part>();
    }

    /// <summary>An anti-roll bar named at either corner of an axle is one piece.</summary>
    private static IEnumerable<Part> PerAxle(PartsShelf shelf, Build build) =>
        Places.Corners.GroupBy(c => c.Axle())
            .SelectMany(g => g.Select(c => build.At(c).AntiRollBar).Where(id => id.Length > 0).Distinct(StringComparer.Ordinal))
            .Select(id => Find(shelf.AntiRollBars, id)).OfType<Part>();

    private static T? Find<T>(IReadOnlyList<T> shelf, string id)
        where T : Part => id.Length == 0 ? null : shelf.FirstOrDefault(p => p.Id == id);
}
