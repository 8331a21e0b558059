using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Workshop.Comparing;

/// <summary>One line of a shopping list.</summary>
/// <param name="Count">Pieces that the build needs.</param>
/// <param name="Sum">Of all pieces, in the car's currency; null where no price is known.</param>
public sealed record PriceLine(Part Part, int Count, decimal? Sum);

/// <summary>What a build's parts cost.</summary>
/// <param name="Lines">In the order of the shelf.</param>
/// <param name="All">Sum of the parts with a price, owned ones included.</param>
/// <param name="ToBuy">Sum of the parts with a price that are not owned yet.</param>
/// <param name="Unpriced">Parts not owned whose price is unknown: the sums are too small by these.</param>
public sealed record BuildPrice(IReadOnlyList<PriceLine> Lines, decimal All, decimal ToBuy, IReadOnlyList<Part> Unpriced)
{
    /// <summary>The pieces are counted by <see cref="PieceCount"/>.</summary>
    public static BuildPrice Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var lines = new List<PriceLine>();
        foreach (var (kind, part) in PartKind.All.SelectMany(k => k.On(car.Parts).Select(p => (k, p))))
        {
            int pieces = PieceCount.Of(car, build, kind, part.Id);
            if (pieces > 0)
            {
                lines.Add(new PriceLine(part, pieces, part.Price * pieces));
            }
        }

        return new BuildPrice(
            lines,
            lines.Sum(l => l.Sum ?? 0),
            lines.Where(l => !l.Part.Owned).Sum(l => l.Sum ?? 0),
            [.. lines.Where(l => l.Sum is null && !l.Part.Owned).Select(l => l.Part)]);
    }
}
