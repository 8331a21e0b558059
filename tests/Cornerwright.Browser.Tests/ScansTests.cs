using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>The demo scan brought in as a file, its size confirmed, picked, aligned, accepted; and undone.</summary>
[Collection(BrowserTests.Name)]
public class ScansTests(WorkshopDoor door)
{
    // On the rim's edge of demo/wagtail-front-left.ply, mm.
    private static readonly string[] Picks = ["407.1 1333.0 -194.6", "497.6 1175.9 -69.4", "481.9 1008.9 -86.9", "301.2 930.8 -328.3",
        "242.0 1065.4 -410.9", "279.3 1277.7 -365.4"];

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task From_a_file_to_a_scan_at_its_corner_and_back(int width)
    {
        string car = door.OwnDemoCar($"scans-{width}");
        await using var visitor = await door.Visit(width);
        var page = visitor.Page;
        await visitor.Open(car + "/scans");

        // A file that is none is refused in words; the demo's own comes in.
        await page.Locator("input[type=file]")
            .SetInputFilesAsync(new FilePayload { Name = "arch.obj", MimeType = "text/plain", Buffer = "v 0 0 zero\n"u8.ToArray() });
        await Expect(page.Locator(".cw-problem").First).ToContainTextAsync("line 1");
        await page.Locator("input[type=file]").SetInputFilesAsync(await DemoScan(page));
        await Expect(page.Locator("#h-desk")).ToBeVisibleAsync();
        await Expect(page.Locator(".desk legend").First).ToContainTextAsync("How large is it?");
        await Expect(page.Locator("input[name=scan-unit]").First).ToBeCheckedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Yes, it is that large" }).ClickAsync();

        // A click in the view picks; it is taken out again, and the points of the rim are typed.
        await page.Locator(".view[data-shown=scan]").WaitForAsync(new LocatorWaitForOptions { Timeout = 60_000 });
        await page.Locator(".view canvas").ClickAsync();
        await Expect(page.Locator(".picks li")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take out point 1" }).ClickAsync();
        await page.GetByText("Type a point").ClickAsync();
        for (int i = 0; i < Picks.Length; i++)
        {
            await page.Locator("#typed-point").FillAsync(Picks[i]);
            await page.GetByRole(AriaRole.Button, new() { Name = "Add it" }).ClickAsync();
            await Expect(page.Locator(".picks li")).ToHaveCountAsync(i + 1);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Align it" }).ClickAsync();
        await Expect(page.Locator(".found").First).ToContainTextAsync("Aligned by the wheel on the car");
        await page.Locator(".view[data-shown='placed wheel']").WaitForAsync();
        await FitsAsync(page, width);
        await visitor.Shoot("scans-aligned", "light");
        await EveryPageTests.MustBeAccessible(page, null);
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await visitor.Shoot("scans-aligned", "dark");
        await EveryPageTests.MustBeAccessible(page, "color-contrast");

        // Into the car, and out again with one undo.
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it into the car" }).ClickAsync();
        await Expect(page.Locator(".scans li")).ToHaveCountAsync(1);
        await Expect(page.Locator(".scans li")).ToContainTextAsync("by the wheel on the car");
        await FitsAsync(page, width);
        await visitor.Shoot("scans-taken", "light");
        await page.Locator("button[aria-label^='Undo:']").ClickAsync();
        await Expect(page.Locator(".scans li")).ToHaveCountAsync(0);
        await page.Locator("button[aria-label^='Redo:']").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Work on it" }).ClickAsync();
        await Expect(page.Locator(".found").First).ToContainTextAsync("Aligned by the wheel on the car");

        // The verdict knows the scan: in one build the tyre comes too near, a cure is tried, and its verdict turns.
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Light });
        await visitor.Open(car + "/build/touring/verdict?say=all&corner=front-left");
        await visitor.Judged();
        var row = page.Locator(".margins > li").Filter(new() { HasText = "to scan: arch front left" });
        var verdict = row.Locator(".cw-verdict").First;
        await Expect(verdict).ToContainTextAsync(new System.Text.RegularExpressions.Regex("fails|tight"));
        await row.Locator("h3 button").ClickAsync();
        await visitor.Shoot("scans-verdict", "light");
        await row.Locator(".cures .try").First.ClickAsync();
        await visitor.Judged();
        await Expect(verdict).ToContainTextAsync("holds", new() { Timeout = 30_000 });
        await visitor.Shoot("scans-cured", "light");
        Assert.Empty(visitor.Complaints);
    }

    private static async Task FitsAsync(IPage page, int width)
    {
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"at {width}: wider than the screen by {over} px");
    }

    private static async Task<FilePayload> DemoScan(IPage page)
    {
        var answer = await page.Context.APIRequest.GetAsync("/demo/wagtail-front-left.ply");
        return new FilePayload { Name = "phone.ply", MimeType = "application/octet-stream", Buffer = await answer.BodyAsync() };
    }

    private static ILocatorAssertions Expect(ILocator locator) => Assertions.Expect(locator);
}
