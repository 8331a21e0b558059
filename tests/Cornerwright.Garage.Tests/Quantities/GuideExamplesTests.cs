using System.Text.RegularExpressions;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Tests.Quantities;

/// <summary>Runs the tables of docs/quantities.md, so that the guide stays true.</summary>
public partial class GuideExamplesTests
{
    [Fact]
    public void Quantities_taken()
    {
        var rows = Rows("### Taken", TakenRow());
        Assert.True(rows.Count >= 20);
        foreach (Match row in rows)
        {
            Quantity read = QuantityText.Parse(row.Groups[1].Value, Enum.Parse<Dimension>(row.Groups[2].Value), "x").Value;
            Assert.Equal(row.Groups[3].Value, read.Understood);
        }
    }

    [Fact]
    public void Quantities_refused()
    {
        var rows = Rows("### Refused, with a reason", RefusedRow());
        Assert.True(rows.Count >= 9);
        foreach (Match row in rows)
        {
            var read = QuantityText.Parse(row.Groups[1].Value, Enum.Parse<Dimension>(row.Groups[2].Value), "x");
            Assert.Contains(row.Groups[3].Value.Trim(), Assert.Single(read.Problems).Cure, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Tyres()
    {
        var rows = Rows("## Tyres", PairRow());
        Assert.True(rows.Count >= 7);
        Assert.All(rows, row => Assert.Equal(row.Groups[2].Value, TyreDesignation.Parse(row.Groups[1].Value, "x").Value.Write()));
    }

    [Fact]
    public void Rims()
    {
        var rows = Rows("## Rims", PairRow());
        Assert.True(rows.Count >= 6);
        Assert.All(rows, row => Assert.Equal(row.Groups[2].Value, RimDesignation.Parse(row.Groups[1].Value, "x").Value.Write()));
    }

    /// <summary>The rows between a heading and the next one.</summary>
    private static List<Match> Rows(string heading, Regex row)
    {
        string[] lines = File.ReadAllLines(Path.Combine(Root(), "docs", "quantities.md"));
        int start = Array.IndexOf(lines, heading);
        Assert.True(start >= 0, heading);
        return [.. lines.Skip(start + 1).TakeWhile(l => !l.StartsWith('#')).Select(l => row.Match(l)).Where(m => m.Success)];
    }

    private static string Root()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Cornerwright.slnx")))
        {
            at = at.Parent;
        }

        Assert.NotNull(at);
        return at.FullName;
    }

    [GeneratedRegex(@"^\| `([^`]+)` \| (\w+) \| `([^`]+)` \|$")]
    private static partial Regex TakenRow();

    [GeneratedRegex(@"^\| `([^`]+)` \| (\w+) \| ([^`|]+) \|$")]
    private static partial Regex RefusedRow();

    [GeneratedRegex(@"^\| `([^`]+)` \| `([^`]+)` \|$")]
    private static partial Regex PairRow();
}
