using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Seen: with the spring's axis length known to ± 200 mm a build was tight, with ± 1000 mm it held everywhere: an input whose moves could
/// not be worked out added nothing to the doubt. A wider tolerance must never make anything surer.
/// </summary>
public class MoreDoubtTests
{
    [Theory]
    [InlineData("springAxisLength")]
    [InlineData("rideHeight")]
    [InlineData("unsprungMass")]
    public void A_wider_tolerance_makes_nothing_surer(string field)
    {
        var before = Judged(field, null);
        foreach (string tolerance in field == "unsprungMass" ? new[] { "5 kg", "30 kg", "300 kg" } : ["20 mm", "200 mm", "1000 mm"])
        {
            var after = Judged(field, tolerance);
            foreach (var (key, finding) in after)
            {
                var was = before[key];
                bool surer = finding.Probability is { } p && was.Probability is { } q && q > 0.5 && p > q + 0.002;
                bool found = finding.Verdict == Verdict.Holds && was.Verdict != Verdict.Holds;
                Assert.False(surer || found,
                    $"{field} ± {tolerance}, {key}: {was.Verdict} {was.Probability} before, {finding.Verdict} {finding.Probability} now");
            }

            before = after;
        }
    }

    [Fact]
    public void A_tolerance_beyond_what_can_be_worked_out_is_unknown_and_names_the_reading()
    {
        var after = Judged("springAxisLength", "1000 mm");
        var unknown = after.Values.Where(f => f.Verdict == Verdict.Unknown && f.Missing.Any(m => m.Path == "frontLeft/springAxisLength"))
            .ToList();
        Assert.NotEmpty(unknown);
        Assert.All(unknown, f => Assert.Contains("a finer reading of spring axis length", f.Sentence, StringComparison.Ordinal));
        Assert.DoesNotContain(after.Values, f => f.Key == "front-left/bump-travel" && f.Verdict == Verdict.Holds);
    }

    [Fact]
    public void The_chance_of_the_whole_build_is_below_that_of_each_check()
    {
        var car = DemoCar.Read();
        foreach (var build in car.Builds)
        {
            var judged = Judge.Build(car, build, JudgeOptions.FindingsOnly);
            double all = judged.Probability!.Value;
            Assert.InRange(all, 0, judged.Findings.Min(f => f.Probability ?? 1));
            Assert.True(all >= 1 - judged.Findings.Sum(f => 1 - (f.Probability ?? 1)) - 0.01,
                $"{build.Id}: {all} below what is left when every risk stands alone");
        }
    }

    private static Dictionary<string, Finding> Judged(string field, string? tolerance)
    {
        var car = DemoCar.Read();
        car = car with { UseLearned = false };
        if (tolerance is not null)
        {
            var corner = car.FrontLeft;
            car = car with
            {
                FrontLeft = field switch
                {
                    "springAxisLength" => corner with { SpringAxisLength = Wider(corner.SpringAxisLength!, tolerance, Dimension.Length) },
                    "rideHeight" => corner with { RideHeight = Wider(corner.RideHeight!, tolerance, Dimension.Length) },
                    _ => corner with { UnsprungMass = Wider(corner.UnsprungMass!, tolerance, Dimension.Mass) },
                },
            };
        }

        return Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.ToDictionary(f => f.Key);
    }

    private static Reading Wider(Reading reading, string tolerance, Dimension dimension) =>
        reading with { Tolerance = new Tolerance(QuantityText.ParseTolerance(tolerance, dimension, "").Value, ToleranceKind.TwoSigma) };
}
