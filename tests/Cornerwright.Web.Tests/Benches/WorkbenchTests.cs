using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Log;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Jobs;

namespace Cornerwright.Web.Tests.Benches;

public sealed class WorkbenchTests : IDisposable
{
    private readonly OneGarage _garage = new();

    public void Dispose() => _garage.Dispose();

    private async Task<Workbench> Open()
    {
        var bench = _garage.Bench();
        Assert.True(await bench.Open(_garage.CarId));
        return bench;
    }

    private static bool Rename(Workbench bench, string name, string? drag = null) =>
        bench.Apply("Name", car => car with { Name = name }, drag);

    private string StoredName() => _garage.Store.Load(_garage.CarId).Value.Car.Name;

    /// <summary>Lets the quiet moment pass and waits until the bench has nothing left to save.</summary>
    private async Task Quiet(Workbench bench)
    {
        _garage.Time.Pass(Workbench.QuietBeforeSaving);
        await bench.SaveNow();
    }

    [Fact]
    public async Task A_car_that_is_not_there_is_not_opened()
    {
        var bench = _garage.Bench();
        Assert.False(await bench.Open("no-such-car"));
        Assert.Null(bench.Car);
    }

    [Fact]
    public async Task Undo_brings_back_the_very_state_and_redo_the_change()
    {
        var bench = await Open();
        var before = bench.Car;
        Assert.True(Rename(bench, "Other"));
        var after = bench.Car;
        Assert.Equal("Name", bench.UndoWords);
        bench.Undo();
        Assert.Same(before, bench.Car);
        Assert.Equal("Name", bench.RedoWords);
        bench.Redo();
        Assert.Same(after, bench.Car);
        Assert.False(bench.CanRedo);
    }

    [Fact]
    public async Task A_change_that_changes_nothing_is_no_step()
    {
        var bench = await Open();
        Assert.False(bench.Apply("Nothing", car => car));
        Assert.False(bench.CanUndo);
        Assert.Equal(SavedState.Saved, bench.Saved);
    }

    [Fact]
    public async Task A_drag_is_one_step_and_the_next_drag_another()
    {
        var bench = await Open();
        string start = bench.Car!.Name;
        for (int i = 0; i < 50; i++)
        {
            Rename(bench, $"drag {i}", "slider");
        }

        bench.EndDrag();
        Rename(bench, "second drag", "slider");
        bench.Undo();
        Assert.Equal("drag 49", bench.Car!.Name);
        bench.Undo();
        Assert.Equal(start, bench.Car!.Name);
        Assert.False(bench.CanUndo);
    }

    [Fact]
    public async Task A_new_change_after_undo_forgets_what_was_undone()
    {
        var bench = await Open();
        Rename(bench, "one");
        bench.Undo();
        Rename(bench, "two");
        Assert.False(bench.CanRedo);
    }

    [Fact]
    public async Task Nothing_is_written_before_the_quiet_moment_and_a_burst_is_written_once()
    {
        var bench = await Open();
        int before = _garage.Store.Revisions(_garage.CarId).Count;
        for (int i = 0; i < 20; i++)
        {
            Rename(bench, $"burst {i}", "slider");
            _garage.Time.Pass(Workbench.QuietBeforeSaving / 2);
        }

        Assert.Equal(SavedState.Waiting, bench.Saved);
        Assert.Equal(before, _garage.Store.Revisions(_garage.CarId).Count);
        await Quiet(bench);
        Assert.Equal(SavedState.Saved, bench.Saved);
        Assert.Equal("burst 19", StoredName());
        Assert.Equal(before + 1, _garage.Store.Revisions(_garage.CarId).Count);
    }

    [Fact]
    public async Task The_quiet_moment_alone_saves()
    {
        var bench = await Open();
        var saved = new TaskCompletionSource();
        Rename(bench, "by itself");
        bench.Changed += () =>
        {
            if (bench.Saved == SavedState.Saved)
            {
                saved.TrySetResult();
            }
        };
        _garage.Time.Pass(Workbench.QuietBeforeSaving);
        await saved.Task;
        Assert.Equal("by itself", StoredName());
    }

