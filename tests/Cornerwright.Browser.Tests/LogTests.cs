using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>The log: heights against predictions, photos, and what a return to an older set-up leaves alone.</summary>
[Collection(BrowserTests.Name)]
public class LogTests(WorkshopDoor door)
{
    // A picture of one pixel. Source: PNG (Third Edition), W3C: signature, IHDR, IDAT, IEND.
    private const string Pixel = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

    private static Occasion Read(Car car, string id, string build, string date, params double[] heightsMm)
    {
        Reading Height(double mm) => Reading.Parse("height", Dimension.Length, FormattableString.Invariant($"{mm} mm"), "1.5 mm",
            source: ReadingSource.Tape, date: DateOnly.Parse(date, System.Globalization.CultureInfo.InvariantCulture)).Value;
        return Places.Corners.Aggregate(new Occasion { Id = id, Name = id, Fitted = car.Build(build)! }, (o, c) =>
            o.With(c, new CornerReadings { Height = Height(heightsMm[(int)c]) }));
    }

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task Heights_stand_against_their_predictions_and_a_photo_is_kept(int width)
    {
        string id = $"log-{width}";
        string address = door.OwnDemoCar(id, car => car with
        {
            Occasions = [Read(car, "First fit", "gravel-2", "2026-10-10", 420, 418, 437, 439),
                Read(car, "After settling", "gravel-2", "2026-10-24", 416, 415, 434, 435)],
        });
        await using var visitor = await door.Visit(width);
        var page = visitor.Page;
        await visitor.Open(address + "/log");
        await Assertions.Expect(page.Locator("svg.miss circle")).ToHaveCountAsync(8);
        await page.Locator(".entries details summary").First.ClickAsync();
        await page.Locator(".entries details[open] input[type=file]")
            .SetInputFilesAsync(new FilePayload { Name = "arch.png", MimeType = "image/png", Buffer = Convert.FromBase64String(Pixel) });
        var picture = page.Locator(".photos img");
        await picture.WaitForAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('.photos img')?.naturalWidth === 1");
        int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"wider than the screen by {over} px");
        await visitor.Shoot("log-heights", "light");
        await Wait(() => door.Kept(id).Log.Entries.Any(e => e.Photos.Count == 1));
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task An_older_set_up_comes_back_and_the_log_stays()
    {
        const string Id = "log-return";
        string address = door.OwnDemoCar(Id);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(address + "/log");
        int before = door.Kept(Id).Log.Entries.Count;
        await page.GetByRole(AriaRole.Button, new() { Name = "Note", Exact = true }).ClickAsync();
        await Wait(() => door.Kept(Id).Log.Entries.Count == before + 1);
        await visitor.Open(address + "/history");
        await page.GetByRole(AriaRole.Button, new() { Name = "Return to it" }).Last.ClickAsync();
        await page.GetByText("Returned to revision 1").WaitForAsync();
        Assert.Equal(before + 1, door.Kept(Id).Log.Entries.Count);
    }

    [Fact]
    public async Task The_sheets_of_an_older_revision_show_its_own_settings()
    {
        const string Id = "old-sheets";
        string address = door.OwnDemoCar(Id);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(address + "/build/gravel-3");
        var box = page.Locator("#at-builds-gravel-3-frontLeft-perchHeight input").First;
        await box.FillAsync("301 mm");
        await box.PressAsync("Tab");
        await Wait(() => door.Kept(Id).Build("gravel-3")!.FrontLeft.PerchHeight!.Typed == "301 mm");

        await visitor.Open(address + "/history");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sheets of revision 1", Exact = true }).ClickAsync();
        await page.Locator("[data-sheets=ready]").WaitForAsync();
        await Assertions.Expect(page.Locator(".cw-page-head p")).ToContainTextAsync("As it was in revision 1.");
        await Assertions.Expect(page.Locator(".sheets")).Not.ToContainTextAsync("301 mm");
        await visitor.Open(address + "/build/gravel-3/print?revision=99");
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Revision 99 of this car has no build");
        await visitor.Open(address + "/build/gravel-3/print");
        await page.Locator("[data-sheets=ready]").WaitForAsync();
        await Assertions.Expect(page.Locator(".sheets")).ToContainTextAsync("301 mm");
        Assert.Empty(visitor.Complaints);
    }

    private static async Task Wait(Func<bool> until)
    {
        for (int i = 0; i < 200 && !until(); i++)
        {
            await Task.Delay(100);
        }

        Assert.True(until());
    }
}
