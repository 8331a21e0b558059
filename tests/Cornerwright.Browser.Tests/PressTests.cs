using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>
/// What a person presses counts: in the first moment in which it can be pressed, and while the page moves under the finger.
/// </summary>
[Collection(BrowserTests.Name)]
public class PressTests(WorkshopDoor door)
{
    /// <summary>Presses the box as soon as the browser has it and it can be pressed: before anything else on the page runs.</summary>
    private const string AtOnce = """
        new MutationObserver(() => {
          const box = document.querySelector('.learned .use input:not([disabled])');
          if (box && !window.pressed) { window.pressed = true; box.click(); }
        }).observe(document, { childList: true, subtree: true, attributes: true });
        """;

    [Fact]
    public async Task A_box_pressed_in_the_very_moment_in_which_it_is_drawn_is_pressed()
    {
        for (int i = 0; i < 8; i++)
        {
            string id = $"first-press-{i}";
            string address = door.OwnDemoCar(id, car => car with { Occasions = [Read(car)] });
            await using var visitor = await door.Visit();
            await visitor.Page.AddInitScriptAsync(AtOnce);
            await visitor.Open(address + "/build/gravel-3/setting");
            await Assertions.Expect(visitor.Page.Locator(".learned .use input")).ToBeCheckedAsync();
            await visitor.Page.Locator(".saved", new PageLocatorOptions { HasTextString = "Saved" }).WaitForAsync();
            Assert.True(door.Kept(id).UseLearned);
            Assert.Empty(visitor.Complaints);
        }
    }

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task A_button_that_moves_away_under_the_finger_is_pressed_all_the_same(int width)
    {
        string id = $"moving-{width}";
        await using var visitor = await door.Visit(width);
        var page = visitor.Page;
        await visitor.Open(door.OwnDemoCar(id) + "/corner/front-left");
        int gaps = door.Kept(id).FrontLeft.Obstacles[0].Gaps.Count;
        string last = $"#at-frontLeft-obstacles-{door.Kept(id).FrontLeft.Obstacles[0].Id}-gaps-{gaps - 1}";
        await page.EvaluateAsync("id => cornerwright.show(id)", last[1..] + "-steer-box");
        await page.Locator(last + "-steer-box").FillAsync("to the left");

        // The finger goes down on the button; leaving the box has it read, and the reason that appears under it moves the button.
        var button = page.GetByText("Add a gap").First;
        var before = (await button.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(before.X + (before.Width / 2), before.Y + (before.Height / 2));
        await page.Mouse.DownAsync();
        await page.Locator(last + "-steer .cw-problem").WaitForAsync();
        var after = (await button.BoundingBoxAsync())!;
        Assert.True(Math.Abs(after.Y - before.Y) > before.Height / 2, $"moved by {after.Y - before.Y} px only: nothing is tried here");
        await page.Mouse.UpAsync();
        await page.Locator(last[..^(gaps - 1).ToString(System.Globalization.CultureInfo.InvariantCulture).Length] + gaps + "-distance-box")
            .WaitForAsync();
        await Assertions.Expect(page.Locator(last + "-steer-box")).ToHaveValueAsync("to the left");

        // Once, not twice.
        Assert.Equal(0, await page.Locator(last[..^(gaps - 1).ToString(System.Globalization.CultureInfo.InvariantCulture).Length]
            + (gaps + 1) + "-distance-box").CountAsync());
        Assert.Empty(visitor.Complaints);
    }

    private static Occasion Read(Car car)
    {
        double[] heights = [426, 420.5, 430, 431];
        return Places.Corners.Aggregate(
            new Occasion { Id = "read-1", Name = "First readings", LoadCase = car.LoadCases[0].Id, Fitted = car.Build("gravel-3")! },
            (occasion, place) => occasion.With(place, new CornerReadings { Height = Reading.Of(
                FormattableString.Invariant($"{heights[(int)place]} mm"), Dimension.Length) with { Source = ReadingSource.Tape } }));
    }
}
