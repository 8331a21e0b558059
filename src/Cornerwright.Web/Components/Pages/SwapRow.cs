using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Comparing;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A part or setting that differs, told once for all corners where it is the same.</summary>
public sealed record SwapRow(string Where, string Place, string Before, string After)
{
    public static IReadOnlyList<SwapRow> Of(IReadOnlyList<PartSwap> swaps)
    {
        ArgumentNullException.ThrowIfNull(swaps);
        return [.. swaps.GroupBy(s => (s.Place, s.Before, s.After))
            .Select(g => new SwapRow(Words([.. g.Select(s => s.Corner)]), g.Key.Place, g.Key.Before, g.Key.After))];
    }

    private static string Words(CornerPlace[] corners) => corners.Length == 4 ? "all corners"
        : string.Join(", ", new[] { AxlePlace.Front, AxlePlace.Rear }.SelectMany(axle =>
            corners.Count(c => c.Axle() == axle) == 2 ? [axle.Words() + ", both"]
                : corners.Where(c => c.Axle() == axle).Select(c => c.Words())));
}
