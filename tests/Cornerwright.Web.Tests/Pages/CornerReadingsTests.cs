using AngleSharp.Dom;
using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Pages;

namespace Cornerwright.Web.Tests.Pages;

public sealed class CornerReadingsTests : PageContext
{
    private const string Height = "#at-frontLeft-rideHeight-box";

    private IRenderedComponent<CornerReadings> Open(string place = "front-left")
    {
        var page = Render<CornerReadings>(p => p.Add(x => x.Id, CarId).Add(x => x.Place, place));
        page.WaitForElement("h1");
        return page;
    }

    [Fact]
    public void A_typed_reading_reaches_the_car_as_typed_and_undo_takes_it_back()
    {
        var page = Open();
        page.WaitForElement(Height);
        Act(page, () => page.Find(Height).Change("13 3/8 in"));
        var reading = Bench.Car!.FrontLeft.RideHeight!;
        Assert.Equal("13 3/8 in", reading.Typed);
        Assert.Equal(0.339725, reading.Si, 1e-12);   // 13.375 × 0.0254 m, exact by definition
        page.WaitForAssertion(() =>
            Assert.Contains("339.725 mm", page.Find("#at-frontLeft-rideHeight-used").TextContent, StringComparison.Ordinal));
        Bench.Undo();
        page.WaitForAssertion(() => Assert.Equal(Bench.Car!.FrontLeft.RideHeight!.Typed, page.Find(Height).GetAttribute("value")));
    }

    [Fact]
    public void Text_that_cannot_be_read_stays_in_its_box_with_the_whole_message_and_survives_leaving_the_page()
    {
        var page = Open();
        var before = Bench.Car;
        page.WaitForElement(Height);
        Act(page, () => page.Find(Height).Change("34o mm"));
        Assert.Same(before, Bench.Car);
        Assert.Equal("34o mm", page.Find(Height).GetAttribute("value"));
        Assert.Equal("true", page.Find(Height).GetAttribute("aria-invalid"));
        string message = page.Find("#at-frontLeft-rideHeight .cw-problem").TextContent;
        Assert.Contains("34o mm", message, StringComparison.Ordinal);
        Assert.Matches("is not accepted\\. Allowed: .+\\. \\S", message);

        var again = Open();
        Assert.Equal("34o mm", again.WaitForElement(Height).GetAttribute("value"));
        Act(again, () => again.Find(Height).Change("340 mm"));
        Assert.Equal("340 mm", Bench.Car!.FrontLeft.RideHeight!.Typed);
        Assert.Empty(Bench.Drafts);
    }

    [Fact]
    public void Tolerance_source_and_date_are_part_of_the_reading()
    {
        var page = Open();
        page.WaitForElement(Height);
        Act(page, () => page.Find(Height).Change("340 mm"));
        Act(page, () => page.Find("#at-frontLeft-rideHeight [aria-label^='Tolerance of']").Change("0.5"));
        Act(page, () => page.Find("#at-frontLeft-rideHeight [aria-label^='Source of']").Change(nameof(ReadingSource.Calliper)));
        Act(page, () => page.Find("#at-frontLeft-rideHeight [aria-label^='Date of']").Change("2026-05-31"));
        var reading = Bench.Car!.FrontLeft.RideHeight!;
        Assert.Equal("0.5 mm", reading.Tolerance!.Amount.Typed);
        Assert.Equal(ReadingSource.Calliper, reading.Source);
        Assert.Equal(new DateOnly(2026, 5, 31), reading.Date);
    }

    [Fact]
    public void Every_box_has_a_label_and_every_id_stands_once()
    {
        foreach (string place in new[] { "front-left", "rear-right" })
        {
            var page = Open(place);
            page.WaitForElement(".reading");
            var ids = page.FindAll("[id]").Select(e => e.Id!).ToList();
            Assert.Empty(ids.GroupBy(x => x).Where(g => g.Count() > 1).Select(g => g.Key));
            Assert.All(page.FindAll("input, select, textarea"), box => Assert.True(IsLabelled(page, box), box.OuterHtml));
        }
    }

    private static bool IsLabelled(IRenderedComponent<CornerReadings> page, IElement box) =>
        box.HasAttribute("aria-label") || box.Closest("label") is not null || page.FindAll($"label[for='{box.Id}']").Count == 1;

    [Fact]
    public void The_other_side_can_be_taken_over_but_its_height_stays_out()
    {
        var page = Open("front-right");
        page.WaitForElement(".reading");
        var height = Bench.Car!.FrontRight.RideHeight;
        Act(page, () => page.FindAll("button").Single(b => b.TextContent.Contains("Take over", StringComparison.Ordinal)).Click());
        Assert.Equal(height, Bench.Car!.FrontRight.RideHeight);
        Assert.Equal(Bench.Car.FrontLeft.Camber, Bench.Car.FrontRight.Camber);
    }

