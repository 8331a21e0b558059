namespace Cornerwright.PublishedChecks;

/// <summary>Our code against the outside world: one case a row of checks/*.csv, its source beside it there.</summary>
public sealed class PublishedCheckTests
{
    private static readonly Dictionary<string, Check> ById = CheckFiles.All.ToDictionary(check => check.Id);

    public static TheoryData<string> Deciding => [.. CheckFiles.All.Where(check => !check.ForInformation).Select(check => check.Id)];

    public static TheoryData<string> Informing => [.. CheckFiles.All.Where(check => check.ForInformation).Select(check => check.Id)];

    [Theory]
    [MemberData(nameof(Deciding))]
    public void Agrees(string id)
    {
        var check = ById[id];
        var result = CheckResult.Of(check);
        Assert.True(
            result.Holds,
            $"{id} ({check.Words}): {check.Source}, {check.Locator} has {check.Expected} {check.Unit}, tolerance {check.Tolerance}; "
                + $"we have {result.Got}.");
    }

    // Low confidence: shown on the validation page, never decisive. Still it must be a number.
    [Theory]
    [MemberData(nameof(Informing))]
    public void Answers_with_a_number(string id) =>
        Assert.True(double.IsFinite(double.Parse(CheckResult.Of(ById[id]).Got, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void Every_evaluator_serves_a_row() =>
        Assert.Equal(Evaluators.All.Keys.Order(), CheckFiles.All.Select(check => check.Evaluate).Distinct().Order());

    [Fact]
    public void Rows_are_complete()
    {
        Assert.All(CheckFiles.All, check =>
        {
            Assert.All([check.Id, check.Words, check.Expected, check.Tolerance, check.Source, check.Locator], text =>
                Assert.False(string.IsNullOrWhiteSpace(text)));
            Assert.Contains(check.Confidence, new[] { "high", "medium", "low" });
            Assert.Matches("^(partly )?(looked up|from memory|derived)", check.Provenance);
        });
        Assert.All(CheckFiles.NotRun, row => Assert.False(string.IsNullOrWhiteSpace(row.Why)));
        Assert.Empty(CheckFiles.NotRun.Select(row => row.Id).Intersect(ById.Keys));
    }

    // A check that cannot fail is none: the comparison must reject what is off, what is NaN, and what is of another kind.
    [Theory]
    [InlineData("10", "±0.5", 10.5, true)]
    [InlineData("10", "±0.5", 10.501, false)]
    [InlineData("10", "±1 %", 9.9, true)]
    [InlineData("10", "±1 %", 9.89, false)]
    [InlineData("10", "exact", 10, true)]
    [InlineData("10", "exact", 10.0001, false)]
    [InlineData("10", "±0.5", double.NaN, false)]
    [InlineData("10", "±0.5", double.PositiveInfinity, false)]
    [InlineData("-10", "±1 %", 10, false)]
    [InlineData("never", "exact", 10, false)]
    public void Comparison_rejects_what_is_off(string expected, string tolerance, double got, bool holds) =>
        Assert.Equal(holds, CheckResult.Compare(Row(expected, tolerance), got).Holds);

    [Fact]
    public void Comparison_rejects_other_words()
    {
        Assert.True(CheckResult.Compare(Row("never", "exact"), "never").Holds);
        Assert.False(CheckResult.Compare(Row("never", "exact"), "always").Holds);
        Assert.False(CheckResult.Compare(Row("10", "±0.5"), "10").Holds);
    }

    [Theory]
    [InlineData("0.5")]
    [InlineData("±")]
    [InlineData("±-1")]
    [InlineData("±0")]
    [InlineData("±NaN")]
    public void A_tolerance_that_is_none_is_refused(string tolerance) =>
        Assert.Throws<InvalidDataException>(() => CheckResult.Allowed(tolerance, 1));

    private static Check Row(string expected, string tolerance) =>
        new("T", "t", "t", "", expected, "", tolerance, "t", "t", "looked up", "high");
}
