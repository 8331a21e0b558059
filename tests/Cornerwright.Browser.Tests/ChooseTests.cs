using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Cornerwright.Browser.Tests;

/// <summary>Choosing among the parts: asked for, searched, stopped and gone on with, a build taken and compared.</summary>
[Collection(BrowserTests.Name)]
public class ChooseTests(WorkshopDoor door)
{
    private static Car WithSearch(Car car) => car.With(new Wishes
    {
        Id = "gravel-rear", Name = "Gravel, rear", Axle = AxlePlace.Rear, StartingBuild = "gravel-3",
        Wheels = ["w-gravel", "w-gravel-40"], Tyres = ["t-gravel-55", "t-winter"], Spacers = ["sp-5"], Listed = 12,
    });

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task Wishes_become_a_ranked_list_and_a_choice_becomes_a_build(int width)
    {
        string id = $"choose-{width}", car = door.OwnDemoCar(id, WithSearch);
        await using var visitor = await door.Visit(width);
        var page = visitor.Page;
        await visitor.Open(car + "/choose?search=gravel-rear");

        // A wish typed is a wish kept.
        var budget = page.GetByLabel("To spend at most", new() { Exact = true });
        await budget.FillAsync("2000");
        await budget.PressAsync("Tab");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        await page.Locator(".found[data-search=done]").WaitForAsync(new() { Timeout = 120_000 });
        var first = page.Locator("#choice-1");
        await Expect(first).ToContainTextAsync("sure that all holds");
        Assert.True(await page.Locator(".choices > li").CountAsync() >= 2);
        Assert.True(await page.Locator(".map a").CountAsync() >= 2);
        await Expect(page.Locator(".misses")).ToContainTextAsync("Would hold");
        await Expect(page.Locator("table.refused")).ToContainTextAsync("Seated at full droop");
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"at {width}: wider than the screen by {over} px");
        await visitor.Shoot("choose-found", "light");
        var axe = await page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations] });
        Assert.Empty(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Help} at {v.Nodes[0].Html}"));
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await visitor.Shoot("choose-found", "dark");

        // Taken: among the car's builds, judged, and beside what is on the car now.
        await first.GetByRole(AriaRole.Button, new() { Name = "Take this as a build" }).ClickAsync();
        await first.GetByRole(AriaRole.Link, new() { Name = "Compare with now" }).ClickAsync();
        await page.Locator("#checks").WaitForAsync(new() { Timeout = 60_000 });
        await Expect(page.Locator("#sum + *, .glance").First).ToContainTextAsync("To buy");
        await page.WaitForTimeoutAsync(800);
        var kept = door.Kept(id);
        Assert.NotNull(kept.Build("choice-1"));
        Assert.Equal(2000, kept.Searches.Single(s => s.Id == "gravel-rear").Budget);

        // Back: what was found is still there.
        await page.GoBackAsync();
        await Expect(page.Locator("#choice-1")).ToContainTextAsync("Taken as a build");
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task A_search_is_stopped_and_goes_on_and_changed_wishes_are_seen()
    {
        string car = door.OwnDemoCar("choose-stop", demo => demo.With(
            new Wishes { Id = "all", Name = "Everything in front", Axle = AxlePlace.Front, StartingBuild = "gravel-3", Listed = 400 }));
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + "/choose?search=all");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        await page.Locator(".found[data-search=running] progress").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();
        await page.Locator(".found[data-search=stopped]").WaitForAsync(new() { Timeout = 60_000 });
        await visitor.Shoot("choose-stopped", "light");
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on", Exact = true }).ClickAsync();
        await page.Locator(".found[data-search=done]").WaitForAsync(new() { Timeout = 180_000 });
        await Expect(page.GetByText("16 000 combinations").First).ToBeVisibleAsync();

        // A part left out: the list is said to be of other wishes.
        await page.Locator("summary", new() { HasText = "Tyres" }).ClickAsync();
        await page.GetByLabel("Touring tyre", new() { Exact = false }).First.UncheckAsync();
        await Expect(page.Locator(".cw-note")).ToContainTextAsync("have changed");
        Assert.Empty(visitor.Complaints);
    }
}