    [Fact]
    public void Gaps_can_be_added_and_taken_out()
    {
        var page = Open();
        page.WaitForElement(".reading");
        int before = Bench.Car!.FrontLeft.Obstacles.Count;
        Act(page, () =>
            page.FindAll("button").Single(b => b.TextContent.Contains("Add a thing near the wheel", StringComparison.Ordinal)).Click());
        Assert.Equal(before + 1, Bench.Car!.FrontLeft.Obstacles.Count);
        Assert.Equal(Bench.Car.FrontLeft.Obstacles.Count, Bench.Car.FrontLeft.Obstacles.Select(o => o.Id).Distinct().Count());
        Bench.Undo();
        Assert.Equal(before, Bench.Car!.FrontLeft.Obstacles.Count);
    }

    [Fact]
    public async Task A_gap_opened_and_left_empty_stops_no_other_entry_and_is_kept_once_it_is_given()
    {
        var page = Open();
        page.WaitForElement(Height);
        var thing = Bench.Car!.FrontLeft.Obstacles[0];
        string row = $"#at-frontLeft-obstacles-{thing.Id}-gaps-{thing.Gaps.Count}-";
        Act(page, () => page.FindAll("button").First(b => b.TextContent.Contains("Add a gap", StringComparison.Ordinal)).Click());
        page.WaitForElement(row + "distance-box");
        page.WaitForAssertion(() => Assert.Contains("Not kept yet: Gap is not given yet.", page.Markup, StringComparison.Ordinal));

        Act(page, () => page.Find(Height).Change("341.5 mm"));
        await Bench.SaveNow();
        Assert.Equal(SavedState.Saved, Bench.Saved);
        Assert.Equal("341.5 mm", Stored().RideHeight!.Typed);
        Assert.Equal(thing.Gaps.Count, Stored().Obstacles[0].Gaps.Count);

        // It is still open, on this page and when the page is opened again; and it is kept from its needed number on.
        var again = Open();
        again.WaitForElement(row + "clock-box");
        Act(again, () => again.Find(row + "clock-box").Change("10.5"));
        await Bench.SaveNow();
        Assert.Equal(thing.Gaps.Count, Stored().Obstacles[0].Gaps.Count);
        Act(again, () => again.Find(row + "distance-box").Change("14 mm"));
        again.WaitForAssertion(() => Assert.DoesNotContain("Not kept yet", again.Markup, StringComparison.Ordinal));
        await Bench.SaveNow();
        var kept = Stored().Obstacles[0].Gaps[^1];
        Assert.Equal((10.5, "14 mm"), (kept.Clock, kept.Distance!.Typed));
        Assert.Empty(Bench.NotYetKept);
    }

    [Fact]
    public async Task A_strut_place_opened_and_left_empty_stops_no_other_entry()
    {
        var page = Open();
        page.WaitForElement(Height);
        Bench.Apply("No strut", car => car.With(CornerPlace.FrontLeft, car.FrontLeft with { Strut = null }));
        await Bench.SaveNow();
        string label = RecordShape.Of<Corner>().ByName["strut"].Label;
        page.WaitForState(() => page.FindAll("p.add button").Any(b => b.TextContent.Contains(label, StringComparison.Ordinal)));
        Act(page, () => page.FindAll("p.add button").First(b => b.TextContent.Contains(label, StringComparison.Ordinal)).Click());
        page.WaitForAssertion(() => Assert.Contains("Not kept yet: Tyre to tube and Lower reference above hub centre are not given yet.",
            page.Markup, StringComparison.Ordinal));
        Act(page, () => page.Find(Height).Change("342 mm"));
        await Bench.SaveNow();
        Assert.Equal(SavedState.Saved, Bench.Saved);
        Assert.Equal(("342 mm", null), (Stored().RideHeight!.Typed, Stored().Strut));
        Assert.NotNull(Bench.Car!.FrontLeft.Strut);
    }

    private Corner Stored() => Garage.Store.Load(CarId).Value.Car.FrontLeft;

    [Fact]
    public void A_corner_that_no_car_has_is_told_kindly()
    {
        var page = Open("middle");
        page.WaitForAssertion(() => Assert.Contains("four corners", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void A_car_that_is_not_there_is_told_kindly()
    {
        var page = Render<CornerReadings>(p => p.Add(x => x.Id, "nobody").Add(x => x.Place, "front-left"));
        page.WaitForAssertion(() => Assert.Contains("no car \"nobody\"", page.Markup, StringComparison.Ordinal));
    }
}
