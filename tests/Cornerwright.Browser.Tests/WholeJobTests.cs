using System.Text;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Cornerwright.Browser.Tests;

/// <summary>From the parts list to the second set of readings: the whole work on a car in one sitting.</summary>
[Collection(BrowserTests.Name)]
public class WholeJobTests(WorkshopDoor door)
{
    private static readonly string[] Corners = ["front left", "front right", "rear left", "rear right"];

    [Fact]
    public async Task Choose_order_tick_read_turn_read_again_learn_and_look_back()
    {
        const string Id = "whole-job";
        string car = door.OwnDemoCar(Id, demo => demo with
        {
            Searches = [new Wishes { Id = "gravel", Name = "Gravel, front", Axle = AxlePlace.Front, StartingBuild = "gravel-3",
                Wheels = ["w-gravel-40"], Tyres = ["t-gravel-55"], Springs = ["f-6-250", "f-helper"], Listed = 3 }],
        });
        await using var visitor = await door.Visit();
        var page = visitor.Page;

        // Rank, and take the first.
        await visitor.Open(car + "/choose");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        await page.Locator(".found[data-search=done]").WaitForAsync(new() { Timeout = 120_000 });
        await page.Locator("#choice-1").GetByRole(AriaRole.Button, new() { Name = "Take this as a build" }).ClickAsync();
        await Saved(page);
        await Kept(Id, c => c.Build("choice-1") is not null);

        // The order, printed.
        await visitor.Open(car + "/build/choice-1/order");
        await page.Locator("[data-order=ready]").WaitForAsync();
        byte[] pdf = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        Assert.True(pdf.Length > 20_000 && Encoding.ASCII.GetString(pdf, 0, 5) == "%PDF-", $"{pdf.Length} bytes");

        // Ticked off step by step.
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this job" }).ClickAsync();
        await page.Locator("body.job.live").WaitForAsync();
        for (int i = 0; i < 3; i++)
        {
            await page.Locator("#tick").ClickAsync();
        }

        await page.Locator("#sending[data-state=sent]").WaitForAsync();
        Assert.Equal(3, Assert.Single(door.Kept(Id).Log.Jobs).Ticks.Count);

        // Read, turn by the table, read again.
        await visitor.Open(car + "/build/choice-1/setting");
        await Read(page, [418.5, 413, 431, 429]);
        await Expect(page.Locator("[data-corner=front-left] .do").First).ToContainTextAsync("down");
        await Read(page, [415.5, 414.5, 430.5, 429.5]);
        await Expect(page.Locator(".learned .numbers li").First).ToBeVisibleAsync();
        await page.GetByText("Judge every build of this car with it").ClickAsync();
        var kept = await Kept(Id, c => c.UseLearned);
        Assert.Equal(2, kept.Occasions.Count);
        Assert.Equal("choice-1", kept.Occasions[^1].Fitted.Id);

        // The verdict goes by what was learned, and the history shows what the work changed.
        await visitor.Open(car + "/build/choice-1/verdict");
        await visitor.Judged();
        await Expect(page.Locator(".headline")).ToContainTextAsync("checks");
        await visitor.Open(car + "/history?from=1");
        await page.Locator(".revs li").First.GetByText("To here").ClickAsync();
        foreach (string changed in new[] { "Builds / 6 kgf/mm, 250 mm with Front helper", "Readings after the work", "Log / Jobs",
            "Judge with what was learned" })
        {
            await Expect(page.Locator("table.diff")).ToContainTextAsync(changed);
        }

        await visitor.Shoot("whole-job-history", "light");
        Assert.Empty(visitor.Complaints);
    }

    private static async Task Read(IPage page, double[] heights)
    {
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^(All of it is done: enter|Enter) what I read$") }).ClickAsync();
        await Expect(page.Locator(".waits li")).ToHaveCountAsync(4);
        for (int i = 0; i < Corners.Length; i++)
        {
            var box = page.Locator($"section[aria-label='Read, {Corners[i]}'] input").First;
            await box.FillAsync(FormattableString.Invariant($"{heights[i]} mm"));
            await box.PressAsync("Tab");
        }

        await Expect(page.Locator(".setting-page > .cw-page-head p")).ToContainTextAsync("From what was read last");
    }

    private async Task<Car> Kept(string id, Func<Car, bool> wanted)
    {
        var car = door.Kept(id);
        for (int i = 0; i < 100 && !wanted(car); i++)
        {
            await Task.Delay(100);
            car = door.Kept(id);
        }

        Assert.True(wanted(car), "not kept as expected");
        return car;
    }

    private static Task Saved(IPage page) => page.Locator(".saved", new PageLocatorOptions { HasTextString = "Saved" }).WaitForAsync();
}