    [Fact]
    public async Task Two_people_the_second_save_is_a_conflict_and_keeping_mine_keeps_theirs_in_the_history()
    {
        var (mine, theirs) = (await Open(), await Open());
        Rename(theirs, "theirs");
        await Quiet(theirs);
        Rename(mine, "mine");
        await Quiet(mine);
        Assert.Equal(SavedState.Conflict, mine.Saved);
        Assert.Equal("theirs", mine.Theirs!.Car.Name);
        Assert.Equal("mine", mine.Car!.Name);
        Assert.Equal("theirs", StoredName());

        await mine.KeepMine();
        Assert.Equal(SavedState.Saved, mine.Saved);
        Assert.Equal("mine", StoredName());
        Assert.Contains("theirs", AllNames());
    }

    [Fact]
    public async Task Taking_theirs_keeps_mine_as_a_revision_and_undo_brings_it_back()
    {
        var (mine, theirs) = (await Open(), await Open());
        Rename(theirs, "theirs");
        await Quiet(theirs);
        Rename(mine, "mine");
        await Quiet(mine);

        await mine.TakeTheirs();
        Assert.Equal(SavedState.Saved, mine.Saved);
        Assert.Equal("theirs", mine.Car!.Name);
        Assert.Equal("theirs", StoredName());
        Assert.Contains("mine", AllNames());
        mine.Undo();
        Assert.Equal("mine", mine.Car!.Name);
    }

    private List<string> AllNames() =>
        [.. _garage.Store.Revisions(_garage.CarId).Select(r => _garage.Store.Load(_garage.CarId, r.Number).Value.Car.Name)];

    [Fact]
    public async Task A_save_that_fails_loses_nothing_and_says_why()
    {
        bool full = true;
        var bench = new Workbench(_garage.Breaking(() => full), _garage.Time, OneGarage.Unjudged);
        await bench.Open(_garage.CarId);
        Rename(bench, "kept on the bench");
        await Quiet(bench);
        Assert.Equal(SavedState.Failed, bench.Saved);
        Assert.Contains("The disk is full.", bench.SaveFailure, StringComparison.Ordinal);
        Assert.Equal("kept on the bench", bench.Car!.Name);

        full = false;
        await bench.SaveNow();
        Assert.Equal(SavedState.Saved, bench.Saved);
        Assert.Equal("kept on the bench", StoredName());
        Assert.Equal("", bench.SaveFailure);
    }

    [Fact]
    public async Task A_car_that_does_not_hang_together_is_refused_with_its_problem_and_undo_mends_it()
    {
        var bench = await Open();
        bench.Apply("Break it", car => car with { MeasuredBuild = "no-such-build" });
        await Quiet(bench);
        Assert.Equal(SavedState.Failed, bench.Saved);
        Assert.Contains("no-such-build", bench.SaveFailure, StringComparison.Ordinal);
        bench.Undo();
        await Quiet(bench);
        Assert.Equal(SavedState.Saved, bench.Saved);
    }

    private static Car WithOpenGap(Car car) => car.With(CornerPlace.FrontLeft, car.FrontLeft with
    {
        Obstacles = [car.FrontLeft.Obstacles[0] with { Gaps = [.. car.FrontLeft.Obstacles[0].Gaps, (Gap)NewEntry.Of(typeof(Gap))] },
            .. car.FrontLeft.Obstacles.Skip(1)],
    });

