using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Workshop.Judging;

/// <summary>What the parts of a build cost.</summary>
public sealed record BuildCost(decimal All, decimal ToBuy, IReadOnlyList<string> WithoutPrice)
{
    /// <summary>Every piece at every corner; an owned part counts in <see cref="All"/> but not in <see cref="ToBuy"/>.</summary>
    public static BuildCost Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        decimal all = 0, buy = 0;
        var unpriced = new SortedSet<string>(StringComparer.Ordinal);
        // A bar spans its axle: it counts once.
        var bars = new[] { build.FrontLeft, build.RearLeft }.Select(c => car.Parts.AntiRollBars.FirstOrDefault(b => b.Id == c.AntiRollBar)).OfType<Part>();
        foreach (var part in Places.Corners.SelectMany(c => PartsOf(car.Parts, build.At(c))).Concat(bars))
        {
            all += part.Price ?? 0;
            buy += part.Owned ? 0 : part.Price ?? 0;
            if (part is { Price: null, Owned: false })
            {
                unpriced.Add(part.Name);
            }
        }

        return new BuildCost(all, buy, [.. unpriced]);
    }

    private static IEnumerable<Part> PartsOf(PartsShelf shelf, CornerBuild corner)
    {
        Part?[] single =
        [
            shelf.Wheels.FirstOrDefault(p => p.Id == corner.Wheel), shelf.Tyres.FirstOrDefault(p => p.Id == corner.Tyre),
            shelf.Spacers.FirstOrDefault(p => p.Id == corner.Spacer), shelf.Perches.FirstOrDefault(p => p.Id == corner.Perch),
            shelf.TopMounts.FirstOrDefault(p => p.Id == corner.TopMount), shelf.Dampers.FirstOrDefault(p => p.Id == corner.Damper),
            shelf.BumpStops.FirstOrDefault(p => p.Id == corner.BumpStop), shelf.BarLinks.FirstOrDefault(p => p.Id == corner.BarLink),
        ];
        return single.OfType<Part>().Concat(CornerParts.Of(shelf, corner).Stack);
    }
}
