using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Web.Components;
using Cornerwright.Web.Components.Setting;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Pages;

/// <summary>The setting sheet: turns, what cannot be, what is waited for, what was learned.</summary>
public sealed class SettingPageTests : PageContext
{
    private const string BuildId = "gravel-3";

    public SettingPageTests() => Services.AddSingleton(TimeProvider.System);

    private IRenderedComponent<SettingPage> Open()
    {
        var page = Render<SettingPage>(p => p.Add(x => x.Id, CarId).Add(x => x.BuildId, BuildId));
        page.WaitForElement(".setting-page");
        return page;
    }

    [Fact]
    public void The_table_says_what_to_turn_at_each_corner()
    {
        var page = Open();
        Assert.Equal(4, page.FindAll("article").Count);
        Assert.Contains("415.0 mm", page.Find("[data-corner=front-left]").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".steps li"));
        Assert.Contains("Nobody has read this build yet", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void More_moves_are_made_where_every_collar_is_to_be_turned()
    {
        var page = Open();
        int few = page.FindAll("article.moves").Count;
        Services.GetRequiredService<NavigationManager>().NavigateTo(Addresses.Setting(CarId, BuildId) + "?every=true");
        page.WaitForAssertion(() => Assert.True(page.FindAll("article.moves").Count > few));
    }

    [Fact]
    public void Heights_that_twist_the_body_are_refused_with_the_fourth()
    {
        var page = Open();
        Bench.Apply("wish", car => car.With(Wish(car, 452, 415, 430, 430)));
        page.WaitForAssertion(() => Assert.Contains("rear right comes to", page.Find(".waits").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void Done_turns_the_build_and_lays_out_a_sheet_for_the_readings()
    {
        var page = Open();
        Bench.Apply("wish", car => car.With(Wish(car, 424, 424, 430, 430)));
        double before = Bench.Car!.Build(BuildId)!.FrontLeft.PerchHeight!.Si;
        page.WaitForAssertion(() => Assert.Contains("up", page.Find("[data-corner=front-left] .do").TextContent, StringComparison.Ordinal));
        Act(page, () => page.Find("button.big").Click());
        page.WaitForAssertion(() => Assert.Equal(4, page.FindAll(".waits li").Count));
        Assert.True(Bench.Car!.Build(BuildId)!.FrontLeft.PerchHeight!.Si > before);
        Assert.Equal(BuildId, Assert.Single(Bench.Car.Occasions).Fitted.Id);
    }

    [Fact]
    public void A_reading_that_agrees_with_nothing_is_named()
    {
        var page = Open();
        Bench.Apply("readings", car => car.With(Read(car, 452, 417, 431, 431)));
        page.WaitForAssertion(() => Assert.Contains(page.FindAll(".learned .cw-problem"), p =>
            p.TextContent.Contains("front left: hub to arch 452.0 mm", StringComparison.Ordinal)));
        Act(page, () => page.Find(".learned .use input").Change(true));
        Assert.True(Bench.Car!.UseLearned);
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".occasions input")));
        Act(page, () => page.Find(".occasions input").Change(false));
        Assert.True(Bench.Car!.Occasions[0].Ignored);
    }

    private static SettingWish Wish(Car car, params double[] mm)
    {
        var wish = new SettingWish { Build = car.Build(BuildId)!.Id };
        foreach (var place in Places.Corners)
        {
            wish = wish.With(place, new CornerWish { Height = Mm(mm[(int)place]) });
        }

        return wish;
    }

    private static Occasion Read(Car car, params double[] mm)
    {
        var occasion =
            new Occasion { Id = "read-1", Name = "First readings", LoadCase = car.LoadCases[0].Id, Fitted = car.Build(BuildId)! };
        foreach (var place in Places.Corners)
        {
            occasion = occasion.With(place, new CornerReadings { Height = Mm(mm[(int)place]) with { Source = ReadingSource.Tape } });
        }

        return occasion;
    }

    private static Reading Mm(double mm) => Reading.Of(FormattableString.Invariant($"{mm} mm"), Dimension.Length);
}
