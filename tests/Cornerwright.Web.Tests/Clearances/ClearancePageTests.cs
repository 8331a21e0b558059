using System.Globalization;
using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Web.Components.Clearances;
using Cornerwright.Web.Tests.Pages;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Judging;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Clearances;

public sealed class ClearancePageTests() : PageContext(Judge.Build)
{
    private IRenderedComponent<ClearancePage> Open(string build, string corner = "")
    {
        Navigation.NavigateTo($"/car/{CarId}/build/{build}/clearance{(corner.Length > 0 ? "?corner=" + corner : "")}");
        var page = Render<ClearancePage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, build));
        page.WaitForElement("[data-clearance=ready]");
        return page;
    }

    private NavigationManager Navigation => Services.GetRequiredService<NavigationManager>();

    [Fact]
    public void Map_list_section_and_proof_stand_at_the_worst_pose()
    {
        var page = Open("gravel-1");
        Assert.Contains("overlap by at least", page.Find(".proof").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.Find("path.line.zero").GetAttribute("d")!);
        Assert.NotEmpty(page.Find("path.line.wanted").GetAttribute("d")!);
        Assert.NotEmpty(page.FindAll("path.forbidden"));
        Assert.NotEmpty(page.FindAll("g.worst"));
        var first = page.Find(".gaps tbody tr");
        Assert.Contains("overlaps by", first.TextContent, StringComparison.Ordinal);
        Assert.Equal(first.GetAttribute("data-gap"), page.Find("figure.cut").GetAttribute("data-cut"));
        Assert.InRange(page.FindAll("figure.cut svg > path").Count, 4, 5);   // tyre, rim, their gap, and the tyre under load
    }

    [Fact]
    public void Another_pose_changes_list_section_and_address()
    {
        var page = Open("gravel-3");
        string before = page.Find(".gaps tbody").TextContent;
        var map = page.FindComponent<ClearanceMapView>();
        Act(page, () => map.Instance.Step(5, -5).GetAwaiter().GetResult());
        page.WaitForAssertion(() => Assert.NotEqual(before, page.Find(".gaps tbody").TextContent));
        Assert.Contains("travel=", Navigation.Uri, StringComparison.Ordinal);
        Assert.Contains("steer=5", Navigation.Uri, StringComparison.Ordinal);

        // The numbers are the exact ones of that pose.
        var corner = CornerClearance.Of(Bench.Car!, Bench.Car!.Build("gravel-3")!, CornerPlace.FrontLeft);
        var nearest = corner.At(map.Instance.Travel, map.Instance.Steer)[0];
        Assert.Equal(nearest.Thing.Id, page.Find(".gaps tbody tr").GetAttribute("data-gap"));
        Assert.Contains(Web.Components.Pictures.Px.Mm(nearest.Gap), page.Find(".gaps tbody tr").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Section_of_another_thing_is_cut_when_asked_for()
    {
        var page = Open("gravel-3");
        Act(page, () => page.Find("tr[data-gap='arch-lip'] button").Click());
        page.WaitForAssertion(() => Assert.Equal("arch-lip", page.Find("figure.cut").GetAttribute("data-cut")));
        Act(page, () => page.Find("tr[data-gap='strut-tube'] button").Click());
        page.WaitForAssertion(() => Assert.Equal("strut-tube", page.Find("figure.cut").GetAttribute("data-cut")));
        Assert.NotEmpty(page.Find("figure.cut .thing.strut.nearest path").GetAttribute("d")!);
    }

    [Fact]
    public void A_rear_wheel_has_a_map_of_one_column()
    {
        var page = Open("gravel-1", "rear-right");
        Assert.Contains("rear right", page.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.Contains("does not steer", page.Find("figure.map").TextContent, StringComparison.Ordinal);
        Assert.Equal("1", page.Find("figure.map .field").GetAttribute("data-steers"));
    }

    [Fact]
    public void A_finding_leads_to_where_it_is_worst()
    {
        var page = Open("gravel-1");
        page.WaitForElement("[data-finding='front-left/clear-liner'] .head button");
        Act(page, () => page.Find("[data-finding='front-left/clear-liner'] .head button").Click());
        page.WaitForAssertion(() => Assert.Equal("liner", page.Find("figure.cut").GetAttribute("data-cut")));
        var finding = Bench.JudgementOf("gravel-1")!.Findings.Single(f => f.Key == "front-left/clear-liner");
        Assert.Equal(finding.Worst!.Travel!.Value, page.FindComponent<ClearanceMapView>().Instance.Travel, 1e-9);
        Assert.EndsWith("#h-map", Navigation.Uri, StringComparison.Ordinal);
    }

    // One axle carries both wheels: the other one's travel has a slider, and a finding leads to where that wheel stands then.
    [Fact]
    public void On_one_axle_the_other_wheel_is_moved_as_well()
    {
        var page = Open("gravel-1", "rear-left");
        Assert.Empty(page.FindAll("[data-slider=clear-other]"));
        Act(page, () => Bench.Apply("one axle", car => car with { Rear = car.Rear with { Kind = AxleKind.RigidAxle } }));
        page.WaitForElement("[data-slider=clear-other]");
        page.WaitForElement("[data-clearance=ready]");
        page.WaitForAssertion(() => Assert.Contains("other wheel at", page.Find(".proof").TextContent, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Contains(Bench.JudgementOf("gravel-1")!.Findings, f =>
            f.Key == "rear-left/clear-arch-lip" && f.Worst?.OtherTravel is not null));
        page.WaitForElement("[data-finding='rear-left/clear-arch-lip'] .head button");
        Act(page, () => page.Find("[data-finding='rear-left/clear-arch-lip'] .head button").Click());
        var worst = Bench.JudgementOf("gravel-1")!.Findings.Single(f => f.Key == "rear-left/clear-arch-lip").Worst!;
        string other = Math.Round(worst.OtherTravel!.Value * 1000, 1).ToString(CultureInfo.InvariantCulture);
        page.WaitForAssertion(() => Assert.Contains("other=" + other, Navigation.Uri, StringComparison.Ordinal));
    }

    [Fact]
    public void How_wide_is_answered_with_sizes_and_the_room()
    {
        var page = Open("gravel-3", "rear-left");
        Act(page, () => page.FindAll("button").Single(b => b.TextContent.Trim() == "Work it out").Click());
        page.WaitForElement("[data-widest]");
        var car = Bench.Car!;
        var answer = WidestWheel.Of(car, car.Build("gravel-3")!, CornerPlace.RearLeft);
        Assert.NotEmpty(answer.Sizes);
        Assert.Equal(answer.Sizes.Count.ToString(CultureInfo.InvariantCulture), page.Find("[data-widest]").GetAttribute("data-widest"));
        Assert.Equal(answer.Sizes[0].Size, page.Find("[data-widest] tbody th").TextContent);
        Assert.Contains("ET" + answer.Sizes[0].LeastOffsetMm, page.Find("[data-widest] tbody tr").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.Find("path.envelope").GetAttribute("d")!);
    }

    [Fact]
    public void What_is_missing_is_asked_for()
    {
        Navigation.NavigateTo($"/car/{CarId}/build/gravel-3/clearance");
        var page = Render<ClearancePage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, "gravel-3"));
        page.WaitForElement("[data-clearance=ready]");
        Act(page, () => Bench.Apply("Take the readings out", car => car with { MeasuredBuild = "" }));
        page.WaitForAssertion(() => Assert.Contains("Still needed:", page.Find(".cw-empty").TextContent, StringComparison.Ordinal));
    }
}
