using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
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
    /// <summary>One piece a corner of everything, but one anti-roll bar an axle.</summary>
    public static BuildPrice Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var shelf = car.Parts;
        var corners = Places.Corners.Select(build.At).ToList();
        var lines = new List<PriceLine>();
        Add(lines, shelf.Wheels, id => corners.Count(c => c.Wheel == id));
        Add(lines, shelf.Tyres, id => corners.Count(c => c.Tyre == id));
        Add(lines, shelf.Spacers, id => corners.Count(c => c.Spacer == id));
        Add(lines, shelf.Springs, id => corners.Sum(c => c.Stack.Count(s => s == id)));
        Add(lines, shelf.Sheets, id => corners.Sum(c => c.Stack.Count(s => s == id)));
        Add(lines, shelf.Perches, id => corners.Count(c => c.Perch == id));
        Add(lines, shelf.TopMounts, id => corners.Count(c => c.TopMount == id));
        Add(lines, shelf.Dampers, id => corners.Count(c => c.Damper == id));
        Add(lines, shelf.BumpStops, id => corners.Count(c => c.BumpStop == id));
        Add(lines, shelf.AntiRollBars, id => Axles(build, id));
        Add(lines, shelf.BarLinks, id => corners.Count(c => c.BarLink == id));
        return new BuildPrice(
            lines,
            lines.Sum(l => l.Sum ?? 0),
            lines.Where(l => !l.Part.Owned).Sum(l => l.Sum ?? 0),
            [.. lines.Where(l => l.Sum is null && !l.Part.Owned).Select(l => l.Part)]);
    }

    private static int Axles(Build build, string bar) =>
        (build.FrontLeft.AntiRollBar == bar || build.FrontRight.AntiRollBar == bar ? 1 : 0)
        + (build.RearLeft.AntiRollBar == bar || build.RearRight.AntiRollBar == bar ? 1 : 0);

    private static void Add<T>(List<PriceLine> lines, IEnumerable<T> parts, Func<string, int> count)
        where T : Part
    {
        foreach (var part in parts)
        {
            int n = count(part.Id);
            if (n > 0)
            {
                lines.Add(new PriceLine(part, n, part.Price * n));
            }
        }
    }
}
