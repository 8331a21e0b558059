using Bunit;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;
using Microsoft.AspNetCore.Components.Web;

namespace Cornerwright.Web.Tests.Pictures;

public class TravelColumnTests : BunitContext
{
    public TravelColumnTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void Everything_that_happens_stands_to_scale_bump_upward()
    {
        var layout = TravelLayout.Of(PictureSamples.Marks);
        var near = layout.Marks.Where(m => !m.OffScale).ToList();
        foreach (var mark in near)
        {
            double share = (mark.Mark.Travel - layout.Low) / (layout.High - layout.Low);
            double expected = layout.Y(layout.Low) + (share * (layout.Y(layout.High) - layout.Y(layout.Low)));
            Assert.Equal(expected, mark.Y, 9);
        }

        Assert.True(near[0].Y > near[^1].Y);
    }

    [Fact]
    public void A_mark_far_beyond_the_end_is_named_at_the_edge_and_does_not_squeeze_the_rest()
    {
        var layout = TravelLayout.Of(PictureSamples.Marks);
        var bind = Assert.Single(layout.Marks, m => m.OffScale);
        Assert.Equal(TravelEvent.CoilBind, bind.Mark.Event);
        Assert.True(layout.High < 0.1);
    }

    [Fact]
    public void Zones_follow_one_another_without_a_hole()
    {
        var layout = TravelLayout.Of(PictureSamples.Marks);
        Assert.Equal(
            [TravelZone.OutOfReach, TravelZone.Loose, TravelZone.Free, TravelZone.OnStop, TravelZone.OutOfReach],
            layout.Zones.Select(z => z.Zone));
        Assert.Equal(layout.Low, layout.Zones[0].From);
        Assert.Equal(layout.High, layout.Zones[^1].To);
        Assert.All(layout.Zones.Zip(layout.Zones.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
        Assert.Equal(-0.062, layout.Zones[1].To, 9);
        Assert.Equal(0.033, layout.Zones[2].To, 9);
        Assert.Equal(0.064, layout.Zones[3].To, 9);
    }

    [Fact]
    public void A_coil_that_binds_before_the_stop_is_spent_ends_the_travel()
    {
        var layout = TravelLayout.Of(
            [.. PictureSamples.Marks.Where(m => m.Event != TravelEvent.CoilBind), new(TravelEvent.CoilBind, 0.050, 0.001, "coils touch")]);
        Assert.Equal(0.050, layout.Zones.Last(z => z.Zone == TravelZone.OnStop).To, 9);
    }

    [Fact]
    public void A_corner_of_which_nothing_is_known_still_draws()
    {
        var layout = TravelLayout.Of([]);
        Assert.Null(layout.Ride);
        Assert.True(layout.High > layout.Low);
        Assert.Empty(layout.Marks);
    }

    [Fact]
    public void A_mark_that_is_no_number_is_left_out()
    {
        var layout = TravelLayout.Of([new(TravelEvent.Ride, double.NaN, 0, "ride"), .. PictureSamples.Marks]);
        Assert.DoesNotContain(layout.Marks, m => double.IsNaN(m.Y));
        Assert.Equal(PictureSamples.Marks.Count, layout.Marks.Count);
    }

    [Fact]
    public void Drawing_has_name_description_and_a_table_for_who_cannot_see_it()
    {
        var column = Render<TravelColumn>(p => p.Add(c => c.Picture, PictureSamples.Corner));
        var svg = column.Find("svg");
        Assert.Equal("img", svg.GetAttribute("role"));
        Assert.Contains("front left", column.Find("svg title").TextContent, StringComparison.Ordinal);
        Assert.Contains("bump stop touched at +33 mm", column.Find("svg desc").TextContent, StringComparison.Ordinal);
        Assert.Equal(PictureSamples.Marks.Count, column.FindAll("tbody tr").Count);
    }

    [Theory]
    [InlineData("ArrowUp", -1)]     // the ride mark goes up in the picture: the body comes down, so the collar goes down
    [InlineData("ArrowDown", 1)]
    [InlineData("PageDown", 4)]
    public void An_arrow_key_turns_the_collar_a_quarter_turn(string key, int quarters)
    {
        double? wanted = null;
        var column = Render<TravelColumn>(p => p
            .Add(c => c.Picture, PictureSamples.Corner)
            .Add(c => c.PerchHeight, 0.200)
            .Add(c => c.QuarterTurn, 0.000375)
            .Add(c => c.PerchWanted, (double height) => wanted = height));
        column.Find("[role=slider]").KeyDown(new KeyboardEventArgs { Key = key });
        Assert.NotNull(wanted);
        Assert.Equal(0.200 + (quarters * 0.000375), wanted.Value, 12);
    }

    [Fact]
    public async Task Dragging_asks_for_the_perch_that_brings_the_mark_there_in_quarter_turns()
    {
        double? wanted = null;
        var column = Render<TravelColumn>(p => p
            .Add(c => c.Picture, PictureSamples.Corner)
            .Add(c => c.PerchHeight, 0.200)
            .Add(c => c.QuarterTurn, 0.000375)
            .Add(c => c.MotionRatio, 0.9)
            .Add(c => c.PerchWanted, (double height) => wanted = height));
        var layout = TravelLayout.Of(PictureSamples.Marks);
        await column.InvokeAsync(() => column.Instance.Drag(layout.Y(0.001 - 0.010)));   // 10 mm toward droop
        Assert.NotNull(wanted);
        Assert.Equal(0.200 + (0.000375 * Math.Round(0.009 / 0.000375)), wanted.Value, 9);
    }

    [Fact]
    public async Task A_pointer_that_is_nowhere_moves_nothing()
    {
        bool asked = false;
        var column = Render<TravelColumn>(p => p
            .Add(c => c.Picture, PictureSamples.Corner)
            .Add(c => c.PerchHeight, 0.200)
            .Add(c => c.PerchWanted, (double _) => asked = true));
        await column.InvokeAsync(() => column.Instance.Drag(double.NaN));
        Assert.False(asked);
    }

    [Fact]
    public void Without_a_collar_there_is_no_handle()
    {
        var column = Render<TravelColumn>(p => p.Add(c => c.Picture, PictureSamples.Corner).Add(c => c.PerchWanted, (double _) => { }));
        Assert.Empty(column.FindAll("[role=slider]"));
    }
}
