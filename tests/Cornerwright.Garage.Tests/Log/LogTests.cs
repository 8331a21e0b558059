using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Differences;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Log;

namespace Cornerwright.Garage.Tests.Log;

public sealed class LogTests
{
    private static Tick At(string id, string step, int second, bool back = false) =>
        new() { Id = id, Step = step, At = TickMerge.Moment(DateTimeOffset.UnixEpoch.AddSeconds(second)), TakenBack = back };

    [Fact]
    public void Ticks_sent_twice_late_and_out_of_order_count_once_and_the_latest_counts()
    {
        Tick[] all = [At("a", "one", 1), At("b", "two", 2), At("c", "one", 3, back: true), At("d", "three", 4), At("e", "one", 5)];
        const int Seed = 20261125;
        var random = new Random(Seed);
        for (int round = 0; round < 500; round++)
        {
            var job = new Job { Id = "j" };
            for (int i = 0; i < 30; i++)
            {
                job = TickMerge.Add(job, [all[random.Next(all.Length)], all[random.Next(all.Length)]]);
            }

            job = TickMerge.Add(job, all);
            Assert.Equal(all.Length, job.Ticks.Count);
            Assert.True(TickMerge.Done(job).SetEquals(["one", "two", "three"]), $"seed {Seed}, round {round}");
            Assert.Same(job, TickMerge.Add(job, all));
        }
    }

    [Fact]
    public void A_tick_taken_back_is_open_even_if_the_tick_arrives_later()
    {
        var job = TickMerge.Add(new Job(), [At("b", "one", 9, back: true)]);
        job = TickMerge.Add(job, [At("a", "one", 1)]);
        Assert.Empty(TickMerge.Done(job));
    }

    [Fact]
    public void Two_people_keep_what_both_wrote()
    {
        LogEntry Entry(string id, string title) => new() { Id = id, Title = title };
        var common = new CarLog { Entries = [Entry("1", "one"), Entry("2", "two"), Entry("3", "three")],
            Jobs = [new Job { Id = "j", Ticks = [At("a", "s", 1)] }] };
        var mine = common with
        {
            Entries = [common.Entries[0], Entry("2", "two, mine"), common.Entries[2], Entry("4", "mine")],
            Jobs = [common.Jobs[0] with { Ticks = [.. common.Jobs[0].Ticks, At("b", "t", 2)] }],
        };
        var theirs = common with
        {
            Entries = [Entry("1", "one, theirs"), Entry("2", "two, theirs"), Entry("5", "theirs")],
            Jobs = [common.Jobs[0] with { Ticks = [.. common.Jobs[0].Ticks, At("c", "u", 3)] }, new Job { Id = "k" }],
        };
        var merged = LogMerge.Merge(common, mine, theirs);
        Assert.Equal(["one, theirs", "two, mine", "mine", "theirs"], merged.Entries.Select(e => e.Title));
        Assert.Equal(["a", "b", "c"], merged.Jobs[0].Ticks.Select(t => t.Id));
        Assert.Equal(["j", "k"], merged.Jobs.Select(j => j.Id));
    }

    [Fact]
    public void Only_the_log_differs_or_more_does()
    {
        var car = DemoCar.Read();
        var noted = car with { Log = car.Log with { Entries = [.. car.Log.Entries, new LogEntry { Id = "x" }] } };
        Assert.True(CarDifference.IsOfLogAlone(car, noted));
        Assert.True(CarDifference.IsOfLogAlone(car, car));
        Assert.False(CarDifference.IsOfLogAlone(car, noted with { Name = "Other" }));
    }

    [Fact]
    public void Dates_distances_and_ticks_come_back_from_the_file()
    {
        var car = DemoCar.Read() with { Log = new CarLog() };
        string text = CarFile.Write(car with
        {
            Log = new CarLog
            {
                Entries =
                    [new LogEntry { Id = "e", Date = new DateOnly(2026, 10, 3), Kind = LogKind.Drive, Odometer = Odometer("81240 mi") }],
                Jobs = [new Job { Id = "j", From = car.Builds[0].Id, To = car.Builds[1].Id, Ticks = [At("a", "s", 1)] }],
                Reminders = [new Reminder { Id = "r", What = "check", Due = new DateOnly(2026, 10, 10) }],
            },
        });
        Assert.Contains("\"date\": \"2026-10-03\"", text, StringComparison.Ordinal);
        var back = CarFile.Read(text).Value.Log;
        Assert.Equal(81_240 * 1609.344, back.Entries[0].Odometer!.Si, 1e-6);
        Assert.Equal(new DateOnly(2026, 10, 10), back.Reminders[0].Due);
        Assert.Equal("1970-01-01T00:00:01.000Z", back.Jobs[0].Ticks[0].At);

        var problem = Assert.Single(CarFile.Read(text.Replace("2026-10-03", "3.10.2026", StringComparison.Ordinal)).Problems);
        Assert.Equal("Log / Entries 1 / Date", problem.Field);
        Assert.Contains("2026-05-31", problem.Allowed, StringComparison.Ordinal);
    }

    private static Garage.Readings.Reading Odometer(string typed) =>
        Garage.Readings.Reading.Of(typed, Garage.Quantities.Dimension.Distance);
}
