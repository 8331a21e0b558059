using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Pages;

namespace Cornerwright.Web.Tests.Pages;

public sealed class HardpointsPageTests : PageContext
{
    // An invented strut: hub face, arm, tie rod, strut.
    private const string Strut =
        "Point\tX\tY\tZ\tTolerance\nCentre of the hub's face\t2\t690\t311\t1\nLower arm, front pivot\t18.5\t371\t214\t2\nLower arm, rear "
            + "pivot\t-276\t388\t208.5\t2\n" +
        "Lower ball joint\t6\t703\t186\t2\nTie rod, inner joint\t-142\t352\t274\t2\nTie rod, outer "
            + "joint\t-128\t690\t262\t2\nStrut top\t-31\t583\t846\t2\nLower point on the strut\t-4\t668\t402\t2\n";

    private IRenderedComponent<HardpointsPage> Open(string place = "rear-left")
    {
        var page = Render<HardpointsPage>(p => p.Add(x => x.Id, CarId).Add(x => x.Place, place));
        page.WaitForElement("h1");
        return page;
    }

    private IRenderedComponent<HardpointsPage> Pasted(string block)
    {
        var page = Open();
        Press(page, "Start a table");
        page.WaitForElement("#paste-block");
        Act(page, () => page.Find("#paste-block").Change(block));
        Press(page, "Take the points");
        return page;
    }

    [Fact]
    public void A_pasted_strut_is_in_the_car_and_drawn_from_three_sides_and_undo_takes_it_back()
    {
        var page = Pasted(Strut);
        page.WaitForAssertion(() => Assert.Equal(3, page.FindAll("figure[data-side]").Count));
        Assert.Equal(0.583, Bench.Car!.RearLeft.Hardpoints!.StrutTop!.Y!.Si, 1e-12);
        // Two legs, tie rod, strut and its spring, and three arms of the wheel carrier.
        Assert.All(page.FindAll("figure[data-side] svg"), view =>
            Assert.Equal((8, 8), (view.QuerySelectorAll("line").Length, view.QuerySelectorAll("circle").Length)));
        Assert.Equal("Seen from the front: 8 links between 8 points", page.FindAll("figure[data-side] svg")[0].GetAttribute("aria-label"));
        Bench.Undo();
        Assert.Null(Bench.Car!.RearLeft.Hardpoints!.StrutTop);
    }

    [Fact]
    public void A_wrong_cell_is_named_and_neither_the_text_nor_the_table_is_lost()
    {
        string block = Strut.Replace("703", "7o3", StringComparison.Ordinal).Replace("846", "84600", StringComparison.Ordinal);
        var page = Pasted(block);
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".cw-problem.refused").Count));
        Assert.Contains("row 5, Lower ball joint / Y, left", page.Markup, StringComparison.Ordinal);
        Assert.Equal(block, page.Find("#paste-block").GetAttribute("value"));
        Assert.Null(Bench.Car!.RearLeft.Hardpoints!.StrutTop);
        Assert.Contains("Still needed:", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Written_rows_can_be_taken_back()
    {
        var page = Pasted(Strut);
        var before = Bench.Car!.RearLeft.Hardpoints;
        Press(page, "Write the table as rows");
        page.WaitForAssertion(() =>
            Assert.Contains("Strut top\t-31 mm", page.Find("#paste-block").GetAttribute("value"), StringComparison.Ordinal));
        Press(page, "Take the points");
        page.WaitForAssertion(() => Assert.Equal(before, Bench.Car!.RearLeft.Hardpoints));
    }

    [Fact]
    public void The_verdict_goes_by_the_points_once_it_is_let_and_undo_takes_that_back()
    {
        var page = Open("front-left");
        var before = Bench.Car!.FrontLeft.Motion.Level;
        Assert.NotEqual(MotionLevel.Hardpoints, before);
        page.WaitForElement(".stage");
        Press(page, "Let the verdict go by these points");
        page.WaitForAssertion(() => Assert.Contains("goes by these points", page.Markup, StringComparison.Ordinal));
        Assert.Equal(MotionLevel.Hardpoints, Bench.Car!.FrontLeft.Motion.Level);
        Bench.Undo();
        Assert.Equal(before, Bench.Car!.FrontLeft.Motion.Level);
    }

    [Fact]
    public async Task A_table_just_started_and_a_point_half_typed_stop_nothing_from_being_kept()
    {
        var page = Open();
        Press(page, "Start a table");
        page.WaitForElement("td input");
        Bench.Apply("Name", car => car with { Name = "beside a started table" });
        await Bench.SaveNow();
        Assert.Equal((SavedState.Saved, "beside a started table", null), (Bench.Saved, Stored().Name, Stored().RearLeft.Hardpoints));

        Act(page, () => page.Find("td input[aria-label^='Centre of the hub']").Change("2"));
        Bench.Apply("Name", car => car with { Name = "beside half a point" });
        await Bench.SaveNow();
        Assert.Equal((SavedState.Saved, "beside half a point"), (Bench.Saved, Stored().Name));
        Assert.Null(Stored().RearLeft.Hardpoints?.HubFace);
        Assert.Contains("Y, left and Z, up", Assert.Single(Bench.NotYetKept).Why, StringComparison.Ordinal);
        Assert.Equal("2", page.Find("td input[aria-label^='Centre of the hub']").GetAttribute("value"));

        Act(page, () => page.FindAll("td input[aria-label^='Centre of the hub']")[1].Change("690"));
        Act(page, () => page.FindAll("td input[aria-label^='Centre of the hub']")[2].Change("311"));
        await Bench.SaveNow();
        Assert.Equal(0.311, Stored().RearLeft.Hardpoints!.HubFace!.Z!.Si, 1e-12);
        Assert.Empty(Bench.NotYetKept);
    }

    private Car Stored() => Garage.Store.Load(CarId).Value.Car;

    [Fact]
    public void A_corner_that_no_car_has_is_told_kindly()
    {
        var page = Open("middle");
        page.WaitForAssertion(() => Assert.Contains("four corners", page.Markup, StringComparison.Ordinal));
    }
}
