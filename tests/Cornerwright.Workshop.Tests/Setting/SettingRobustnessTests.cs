using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Setting;
using Cornerwright.Workshop.Settling;
using Cornerwright.Workshop.Tests.Judging;

namespace Cornerwright.Workshop.Tests.Setting;

/// <summary>Cars with readings lost, changed and mixed up: a table, an answer or a reason, and never a number that is none.</summary>
public sealed class SettingRobustnessTests
{
    private const int Seed = 71_003;

    [Fact]
    public void Random_cars_get_a_table_or_a_reason()
    {
        var random = new Random(Seed);
        var varied = new RandomCar(WithOccasion(DemoCar.Read(), random), random);
        int tables = 0, refused = 0;
        for (int n = 0; n < 150; n++)
        {
            var car = varied.Next();
            foreach (var build in car.Builds.Take(3))
            {
                var made = TurnTableMaker.Make(car, build, Wish(random, build.Id));
                if (!made.Try(out var table))
                {
                    Assert.All(made.Problems, p => Assert.True(p.Field.Length > 0 && p.Cure.Length > 0 && !p.ToString()
                        .Contains("NaN", StringComparison.Ordinal), $"seed {Seed}, car {n}: {p}"));
                    refused++;
                    continue;
                }

                tables++;
                Assert.All(table.Corners, c => Assert.True(
                    double.IsFinite(c.Predicted.Height) && double.IsFinite(c.Predicted.Load) && c.Predicted.Load >= 0 && double.IsFinite(
                        c.Predicted.Camber ?? 0) && double.IsFinite(c.Predicted.Toe ?? 0), $"seed {Seed}, car {n}, {build.Id}: {c}"));
                Assert.True(double.IsFinite(table.CrossPredicted), $"seed {Seed}, car {n}");
                Assert.All(table.Corners, c => Assert.True(c.Collar is not { Quarters: not 0, Most: { } most }
                    || c.Collar.After <= Math.Max(most, c.Collar.Before) + 1e-9, $"seed {Seed}, car {n}: beyond the thread"));
                Assert.DoesNotContain(table.Steps.Select(s => s.Words).Concat(table.Shortfalls).Concat(table.Assumptions), w =>
                    w.Contains("NaN", StringComparison.Ordinal) || w.Contains('∞'));
            }
        }

        Assert.True(tables > 50 && refused > 10, $"{tables} tables, {refused} refused");
    }

    [Fact]
    public void Random_cars_learn_or_say_why_not()
    {
        var random = new Random(Seed + 1);
        var varied = new RandomCar(WithOccasion(DemoCar.Read(), random), random);
        int learned = 0;
        for (int n = 0; n < 8; n++)
        {
            var car = varied.Next();
            var what = CarLearning.Of(car);
            learned += what.Any ? 1 : 0;
            Assert.All(what.Readings, r => Assert.True(double.IsFinite(r.Expected.Si) && double.IsFinite(r.Sigmas)
                && double.IsFinite(r.First.Si), $"seed {Seed + 1}, car {n}: {r}"));
            Assert.All(what.Numbers, x => Assert.True(
                double.IsFinite(x.After.Si) && x.AfterDoubt.Si >= 0 && double.IsFinite(x.AfterDoubt.Si), $"seed {Seed + 1}, car {n}: {x}"));
            if (car.Builds.Count > 0 && n % 3 == 0)
            {
                var judged = Judge.Build(car with { UseLearned = true }, car.Builds[0].Id, JudgeOptions.FindingsOnly);
                Assert.All(judged.Findings, f => Assert.True(double.IsFinite(f.Probability ?? 0) && double.IsFinite(f.Doubt?.Si ?? 0),
                    $"seed {Seed + 1}, car {n}: {f.Key}"));
                foreach (var finding in judged.Findings.Where(f => f.Probability is > 0.1 and < 0.9).Take(1))
                {
                    var settled = SettlingFinder.Of(judged.Car, judged.Build, finding, sample: false);
                    Assert.True(settled is null || (double.IsFinite(settled.DoubtThen) && settled.Sentence.Length > 0),
                        $"seed {Seed + 1}, car {n}: {finding.Key}");
                }
            }
        }

        Assert.True(learned > 2, $"{learned} learned");
    }

    private static Car WithOccasion(Car car, Random random)
    {
        var occasion = new Occasion { Id = "r", Name = "read", LoadCase = "driver", Fitted = car.Build("gravel-2")! };
        foreach (var place in Places.Corners)
        {
            occasion = occasion.With(place, new CornerReadings
            {
                Height = TurnTableTests.Mm(418 + (8 * random.NextDouble())),
                Load = Reading.Of(FormattableString.Invariant($"{365 + (10 * random.NextDouble()):0} kg"), Dimension.Mass, "3 kg",
                    ReadingSource.Scale),
                Camber = Reading.Of("-0.4 deg", Dimension.Angle, "0.2 deg", ReadingSource.Gauge),
                Gaps =
                    [new GapAtRide { Thing = "arch-lip", Distance = TurnTableTests.Mm(120) }, new GapAtRide { Thing = "nothing like it" }],
                Steps = [new CycledStep { Travel = TurnTableTests.Mm(-30), SpringLength = TurnTableTests.Mm(548) }, new CycledStep()],
            });
        }

        return car.With(occasion with { Aboard = [new PlacedLoad { Name = "driver", Mass = Reading.Of("80 kg", Dimension.Mass),
            Behind = TurnTableTests.Mm(1300), Left = TurnTableTests.Mm(350) }] });
    }

    private static SettingWish Wish(Random random, string build)
    {
        var wish = new SettingWish { Build = build };
        foreach (var place in Places.Corners)
        {
            wish = wish.With(place, new CornerWish
            {
                Height = random.Next(4) == 0 ? null : TurnTableTests.Mm(408 + (25 * random.NextDouble())),
                Camber = random.Next(2) == 0 ? null : Reading.Of("-1 deg", Dimension.Angle),
                Toe = random.Next(2) == 0 ? null : Reading.Of("0.1 deg", Dimension.Angle),
            });
        }

        return wish with { CrossWeight = random.Next(2) == 0 ? null
            : Reading.Of(FormattableString.Invariant($"{45 + (10 * random.NextDouble()):0.0} %"), Dimension.Ratio),
            HeightBand = TurnTableTests.Mm(10), LinksOn = random.Next(2) == 0 };
    }
}