    [Fact]
    public async Task An_opened_empty_row_stops_nothing_is_not_stored_and_stays_open()
    {
        var bench = await Open();
        int gaps = bench.Car!.FrontLeft.Obstacles[0].Gaps.Count;
        int revisions = _garage.Store.Revisions(_garage.CarId).Count;
        bench.Apply("Add a gap", WithOpenGap);
        await Quiet(bench);
        Assert.Equal(SavedState.Saved, bench.Saved);
        Assert.Equal(revisions, _garage.Store.Revisions(_garage.CarId).Count);
        Assert.Contains("Gap is not given yet", Assert.Single(bench.NotYetKept).Why, StringComparison.Ordinal);

        Rename(bench, "typed beside it");
        await Quiet(bench);
        Assert.Equal(SavedState.Saved, bench.Saved);
        Assert.Equal("typed beside it", StoredName());
        Assert.Equal(gaps, _garage.Store.Load(_garage.CarId).Value.Car.FrontLeft.Obstacles[0].Gaps.Count);
        Assert.Equal(gaps + 1, bench.Car.FrontLeft.Obstacles[0].Gaps.Count);

        bench.Undo();
        bench.Undo();
        await Quiet(bench);
        Assert.Empty(bench.NotYetKept);
        Assert.Equal(gaps, bench.Car.FrontLeft.Obstacles[0].Gaps.Count);
    }

    [Fact]
    public async Task What_others_write_into_the_log_comes_and_an_open_row_stays()
    {
        var (mine, other) = (await Open(), await Open());
        int gaps = mine.Car!.FrontLeft.Obstacles[0].Gaps.Count;
        mine.Apply("Add a gap", WithOpenGap);
        await Quiet(mine);
        other.Apply("Log", car => car with { Log = car.Log with { Entries = [.. car.Log.Entries, new LogEntry { Id = "entry-9" }] } });
        await Quiet(other);
        Rename(mine, "mine");
        await Quiet(mine);
        Assert.Equal(SavedState.Saved, mine.Saved);
        Assert.Contains(mine.Car.Log.Entries, e => e.Id == "entry-9");
        Assert.Equal(gaps + 1, mine.Car.FrontLeft.Obstacles[0].Gaps.Count);
        Assert.Single(mine.NotYetKept);
    }

    [Fact]
    public async Task Putting_the_bench_away_saves_first()
    {
        var bench = await Open();
        Rename(bench, "at the last moment");
        await bench.DisposeAsync();
        Assert.Equal("at the last moment", StoredName());
    }

    [Fact]
    public async Task Opening_another_car_saves_the_first_and_starts_afresh()
    {
        _garage.Store.Save(DemoCar.Read() with { Id = "second", Name = "Second" }, null);
        var bench = await Open();
        Rename(bench, "changed");
        bench.Draft("frontLeft/rideHeight", "34o mm");
        Assert.True(await bench.Open("second"));
        Assert.Equal("changed", StoredName());
        Assert.Equal("Second", bench.Car!.Name);
        Assert.False(bench.CanUndo);
        Assert.Empty(bench.Drafts);
    }

    [Fact]
    public async Task Opening_another_car_while_two_versions_wait_for_a_choice_loses_neither()
    {
        _garage.Store.Save(DemoCar.Read() with { Id = "second", Name = "Second" }, null);
        var (mine, theirs) = (await Open(), await Open());
        Rename(theirs, "theirs");
        await Quiet(theirs);
        Rename(mine, "mine");
        await Quiet(mine);
        Assert.Equal(SavedState.Conflict, mine.Saved);

        Assert.True(await mine.Open("second"));
        Assert.Equal(SavedState.Saved, mine.Saved);
        Assert.True(await mine.Open(_garage.CarId));
        Assert.Equal((SavedState.Conflict, "mine", "theirs"), (mine.Saved, mine.Car!.Name, mine.Theirs!.Car.Name));

        await mine.Open("second");
        await mine.DisposeAsync();
        Assert.Equal("theirs", StoredName());
        Assert.Contains("mine", AllNames());
    }

