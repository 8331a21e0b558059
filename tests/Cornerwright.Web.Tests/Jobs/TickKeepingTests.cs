using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Jobs;
using Cornerwright.Web.Tests.Benches;

namespace Cornerwright.Web.Tests.Jobs;

public sealed class TickKeepingTests : IDisposable
{
    private const string JobId = "the-job";
    private readonly OneGarage _garage = new();

    public TickKeepingTests()
    {
        var stored = _garage.Store.Load(_garage.CarId).Value;
        var job = new Job { Id = JobId, Name = "The job", From = "now", To = "gravel-3" };
        _garage.Store.Save(stored.Car with { Log = stored.Car.Log.With(job) }, stored.Mark);
    }

    public void Dispose() => _garage.Dispose();

    private static Tick At(string step, int second, bool back = false) => new()
    {
        Id = FormattableString.Invariant($"{step} {second}"), Step = step, TakenBack = back,
            At = TickMerge.Moment(DateTimeOffset.UnixEpoch.AddSeconds(second)),
    };

    private Job Stored() => _garage.Store.Load(_garage.CarId).Value.Car.Log.Job(JobId)!;

    private Tick[] Send(params Tick[] ticks)
    {
        Assert.True(TickKeeping.Keep(_garage.Store, _garage.CarId, JobId, ticks).Ok);
        return ticks;
    }

    [Fact]
    public void The_same_ticks_sent_again_and_again_are_kept_once()
    {
        var ticks = Send(At("a", 1), At("b", 2), At("a", 3, back: true));
        int revisions = _garage.Store.Revisions(_garage.CarId).Count;
        for (int i = 0; i < 20; i++)
        {
            Send([.. ticks.Skip(i % 3)]);
        }

        Assert.Equal(ticks.Select(t => t.Id), Stored().Ticks.Select(t => t.Id));
        Assert.Equal(["b"], TickMerge.Done(Stored()));
        Assert.Equal(revisions, _garage.Store.Revisions(_garage.CarId).Count);
    }

    [Fact]
    public void A_days_ticks_are_one_revision_however_long_the_pauses()
    {
        int before = _garage.Store.Revisions(_garage.CarId).Count;
        for (int i = 0; i < 30; i++)
        {
            _garage.Time.Pass(TimeSpan.FromMinutes(13));
            Send(At("step " + i, i));
        }

        Assert.Equal(before + 1, _garage.Store.Revisions(_garage.CarId).Count);
        Assert.Equal(30, Stored().Ticks.Count);
    }

    [Fact]
    public async Task Many_phones_at_once_lose_nothing()
    {
        await Task.WhenAll(Enumerable.Range(0, 6).Select(phone => Task.Run(() =>
        {
            for (int i = 0; i < 8; i++)
            {
                Send(At($"step {phone}/{i}", i));
            }
        })));
        Assert.Equal(48, Stored().Ticks.Select(t => t.Id).Distinct().Count());
        Assert.Equal(48, Stored().Ticks.Count);
    }

    [Fact]
    public async Task Ticks_and_work_on_a_build_go_together_and_undo_leaves_the_ticks()
    {
        var bench = _garage.Bench();
        await bench.Open(_garage.CarId);
        bench.Apply("Name", car => car with { Name = "Other" });
        Send(At("a", 1));
        await bench.SaveNow();
        Assert.Equal(SavedState.Saved, bench.Saved);
        Assert.Equal("Other", _garage.Store.Load(_garage.CarId).Value.Car.Name);
        Assert.Single(Stored().Ticks);
        Assert.Single(bench.Car!.Log.Job(JobId)!.Ticks);

        bench.Undo();
        await bench.SaveNow();
        Assert.NotEqual("Other", _garage.Store.Load(_garage.CarId).Value.Car.Name);
        Assert.Single(Stored().Ticks);
    }

    [Fact]
    public async Task A_bench_that_looks_again_sees_what_was_ticked()
    {
        var bench = _garage.Bench();
        await bench.Open(_garage.CarId);
        Send(At("a", 1));
        await bench.LookAtLog();
        Assert.Single(bench.Car!.Log.Job(JobId)!.Ticks);
        Assert.False(bench.CanUndo);
        await bench.SaveNow();
        Assert.Equal(SavedState.Saved, bench.Saved);
    }

    [Fact]
    public void A_job_that_is_gone_is_told()
    {
        var problem = Assert.Single(TickKeeping.Keep(_garage.Store, _garage.CarId, "gone", [At("a", 1)]).Problems);
        Assert.Equal(("job", "gone"), (problem.Field, problem.Given));
        Assert.Contains(JobId, problem.Allowed, StringComparison.Ordinal);
        Assert.False(TickKeeping.Keep(_garage.Store, "no-car", JobId, [At("a", 1)]).Ok);
    }

    [Theory]
    [InlineData(null, "s", "2026-05-31T14:05:09.123Z")]
    [InlineData("", "s", "2026-05-31T14:05:09.123Z")]
    [InlineData(" a", "s", "2026-05-31T14:05:09.123Z")]
    [InlineData("a", "s\n", "2026-05-31T14:05:09.123Z")]
    [InlineData("a", "s", "yesterday")]
    [InlineData("a", "s", "2026-05-31T14:05:09Z")]
    [InlineData("a", "s", null)]
    public void A_tick_that_cannot_be_kept_is_refused_before_anything_is(string? id, string? step, string? at) =>
        Assert.NotNull(new TickMessage(id, step, at, false).Problem(1));

    [Fact]
    public void A_plain_tick_is_taken() =>
        Assert.Null(new TickMessage("off/f-wheel/front-left 0a1b", "off/f-wheel/front-left", "2026-05-31T14:05:09.123Z", false).Problem(1));
}
