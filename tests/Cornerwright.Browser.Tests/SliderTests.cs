using System.Globalization;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Judging;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace Cornerwright.Browser.Tests;

[Collection(BrowserTests.Name)]
public class SliderTests(WorkshopDoor door, ITestOutputHelper output)
{
    private const string Verdict = "/build/winter/verdict?say=all";

    /// <summary>How long the measured drag lasts; CORNERWRIGHT_DRAG_MS makes it longer, for a figure worth writing down.</summary>
    private static int DragMs =>
        int.TryParse(Environment.GetEnvironmentVariable("CORNERWRIGHT_DRAG_MS"), CultureInfo.InvariantCulture, out int ms)
        ? Math.Clamp(ms, 500, 15_000) : 2000;

    /// <summary>
    /// Drags for a while and tells how often the page drew a new judgement. The rate is printed, not asserted; asserted is that
    /// the last value arrives and that what is drawn is what the library says of it.
    /// </summary>
    [Fact]
    public async Task Dragging_a_slider_judges_at_once_and_the_last_value_arrives()
    {
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(door.OwnDemoCar("slider") + Verdict);
        await visitor.Judged();
        var input = page.Locator("[data-slider=perch-front] input");
        int most = int.Parse((await input.GetAttributeAsync("max"))!, CultureInfo.InvariantCulture);
        int start = int.Parse(await input.InputValueAsync(), CultureInfo.InvariantCulture);
        int last = start > most / 2 ? start - 9 : start + 9;
        var processor = System.Diagnostics.Process.GetCurrentProcess();

        const string Drag =
            """
            async ([last, milliseconds]) => {
              const input = document.querySelector('[data-slider=perch-front] input');
              const judged = document.querySelector('[data-judged]');
              let drawn = 0, frames = 0;
              const watch = new MutationObserver(list => { drawn += list.length; });
              watch.observe(judged, { attributes: true, attributeFilter: ['data-judged'] });
              const from = performance.now(), middle = Number(input.max) / 2, reach = Math.min(20, middle);
              await new Promise(done => {
                const step = now => {
                  frames++;
                  if (now - from > milliseconds) { done(); return; }
                  input.valueAsNumber = Math.round(middle + reach * Math.sin((now - from) / 300));
                  input.dispatchEvent(new Event('input', { bubbles: true }));
                  requestAnimationFrame(step);
                };
                requestAnimationFrame(step);
              });
              const seconds = (performance.now() - from) / 1000;
              const result = [drawn, drawn / seconds, frames / seconds];
              input.valueAsNumber = last;
              input.dispatchEvent(new Event('input', { bubbles: true }));
              input.dispatchEvent(new Event('change', { bubbles: true }));
              watch.disconnect();
              return result;
            }
            """;

        // The first second warms the server up; the second drag counts.
        await page.EvaluateAsync<double[]>(Drag, new[] { start, 1200 });
        await visitor.Judged();
        processor.Refresh();
        var before = processor.TotalProcessorTime;
        double[] rates = await page.EvaluateAsync<double[]>(Drag, new[] { last, DragMs });
        processor.Refresh();
        double cpuMs = (processor.TotalProcessorTime - before).TotalMilliseconds;
        output.WriteLine($"slider drag: {rates[1]:F1} judgements drawn a second, at {rates[2]:F1} frames a second; "
            + $"server processor time {cpuMs / Math.Max(1, rates[0]):F1} ms a judgement drawn");

        // What the library itself says of the demo car at that setting.
        var car = DemoCar.Read();
        var build = car.Build("winter")!;
        var slider = Cornerwright.Web.Components.Pages.SettingSliders.Of(car, build, apart: false).Single(s => s.Name == "perch-front");
        var expectedBuild = slider.Move(build, last);
        var expected = Judge.Build(car.With(expectedBuild), "winter");
        string shown = QuantityText.Write(expectedBuild.FrontLeft.PerchHeight!.Si, Units.Millimetre, 1);
        await Assertions.Expect(page.Locator("[data-slider=perch-front] output")).ToHaveTextAsync(shown);
        await visitor.Judged();
        await Assertions.Expect(page.Locator(".headline")).ToHaveTextAsync(Cornerwright.Web.Components.Pages.Headline.Of(expected));
        foreach (var finding in expected.Findings.Where(f => f.Margin is not null).Take(12))
        {
            await Assertions.Expect(page.Locator($"[data-finding~=\"{finding.Key}\"] .numbers").First)
                .ToContainTextAsync(finding.Value!.Value.Text);
        }

        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task A_drag_undoes_as_one_step()
    {
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(door.OwnDemoCar("drag") + Verdict);
        await visitor.Judged();
        var output = page.Locator("[data-slider=perch-front] output");
        string before = await output.InnerTextAsync();
        var box = (await page.Locator("[data-slider=perch-front] input").BoundingBoxAsync())!;
        float y = box.Y + (box.Height / 2);
        await page.Mouse.MoveAsync(box.X + (box.Width * 0.4f), y);
        await page.Mouse.DownAsync();
        for (int i = 0; i < 12; i++)
        {
            await page.Mouse.MoveAsync(box.X + (box.Width * (0.4f + (0.02f * i))), y);
        }

        await page.Mouse.UpAsync();
        await Assertions.Expect(output).Not.ToHaveTextAsync(before);
        await visitor.Judged();   // a slow machine still has the drag's last step to come
        await page.Locator("button[aria-label^='Undo: Perch height']").ClickAsync();
        await Assertions.Expect(output).ToHaveTextAsync(before);
        await visitor.Judged();
    }

    [Fact]
    public async Task The_ride_mark_turns_the_collar_by_pointer_and_by_arrow_keys()
    {
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(door.OwnDemoCar("ride-mark") + Verdict);
        await visitor.Judged();
        var output = page.Locator("[data-slider=perch-front] output");
        string before = await output.InnerTextAsync();
        var handle = page.Locator("[data-corner=FrontLeft] [role=slider]");

        await handle.FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(output).Not.ToHaveTextAsync(before);
        await page.Keyboard.PressAsync("ArrowUp");
        await Assertions.Expect(output).ToHaveTextAsync(before);

        double ride = double.Parse((await handle.GetAttributeAsync("aria-valuenow"))!, CultureInfo.InvariantCulture);
        await visitor.Judged();
        await handle.ScrollIntoViewIfNeededAsync();
        var box = (await handle.BoundingBoxAsync())!;
        float x = box.X + (box.Width / 2), y = box.Y + (box.Height / 2);
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x, y + 15);
        await page.Mouse.MoveAsync(x, y + 30);
        await page.Mouse.UpAsync();
        await Assertions.Expect(output).Not.ToHaveTextAsync(before);
        await visitor.Judged();

        // Down in the picture is toward droop: the body stands higher.
        double after = double.Parse((await handle.GetAttributeAsync("aria-valuenow"))!, CultureInfo.InvariantCulture);
        Assert.True(after < ride, $"ride mark went from {ride} to {after} mm");
    }
}
