using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>
/// A person edits, the quiet timer saves, a phone ticks, somebody else saves: every order of it. The saves used to run beside
/// the edits, and a tick that was put together with the car could be lost under an edit while the page said "saved".
/// </summary>
public sealed class InterleavingTests
{
    private static readonly string[] OneSave = ["quiet", "store keeps", "answer comes"];
    private static readonly string[] OneLook = ["look", "store keeps", "answer comes"];

    private static int InMemory(Action<OneOrder> end, params IReadOnlyList<string>[] each)
    {
        int count = 0;
        foreach (var order in Orders.Of(each))
        {
            var one = new OneOrder(new MemoryStore(), "car", new ManualTime());
            one.Run(order);
            end(one);
            count++;
        }

        return count;
    }

    [Fact]
    public void Orders_are_all_there_once()
    {
        var all = Orders.Of<string>(["a", "b"], ["1", "2", "3"]).Select(o => string.Concat(o)).ToList();
        Assert.Equal(10, all.Count);   // 5! / (2! 3!)
        Assert.Equal(10, all.Distinct().Count());
        Assert.All(all, o => Assert.Equal(("ab", "123"), (string.Concat(o.Where(char.IsLetter)), string.Concat(o.Where(char.IsDigit)))));
    }

    [Fact]
    public void Two_edits_a_timed_save_and_two_ticks() =>
        Assert.Equal(210, InMemory(o => o.EndsWhole(), ["edit the name", "edit the build"], OneSave, ["tick 1", "tick 2"]));

    [Fact]
    public void An_edit_of_the_log_undone_a_timed_save_and_two_ticks() =>
        Assert.Equal(210, InMemory(o => o.EndsWhole(), ["write into the log", "undo"], OneSave, ["tick 1", "tick 2"]));

    [Fact]
    public void Two_edits_one_undone_two_saves_and_a_tick() =>
        Assert.Equal(840,
            InMemory(o => o.EndsWhole(), ["edit the name", "undo", "write into the log"], [.. OneSave, .. OneSave], ["tick 1"]));

    [Fact]
    public void Two_edits_a_save_a_look_at_the_log_and_a_tick() =>
        Assert.Equal(5040, InMemory(o => o.EndsWhole(), ["edit the name", "write into the log"], OneSave, OneLook, ["tick 1"]));

    [Theory]
    [InlineData("disk full")]
    [InlineData("answer gets lost")]
    public void A_save_that_fails_or_whose_answer_is_lost(string fault) =>
        Assert.Equal(1680, InMemory(
            order =>
            {
                // The page says so, and a press on the mark tries again.
                _ = order.Bench.SaveNow();
                order.Drain();
                order.EndsWhole();
            },
            ["edit the name", "write into the log"], OneSave, [fault], ["tick 1", "edit the build"]));

    [Theory]
    [InlineData("mine on top")]
    [InlineData("theirs on top")]
    public void Another_session_saves_and_ticks_and_somebody_chooses(string choice)
    {
        int chosen = 0;
        InMemory(
            order =>
            {
                if (order.Bench.Saved == SavedState.Conflict)
                {
                    // Pressed before there was a choice: pressed again.
                    _ = choice == "mine on top" ? order.Bench.KeepMine() : order.Bench.TakeTheirs();
                    order.Drain();
                }

                chosen += order.Bench.CanUndo && order.Bench.UndoWords == "Take the other change" ? 1 : 0;
                order.EndsWhole();
            },
            ["edit the name"], OneSave, ["another saves", "tick 1"], [choice, "store keeps", "answer comes"]);
        Assert.Equal(choice == "theirs on top", chosen > 0);
    }

    [Fact]
    public void Closed_while_two_versions_wait_for_a_choice_both_are_kept_and_theirs_is_on_top()
    {
        int conflicts = 0;
        InMemory(
            order =>
            {
                var theirs = order.Bench.Theirs?.Car;
                _ = order.Bench.DisposeAsync().AsTask();
                order.Drain();
                if (theirs is not null)
                {
                    conflicts++;
                    order.Must(order.Everything().Any(car => car.Name == "edited" && car.Builds[0].Name == "Edited"),
                        "the edit was lost with the page");
                    order.Must(CarFile.Write(order.Everything().First() with { Log = new() }) == CarFile.Write(theirs with { Log = new() }),
                        "theirs is not on top");
                }
            },
            ["edit the name", "edit the build"], OneSave, ["another saves", "tick 1"]);
        Assert.True(conflicts > 0);
    }

    [Fact]
    public void Two_edits_a_timed_save_and_a_tick_over_the_real_store()
    {
        using var garage = new OneGarage();
        int count = 0;
        foreach (var order in Orders.Of<string>(["edit the name", "edit the build"], OneSave, ["tick 1"]))
        {
            var one = new OneOrder(garage.Store, FormattableString.Invariant($"car-{count}"), garage.Time);
            one.Run(order);
            one.EndsWhole();
            _ = one.Bench.DisposeAsync().AsTask();
            one.Drain();
            count++;
        }

        Assert.Equal(60, count);   // 6! / (2! 3! 1!)
    }

    [Fact]
    public void Steps_from_many_threads_run_one_at_a_time_and_none_is_lost()
    {
        var (seen, told) = (new List<int>(), 0);
        var writer = new OneWriter<string>("0", (_, after) =>
            seen.Add(int.Parse(after, System.Globalization.CultureInfo.InvariantCulture)), () => Interlocked.Increment(ref told));
        Parallel.For(0, 2000, _ =>
            writer.Write(now => FormattableString.Invariant($"{int.Parse(now, System.Globalization.CultureInfo.InvariantCulture) + 1}")));
        Assert.Equal("2000", writer.Now);
        Assert.Equal(Enumerable.Range(1, 2000), seen);
        Assert.Equal(2000, told);
        Assert.Throws<InvalidOperationException>(() => writer.Write(now =>
        {
            writer.Write(x => x + "0");
            return now;
        }));
        Assert.Equal("2000", writer.Now);
    }
}
