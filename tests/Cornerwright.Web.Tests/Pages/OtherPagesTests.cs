using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components;
using Cornerwright.Web.Components.Marks;
using Cornerwright.Web.Components.Pages;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Pages;

public sealed class OtherPagesTests : PageContext
{
    public OtherPagesTests()
        : base(Judge.Build)
    {
    }

    private NavigationManager Navigation => Services.GetRequiredService<NavigationManager>();

    private IRenderedComponent<PartsPage> Parts(string kind, string part = "")
    {
        Navigation.NavigateTo(part.Length > 0 ? Addresses.Part(CarId, kind, part) : Addresses.Parts(CarId, kind));
        var page = Render<PartsPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("table");
        return page;
    }

    [Theory]
    [InlineData(Verdict.Holds, "holds")]
    [InlineData(Verdict.Tight, "tight")]
    [InlineData(Verdict.Fails, "fails")]
    [InlineData(Verdict.Unknown, "unknown")]
    public void A_verdict_is_a_shape_and_a_word_not_only_a_colour(Verdict verdict, string word)
    {
        var mark = Render<VerdictMark>(p => p.Add(x => x.Verdict, verdict));
        Assert.Equal(word, mark.Find(".word").TextContent);
        Assert.NotEmpty(mark.Find("svg").Children);
    }

