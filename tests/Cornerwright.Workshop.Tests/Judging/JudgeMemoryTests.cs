using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>What is remembered must never be what would not be found: every answer is compared with one worked out from nothing.</summary>
public class JudgeMemoryTests
{
    private const int Seed = 20261201;

    [Fact]
    public void Remembering_changes_no_answer_whatever_is_changed_and_changed_back()
    {
        var random = new Random(Seed);
        var memory = new JudgeMemory();
        var original = DemoCar.Read();
        var car = original;
        int corners = 0;
        for (int step = 0; step < 60; step++)
        {
            car = step % 7 == 6 ? original : Change(car, random);
            string build = car.Builds[random.Next(car.Builds.Count)].Id;
            var options = new JudgeOptions(Cures: step % 5 == 0, Pictures: step % 2 == 0);
            var remembered = Judge.Build(car, build, options with { Memory = memory });
            var anew = Judge.Build(car, build, options);
            Assert.Equal(JudgementText.Of(anew), JudgementText.Of(remembered));
            Assert.Equal(anew.Probability, remembered.Probability);
            Assert.Equal(anew.Pictures.SelectMany(p => p.Marks), remembered.Pictures.SelectMany(p => p.Marks));
            corners += 4;
        }

        Assert.InRange(memory.WorkedOut, corners / 4, corners * 4 / 5);
    }

    [Fact]
    public void A_collar_moved_leaves_the_other_axle_alone()
    {
        var memory = new JudgeMemory();
        var car = DemoCar.Read();
        var options = JudgeOptions.FindingsOnly with { Memory = memory };
        Judge.Build(car, "gravel-3", options);
        Assert.Equal(4, memory.WorkedOut);
        Judge.Build(car, "gravel-3", options);
        Assert.Equal(4, memory.WorkedOut);
        Judge.Build(Perch(car, "gravel-3", CornerPlace.FrontLeft, 0.001), "gravel-3", options);
        Assert.Equal(6, memory.WorkedOut);
    }

    /// <summary>A page of builds, a drag, several phones at once: one memory, many threads.</summary>
    [Fact]
    public async Task Many_may_ask_one_memory_at_once()
    {
        var memory = new JudgeMemory();
        var car = DemoCar.Read();
        var expected = car.Builds.ToDictionary(b => b.Id, b => JudgementText.Of(Judge.Build(car, b.Id)));
        string[] asked = [.. Enumerable.Range(0, 24).Select(i => car.Builds[i % car.Builds.Count].Id)];
        var answers = await Task.WhenAll(asked.Select(id => Task.Run(() =>
            JudgementText.Of(Judge.Build(car, id, JudgeOptions.Everything with { Memory = memory })))));
        Assert.All(asked.Zip(answers), pair => Assert.Equal(expected[pair.First], pair.Second));
    }

    private static Car Change(Car car, Random random)
    {
        var place = Places.Corners[random.Next(4)];
        string build = car.Builds[random.Next(car.Builds.Count)].Id;
        return random.Next(7) switch
        {
            0 => Perch(car, build, place, (random.NextDouble() - 0.5) * 0.02),
            1 => With(car, build, b => b.With(place, b.At(place) with { Pressure = Reading.Of("1.8 bar", Dimension.Pressure) })),
            2 => With(car, build, b => b with { Limits = b.Limits with { Certainty = Reading.Of("99 %", Dimension.Ratio) } }),
            3 => With(car, build, b => b with { Name = b.Name + "x" }),
            4 => car with { TopSpeed = Reading.Of($"{150 + random.Next(100)} km/h", Dimension.Speed) },
            5 => car.With(place, car.At(place) with { Obstacles = [.. car.At(place).Obstacles.Skip(1)] }),
            _ => car with { MeasuredBuild = car.Builds[random.Next(car.Builds.Count)].Id },
        };
    }

    private static Car Perch(Car car, string build, CornerPlace place, double by) => With(car, build, b =>
    {
        double height = (b.At(place).PerchHeight?.Si ?? 0.1) + by;
        var reading = Reading.Of(FormattableString.Invariant($"{height * 1000:0.0} mm"), Dimension.Length);
        return b.With(place, b.At(place) with { PerchHeight = reading });
    });

    private static Car With(Car car, string build, Func<Build, Build> change) =>
        car with { Builds = [.. car.Builds.Select(b => b.Id == build ? change(b) : b)] };
}
