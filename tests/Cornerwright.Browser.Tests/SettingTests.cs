using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>From the turn table to the readings after it, to the next table and what the car taught.</summary>
[Collection(BrowserTests.Name)]
public class SettingTests(WorkshopDoor door)
{
    private static readonly string[] Corners = ["front left", "front right", "rear left", "rear right"];

    [Fact]
    public async Task Turn_read_turn_again_and_learn()
    {
        string car = door.OwnDemoCar("setting");
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + "/build/gravel-3/setting");

        // More is wanted in front: the table says how far to turn, and in which order.
        foreach (string corner in Corners[..2])
        {
            var box = page.Locator($"section[aria-label='Wanted, {corner}'] input").First;
            await box.FillAsync("423 mm");
            await box.PressAsync("Tab");
        }

        var left = page.Locator("[data-corner=front-left]");
        await Assertions.Expect(left.Locator(".do").First).ToContainTextAsync("up");
        await Assertions.Expect(page.Locator(".steps li").First).ToContainTextAsync("stands");
        await visitor.Shoot("setting-turns", "light");

        // Done: the build has the new perch heights, and the sheet for the readings waits for all four.
        await page.GetByText("All of it is done: enter what I read").ClickAsync();
        await Assertions.Expect(page.Locator(".waits li")).ToHaveCountAsync(4);
        await Read(page, [426, 420.5, 430, 431]);

        // The next table, from what was read, and what the readings say about the car.
        await Assertions.Expect(page.Locator(".setting-page > .cw-page-head p")).ToContainTextAsync("From what was read last");
        await Assertions.Expect(left.Locator(".do").First).ToContainTextAsync("down");
        await Assertions.Expect(page.Locator(".learned .numbers li").First).ToBeVisibleAsync();
        await page.GetByText("Judge every build of this car with it").ClickAsync();
        await Assertions.Expect(page.Locator(".learned input[type=checkbox]").First).ToBeCheckedAsync();
        await page.Locator(".saved", new PageLocatorOptions { HasTextString = "Saved" }).WaitForAsync();
        await visitor.Shoot("setting-learned", "light");

        // Turned once more and read again: the second occasion stands beside the first, and nothing is left to turn.
        await page.GetByText("All of it is done: enter what I read").ClickAsync();
        await Assertions.Expect(page.Locator(".waits li")).ToHaveCountAsync(4);
        await Read(page, [423.3, 422.6, 430.4, 429.8]);

        await Assertions.Expect(page.Locator("#h-turns")).ToHaveTextAsync("Nothing to turn");
        await Assertions.Expect(page.Locator(".learned .occasions li")).ToHaveCountAsync(2);
        await page.Locator(".saved", new PageLocatorOptions { HasTextString = "Saved" }).WaitForAsync();
        await page.GotoAsync(car + "/history");
        await Assertions.Expect(page.Locator(".revs li").First).ToContainTextAsync("on the bench now");
        Assert.Empty(visitor.Complaints);

        await SameSheetInTheHand(car);
        await BothOccasionsAreKept();
    }

    [Fact]
    public async Task A_finding_says_which_reading_would_settle_it()
    {
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(door.OwnDemoCar("settling") + "/build/gravel-2/verdict?say=tight");
        await visitor.Judged();
        await page.Locator(".margins li h3 button").First.ClickAsync();
        await page.GetByText("Which reading would settle it?").First.ClickAsync();
        await Assertions.Expect(page.Locator(".settle .sentence")).ToContainTextAsync("doubt");
        await visitor.Shoot("settling", "light");
        Assert.True(await page.Locator(".settle tbody tr").CountAsync() > 0);
        Assert.Empty(visitor.Complaints);
    }

    private static async Task Read(IPage page, double[] heightsMm)
    {
        for (int i = 0; i < 4; i++)
        {
            var box = page.Locator($"section[aria-label='Read, {Corners[i]}'] input").First;
            await box.FillAsync(FormattableString.Invariant($"{heightsMm[i]} mm"));
            await box.PressAsync("Tab");
        }
    }

    /// <summary>Nothing wider than the screen, usable by everybody, by day and by night.</summary>
    private async Task SameSheetInTheHand(string car)
    {
        await using var phone = await door.Visit(390);
        await phone.Open(car + "/build/gravel-3/setting");
        await Assertions.Expect(phone.Page.Locator(".learned .numbers li").First).ToBeVisibleAsync();
        int over = await phone.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"wider than the screen by {over} px: {await EveryPageTests.Widest(phone.Page)}");
        await phone.Shoot("setting-learned", "light");
        await EveryPageTests.MustBeAccessible(phone.Page, null);
        await phone.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await phone.Shoot("setting-learned", "dark");
        await EveryPageTests.MustBeAccessible(phone.Page, "color-contrast");
        Assert.Empty(phone.Complaints);
    }

    private async Task BothOccasionsAreKept()
    {
        Garage.Cars.Car? kept = null;
        for (int i = 0; i < 100 && !(kept = door.Kept("setting")).UseLearned; i++)
        {
            await Task.Delay(100);
        }

        Assert.True(kept!.UseLearned);
        Assert.Equal(2, kept.Occasions.Count);
        var occasion = kept.Occasions[0];
        Assert.Equal(0.426, occasion.FrontLeft.Height!.Si, 1e-9);
        Assert.True(occasion.Fitted.FrontLeft.PerchHeight!.Si > 0.294);
        Assert.Equal(kept.Occasions[1].Fitted.FrontLeft.PerchHeight!.Si, kept.Build("gravel-3")!.FrontLeft.PerchHeight!.Si);
        Assert.True(kept.Occasions[1].Fitted.FrontLeft.PerchHeight!.Si < occasion.Fitted.FrontLeft.PerchHeight.Si);
    }
}
