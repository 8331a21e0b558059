using System.Diagnostics;
using System.Globalization;
using Cornerwright.Garage.Files;
using Cornerwright.Storage.KillVictim;
using Xunit.Abstractions;

namespace Cornerwright.Storage.Tests;

/// <summary>Processes are killed hard (SIGKILL, TerminateProcess) while they save into one database file.</summary>
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private const int Kills = 200;
    private const int OpeningKills = 12;

    /// <summary>Started ahead, so that the next one is awake when the last one is dead.</summary>
    private const int InWaiting = 3;

    private readonly TemporaryStore _temporary = new();

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void Nothing_acknowledged_is_lost_when_the_process_is_killed_200_times_while_saving()
    {
        const int Seed = 20260501;
        var random = new Random(Seed);
        var everything = new List<Acknowledged>();
        var waiting = new Queue<Victim>();
        var watch = Stopwatch.StartNew();
        try
        {
            for (int kill = 0; kill < Kills; kill++)
            {
                while (waiting.Count < Math.Min(InWaiting, Kills - kill))
                {
                    waiting.Enqueue(new Victim(_temporary.FilePath));
                }

                using var victim = waiting.Dequeue();
                var acknowledged = victim.KillWhileSaving(TimeSpan.FromMilliseconds(random.Next(20, 201)));
                Assert.NotEmpty(acknowledged);
                var store = _temporary.Again();
                Assert.Equal("ok", _temporary.Ask<string>("PRAGMA integrity_check"));
                CheckAll(store, acknowledged);
                everything.AddRange(acknowledged);
            }
        }
        finally
        {
            foreach (var victim in waiting)
            {
                victim.Dispose();
            }
        }

        CheckAll(_temporary.Again(), everything);
        CheckHistory(_temporary.Again());
        Assert.Equal(0L, _temporary.Ask<long>("SELECT count(*) FROM Documents WHERE Hash NOT IN (SELECT DocumentHash FROM Revisions)"));
        output.WriteLine($"seed {Seed}: {Kills} kills, {everything.Count} acknowledged saves, "
            + $"{everything.Count(x => x.OnPurpose)} on purpose, {watch.Elapsed.TotalSeconds:0} s");
    }

    [Fact]
    public void A_database_opens_though_the_process_that_made_it_was_killed_on_the_way()
    {
        const int Seed = 20260502;
        var random = new Random(Seed);
        int made = 0;
        double toReady = MillisecondsFromFileToReady();
        for (int kill = 0; kill < OpeningKills; kill++)
        {
            string path = _temporary.PathOf(FormattableString.Invariant($"new{kill}.db"));
            using (var victim = new Victim(path))
            {
                // From before the file appears to some time after it: the tables are made in between.
                WaitForFile(path);
                Thread.Sleep((int)(random.NextDouble() * toReady));
                victim.Kill();
            }

            made += TemporaryStore.Ask<long>(path, "SELECT count(*) FROM sqlite_master") > 0 ? 1 : 0;
            var store = new GarageStore(GarageDatabase.Open(path).Value, TimeProvider.System, AutosaveRule.Default);
            Assert.IsType<SaveResult.Saved>(store.Save(VictimCar.Of(1), null));
            Assert.Equal("ok", TemporaryStore.Ask<string>(path, "PRAGMA integrity_check"));
        }

        output.WriteLine($"seed {Seed}: {OpeningKills} kills, tables already there in {made}");
    }

    /// <summary>How long this machine, as busy as it is, takes to make the tables: the kills are spread over that time.</summary>
    private double MillisecondsFromFileToReady()
    {
        string path = _temporary.PathOf("undisturbed.db");
        using var victim = new Victim(path);
        WaitForFile(path);
        var watch = Stopwatch.StartNew();
        victim.WaitUntilReady();
        return watch.Elapsed.TotalMilliseconds;
    }

    private static void WaitForFile(string path)
    {
        const int Looks = 30_000;
        for (int i = 0; i < Looks && !File.Exists(path); i++)
        {
            Thread.Sleep(1);
        }
    }

    private static void CheckAll(GarageStore store, IReadOnlyList<Acknowledged> acknowledged)
    {
        var marks = store.Revisions(VictimCar.Id).ToDictionary(x => x.Number, x => x.Mark);
        foreach (var save in acknowledged)
        {
            Assert.True(marks.TryGetValue(save.Mark.Number, out var now), $"revision {save.Mark} is gone");
            string text = store.Text(VictimCar.Id, save.Mark.Number)!;
            if (now == save.Mark)
            {
                Assert.Equal(CarFile.Write(VictimCar.Of(save.Step)), text);
            }
            else
            {
                // Only an autosave may have been overtaken, only by later ones of its own session, and each of these is whole.
                Assert.False(save.OnPurpose, $"revision {save.Mark} was saved on purpose and is now {now}");
                Assert.True(now.Fold > save.Mark.Fold);
                int step = StepOf(store, save.Mark.Number);
                Assert.InRange(step, save.Step + 1, save.Step + 2);
                Assert.Equal(CarFile.Write(VictimCar.Of(step)), text);
            }
        }
    }

    private static void CheckHistory(GarageStore store)
    {
        var revisions = store.Revisions(VictimCar.Id);
        Assert.Equal(Enumerable.Range(1, revisions.Count).Reverse(), revisions.Select(x => x.Number));
        Assert.All(revisions, x => Assert.Equal(x.Number == 1 ? null : x.Number - 1, x.Parent));
        Assert.Single(revisions.Where(x => x.Open).DefaultIfEmpty(revisions[0]));
    }

    private static int StepOf(GarageStore store, int revision) =>
        int.Parse(store.Load(VictimCar.Id, revision).Value.Car.Note.AsSpan("step ".Length), CultureInfo.InvariantCulture);
}