    [Fact]
    public void The_garage_shows_each_car_with_a_verdict_for_each_build()
    {
        var page = Render<Web.Components.Pages.Garage>();
        var demo = DemoCar.Read();
        page.WaitForAssertion(() => Assert.Equal(demo.Builds.Count, page.FindAll(".builds li").Count), TimeSpan.FromSeconds(30));
        foreach (var build in demo.Builds)
        {
            Assert.Contains(build.Name, page.Markup, StringComparison.Ordinal);
        }

        Assert.Contains("fails", page.Find(".builds").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_car_needs_a_name_and_then_opens()
    {
        var page = Render<Web.Components.Pages.Garage>();
        page.WaitForElement(".cars");
        Press(page, "New car");
        Act(page, () => page.Find("form").Submit());
        Assert.Contains("Type what you call the car.", page.Find(".cw-problem").TextContent, StringComparison.Ordinal);
        Act(page, () => page.Find("#new-name").Change("Blue one"));
        Act(page, () => page.Find("form").Submit());
        page.WaitForAssertion(() => Assert.EndsWith("/car/blue-one", Navigation.Uri, StringComparison.Ordinal));
        var car = Garage.Store.Load("blue-one").Value.Car;
        Assert.Equal("Blue one", car.Name);

        // Front wheels steer until somebody says otherwise: an axle that is forgotten must not be judged straight ahead only.
        Assert.True(car.Front.Steered);
        Assert.False(car.Rear.Steered);
    }

    [Fact]
    public void A_parts_list_is_taken_whole_or_not_at_all()
    {
        var page = Parts("springs");
        Press(page, "Import a list");
        var import = page.FindComponent<PartsImport>();
        import.InvokeAsync(() => import.Instance.Take("list.csv",
            "name;rate (N/mm);free length (mm);made by\nGreen;70;220;nobody\nBlue;soft;200;nobody\n"u8.ToArray()));
        import.Render();
        int before = Bench.Car!.Parts.Springs.Count;
        Press(page, "Put 2 on the shelf");
        Assert.Equal(before, Bench.Car.Parts.Springs.Count);
        Assert.Contains("soft", import.Find(".cw-problem").TextContent, StringComparison.Ordinal);

        import.InvokeAsync(() => import.Instance.Take("list.csv",
            "name;rate (N/mm);free length (mm);made by\nGreen;70;220;nobody\nBlue;80;200;nobody\n"u8.ToArray()));
        import.Render();
        Press(page, "Put 2 on the shelf");
        Assert.Equal(before + 2, Bench.Car!.Parts.Springs.Count);
        Assert.Equal(70_000, Bench.Car.Parts.Springs[before].Rate!.Si, 1e-6);
        Bench.Undo();
        Assert.Equal(before, Bench.Car!.Parts.Springs.Count);
    }

    [Fact]
    public void A_part_in_use_stays_on_the_shelf_and_says_where_it_is_used()
    {
        var page = Parts("springs");
        var used = Bench.Car!.Parts.Springs.First(s => Bench.Car.Builds.Any(b => b.FrontLeft.Stack.Contains(s.Id)));
        Act(page, () => page.Find($"[aria-label='Take {used.Name} off the shelf']").Click());
        Assert.Contains(used, Bench.Car.Parts.Springs);
        Assert.Contains(Bench.Car.Builds.First(b => b.FrontLeft.Stack.Contains(used.Id)).Name, page.Find(".cw-problem").TextContent,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_duplicate_is_on_the_shelf_unowned_and_can_be_taken_off()
    {
        var page = Parts("wheels");
        var wheel = Bench.Car!.Parts.Wheels[0];
        Act(page, () => page.Find($"[aria-label='Duplicate {wheel.Name}']").Click());
        var copy = Bench.Car!.Parts.Wheels[^1];
        Assert.Equal(("Copy of " + wheel.Name, false), (copy.Name, copy.Owned));
        page.WaitForElement($"[aria-label='Take {copy.Name} off the shelf']");
        Act(page, () => page.Find($"[aria-label='Take {copy.Name} off the shelf']").Click());
        Assert.DoesNotContain(copy, Bench.Car!.Parts.Wheels);
    }

    [Fact]
    public void A_new_wheel_is_refused_with_its_reasons_until_it_is_whole()
    {
        var page = Parts("wheels");
        int before = Bench.Car!.Parts.Wheels.Count;
        Press(page, "New among the wheels");
        Press(page, "Put it on the shelf");
        Assert.NotEmpty(page.FindAll(".cw-problem"));
        Assert.Equal(before, Bench.Car.Parts.Wheels.Count);

        Act(page, () => page.Find("#at-parts-wheels-new-name-box").Change("Green wheel"));
        Act(page, () => page.Find("#at-parts-wheels-new-designation-box").Change("8Jx18 ET35 5x112"));
        // The form waits on the bench while other pages are looked at, and another page's open row is no reason against it.
        Bench.Apply("Add a load case", car =>
            car with { LoadCases = [.. car.LoadCases, (LoadCase)NewEntry.Of(typeof(LoadCase), "case-9")] });
        Bench.Apply("Add a step", car => car.With(CornerPlace.RearLeft,
            car.RearLeft with { Motion = car.RearLeft.Motion with { Steps = [(CycledStep)NewEntry.Of(typeof(CycledStep))] } }));
        page = Parts("springs");
        Assert.Empty(page.FindAll("#h-new"));
        page = Parts("wheels");
        Assert.Equal("Green wheel", page.WaitForElement("#at-parts-wheels-new-name-box").GetAttribute("value"));
        Press(page, "Put it on the shelf");
        Assert.Equal("green-wheel", Bench.Car!.Parts.Wheels[^1].Id);
        Assert.Empty(page.FindAll("#h-new"));
    }

    [Fact]
    public void A_rim_that_cannot_be_read_is_told_at_once_and_changes_nothing()
    {
        var wheel = DemoCar.Read().Parts.Wheels[0];
        var page = Parts("wheels", wheel.Id);
        page.WaitForElement($"#at-parts-wheels-{wheel.Id}-designation-box");
        Act(page, () => page.Find($"#at-parts-wheels-{wheel.Id}-designation-box").Change("8 by about 18"));
        Assert.NotEmpty(page.FindAll(".cw-problem"));
        Assert.Equal(wheel.Designation, Bench.Car!.Parts.Wheels[0].Designation);
    }

    [Fact]
    public async Task Builds_stand_side_by_side_with_their_verdicts_and_what_differs_is_marked()
    {
        var page = Render<BuildsPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("table");
        await Bench.Judged();
        page.WaitForAssertion(() => Assert.DoesNotContain("being judged", page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        Assert.Equal(Bench.Car!.Builds.Count, page.FindAll("thead th").Count);
        Assert.NotEmpty(page.FindAll(".differs"));
    }

    [Fact]
    public void A_part_chosen_at_a_corner_reaches_the_build_and_the_other_side_can_follow()
    {
        string build = Bench.Car is null ? DemoCar.Read().Builds[^1].Id : Bench.Car.Builds[^1].Id;
        var page = Render<BuildEditor>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, build));
        page.WaitForElement($"#at-builds-{build}-frontLeft-perchHeight-box");
        Act(page, () => page.Find($"#at-builds-{build}-frontLeft-perchHeight-box").Change("301"));
        Assert.Equal("301 mm", Bench.Car!.Build(build)!.FrontLeft.PerchHeight!.Typed);
        Press(page, "Same as left");
        Assert.Equal("301 mm", Bench.Car!.Build(build)!.FrontRight.PerchHeight!.Typed);
        Bench.Undo();
        Assert.NotEqual("301 mm", Bench.Car!.Build(build)!.FrontRight.PerchHeight?.Typed);
    }

    [Fact]
    public void A_wheel_bolt_has_a_sheet_and_a_place_at_each_corner()
    {
        Navigation.NavigateTo(Addresses.Parts(CarId, "wheelBolts"));
        var sheet = Render<PartsPage>(p => p.Add(x => x.Id, CarId));
        sheet.WaitForElement(".kinds");
        Press(sheet, "New among the wheel bolts and nuts");
        const string Path = "#at-parts-wheelBolts-new-";
        Act(sheet, () => sheet.Find(Path + "name-box").Change("Long bolt"));
        Act(sheet, () => sheet.Find(Path + "thread-box").Change("12x1.5"));
        Assert.Contains("a metric thread, M3 to M42", sheet.Find(".cw-problem").TextContent, StringComparison.Ordinal);
        Act(sheet, () => sheet.Find(Path + "thread-box").Change("M12x1.5"));
        Assert.Contains("not said", sheet.Find(Path + "seat-box").TextContent, StringComparison.Ordinal);
        Act(sheet, () => sheet.Find(Path + "seat-box").Change("Cone"));
        Act(sheet, () => sheet.Find(Path + "length-box").Change("28"));
        Assert.Contains(sheet.FindAll("svg.cw-measure"), d => d.GetAttribute("aria-label") == "Sketch: Length of the bolt");
        Press(sheet, "Put it on the shelf");
        var bolt = Assert.Single(Bench.Car!.Parts.WheelBolts, b => b.Name == "Long bolt");
        Assert.Equal(("M12x1.5", BoltSeat.Cone, "28 mm"), (bolt.Thread, bolt.Seat, bolt.Length!.Typed));

        string build = Bench.Car.Builds[^1].Id;
        var page = Render<BuildEditor>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, build));
        page.WaitForElement($"#at-builds-{build}-rearLeft-wheelBolt-box");
        Act(page, () => page.Find($"#at-builds-{build}-rearLeft-wheelBolt-box").Change(bolt.Id));
        Assert.Equal(bolt.Id, Bench.Car!.Build(build)!.RearLeft.WheelBolt);
        Assert.Equal([Bench.Car.Build(build)!.Name], Shelf.UsersOf(Bench.Car, PartKind.Of<WheelBolt>(), bolt.Id));
    }

    [Fact]
    public void The_stack_is_changed_from_the_perch_upward()
    {
        string build = DemoCar.Read().Builds[^1].Id;
        var page = Render<BuildEditor>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, build));
        page.WaitForElement(".stack");
        string top = Bench.Car!.Parts.Sheets[0].Id;
        int before = Bench.Car.Build(build)!.FrontLeft.Stack.Count;
        Act(page, () => page.Find("[aria-label='Put a spring or sheet on top of the stack, front left']").Change(top));
        Assert.Equal(top, Bench.Car!.Build(build)!.FrontLeft.Stack[^1]);
        Assert.Equal(before + 1, Bench.Car.Build(build)!.FrontLeft.Stack.Count);
    }

