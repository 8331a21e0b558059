using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>Three jobs as they come out of the printer. CORNERWRIGHT_SHOTS keeps the PDF files to read.</summary>
[Collection(BrowserTests.Name)]
public class OrderPrintTests(WorkshopDoor door)
{
    private static Build Both(Build build, AxlePlace axle, Func<CornerBuild, CornerBuild> change) =>
        Places.Corners.Where(c => c.Axle() == axle).Aggregate(build, (b, c) => b.With(c, change(b.At(c))));

    private static (string From, Build To) Of(Car car, string job)
    {
        var touring = car.Build("touring")!;
        var now = car.Build("now")!;
        return job switch
        {
            "springs" =>
                ("touring", Both(touring, AxlePlace.Front, c => c with { Stack = ["f-helper", "f-adapter", "f-6-250"],
                    PerchHeight = car.Build("gravel-2")!.FrontLeft.PerchHeight }) with { Id = "job", Name = "Front springs with helpers" }),
            "wheels" => ("now", Both(
                Both(now, AxlePlace.Front, c => c with { Wheel = "w-gravel", Tyre = "t-gravel-55", Spacer = "sp-8" }),
                AxlePlace.Rear, c => c with { Wheel = "w-gravel", Tyre = "t-gravel-55", Spacer = "sp-5" }) with { Id = "job",
                    Name = "Gravel wheels with spacers" }),
            _ => ("touring",
                Both(touring, AxlePlace.Front, c => c with { TopMount = "m-now" }) with { Id = "job", Name = "Rubber top mounts" }),
        };
    }

    [Theory]
    [InlineData("springs", 4, 7)]
    [InlineData("wheels", 3, 4)]
    [InlineData("mounts", 4, 7)]
    public async Task A_job_prints_on_a_few_pages(string job, int least, int most)
    {
        string from = "";
        string address = door.OwnDemoCar("print-" + job, car =>
        {
            (from, var to) = Of(car, job);
            return car with { Builds = [.. car.Builds, to] };
        });
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open($"{address}/build/job/order?from={from}");
        await page.Locator("[data-order=ready]").WaitForAsync();
        if (job != "wheels")
        {
            await page.Locator("[data-order=ready] figure svg").First.WaitForAsync();
        }

        byte[] pdf = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_SHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllBytesAsync(Path.Combine(folder, $"order-{job}.pdf"), pdf);
        }

        Assert.InRange(Chromium.PagesOf(pdf), least, most);
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task From_the_order_through_the_ticks_to_the_log_and_the_next_order()
    {
        string address = door.OwnDemoCar("order-to-log");
        await using var visitor = await door.Visit(390);
        var page = visitor.Page;
        await visitor.Open(address + "/build/gravel-2/order?from=winter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin this job" }).ClickAsync();
        await page.Locator("body.job.live").WaitForAsync();
        int steps = await page.Locator("[data-step]").CountAsync();
        for (int i = 0; i < steps; i++)
        {
            await page.Locator("#tick").ClickAsync();
        }

        await page.Locator("#sending[data-state=sent]").WaitForAsync();
        await Assertions.Expect(page.Locator("#done-count")).ToHaveTextAsync($"{steps}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Back to the log" }).ClickAsync();
        await page.Locator("[data-job]").WaitForAsync();
        await Assertions.Expect(page.Locator("[data-job]")).ToContainTextAsync($"{steps} steps ticked");
        await page.GetByRole(AriaRole.Button, new() { Name = "Finish", Exact = true }).ClickAsync();
        await page.Locator(".finish input:not([type=date])").FillAsync("84910 km");
        await page.GetByRole(AriaRole.Button, new() { Name = "Finish it and note it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".due")).ToContainTextAsync("between 84960 km and 85010 km");

        for (int i = 0; i < 100 && door.Kept("order-to-log").Log.Jobs[0].Finished is null; i++)
        {
            await Task.Delay(100);
        }

        // The next order starts from what is on the car now.
        await visitor.Open(address + "/build/gravel-3/order");
        await Assertions.Expect(page.Locator(".lead").First).ToContainTextAsync("From Gravel, reworked");
        Assert.Empty(visitor.Complaints);
    }
}
