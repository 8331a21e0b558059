using System.Collections.Concurrent;
using Cornerwright.Garage.Cars;
using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Tests.Benches;

public sealed class JudgeQueueTests
{
    private static Car CarNamed(string name) =>
        new() { Id = "c", Name = name, Builds = [new() { Id = "a", Name = "A" }, new() { Id = "b", Name = "B" }] };

    [Fact]
    public async Task Changes_during_a_judgement_collapse_into_one_more()
    {
        using var gate = new SemaphoreSlim(0);
        using var begun = new SemaphoreSlim(0);
        var judged = new ConcurrentQueue<string>();
        var queue = new JudgeQueue((car, id) =>
        {
            begun.Release();
            gate.Wait();
            judged.Enqueue(car.Name);
            return OneGarage.Unjudged(car, id);
        });
        queue.Show(CarNamed("first"), "a");
        await begun.WaitAsync();
        for (int i = 0; i < 100; i++)
        {
            queue.Show(CarNamed($"drag {i}"), "a");
        }

        gate.Release(100);
        await queue.Settled();
        Assert.Equal(["first", "drag 99"], judged);
        Assert.Equal("drag 99", queue.Of("a")!.Car.Name);
    }

    [Fact]
    public async Task Asking_for_a_build_judges_it_and_tells()
    {
        var told = new ConcurrentQueue<string>();
        var queue = new JudgeQueue(OneGarage.Unjudged);
        queue.Judged += told.Enqueue;
        var car = CarNamed("x");
        queue.Show(car);
        Assert.Null(queue.Of("b"));
        await queue.Settled();
        Assert.Same(car, queue.Of("b")!.Car);
        Assert.Equal(["b"], told);
    }

    [Fact]
    public async Task A_judge_that_stumbles_over_one_build_still_judges_the_other()
    {
        var queue = new JudgeQueue((car, id) => id == "a" ? throw new InvalidOperationException("stumbled") : OneGarage.Unjudged(car, id));
        queue.Show(CarNamed("x"), "a", "b");
        await queue.Settled();
        Assert.Null(queue.Of("a"));
        Assert.Equal("stumbled", queue.FailureOf("a"));
        Assert.NotNull(queue.Of("b"));
    }

    [Fact]
    public async Task A_build_that_is_not_there_is_not_judged()
    {
        var queue = new JudgeQueue((_, _) => throw new InvalidOperationException("must not be called"));
        queue.Show(CarNamed("x"), "nobody");
        Assert.Null(queue.Of("nobody"));
        await queue.Settled();
        Assert.Equal("", queue.FailureOf("nobody"));
    }
}
