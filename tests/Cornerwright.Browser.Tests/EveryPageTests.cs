using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>Every page, at desk and phone width, by day and by night: quiet, nothing wider than the screen, usable by everybody.</summary>
[Collection(BrowserTests.Name)]
public class EveryPageTests(WorkshopDoor door)
{
    public static TheoryData<string, string, int> Pages
    {
        get
        {
            var data = new TheoryData<string, string, int>();
            foreach (var (name, address) in new[]
            {
                ("garage", "/"),
                ("car", "/car/wagtail"),
                ("corner-front", "/car/wagtail/corner/front-left"),
                ("hardpoints", "/car/wagtail/corner/front-left/hardpoints"),
                ("corner-rear", "/car/wagtail/corner/rear-right"),
                ("scans", "/car/wagtail/scans"),
                ("parts", "/car/wagtail/parts"),
                ("parts-springs", "/car/wagtail/parts?kind=springs"),
                ("choose", "/car/wagtail/choose"),
                ("builds", "/car/wagtail/builds"),
                ("build", "/car/wagtail/build/gravel-1"),
                ("verdict", "/car/wagtail/build/gravel-1/verdict"),
                ("verdict-all", "/car/wagtail/build/gravel-3/verdict?say=all&corner=rear-left&sides=apart"),
                ("clearance", "/car/wagtail/build/gravel-3/clearance?corner=front-left"),
                ("clearance-rear", "/car/wagtail/build/gravel-1/clearance?corner=rear-right"),
                ("compare", "/car/wagtail/compare?left=gravel-1&right=gravel-3"),
                ("print", "/car/wagtail/build/gravel-3/print"),
                ("order", "/car/wagtail/build/gravel-3/order"),
                ("order-none", "/car/wagtail/build/now/order"),
                ("access", "/car/wagtail/access?component=f-strut"),
                ("log", "/car/wagtail/log"),
                ("job", "/car/wagtail/job/demo"),
                ("setting", "/car/wagtail/build/gravel-3/setting"),
                ("history", "/car/wagtail/history"),
                ("not-found", "/no/such/page"),
            })
            {
                foreach (int width in new[] { 1440, 390 })
                {
                    data.Add(name, address, width);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_is_quiet_fits_and_is_accessible(string name, string address, int width)
    {
        await using var visitor = await door.Visit(width);
        var page = visitor.Page;
        if (name == "not-found")
        {
            await page.GotoAsync(address);
            await page.Locator("h1").First.WaitForAsync();
        }
        else if (name == "job")
        {
            await page.GotoAsync(door.OwnJob($"job-at-{width}"));
            await page.Locator("body.job.live").WaitForAsync();
        }
        else
        {
            await visitor.Open(address);
        }

        if (address.Contains("/verdict", StringComparison.Ordinal))
        {
            await visitor.Judged();
            await page.Locator(".margins li h3 button").First.ClickAsync();
        }
        else if (address.Contains("/clearance", StringComparison.Ordinal))
        {
            await page.Locator("[data-clearance=ready][data-fresh=true]").WaitForAsync();
        }
        else if (name == "print")
        {
            await page.Locator("[data-sheets=ready]").WaitForAsync();
        }
        else if (name == "order")
        {
            await page.Locator("[data-order=ready] figure svg").First.WaitForAsync();
        }
        else if (name == "compare")
        {
            await page.Locator("#checks").WaitForAsync();
        }

        await page.EvaluateAsync("() => document.fonts.ready");
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"{name} at {width}: wider than the screen by {over} px: {await Widest(page)}");

        // By day every rule; by night only what the other colours can change.
        await visitor.Shoot(name, "light");
        await MustBeAccessible(page, null);
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await visitor.Shoot(name, "dark");
        await MustBeAccessible(page, "color-contrast");

        // The status of an address that leads nowhere is itself an entry of the console.
        if (name != "not-found")
        {
            Assert.Empty(visitor.Complaints);
        }
    }

    internal static async Task MustBeAccessible(IPage page, string? rule)
    {
        var options = new AxeRunOptions { ResultTypes = [ResultType.Violations] };
        if (rule is not null)
        {
            options.RunOnly = new RunOnlyOptions { Type = "rule", Values = [rule] };
        }

        AxeResult axe = await page.RunAxe(options);
        string[] serious = [.. axe.Violations.Where(v => v.Impact is "serious" or "critical")
            .Select(v => $"{v.Impact} {v.Id}: {v.Help} at "
                + $"{string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html[..Math.Min(160, n.Html.Length)]))}")];
        Assert.True(serious.Length == 0, string.Join(Environment.NewLine, serious));
    }

    internal static Task<string> Widest(IPage page) => page.EvaluateAsync<string>(
        """
        () => [...document.querySelectorAll('body *')]
          .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
          .slice(0, 5).map(e => e.tagName + '.' + e.getAttribute('class')).join(', ')
        """);
}
