using Cornerwright.Garage.Log;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>A job ticked off on a phone that loses its connection.</summary>
[Collection(BrowserTests.Name)]
public class JobTests(WorkshopDoor door)
{
    private async Task<(Visitor Visitor, string CarId, string Address)> Begin(string id)
    {
        string car = door.OwnDemoCar(id);
        var visitor = await door.Visit(390);
        await visitor.Open(car + "/build/gravel-3/order");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Begin this job" }).ClickAsync();
        await visitor.Page.Locator("body.job.live").WaitForAsync();
        return (visitor, id, new Uri(visitor.Page.Url).AbsolutePath);
    }

    private Job Stored(string carId) => Assert.Single(door.Kept(carId).Log.Jobs);

    private static Task Tick(IPage page) => page.Locator("#tick").ClickAsync();

    private static Task Sent(IPage page) => page.Locator("#sending[data-state=sent]").WaitForAsync();

    [Fact]
    public async Task Ten_ticks_without_a_connection_arrive_once_each_when_it_is_back()
    {
        var (visitor, car, _) = await Begin("offline");
        await using var closing = visitor;
        var page = visitor.Page;
        await Tick(page);
        await Sent(page);
        Assert.Single(Stored(car).Ticks);

        await page.Context.SetOfflineAsync(true);
        for (int i = 0; i < 10; i++)
        {
            await Tick(page);
        }

        await Assertions.Expect(page.Locator("#sending")).ToHaveAttributeAsync("data-left", "10");
        await Assertions.Expect(page.Locator("#sending")).ToHaveAttributeAsync("data-state", "waiting");
        await Assertions.Expect(page.Locator("#done-count")).ToHaveTextAsync("11");
        await visitor.Shoot("job-offline", "light");
        Assert.Single(Stored(car).Ticks);
        string[] ticked = await page.Locator("[data-step][data-done=true]")
            .EvaluateAllAsync<string[]>("steps => steps.map(s => s.dataset.step)");

        await page.Context.SetOfflineAsync(false);
        await Sent(page);
        var job = Stored(car);
        Assert.Equal(11, job.Ticks.Count);
        Assert.Equal(11, job.Ticks.Select(t => t.Id).Distinct().Count());
        Assert.Equal(11, job.Ticks.Select(t => t.Step).Distinct().Count());
        Assert.True(TickMerge.Done(job).SetEquals(ticked));
        Assert.Equal(0,
            await page.EvaluateAsync<int>("() => Object.keys(localStorage).filter(k => k.startsWith('cornerwright-tick:')).length"));
    }

    [Fact]
    public async Task An_answer_that_is_lost_on_the_way_doubles_nothing()
    {
        var (visitor, car, _) = await Begin("lost-answer");
        await using var closing = visitor;
        var page = visitor.Page;
        int lost = 0;
        await page.RouteAsync("**/ticks", async route =>
        {
            // The server gets it; the phone never hears so, twice.
            if (lost++ < 2)
            {
                await route.FetchAsync();
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });
        await Tick(page);
        await Tick(page);
        await Tick(page);
        await Sent(page);
        Assert.True(lost > 2, $"{lost}");
        Assert.Equal(3, Stored(car).Ticks.Count);
        Assert.Equal(3, TickMerge.Done(Stored(car)).Count);
    }

    [Fact]
    public async Task A_phone_that_slept_opens_the_list_again_without_a_connection_and_sends_later()
    {
        var (visitor, car, address) = await Begin("asleep");
        await using var closing = visitor;
        var page = visitor.Page;
        await page.WaitForFunctionAsync("async a => !!(await caches.match(a))", address);
        await page.Context.SetOfflineAsync(true);
        await Tick(page);
        await Tick(page);
        await page.ReloadAsync();
        await page.Locator("body.job.live").WaitForAsync();
        await Assertions.Expect(page.Locator("#done-count")).ToHaveTextAsync("2");
        await Tick(page);

        // A tick taken back while there is no connection.
        await page.Locator("[data-step] .row").First.ClickAsync();
        await Assertions.Expect(page.Locator("#tick")).ToHaveTextAsync("Take back");
        await Tick(page);
        await Assertions.Expect(page.Locator("#done-count")).ToHaveTextAsync("2");

        await page.Context.SetOfflineAsync(false);
        await Sent(page);
        Assert.Equal(4, Stored(car).Ticks.Count);
        Assert.Equal(2, TickMerge.Done(Stored(car)).Count);
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#done-count")).ToHaveTextAsync("2");
    }

    [Fact]
    public async Task Everything_to_touch_is_large_enough_for_a_glove()
    {
        var (visitor, _, _) = await Begin("gloves");
        await using var closing = visitor;
        double[] heights = await visitor.Page.Locator("body.job :is(button, a)")
            .EvaluateAllAsync<double[]>("all => all.filter(e => e.offsetParent).map(e => Math.min(e.offsetHeight, e.offsetWidth))");
        Assert.True(heights.Length > 20, $"{heights.Length}");
        Assert.All(heights, h => Assert.True(h >= 56, $"{h} px"));
        await visitor.Shoot("job", "light");
    }

    [Fact]
    public async Task Two_phones_see_each_others_ticks_and_the_log_counts_them()
    {
        var (visitor, car, address) = await Begin("two-phones");
        await using var closing = visitor;
        await using var other = await door.Visit(390);
        await other.Page.GotoAsync(address);
        await other.Page.Locator("body.job.live").WaitForAsync();
        await Tick(visitor.Page);
        await Sent(visitor.Page);
        await other.Page.Locator("[data-step] .row").Nth(2).ClickAsync();
        await Tick(other.Page);
        await Sent(other.Page);
        await Assertions.Expect(other.Page.Locator("#done-count")).ToHaveTextAsync("2");
        await other.Open("/car/" + car + "/log");
        await Assertions.Expect(other.Page.Locator("[data-job]")).ToContainTextAsync("2 steps ticked");
    }
}
