namespace Cornerwright.Browser.Tests;

/// <summary>Points pasted in the browser are drawn, and the filled page fits at desk and phone width.</summary>
[Collection(BrowserTests.Name)]
public class HardpointsTests(WorkshopDoor door)
{
    private const string Strut =
        "Centre of the hub's face\t2\t690\t311\t1\nLower arm, front pivot\t18.5\t371\t214\t2\nLower arm, rear pivot\t-276\t388\t208.5\t2\nLower ball joint\t6\t703\t186\t2\n" +
        "Tie rod, inner joint\t-142\t352\t274\t2\nTie rod, outer joint\t-128\t690\t262\t2\nStrut top\t-31\t583\t846\t2\nLower point on the strut\t-4\t668\t402\t2\n";

    [Theory]
    [InlineData(1440)]
    [InlineData(390)]
    public async Task A_pasted_table_is_drawn_and_fits(int width)
    {
        string car = door.OwnDemoCar($"points-{width}");
        await using var visitor = await door.Visit(width);
        await visitor.Open(car + "/corner/front-left/hardpoints");
        await visitor.Page.GetByText("Start a table").ClickAsync();
        await visitor.Page.Locator("#paste-block").FillAsync(Strut);
        await visitor.Page.GetByText("Take the points").ClickAsync();
        await visitor.Page.GetByText("Every point that this kind needs is given").WaitForAsync();
        Assert.Equal(3 * 4, await visitor.Page.Locator("figure line").CountAsync());
        int over = await visitor.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"at {width}: wider than the screen by {over} px");
        await visitor.Shoot("hardpoints-filled", "light");
    }
}
