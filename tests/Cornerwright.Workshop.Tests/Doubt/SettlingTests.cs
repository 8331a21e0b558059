using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Settling;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>Which reading would settle it: shares against brute-force conditioning, sentences against judging again.</summary>
public sealed class SettlingTests
{
    private const int Seed = 5_150;
    private static readonly Car Car = DemoCar.Read();

    /// <summary>Checks of the demo whose doubt matters, one for each kind of value.</summary>
    public static TheoryData<string, string> Doubtful => new()
    {
        { "gravel-2", "front-left/ride-height" },
        { "gravel-2", "front-left/stop-order" },
        { "touring", "front-left/clear-arch-lip" },
        { "gravel-2", "rear-left/ride-height" },
        { "gravel-2", "front-left/bump-travel" },
    };

    // The share of an input is the variance of the mean that is left when the input is held: drawn here with every other input
    // at random, 40 places of the input times 150 draws, and the noise of the inner means taken off.
    [Theory]
    [MemberData(nameof(Doubtful))]
    public void Shares_are_those_of_holding_one_reading_and_drawing_the_rest(string build, string key)
    {
        var finding = Finding(Car, build, key);
        var corner = CornerResult.Of(CornerPlan.Compile(Car, Car.Build(build)!, finding.Corner!.Value, CarLearning.InUse(Car)));
        int check = corner.Find(finding.Check);
        var (shares, _) = SampledShares.Of(corner, check);
        var inputs = corner.Plan.Inputs.Inputs;
        var random = new Random(Seed);
        foreach (var (input, share) in shares.OrderByDescending(s => s.Value.Total).Take(2))
        {
            const int Places = 40, Draws = 150;
            var means = new List<double>();
            double innerVariance = 0, all = 0, square = 0;
            double[] deviations = new double[inputs.Count];
            for (int p = 0; p < Places; p++)
            {
                double held = inputs[input].Spread == ToleranceKind.HalfRange
                    ? Math.Sqrt(3) * ((2 * ((p + 0.5) / Places)) - 1)
                    : Mechanics.Doubt.NormalDistribution.Quantile((p + 0.5) / Places);
                double sum = 0, sumSquare = 0;
                for (int d = 0; d < Draws; d++)
                {
                    for (int i = 0; i < deviations.Length; i++)
                    {
                        deviations[i] = inputs[i].Sigma > 0 ? (RandomCorner.One(inputs[i], random) - inputs[i].Value) / inputs[i].Sigma : 0;
                    }

                    deviations[input] = held;
                    double value = corner.ValueAt(check, deviations);
                    (sum, sumSquare) = (sum + value, sumSquare + (value * value));
                }

                means.Add(sum / Draws);
                innerVariance += ((sumSquare / Draws) - (sum / Draws * sum / Draws)) / Draws / Places;
                (all, square) = (all + (sum / Draws / Places), square + (sumSquare / Draws / Places));
            }

            double variance = square - (all * all), between = means.Sum(m => (m - all) * (m - all)) / Places;
            double drawn = (between - innerVariance) / variance;
            Assert.True(Math.Abs(drawn - share.First) < 0.05,
                $"seed {Seed}, {build} {key}, {inputs[input].Label}: {share.First:0.000} sampled, {drawn:0.000} by holding it");
        }
    }

    [Fact]
    public void The_sentence_says_what_judging_again_says()
    {
        int settled = 0;
        foreach (string id in new[] { "now", "gravel-2", "touring" })
        {
            foreach (var finding in Judge.Build(Car, id, JudgeOptions.FindingsOnly).Findings.Where(f =>
                f.Verdict is Verdict.Tight or Verdict.Fails && f.Probability is > 0.05 and < 0.95))
            {
                var settlement = SettlingFinder.Of(Car, Car.Build(id)!, finding, sample: false);
                Assert.NotNull(settlement);
                if (settlement!.Chosen.Count == 0 || settlement.Chosen.Any(c => CarPath.Find(Car, c.Path)!.Value.Reading is null))
                {
                    continue;   // nothing to measure, or nothing typed yet that could be narrowed by hand
                }

                // Narrow those readings by hand in the document, and judge the whole car.
                var finer = Car;
                foreach (var reading in settlement.Chosen)
                {
                    var field = CarPath.Find(Car, reading.Path)!.Value.Field;
                    double value = CarPath.Find(Car, reading.Path)!.Value.Reading!.Si;
                    var amount = Quantity.Of(field.Unit!.FromSi(reading.TwoSigma), field.Unit);
                    finer = CarPath.With(finer, reading.Path, new Reading(Quantity.Of(field.Unit.FromSi(value), field.Unit),
                        new Tolerance(amount, ToleranceKind.TwoSigma), ReadingSource.Gauge))!;
                    Assert.Contains(reading.Label, settlement.Sentence, StringComparison.Ordinal);
                }

                Assert.Equal(SettlingFinder.Doubt(Finding(finer, id, finding.Key).Probability!.Value), settlement.DoubtThen, 1e-3);
                Assert.True(settlement.DoubtThen < settlement.Doubt);
                settled++;
            }
        }

        Assert.True(settled >= 1, $"{settled} findings with something to measure");
    }

    [Fact]
    public void What_is_settled_says_so()
    {
        var finding = Judge.Build(Car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.First(f =>
            f.Probability > 0.999 && f.Deciding.Count > 0);
        Assert.StartsWith("It is settled", SettlingFinder.Of(Car, Car.Build(Demo.Holding)!, finding, sample: false)!.Sentence,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_is_found_and_put_by_its_path()
    {
        foreach (var input in Places.Corners.SelectMany(p => CornerResult.Of(
            CornerPlan.Compile(Car, Car.Build("gravel-2")!, p, CarLearning.InUse(Car))).Plan.Inputs.Inputs).Where(i => i.Sigma > 0))
        {
            if (CarPath.Find(Car, input.Path) is not { Reading: { } reading })
            {
                continue;   // assumed: nobody typed it
            }

            Assert.Equal(input.Value, reading.Si, 1e-12);
            var put = CarPath.With(Car, input.Path, reading with { Date = new DateOnly(2026, 1, 2) })!;
            Assert.Equal(new DateOnly(2026, 1, 2), CarPath.Find(put, input.Path)!.Value.Reading!.Date);
            Assert.Single(Garage.Differences.CarDifference.Between(Car, put));
        }

        Assert.Null(CarPath.Find(Car, "frontLeft/nothing"));
        Assert.Null(CarPath.With(Car, "parts/springs/none/rate", Car.Wheelbase!));
    }

    private static Finding Finding(Car car, string build, string key) =>
        Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings.First(f => f.Key == key);
}
