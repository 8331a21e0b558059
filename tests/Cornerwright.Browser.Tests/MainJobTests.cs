using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>The whole main job once through, as the person does it.</summary>
[Collection(BrowserTests.Name)]
public class MainJobTests(WorkshopDoor door)
{
    [Fact]
    public async Task From_a_reading_to_a_cured_verdict_and_back_with_every_step_kept()
    {
        await using var visitor = await door.Visit();
        var page = visitor.Page;

        // Open: the demo car stands in the garage, its builds with their verdicts.
        await visitor.Open("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Wagtail estate" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Wagtail estate");

        await page.GetByRole(AriaRole.Link, new() { Name = "readings front left" }).ClickAsync();
        await TypeAHeight(page);

        // A part: another tyre at one corner of a build.
        await page.GetByRole(AriaRole.Link, new() { Name = "Builds", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Gravel, reworked" }).First.ClickAsync();
        var tyre = page.Locator("select[id*='frontLeft'][id*='tyre' i]").First;
        await Expect(tyre).ToHaveValueAsync("t-gravel-55");
        await tyre.SelectOptionAsync(new SelectOptionValue { Label = "Gravel tyre, tall" });
        await Expect(page.Locator("button[aria-label^='Undo:']")).ToBeVisibleAsync();

        // The verdict, and undoing the tyre.
        await page.GetByRole(AriaRole.Link, new() { Name = "Verdict", Exact = true }).ClickAsync();
        await visitor.Judged();
        string tall = await page.Locator(".headline").InnerTextAsync();
        Assert.Contains("fail", tall, StringComparison.Ordinal);
        await page.Locator("button[aria-label^='Undo:']").ClickAsync();
        await Expect(page.Locator(".headline")).Not.ToHaveTextAsync(tall);
        await visitor.Judged();
        string before = await page.Locator(".headline").InnerTextAsync();

        // A cure: accepted, judged at once, undone, done again.
        await (await FirstCure(page)).ClickAsync();
        await Expect(page.Locator(".headline")).Not.ToHaveTextAsync(before);
        await visitor.Judged();
        string cured = await page.Locator(".headline").InnerTextAsync();
        await visitor.Shoot("verdict-cured", "light");
        await page.Locator("button[aria-label^='Undo:']").ClickAsync();
        await Expect(page.Locator(".headline")).ToHaveTextAsync(before);
        await page.Locator("button[aria-label^='Redo:']").ClickAsync();
        await Expect(page.Locator(".headline")).ToHaveTextAsync(cured);
        await Saved(page);

        // The revision is there, and a visitor who comes later finds the cured build.
        await page.GetByRole(AriaRole.Link, new() { Name = "History", Exact = true }).ClickAsync();
        await Expect(page.Locator(".revs li").First).ToContainTextAsync("on the bench now");
        Assert.True(await page.Locator(".revs li").CountAsync() >= 2);
        Assert.Empty(visitor.Complaints);

        await using var later = await door.Visit(390);
        await later.Open("/car/wagtail/build/gravel-2/verdict");
        await later.Judged();
        await Expect(later.Page.Locator(".headline")).ToHaveTextAsync(cured);
    }

    /// <summary>A reading: what cannot be read is told and stays; what can be is used and saved.</summary>
    private static async Task TypeAHeight(IPage page)
    {
        var height = page.GetByLabel("Hub centre to arch edge", new() { Exact = true });
        await height.FillAsync("1,234 or so");
        await height.PressAsync("Tab");
        await Expect(page.Locator("#" + await RowOf(height) + " .cw-problem").First).ToContainTextAsync("1,234 or so");
        await Expect(height).ToHaveValueAsync("1,234 or so");
        await height.FillAsync("14 1/2 in");
        await height.PressAsync("Tab");
        await Expect(page.Locator("#" + await RowOf(height))).ToContainTextAsync("368.3 mm");
        await Expect(height).ToHaveValueAsync("14 1/2 in");
        await Saved(page);
    }

    /// <summary>The first cure on offer; findings are opened until one has any.</summary>
    private static async Task<ILocator> FirstCure(IPage page)
    {
        var row = page.Locator(".margins > li").Filter(new() { HasNot = page.Locator(".none") });
        int rows = await row.CountAsync();
        var cure = page.Locator(".cures .try");
        for (int i = 0; i < rows && await cure.CountAsync() == 0; i++)
        {
            await row.Nth(i).Locator("h3 button").ClickAsync();
            await Expect(row.Nth(i).Locator("h3 button")).ToHaveAttributeAsync("aria-expanded", "true");
        }

        return cure.First;
    }

    private static ILocatorAssertions Expect(ILocator locator) => Assertions.Expect(locator);

    private static async Task<string> RowOf(ILocator box) =>
        await box.EvaluateAsync<string>("e => e.closest('.reading').id");

    private static Task Saved(IPage page) => page.Locator(".saved", new PageLocatorOptions { HasTextString = "Saved" }).WaitForAsync();
}
