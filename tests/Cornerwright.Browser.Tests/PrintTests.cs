using Microsoft.Playwright;
using Xunit.Abstractions;

namespace Cornerwright.Browser.Tests;

[Collection(BrowserTests.Name)]
public class PrintTests(WorkshopDoor door, ITestOutputHelper output)
{
    /// <summary>Front assembly, rear assembly, parts and set-up take a page each; the findings follow on as many as they need.</summary>
    [Fact]
    public async Task Sheets_print_on_a4_each_on_its_own_page()
    {
        await using var visitor = await door.Visit();
        await visitor.Open("/car/wagtail/build/gravel-3/print");
        await visitor.Page.Locator("[data-sheets=ready]").WaitForAsync();
        int sheets = await visitor.Page.Locator(".paper").CountAsync();
        byte[] pdf = await visitor.Page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true, PrintBackground = false });
        int pages = Chromium.PagesOf(pdf);
        output.WriteLine($"{sheets} sheets on {pages} pages");
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_SHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllBytesAsync(Path.Combine(folder, "sheets.pdf"), pdf);
        }

        // A4 in points.
        string text = System.Text.Encoding.Latin1.GetString(pdf);
        Assert.Matches(@"/MediaBox\s*\[\s*0 0 (595|594\.9)\S* (842|841\.9)\S*\s*\]", text);
        Assert.Equal(5, sheets);
        Assert.InRange(pages, 6, 9);
    }

    /// <summary>On paper the tool bars are gone and every caution is there.</summary>
    [Fact]
    public async Task Paper_carries_the_cautions_and_no_buttons()
    {
        await using var visitor = await door.Visit();
        await visitor.Open("/car/wagtail/build/gravel-3/print");
        await visitor.Page.Locator("[data-sheets=ready]").WaitForAsync();
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.Equal(0, await visitor.Page.Locator("button:visible, nav:visible").CountAsync());
        string paper = await visitor.Page.Locator(".sheets").InnerTextAsync();
        foreach (string caution in (
            string[])["car on stands", "spring compressor", "50 to 100 km", "at ride height", "licensed workshop decide"])
        {
            Assert.Contains(caution, paper, StringComparison.Ordinal);
        }
    }
}
