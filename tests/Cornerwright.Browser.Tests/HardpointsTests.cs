using System.Globalization;
using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Web.Components.Linkages;
using Cornerwright.Workshop.Linkages;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace Cornerwright.Browser.Tests;

/// <summary>Hardpoints in the browser: typed and pasted, drawn and moved, compared, fitted, saved as a file.</summary>
[Collection(BrowserTests.Name)]
public class HardpointsTests(WorkshopDoor door, ITestOutputHelper output)
{
    private const string Page = "/corner/front-left/hardpoints";

    private const string Strut =
        "Centre of the hub's face\t2\t690\t311\t1\nLower arm, front "
            + "pivot\t18.5\t371\t214\t2\nLower arm, rear pivot\t-276\t388\t208.5\t2\nLower ball joint\t6\t703\t186\t2\n" +
        "Tie rod, inner joint\t-142\t352\t274\t2\nTie rod, outer "
            + "joint\t-128\t690\t262\t2\nStrut top\t-31\t583\t846\t2\nLower point on the strut\t-4\t668\t402\t2\n";

    private static int DragMs =>
        int.TryParse(Environment.GetEnvironmentVariable("CORNERWRIGHT_DRAG_MS"), CultureInfo.InvariantCulture, out int ms)
        ? Math.Clamp(ms, 500, 15_000) : 1500;

    private static Car WithPoints(Car car) => car.With(
        CornerPlace.FrontLeft,
        car.FrontLeft with { Hardpoints = HardpointBlock.Read(new HardpointTable(), Strut, Units.Millimetre, ReadingSource.Tape).Value });

