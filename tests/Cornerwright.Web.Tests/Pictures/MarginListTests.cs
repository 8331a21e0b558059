using Bunit;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Tests.Pictures;

public class MarginListTests : BunitContext
{
    [Fact]
    public void A_row_tells_verdict_value_limit_probability_and_sentence()
    {
        var list = Render<MarginList>(p => p.Add(l => l.Findings, [PictureSamples.Failing]));
        string row = list.Find("li").TextContent;
        Assert.Contains("fails", row, StringComparison.Ordinal);
        Assert.Contains("short by 5.50 turns", row, StringComparison.Ordinal);
        Assert.Contains("-3.50 turns, at least 2.00 turns", row, StringComparison.Ordinal);
        Assert.Contains("under 1 % sure", row, StringComparison.Ordinal);
        Assert.Contains("3.5 turns loose", row, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_behind_it_opens_and_a_cure_can_be_tried()
    {
        Cure? tried = null;
        var list = Render<MarginList>(p => p
            .Add(l => l.Findings, [PictureSamples.Failing])
            .Add(l => l.TryCure, (Cure cure) => tried = cure)
            .Add(l => l.LinkTo, path => "/to/" + path));
        Assert.Empty(list.FindAll(".cures"));
        list.Find("h3 button").Click();
        Assert.Equal("true", list.Find("h3 button").GetAttribute("aria-expanded"));
        Assert.Contains("packer on the rod: none", list.Find(".assumed").TextContent, StringComparison.Ordinal);
        Assert.Equal("/to/frontLeft/springAxisLength", list.Find(".deciding a").GetAttribute("href"));
        list.Find(".cures button").Click();
        Assert.Equal("218.25 mm", tried?.NewValue);
    }

    [Fact]
    public void A_cure_that_must_be_bought_has_no_button()
    {
        var finding = PictureSamples.Failing with { Cures = [PictureSamples.Failing.Cures[0] with { Setting = "", NewValue = "" }] };
        var list = Render<MarginList>(p => p.Add(l => l.Findings, [finding]).Add(l => l.TryCure, (Cure _) => { }));
        list.Find("h3 button").Click();
        Assert.Empty(list.FindAll(".cures button"));
    }

    [Fact]
    public void A_finding_that_waits_leads_to_its_reading()
    {
        var list = Render<MarginList>(p => p.Add(l => l.Findings, [PictureSamples.Waiting]).Add(l => l.LinkTo, path => "/to/" + path));
        list.Find("h3 button").Click();
        Assert.Equal("/to/front/hub/centring", list.Find(".missing a").GetAttribute("href"));
        Assert.Contains("no number yet", list.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void On_the_scale_the_value_lies_on_the_forbidden_side_of_its_limit_when_it_fails()
    {
        var scale = MarginScale.Of(PictureSamples.Failing)!;
        Assert.True(scale.Value < scale.Low);
        Assert.True(scale.WhiskerFrom < scale.Value && scale.Value < scale.WhiskerTo);
        Assert.Null(scale.High);
        Assert.True(scale.WhiskerFrom >= 0 && scale.Low <= MarginScale.Width);
    }

    [Fact]
    public void A_value_on_its_limit_without_doubt_still_has_a_scale()
    {
        var scale =
            MarginScale.Of(PictureSamples.Failing with { Value = PictureSamples.Turns(0), Low = PictureSamples.Turns(0), Doubt = null })!;
        Assert.Equal(scale.Low, scale.Value);
        Assert.True(double.IsFinite(scale.Value!.Value));
    }

    [Fact]
    public void Without_a_value_there_is_no_scale() => Assert.Null(MarginScale.Of(PictureSamples.Waiting));

    [Fact]
    public void Left_and_right_share_a_figure_row_only_when_nothing_tells_them_apart()
    {
        Figure Rate(CornerPlace corner, double newtonPerMm) =>
            new("wheel-rate", "Wheel rate", corner.Words(), corner, new Measure(newtonPerMm * 1000, Units.NewtonPerMillimetre, 1), null);
        var same = FigureRow.Of([Rate(CornerPlace.FrontLeft, 30), Rate(CornerPlace.FrontRight, 30)],
            [Rate(CornerPlace.FrontLeft, 42.5), Rate(CornerPlace.FrontRight, 42.5)]);
        var row = Assert.Single(same);
        Assert.Equal(("front, both", "30.0 N/mm", "42.5 N/mm", "+12.5 N/mm"), (row.Where, row.Present, row.Proposed, row.Change));
        Assert.Equal(2, FigureRow.Of(null, [Rate(CornerPlace.FrontLeft, 42.5), Rate(CornerPlace.FrontRight, 42.6)]).Count);
    }

    [Theory]
    [InlineData(0.9999, "over 99.9 %")]
    [InlineData(0.994, "99.4 %")]
    [InlineData(0.97, "97 %")]
    [InlineData(0.0001, "under 1 %")]
    public void A_probability_is_never_told_as_certain(double probability, string words) => Assert.Equal(words, Px.Percent(probability));

    [Fact]
    public void Both_sides_of_an_axle_share_a_row_only_when_they_read_the_same()
    {
        var left = PictureSamples.Failing;
        var right = left with { Where = "front right", Corner = CornerPlace.FrontRight };
        var row = Assert.Single(MarginRow.Of([left, right]));
        Assert.Equal(("front, both sides", "front-left/seated-at-droop front-right/seated-at-droop"), (row.Where, row.Keys));
        Assert.Equal(2, MarginRow.Of([left, right with { Value = PictureSamples.Turns(-3.4) }]).Count);
        Assert.Equal(2, MarginRow.Of([left, right with { Corner = CornerPlace.RearLeft }]).Count);
        Assert.Equal(2,
            MarginRow.Of([PictureSamples.Waiting, PictureSamples.Waiting with { Axle = AxlePlace.Rear, Where = "rear axle" }]).Count);
    }
}
