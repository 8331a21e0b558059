using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Web.Benches;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Tests.Benches;

public sealed class PacedJudgingTests
{
    private int _whole;
    private int _quick;

    private static Car Car(string note) => new() { Id = "car", Name = "Car", Note = note, Builds = [new Build { Id = "b", Name = "B" }] };

    private PacedJudging Paced(bool withQuick = true)
    {
        return new PacedJudging(Count(() => _whole++), withQuick ? new QuickJudge(Count(() => _quick++)) : null, TimeProvider.System);

        static JudgeBuild Count(Action count) => (car, id) =>
        {
            count();
            return new Judgement { Car = car, Build = car.Build(id)!, Findings = [], Figures = [], Pictures = [] };
        };
    }

    [Fact]
    public async Task A_single_change_is_judged_wholly_at_once()
    {
        using var paced = Paced();
        var car = Car("one");
        paced.Show(car, "b");
        await paced.Settled();
        Assert.Equal((1, 0), (_whole, _quick));
        Assert.True(paced.IsWhole(paced.Of("b")));
    }

    [Fact]
    public async Task A_step_of_a_drag_is_judged_quickly_and_wholly_when_it_is_let_go()
    {
        using var paced = Paced();
        paced.Show(Car("before"), "b");
        await paced.Settled();
        var car = Car("dragged");
        paced.Show(car, "b", dragged: true);
        await paced.Settled();
        var quick = paced.Of("b");
        Assert.Same(car, quick?.Car);

        // The rest may have come already on a slow machine: then the whole judgement is the same car's.
        paced.Settle();
        await paced.Settled();
        var whole = paced.Of("b");
        Assert.Same(car, whole?.Car);
        Assert.True(paced.IsWhole(whole));
        Assert.Equal(2, _whole);
        Assert.Equal(1, _quick);
    }

    [Fact]
    public async Task A_drag_that_rests_gets_its_cures_by_itself()
    {
        using var paced = Paced();
        var heard = new TaskCompletionSource();
        var car = Car("dragged");
        paced.Judged += _ =>
        {
            if (paced.IsWhole(paced.Of("b")))
            {
                heard.TrySetResult();
            }
        };
        paced.Show(car, "b", dragged: true);
        await heard.Task;
        Assert.Equal(1, _whole);
    }

    [Fact]
    public async Task Undo_during_a_drag_is_judged_wholly()
    {
        using var paced = Paced();
        paced.Show(Car("dragged"), "b", dragged: true);
        var back = Car("back");
        paced.Show(back, "b");
        await paced.Settled();
        Assert.Same(back, paced.Of("b")?.Car);
        Assert.True(paced.IsWhole(paced.Of("b")));
    }

    [Fact]
    public async Task Without_a_quick_way_every_step_is_whole()
    {
        using var paced = Paced(withQuick: false);
        paced.Show(Car("dragged"), "b", dragged: true);
        await paced.Settled();
        Assert.True(paced.IsWhole(paced.Of("b")));
        Assert.Equal(0, _quick);
    }

    /// <summary>The verdict went blank for a moment when a drag began, and the handle under the finger was lost.</summary>
    [Fact]
    public async Task A_beginning_drag_shows_what_was_known_until_its_first_judgement_is_there()
    {
        using var hold = new ManualResetEventSlim();
        using var paced = new PacedJudging(Judged, (car, id) => { hold.Wait(); return Judged(car, id); }, TimeProvider.System);
        var before = Car("before");
        paced.Show(before, "b");
        await paced.Settled();
        paced.Show(Car("dragged"), "b", dragged: true);
        Assert.Same(before, paced.Of("b")?.Car);
        Assert.False(paced.IsWhole(paced.Of("b")));
        hold.Set();
        await paced.Settled();

        static Judgement Judged(Car car, string id) =>
            new() { Car = car, Build = car.Build(id)!, Findings = [], Figures = [], Pictures = [] };
    }
}
