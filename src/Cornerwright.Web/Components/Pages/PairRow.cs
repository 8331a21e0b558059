using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A check of two builds; both sides of an axle share a row where nothing tells them apart.</summary>
public sealed record PairRow(FindingPair Pair, string Where)
{
    public static IReadOnlyList<PairRow> Of(IEnumerable<FindingPair> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        return [.. pairs.GroupBy(SameOnBothSides).Select(g => new PairRow(g.First(), PlaceOf([.. g])))];
    }

    private static object SameOnBothSides(FindingPair pair) => pair.Either.Corner is not { } corner ? pair
        : (pair.Either.Check, corner.Axle(), Words(pair.Left), Words(pair.Right), pair.MarginGain?.Text);

    private static string Words(Finding? finding) =>
        finding is null ? "" : $"{finding.Verdict} {finding.Margin?.Text} {finding.Probability:F3}";

    private static string PlaceOf(FindingPair[] group)
    {
        var corners = group.Select(p => p.Either.Corner).Distinct().ToList();
        return corners is [{ } one, { } other] && one.Axle() == other.Axle() ? one.Axle().Words() + ", both sides" : group[0].Either.Where;
    }
}
