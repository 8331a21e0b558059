using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Allowing;

/// <summary>
/// Seen: a tyre that grew at speed stood further from its strut, since the widest place of its wall moved outward with the crown. A larger
/// allowance must never bring a gap or the chance of any clearance up, of whatever stands near the wheel.
/// </summary>
public class LargerAllowanceTests
{
    /// <summary>The search for the least gap is right to this, m; docs/theory/clearance.md §7.</summary>
    private const double SearchError = 1e-4;

    public static TheoryData<string> Moving => [.. Allowances.Lines.Where(l => !Allowances.IsDoubt(l)).Select(l => l.PropertyName)];

    [Theory]
    [MemberData(nameof(Moving))]
    public void No_gap_grows_and_no_clearance_gets_surer(string line)
    {
        var field = Allowances.Lines.Single(l => l.PropertyName == line);
        foreach (string build in new[] { Demo.Holding, "touring" })
        {
            var before = Judged(build, field, "0 mm");
            foreach (string amount in new[] { "2 mm", "9 mm" })
            {
                var after = Judged(build, field, amount);
                foreach (var (key, finding) in after)
                {
                    var was = before[key];
                    Assert.True(finding.Value!.Value.Si <= was.Value!.Value.Si + SearchError,
                        $"{build} {line} {amount}, {key}: {was.Value} before, {finding.Value} now");
                    bool surer = finding.Low!.Value.Si >= was.Low!.Value.Si && finding.Probability > was.Probability + 0.004;
                    Assert.False(surer, $"{build} {line} {amount}, {key}: {was.Probability} before, {finding.Probability} now");
                }

                before = after;
            }
        }
    }

    [Theory]
    [InlineData(nameof(Allowances.TyreGrowth), "front-left/clear-arch-lip")]
    [InlineData(nameof(Allowances.TyreTopOut), "front-left/clear-arch-lip")]
    [InlineData(nameof(Allowances.TyreIn), "rear-left/clear-inner-panel")]
    [InlineData(nameof(Allowances.BumpBeyond), "front-left/clear-arch-lip")]
    public void Each_line_reaches_what_it_is_for(string line, string key)
    {
        var field = Allowances.Lines.Single(l => l.PropertyName == line);
        double none = Judged("touring", field, "0 mm")[key].Value!.Value.Si, some = Judged("touring", field, "20 mm")[key].Value!.Value.Si;
        Assert.True(some < none - 0.002, $"{line}: {none} without, {some} with 20 mm");
    }

    private static Dictionary<string, Finding> Judged(string build, FieldShape line, string amount)
    {
        var car = DemoCar.Read();
        var allowed = RecordShape.Of<Allowances>().With(Allowances.None, line, Reading.Of(amount, Dimension.Length));
        car = car with { Allowances = allowed, UseLearned = false };
        return Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings
            .Where(f => f.Check.StartsWith("clear-", StringComparison.Ordinal))
            .ToDictionary(f => f.Key);
    }
}
