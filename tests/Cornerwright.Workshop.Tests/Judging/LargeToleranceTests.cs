using System.Collections;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Judging;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Seen: a helper's solid height of 5 mm by guess, whose tolerance is as large, moved it below zero within its doubt, and judge, compare
/// and the page ended in an exception. Every number of the demo is given a tolerance as large as itself and larger, one after the other.
/// </summary>
public sealed class LargeToleranceTests(ITestOutputHelper output)
{
    /// <summary>Of every number of the demo in turn, also far beyond what anybody types.</summary>
    [Theory]
    [InlineData(1, ToleranceKind.HalfRange, Demo.FirstIdea, MotionLevel.Ratios)]
    [InlineData(2, ToleranceKind.TwoSigma, Demo.FirstIdea, MotionLevel.Ratios)]
    [InlineData(2, ToleranceKind.TwoSigma, Demo.Holding, MotionLevel.Hardpoints)]
    [InlineData(1000, ToleranceKind.TwoSigma, Demo.Holding, MotionLevel.Ratios)]
    public void A_tolerance_as_large_as_its_value_or_larger_is_judged_in_numbers_and_words(double times, ToleranceKind kind, string build,
        MotionLevel front)
    {
        var wrong = new List<string>();
        var demo = DemoCar.Read();
        demo = demo with { FrontLeft = At(demo.FrontLeft, front), FrontRight = At(demo.FrontRight, front) };
        var cars = Varied(demo, reading => Coarser(reading, times, kind)).ToList();
        for (int i = 0; i < cars.Count; i++)
        {
            try
            {
                // Pictures and cures take most of the time: every eighth car has them.
                var judgement = Judge.Build(cars[i].Car, build, i % 8 == 0 ? JudgeOptions.Everything : JudgeOptions.FindingsOnly);
                wrong.AddRange(judgement.Findings.SelectMany(JudgementFlaws.Of).Concat(judgement.Figures.SelectMany(JudgementFlaws.Of))
                    .Concat(judgement.Pictures.SelectMany(PictureFlaws.Of)).Select(f => $"{cars[i].Path}: {f}"));
            }
#pragma warning disable CA1031 // any exception at all is what this test looks for
            catch (Exception error)
            {
                wrong.Add($"{cars[i].Path}: {error.GetType().Name} {error.Message} "
                    + $"{string.Join(' ', error.StackTrace?.Split('\n').Take(5) ?? [])}");
            }
#pragma warning restore CA1031
        }

        output.WriteLine($"{cars.Count} readings");
        Assert.True(cars.Count > 200, $"only {cars.Count} readings varied");
        Assert.True(wrong.Count == 0, $"{wrong.Count}\n" + string.Join('\n', wrong.Take(40)));
    }

    /// <summary>The story itself: and what was guessed more coarsely is not surer for having nothing below nothing.</summary>
    [Fact]
    public void A_helper_that_is_5_mm_solid_by_guess_is_judged_and_a_coarser_guess_is_never_surer()
    {
        var demo = DemoCar.Read();
        var build = demo.Build(Demo.Holding)!;
        double last = 0;
        foreach (string? tolerance in new[] { "1 mm", null, "10 mm", "20 mm", "40 mm" })
        {
            var guessed = Reading.Of("5 mm", Dimension.Length, tolerance, ReadingSource.Guess);
            var springs = demo.Parts.Springs.Select(s => s.Role == SpringRole.Helper ? s with { SolidHeight = guessed } : s);
            var judged = Judge.Build(demo with { Parts = demo.Parts with { Springs = [.. springs] } }, build, JudgeOptions.Everything);
            Assert.All(judged.Findings.SelectMany(JudgementFlaws.Of), flaw => Assert.Fail(flaw));
            double doubt = judged.Findings.Single(f => f.Key == "front-left/coil-room-f-6-250").Doubt!.Value.Si;
            Assert.True(doubt >= last, $"± {doubt} at {tolerance}, ± {last} before");
            last = doubt;
        }

        Assert.True(last > 0.005, $"± {last}: the solid height was not moved");
    }

    private static Corner At(Corner corner, MotionLevel level) => corner with { Motion = corner.Motion with { Level = level } };

    private static Reading Coarser(Reading reading, double times, ToleranceKind kind)
    {
        double size = Math.Max(Math.Abs(reading.Si), reading.StandardDeviation);
        return reading with { Tolerance = new Tolerance(Quantity.Of(reading.Value.Unit.FromSi(times * size), reading.Value.Unit), kind) };
    }

    /// <summary>The record with one reading after the other changed.</summary>
    private static IEnumerable<(string Path, Car Car)> Varied(Car car, Func<Reading, Reading> change) =>
        Varied(car, "car", change).Select(v => (v.Path, (Car)v.Record));

    private static IEnumerable<(string Path, object Record)> Varied(object record, string path, Func<Reading, Reading> change)
    {
        var shape = RecordShape.Of(record.GetType());
        foreach (var field in shape.Fields)
        {
            string here = $"{path}/{field.Name}";
            switch (field.Get(record))
            {
                case Reading reading:
                    yield return (here, shape.With(record, field, change(reading)));
                    break;
                case IEnumerable list when field.Kind == FieldKind.RecordList:
                    object[] entries = [.. list.Cast<object>()];
                    for (int i = 0; i < entries.Length; i++)
                    {
                        foreach (var (at, changed) in Varied(entries[i], $"{here}/{i}", change))
                        {
                            var array = Array.CreateInstance(field.ElementType, entries.Length);
                            entries.CopyTo(array, 0);
                            array.SetValue(changed, i);
                            yield return (at, shape.With(record, field, array));
                        }
                    }

                    break;
                case { } inner when field.Kind == FieldKind.Record:
                    foreach (var (at, changed) in Varied(inner, here, change))
                    {
                        yield return (at, shape.With(record, field, changed));
                    }

                    break;
                default:
                    break;
            }
        }
    }
}
