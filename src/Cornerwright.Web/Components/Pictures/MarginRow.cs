using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>A row of the margins: one finding, or the same finding of both sides of an axle told once.</summary>
/// <param name="Finding">The left one of two.</param>
/// <param name="Where">"front, both sides" where two share the row.</param>
/// <param name="Keys">Of every finding the row stands for, parted by blanks.</param>
public sealed record MarginRow(Finding Finding, string Where, string Keys)
{
    /// <summary>In the order of the findings; a pair stands where its first one does.</summary>
    public static IReadOnlyList<MarginRow> Of(IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return [.. findings.GroupBy(SameOnBothSides).Select(Row)];
    }

    private static MarginRow Row(IGrouping<object, Finding> group)
    {
        var all = group.ToList();
        var sides = all.Select(f => f.Corner).Distinct().ToList();
        string keys = string.Join(' ', all.Select(f => f.Key));
        return sides is [{ } one, { } other] && one.Axle() == other.Axle()
            ? new(all[0], one.Axle().Words() + ", both sides", keys)
            : new(all[0], all[0].Where, keys);
    }

    /// <summary>What a reader sees of a finding apart from its side; a finding of no corner is alone.</summary>
    private static object SameOnBothSides(Finding f) => f.Corner is not { } corner ? f
        : (f.Check, corner.Axle(), f.Verdict, f.Sentence, f.Value?.Text, f.Margin?.Text, f.Doubt?.Text,
            string.Join('|', f.Cures.Select(c => c.Sentence)), string.Join('|', f.Missing));
}
