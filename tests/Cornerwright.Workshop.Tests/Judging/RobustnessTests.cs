using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>Whatever is missing or odd in a car, the judge answers, in numbers and words that a person can be shown.</summary>
public sealed class RobustnessTests(ITestOutputHelper output)
{
    private const int Variations = 3_000;
    private const int Seed = 4711;

    [Fact]
    public void Three_thousand_varied_cars_are_judged_without_a_crash_and_without_a_number_that_is_none()
    {
        var demo = DemoCar.Read();
        var cars = new RandomCar(demo, new Random(Seed));
        var wrong = new List<string>();
        int unknown = 0, known = 0;
        for (int i = 0; i < Variations && wrong.Count < 20; i++)
        {
            var car = cars.Next();
            var build = car.Builds[i % car.Builds.Count];

            // Pictures and cures take most of the time: every sixth car has them.
            var options = i % 6 == 0 ? JudgeOptions.Everything : JudgeOptions.FindingsOnly;
            try
            {
                var judgement = Judge.Build(car, build, options);
                wrong.AddRange(judgement.Findings.SelectMany(JudgementFlaws.Of).Concat(judgement.Figures.SelectMany(JudgementFlaws.Of))
                    .Concat(judgement.Pictures.SelectMany(PictureFlaws.Of)).Select(f => $"variation {i}, {build.Id}: {f}"));
                unknown += judgement.Count(Verdict.Unknown);
                known += judgement.Findings.Count - judgement.Count(Verdict.Unknown);
            }
#pragma warning disable CA1031 // any exception at all is what this test looks for
            catch (Exception error)
            {
                wrong.Add($"variation {i}, {build.Id}: {error.GetType().Name} {error.Message} "
                    + $"{string.Join(' ', error.StackTrace?.Split('\n').Take(4) ?? [])}");
            }
#pragma warning restore CA1031
        }

        output.WriteLine($"seed {Seed}: {known} findings known, {unknown} unknown");
        Assert.True(wrong.Count == 0, $"seed {Seed}\n" + string.Join('\n', wrong));

        // The variations must reach both kinds, or they show nothing.
        Assert.True(known > 10 * Variations && unknown > Variations, $"{known} known, {unknown} unknown");
    }

    [Fact]
    public void The_same_car_gives_the_same_words_twice_and_on_any_number_of_threads()
    {
        var cars = new RandomCar(DemoCar.Read(), new Random(Seed + 1));
        Car[] batch = [DemoCar.Read(), .. Enumerable.Range(0, 6).Select(_ => cars.Next())];
        string[] jobs = [.. batch.SelectMany((car, c) => car.Builds.Select(b => $"{c}/{b.Id}"))];
        string[] once = On(1);
        Assert.True(once.All(text => text.Length > 100));
        foreach (int threads in new[] { 1, 2, 7 })
        {
            Assert.Equal(once, On(threads));
        }

        string[] On(int threads)
        {
            string[] texts = new string[jobs.Length];
            Parallel.For(0, jobs.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, j =>
            {
                string[] job = jobs[j].Split('/');
                texts[j] =
                    JudgementText.Of(Judge.Build(batch[int.Parse(job[0], System.Globalization.CultureInfo.InvariantCulture)], job[1]));
            });
            return texts;
        }
    }
}