    [Fact]
    public async Task History_tells_what_changed_and_returns_to_any_revision()
    {
        await Bench.Open(CarId);
        string name = Bench.Car!.Name;
        Bench.Apply("Name", car => car with { Name = "Renamed" });
        await Bench.SaveNow();
        Navigation.NavigateTo(Addresses.History(CarId) + "?from=1&to=2");
        var page = Render<HistoryPage>(p => p.Add(x => x.Id, CarId));
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".revs li").Count));
        Assert.Contains("Renamed", page.Find(".diff").TextContent, StringComparison.Ordinal);
        Act(page, () => page.FindAll(".revs li")[1].QuerySelectorAll("button")
            .First(b => b.TextContent.Contains("Return", StringComparison.Ordinal)).Click());
        page.WaitForAssertion(() => Assert.Equal(3, page.FindAll(".revs li").Count));
        Assert.Equal(name, Bench.Car!.Name);
        Assert.Equal(name, Garage.Store.Load(CarId).Value.Car.Name);
    }

    [Fact]
    public void Limits_of_the_car_show_the_default_until_one_is_typed()
    {
        var page = Render<CarSheet>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("#at-limits-preloadTurns-box");
        Bench.Apply("No limits", car => car with { Limits = new() });
        page.WaitForAssertion(() =>
            Assert.Contains("default 2 turns", page.Find("#at-limits-preloadTurns-used").TextContent, StringComparison.Ordinal));
        Act(page, () => page.Find("#at-limits-preloadTurns-box").Change("3"));
        Assert.Equal("3 turns", Bench.Car!.Limits.PreloadTurns!.Typed);
    }

}
