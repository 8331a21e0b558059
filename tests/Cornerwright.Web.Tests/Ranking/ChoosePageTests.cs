using Bunit;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Web.Components.Ranking;
using Cornerwright.Web.Tests.Pages;
using Cornerwright.Workshop.Scanning;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Ranking;

public sealed class ChoosePageTests : PageContext
{
    private static readonly Wishes Small = new()
    {
        Id = "small", Name = "Small", Axle = AxlePlace.Rear, StartingBuild = "gravel-3", Wheels = ["w-gravel-40"],
            Tyres = ["t-gravel-55", "t-gravel-65"], Spacers = ["sp-5"], Listed = 3,
    };

    public ChoosePageTests() => Services.AddScoped(_ => new SearchRun(_ => ScanShelf.Empty));

    private IRenderedComponent<ChoosePage> Open()
    {
        Bench.Open(CarId).GetAwaiter().GetResult();
        Bench.Apply("Only this search", car => car with { Searches = [Small] });
        var page = Render<ChoosePage>(p => p.Add(x => x.Id, CarId));
        page.WaitForElement("h1");
        return page;
    }

    private IRenderedComponent<ChoosePage> Searched()
    {
        var page = Open();
        Press(page, "Search");
        page.WaitForElement(".found[data-search=done]");
        return page;
    }

    [Fact]
    public void The_parts_named_are_ticked_and_a_tick_names_them()
    {
        var page = Open();
        var tyres = page.FindAll(".kind").Single(k => k.QuerySelector("summary")!.TextContent.Contains("Tyres", StringComparison.Ordinal));
        Assert.Contains("2 of 5, picked", tyres.TextContent, StringComparison.Ordinal);
        Act(page, () => page.FindAll(".kind li").Single(l => l.TextContent.Contains("Touring tyre", StringComparison.Ordinal))
            .QuerySelector("input")!.Change(true));
        Assert.Equal(["t-gravel-65", "t-gravel-55", "t-tour"], Bench.Car!.Searches[0].Tyres);

        // The last of a kind cannot be taken out: none would mean all.
        Assert.True(page.FindAll(".kind li").Single(l => l.TextContent.Contains("Spacer 5 mm", StringComparison.Ordinal))
            .QuerySelector("input")!.HasAttribute("disabled"));
        Bench.Undo();
        Assert.Equal(Small.Tyres, Bench.Car!.Searches[0].Tyres);
    }

    [Fact]
    public void A_search_lists_builds_draws_them_and_says_why_the_others_do_not()
    {
        var page = Searched();
        var first = page.Find("#choice-1");
        Assert.Contains("sure that all holds", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("7 kgf/mm", first.TextContent, StringComparison.Ordinal);
        Assert.Equal(page.FindAll(".choices > li").Count, page.FindAll(".map a").Count);
        Assert.Contains("Seated at full droop", page.Find(".refused").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".misses .cure"));
    }

    [Fact]
    public void A_choice_taken_is_a_build_of_the_car_and_undo_takes_it_back()
    {
        var page = Searched();
        Act(page, () => page.Find("#choice-1 button").Click());
        var taken = Bench.Car!.Build("choice-1")!;
        Assert.Equal("w-gravel-40", taken.RearLeft.Wheel);
        Assert.NotNull(taken.RearLeft.PerchHeight);
        Assert.Equal(Bench.Car.Build("gravel-3")!.FrontLeft, taken.FrontLeft);
        Assert.Contains("Taken as a build", page.Find("#choice-1").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".cw-note"));
        Bench.Undo();
        page.WaitForAssertion(() => Assert.Contains("Take this as a build", page.Find("#choice-1").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_found_for_other_wishes_says_so()
    {
        var page = Searched();
        Bench.Apply("Budget", car => car.With(car.Searches[0] with { Budget = 10 }));
        page.WaitForAssertion(() => Assert.Contains("have changed", page.Find(".cw-note").TextContent, StringComparison.Ordinal));
        Press(page, "Search anew");
        page.WaitForAssertion(() => Assert.Contains("Nothing holds", page.Find("#sum").TextContent, StringComparison.Ordinal));
        Assert.Contains("To spend at most", page.Find(".refused").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_search_that_cannot_begin_says_what_to_do()
    {
        var page = Open();
        Bench.Apply("No main spring", car => car.With(Small with { Springs = ["f-helper"] }));
        Press(page, "Search");
        page.WaitForAssertion(() => Assert.Contains("at least one main spring", page.Find(".found").TextContent, StringComparison.Ordinal));
    }
}
