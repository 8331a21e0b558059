using Bunit;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Pages;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Relations;

namespace Cornerwright.Web.Tests.Pages;

/// <summary>Numbers that do not go together, on the verdict page: what is said, where it leads, and the word of why.</summary>
public sealed class RelationStripTests : BunitContext
{
    private static readonly Car Wide = CarPath.With(DemoCar.Read(), "parts/wheels/w-gravel-40/barrelRadius",
        Reading.Of("300 mm", Dimension.Length, source: ReadingSource.Tape))!;

    private readonly List<(Relation Relation, string Why)> _said = [];

    private IRenderedComponent<RelationStrip> Strip(Car car, bool print = false) => Render<RelationStrip>(p => p
        .Add(x => x.Relations, CarRelations.Of(car, car.Build("gravel-3")!)).Add(x => x.CarId, car.Id).Add(x => x.Print, print)
        .Add(x => x.Confirmed, said => _said.Add(said)));

    [Fact]
    public void What_goes_together_takes_no_room() => Assert.Empty(Strip(DemoCar.Read()).Markup.Trim());

    [Fact]
    public void Each_has_its_sentence_and_a_way_to_its_numbers()
    {
        var strip = Strip(Wide);
        var relation = strip.Find(".relation.cannot-be");
        Assert.Contains("Cannot be:", relation.TextContent, StringComparison.Ordinal);
        Assert.Contains(relation.QuerySelectorAll("a"), a =>
            a.GetAttribute("href")!.Contains("barrelRadius", StringComparison.Ordinal) && a.TextContent.Contains("300 mm",
                StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_confirmed_with_a_word_of_why_and_not_without()
    {
        var strip = Strip(Wide);
        strip.Find("form.confirm").Submit();
        Assert.Empty(_said);
        Assert.Contains("why", strip.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        strip.Find("form.confirm input").Change("measured twice");
        strip.Find("form.confirm").Submit();
        Assert.Equal("measured twice", Assert.Single(_said).Why);
        Assert.Contains("measured twice", Strip(Confirming.With(Wide, _said[0].Relation,
            _said[0].Why)).Find(".relation.confirmed").TextContent,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Paper_has_the_sentence_and_no_box()
    {
        var strip = Strip(Wide, print: true);
        Assert.NotEmpty(strip.FindAll(".relation"));
        Assert.Empty(strip.FindAll("form"));
    }

    [Fact]
    public void The_headline_says_that_it_says_nothing() => Assert.Contains("Numbers do not fit together in",
        Headline.Of(Judge.Build(Wide, "gravel-3")), StringComparison.Ordinal);
}