    private static Car WithoutPoints(Car car) => car.With(CornerPlace.FrontLeft, car.FrontLeft with { Hardpoints = null })
        .With(CornerPlace.FrontRight, car.FrontRight with { Hardpoints = null });

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task A_pasted_table_is_drawn_and_fits(int width)
    {
        string car = door.OwnDemoCar($"points-{width}", WithoutPoints);
        await using var visitor = await door.Visit(width);
        await visitor.Open(car + Page);
        await visitor.Page.GetByText("Start a table").ClickAsync();
        await visitor.Page.Locator("#paste-block").FillAsync(Strut);
        await visitor.Page.GetByText("Take the points").ClickAsync();
        await visitor.Page.Locator(".stage[data-solid=yes]").WaitForAsync();
        Assert.Equal(3 * 8, await visitor.Page.Locator("figure[data-side] line").CountAsync());
        int over =
            await visitor.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"at {width}: wider than the screen by {over} px");
        await visitor.Page.Locator("[data-chart=travel-camber]").WaitForAsync();
        await visitor.Shoot("hardpoints-filled", "light");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await visitor.Shoot("hardpoints-filled", "dark");
        Assert.Empty(visitor.Complaints);
    }

    /// <summary>
    /// Travel, rack and plate move the solid view, the plain views and the figures, to what the library says of that pose.
    /// </summary>
    [Fact]
    public async Task Sliders_move_the_linkage_to_the_pose_that_the_library_computes()
    {
        string car = door.OwnDemoCar("moved", WithPoints);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page + "?build=now");
        await page.Locator(".stage[data-solid=yes]").WaitForAsync();
        var ball = page.Locator("figure[data-side=Front] circle[data-joint=LowerBall]");
        double before = await Number(ball, "cy");
        string hubBefore = (await page.Locator(".view").GetAttributeAsync("data-hub"))!;

        await Set(page, "linkage-travel", s => s + 60);     // half millimetres
        await Set(page, "linkage-rack", s => s + 40);
        await Set(page, "linkage-plate", s => s + 10);
        var stage = page.Locator(".stage[data-travel='30'][data-rack='20'][data-plate='5']");
        await stage.WaitForAsync();
        Assert.True(await Number(ball, "cy") < before - 5, "the ball joint did not rise in the plain view");
        await Assertions.Expect(page.Locator(".view")).Not.ToHaveAttributeAsync("data-hub", hubBefore);

        var points = LinkageOf.Corner(door.Kept("moved"), CornerPlace.FrontLeft).Value;
        var motion = new HardpointMotion(points.Ready(), 0.02, 0.005);
        Assert.Equal(Reach.Reached, motion.GeometryAt(0.03, out var wheel));
        await Assertions.Expect(page.Locator("[data-figure=camber]")).ToHaveTextAsync(QuantityText.Write(wheel.Camber, Units.Degree, 2));
        await Assertions.Expect(page.Locator("[data-figure=toe]")).ToHaveTextAsync(QuantityText.Write(wheel.Toe, Units.Degree, 2));
        await Assertions.Expect(page.Locator("[data-figure=spring-ratio]"))
            .ToHaveTextAsync(QuantityText.Write(wheel.Spring!.Value.MotionRatio, Units.One, 3));
        var hub = wheel.Centre + (wheel.Spindle * points.HubFaceOutboard);
        double[] drawn = [.. (await page.Locator(".view").GetAttributeAsync("data-hub"))!.Split(' ')
            .Select(t => double.Parse(t, CultureInfo.InvariantCulture))];
        Assert.Equal([hub.X, hub.Y, hub.Z], drawn, (a, b) => Math.Abs(a - b) < 1e-4);

        // Where it was left stands in the address, and an address brings it there.
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("travel=30.*rack=20.*plate=5"));
        await page.ReloadAsync();
        await stage.WaitForAsync();

        // Another page gives the graphics back, quietly.
        await page.Locator(".cw-page-head >> text=Readings of this corner").ClickAsync();
        await page.Locator("h1", new PageLocatorOptions { HasText = "Readings" }).WaitForAsync();
        Assert.Equal(0, await page.Locator("canvas").CountAsync());
        Assert.Empty(visitor.Complaints);
    }

    /// <summary>
    /// How often a second the linkage is drawn anew while a slider is dragged:
    /// printed, not asserted; asserted is that the last value arrives.
    /// </summary>
    [Fact]
    public async Task A_dragged_slider_draws_smoothly_and_ends_where_it_was_let_go()
    {
        string car = door.OwnDemoCar("dragged", WithPoints);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page + "?build=now");
        await page.Locator(".stage[data-solid=yes]").WaitForAsync();
        const string Drag =
            """
            async milliseconds => {
              const input = document.querySelector('[data-slider=linkage-travel] input'), view = document.querySelector('.view');
              let poses = 0;
              const watch = new MutationObserver(list => { poses += list.length; });
              watch.observe(view, { attributes: true, attributeFilter: ['data-hub'] });
              const from = performance.now(), middle = Number(input.max) / 2, drawn = Number(view.dataset.drawn);
              await new Promise(done => {
                const step = now => {
                  if (now - from > milliseconds) { done(); return; }
                  input.valueAsNumber = Math.round(middle + 80 * Math.sin((now - from) / 250));
                  input.dispatchEvent(new Event('input', { bubbles: true }));
                  requestAnimationFrame(step);
                };
                requestAnimationFrame(step);
              });
              const seconds = (performance.now() - from) / 1000;
              const result = [poses / seconds, (Number(view.dataset.drawn) - drawn) / seconds];
              input.valueAsNumber = Math.floor(middle) + 31;
              input.dispatchEvent(new Event('input', { bubbles: true }));
              input.dispatchEvent(new Event('change', { bubbles: true }));
              watch.disconnect();
              return result;
            }
            """;
        int measured = int.Parse(await page.Locator("[data-slider=linkage-travel] input").InputValueAsync(), CultureInfo.InvariantCulture);
        await page.EvaluateAsync<double[]>(Drag, 500);
        double[] rates = await page.EvaluateAsync<double[]>(Drag, DragMs);
        output.WriteLine($"linkage drag: {rates[0]:F1} poses and {rates[1]:F1} redraws in three "
            + $"dimensions a second (software graphics, server and browser on the same cores)");
        int middle = int.Parse((await page.Locator("[data-slider=linkage-travel] input").GetAttributeAsync("max"))!,
            CultureInfo.InvariantCulture) / 2;
        await Assertions.Expect(page.Locator(".stage[data-solid]"))
            .ToHaveAttributeAsync("data-travel", (0.5 * (middle + 31 - measured)).ToString("0.###", CultureInfo.InvariantCulture));
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task Keys_turn_the_view_and_without_graphics_the_plain_views_move_in_its_stead()
    {
        string car = door.OwnDemoCar("flat", WithPoints);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page);
        await page.Locator(".stage[data-solid=yes]").WaitForAsync();
        var view = page.Locator(".view");
        await view.FocusAsync();
        string drawn = (await view.GetAttributeAsync("data-drawn"))!;
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(view).Not.ToHaveAttributeAsync("data-drawn", drawn);

        await page.AddInitScriptAsync("HTMLCanvasElement.prototype.getContext = () => null;");
        await page.ReloadAsync();
        await page.Locator(".stage[data-solid=no]").WaitForAsync();
        await page.GetByText("does not draw in three dimensions").WaitForAsync();
        var ball = page.Locator("figure[data-side=Street] circle[data-joint=LowerBall]");
        double before = await Number(ball, "cy");
        await Set(page, "linkage-travel", s => s + 50);
        await page.Locator(".stage[data-travel='25']").WaitForAsync();
        Assert.True(await Number(ball, "cy") < before - 4);
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task Curves_are_the_library_s_follow_the_chosen_build_and_go_into_a_file()
    {
        string car = door.OwnDemoCar("curves", WithPoints);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page + "?build=gravel-1");
        await page.Locator("[data-chart=travel-camber] path.proposed").WaitForAsync();
        await page.Locator("[data-chart=travel-camber] circle.proposed").WaitForAsync();
        var kept = door.Kept("curves");
        double least =
            double.Parse((await page.Locator("[data-curves=travel]").GetAttributeAsync("data-least"))!, CultureInfo.InvariantCulture);
        double most =
            double.Parse((await page.Locator("[data-curves=travel]").GetAttributeAsync("data-most"))!, CultureInfo.InvariantCulture);
        foreach (var (key, line, build) in new[] { ("camber", 0, "now"), ("roll-centre", 1, "gravel-1"), ("scrub", 1, "gravel-1") })
        {
            var points = LinkageOf.Corner(kept, CornerPlace.FrontLeft, kept.Build(build)).Value;
            var setting = LinkageSetting.Of(kept, CornerPlace.FrontLeft, kept.Build(build), null).Value;
            var motion = new HardpointMotion(points.Ready(), 0, points.Plate);
            var quantity = LinkageQuantity.All.Single(q => q.Key == key);
            double[][] lines = JsonSerializer.Deserialize<double[][]>(
                (await page.Locator($"[data-chart=travel-{key}]").GetAttributeAsync("data-lines"))!)!;
            for (int i = 0; i < LinkageSweep.Count; i += 10)
            {
                double travel = (least + ((most - least) * i / (LinkageSweep.Count - 1))) / 1000;
                motion.GeometryAt(travel, out var wheel);
                Assert.Equal(quantity.Shown(wheel, setting)!.Value, lines[line][i], Math.Pow(10, -quantity.Decimals - 2));
            }
        }

        // One cursor through all charts, by the keys of its slider.
        var cursor = page.Locator("#travel-cursor");
        string spoken = (await cursor.GetAttributeAsync("aria-valuetext"))!;
        await cursor.FocusAsync();
        await page.Keyboard.PressAsync("PageUp");
        await Assertions.Expect(cursor).Not.ToHaveAttributeAsync("aria-valuetext", spoken);
        await Assertions.Expect(page.Locator("[data-chart=travel-toe] .read")).ToContainTextAsync("now");

        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("[data-curves=travel] >> text=Save as CSV").ClickAsync());
        Assert.Equal("curves-front-left-travel.csv", download.SuggestedFilename);
        string[] rows = (await File.ReadAllTextAsync((await download.PathAsync())!)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(1 + LinkageSweep.Count, rows.Length);
        Assert.StartsWith("\"travel, mm\",\"camber, ° (now)\"", rows[0], StringComparison.Ordinal);
        double[][] camber =
            JsonSerializer.Deserialize<double[][]>((await page.Locator("[data-chart=travel-camber]").GetAttributeAsync("data-lines"))!)!;
        Assert.Equal(camber[0][^1], double.Parse(rows[^1].Split(',')[1], CultureInfo.InvariantCulture), 1e-4);
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task The_sheet_of_points_takes_keys_a_pasted_block_and_says_at_the_cell_what_is_wrong()
    {
        string car = door.OwnDemoCar("cells", WithPoints);
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page);
        ILocator Cell(int r, int c) => page.Locator($"input[data-r='{r}'][data-c='{c}']");
        await Cell(1, 1).FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(Cell(2, 1)).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(Cell(3, 2)).ToBeFocusedAsync();

        // The point of the row stands out in the plain views.
        await page.Locator("figure[data-side=Front] circle.sought[data-joint=LowerBall]").WaitForAsync();
        await Cell(3, 2).FillAsync("1 86");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(Cell(3, 2)).ToHaveAttributeAsync("aria-invalid", "true");
        await page.Locator("tr.why", new PageLocatorOptions { HasText = "Lower ball joint / Z, up" }).WaitForAsync();
        await Cell(3, 2).FillAsync("187.5");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("tr.why")).ToHaveCountAsync(0);

        await Cell(1, 0).FocusAsync();
        await page.EvaluateAsync(
            """
            () => {
              const data = new DataTransfer();
              data.setData('text/plain', '19\t372\t215\t1\n-275\t389\t209\t1\n');
              document.activeElement.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
            }
            """);
        await page.GetByText("The points stand in the table.").WaitForAsync();
        await Assertions.Expect(Cell(2, 1)).ToHaveValueAsync("389");
        await Assertions.Expect(Cell(1, 3)).ToHaveValueAsync("1");
        await page.Locator("button[aria-label^='Undo: Paste hardpoints']").ClickAsync();
        await Assertions.Expect(Cell(2, 1)).ToHaveValueAsync("388");
        await Assertions.Expect(Cell(3, 2)).ToHaveValueAsync("187.5");
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task A_fit_is_looked_at_taken_and_undone_in_one_step()
    {
        string car = door.OwnDemoCar("fit", demo => Cycled(WithPoints(demo)));
        await using var visitor = await door.Visit();
        var page = visitor.Page;
        await visitor.Open(car + Page);
        ILocator z = page.Locator("input[data-r='3'][data-c='2']");
        await Assertions.Expect(z).ToHaveValueAsync("186");
        await page.GetByText("Fit the points").ClickAsync();
        await page.Locator("[data-fit=Converged]").WaitForAsync();
        await Assertions.Expect(z).ToHaveValueAsync("186");
        await page.GetByText("Take these points").ClickAsync();
        await Assertions.Expect(z).Not.ToHaveValueAsync("186");
        await Assertions.Expect(page.Locator("#h-fit")).ToBeVisibleAsync();
        await page.Locator("button[aria-label^='Undo: Fit the hardpoints']").ClickAsync();
        await Assertions.Expect(z).ToHaveValueAsync("186");

        await page.GetByText("Fit the points").ClickAsync();
        await page.GetByText("Leave them as they were").ClickAsync();
        await Assertions.Expect(page.Locator("[data-fit]")).ToHaveCountAsync(0);
        Assert.Empty(visitor.Complaints);
    }

    /// <summary>Readings as a wheel gives them whose camber falls a little faster than the points say.</summary>
    private static Car Cycled(Car car)
    {
        var motion = new HardpointMotion(LinkageOf.Corner(car, CornerPlace.FrontLeft).Value.Ready());
        CycledStep Step(double travel)
        {
            Assert.Equal(Reach.Reached, motion.WheelAt(travel, out var wheel));
            return new CycledStep
            {
                Travel = Reading.Of($"{travel * 1000:0} mm", Dimension.Length, "0.3 mm", ReadingSource.Tape),
                Camber = Reading.Of(FormattableString.Invariant($"{(wheel.Camber * 180 / Math.PI) - (2.5 * travel):0.000} deg"),
                    Dimension.Angle, "0.05 deg", ReadingSource.Gauge),
            };
        }

        double[] travels = [-0.05, -0.025, 0.025, 0.05];
        return car.With(CornerPlace.FrontLeft,
            car.FrontLeft with { Motion = car.FrontLeft.Motion with { Steps = [.. travels.Select(Step)] } });
    }

    private static async Task<double> Number(ILocator locator, string attribute) =>
        double.Parse((await locator.GetAttributeAsync(attribute))!, CultureInfo.InvariantCulture);

    /// <summary>Moves a slider as a hand does: input, then change.</summary>
    private static async Task Set(IPage page, string name, Func<int, int> to)
    {
        var input = page.Locator($"[data-slider={name}] input");
        int value = to(int.Parse(await input.InputValueAsync(), CultureInfo.InvariantCulture));
        await input.EvaluateAsync("(input, value) => { input.valueAsNumber = value; input.dispatchEvent(new "
            + "Event('input', { bubbles: true })); input.dispatchEvent(new Event('change', { bubbles: true })); }", value);
        await Assertions.Expect(page.Locator($".stage[data-{name.Split('-')[1]}]")).ToBeVisibleAsync();
        await page.WaitForTimeoutAsync(150);
    }
}