    [Fact]
    public async Task What_could_not_be_saved_and_what_is_still_open_is_there_when_the_car_is_opened_again()
    {
        _garage.Store.Save(DemoCar.Read() with { Id = "second", Name = "Second" }, null);
        bool full = true;
        var bench = new Workbench(_garage.Breaking(() => full), _garage.Time, OneGarage.Unjudged);
        await bench.Open(_garage.CarId);
        int gaps = bench.Car!.FrontLeft.Obstacles[0].Gaps.Count;
        bench.Apply("Add a gap", WithOpenGap);
        bench.Draft("frontLeft/rideHeight", "34o mm");
        Rename(bench, "not kept yet");
        await Quiet(bench);
        Assert.Equal(SavedState.Failed, bench.Saved);

        await bench.Open("second");
        Assert.Equal((SavedState.Saved, "Second"), (bench.Saved, bench.Car!.Name));
        full = false;
        await bench.Open(_garage.CarId);
        await bench.SaveNow();
        Assert.Equal((SavedState.Saved, "not kept yet", "not kept yet"), (bench.Saved, bench.Car!.Name, StoredName()));
        Assert.Equal("34o mm", bench.Drafts["frontLeft/rideHeight"]);
        Assert.Equal(gaps + 1, bench.Car.FrontLeft.Obstacles[0].Gaps.Count);
        Assert.True(bench.CanUndo);
    }

    [Fact]
    public async Task An_edit_that_comes_while_another_car_is_being_opened_is_kept()
    {
        _garage.Store.Save(DemoCar.Read() with { Id = "second", Name = "Second" }, null);
        var calls = new HeldCalls();
        var bench = new Workbench(_garage.Store, _garage.Time, OneGarage.Unjudged, off: calls.Off);
        void Drain()
        {
            while (!calls.Idle)
            {
                calls.Commit();
                calls.Return();
            }
        }

        SynchronizationContext.SetSynchronizationContext(null);
        _ = bench.Open(_garage.CarId);
        Drain();
        var opening = bench.Open("second");
        Rename(bench, "typed just before it went");
        Drain();
        Assert.True(await opening);
        Assert.Equal(("Second", "typed just before it went"), (bench.Car!.Name, StoredName()));
    }

    [Fact]
    public async Task Whichever_version_is_chosen_the_ticks_of_both_stay()
    {
        var job = new Job { Id = "job", Name = "Job" };
        foreach (bool keepMine in new[] { true, false })
        {
            await using var setUp = await Open();
            setUp.Apply("Job", car => car with { Log = car.Log.With(job) });
            await setUp.SaveNow();
            await using var mine = await Open();
            await using var theirs = await Open();
            Rename(theirs, "theirs " + keepMine);
            await Quiet(theirs);
            Assert.True(TickKeeping.Keep(_garage.Store, _garage.CarId, "job",
                [new Tick { Id = "a", Step = "a", At = TickMerge.Moment(DateTimeOffset.UnixEpoch) }]).Ok);
            Rename(mine, "mine " + keepMine);
            await Quiet(mine);
            Assert.Equal(SavedState.Conflict, mine.Saved);
            await (keepMine ? mine.KeepMine() : mine.TakeTheirs());
            Assert.Equal((SavedState.Saved, (keepMine ? "mine " : "theirs ") + keepMine), (mine.Saved, StoredName()));
            Assert.Equal(["a"], _garage.Store.Load(_garage.CarId).Value.Car.Log.Job("job")!.Ticks.Select(t => t.Id));
            mine.Undo();
            await mine.SaveNow();
            Assert.Equal(["a"], _garage.Store.Load(_garage.CarId).Value.Car.Log.Job("job")!.Ticks.Select(t => t.Id));
        }
    }

    [Fact]
    public async Task The_build_in_hand_is_always_one_of_the_cars()
    {
        var bench = await Open();
        string last = bench.Car!.Builds[^1].Id;
        bench.Select(last);
        Assert.Equal(last, bench.BuildId);
        bench.Select("no-such-build");
        Assert.Equal(last, bench.BuildId);
        bench.Apply("Take it out", car => BuildsOf.Remove(car, last));
        Assert.Equal(bench.Car!.Builds[0].Id, bench.BuildId);
    }
}
