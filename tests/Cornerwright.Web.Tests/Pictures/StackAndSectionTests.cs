using Bunit;
using Cornerwright.Garage.Chassis;
using Cornerwright.Web.Components.Pictures;

namespace Cornerwright.Web.Tests.Pictures;

public class StackAndSectionTests : BunitContext
{
    public StackAndSectionTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void All_states_are_drawn_at_one_scale_and_the_gap_is_what_the_stack_leaves()
    {
        var layout = StackLayout.Of([PictureSamples.Loose, PictureSamples.Seated]);
        foreach (var state in layout.States)
        {
            Assert.Equal(state.State.Space * layout.PerMetre, layout.Ground - state.Seat, 9);
            Assert.Equal(state.State.Pieces.Sum(p => p.Length) * layout.PerMetre, layout.Ground - state.StackTop, 9);
            Assert.Equal(state.State.Gap * layout.PerMetre, state.StackTop - state.Seat, 6);
        }
    }

    [Fact]
    public void A_shut_coil_is_drawn_solid_with_its_coils_touching()
    {
        var coil = CoilShape.Of(100, 80, 50, 18, 18);
        int turns = coil.Back.Count(c => c == 'M');
        Assert.Equal(18, coil.Wire * (turns + 1), 6);
    }

    [Fact]
    public void An_open_coil_keeps_its_turns_and_wire()
    {
        var shut = CoilShape.Of(100, 80, 50, 78, 78);
        var open = CoilShape.Of(100, 80, 50, 183, 78);
        Assert.Equal(shut.Back.Count(c => c == 'M'), open.Back.Count(c => c == 'M'));
        Assert.Equal(shut.Wire, open.Wire, 9);
    }

    [Fact]
    public void The_stack_names_its_pieces_from_the_perch_upward_and_says_when_it_is_loose()
    {
        var drawing = Render<StackDrawing>(p =>
            p.Add(d => d.Corner, CornerPlace.FrontLeft).Add(d => d.States, [PictureSamples.Loose, PictureSamples.Seated]));
        Assert.Equal(["Helper 60", "Adapter", "Main 180"], drawing.FindAll("tbody th").Select(c => c.TextContent));
        Assert.Contains("gap 12.0 mm", drawing.Markup, StringComparison.Ordinal);
        Assert.Contains("18.0 shut", drawing.Find("tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Contains("loose by 12.0 mm", drawing.Find("desc").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stack_without_states_says_what_is_wanting()
    {
        var drawing = Render<StackDrawing>(p => p.Add(d => d.Corner, CornerPlace.FrontLeft).Add(d => d.States, []));
        Assert.Empty(drawing.FindAll("svg"));
        Assert.Contains("cannot be drawn", drawing.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_section_has_one_scale_both_ways()
    {
        var layout = SectionLayout.Of(PictureSamples.Section, null);
        Assert.Equal(0.1 * layout.PerMetre, layout.X(0.1) - layout.X(0), 9);
        Assert.Equal(0.1 * layout.PerMetre, layout.Y(0.2) - layout.Y(0.3), 9);
    }

    [Fact]
    public void Worst_shows_the_least_gap_of_every_obstacle_least_first()
    {
        var shown = SectionLayout.Shown(PictureSamples.Section.Gaps, null);
        Assert.Equal(["arch lip", "strut tube"], shown.Select(g => g.Obstacle));
        Assert.Equal(-0.0032, shown[0].Gap);
        Assert.Equal([0.008, 0.040], SectionLayout.Shown(PictureSamples.Section.Gaps, "ride").Select(g => g.Gap));
    }

    [Fact]
    public void An_overlap_is_told_in_words_with_its_steer_and_clock()
    {
        var arch = Render<WheelInArch>(p => p.Add(a => a.Corner, CornerPlace.FrontLeft).Add(a => a.Section, PictureSamples.Section));
        string first = arch.Find("tbody tr").TextContent;
        Assert.Contains("overlaps by 3.2", first, StringComparison.Ordinal);
        Assert.Contains("steered 29° to the left", first, StringComparison.Ordinal);
        Assert.Contains("10:30 o'clock", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Choosing_a_state_asks_the_page_for_it()
    {
        string? asked = "nothing";
        var arch = Render<WheelInArch>(p => p.Add(a => a.Corner, CornerPlace.FrontLeft).Add(a => a.Section, PictureSamples.Section)
            .Add(a => a.StateChanged, (string? s) => asked = s));
        Assert.Equal(["worst", "ride"], arch.FindAll(".states button").Select(b => b.TextContent));
        arch.FindAll(".states button")[1].Click();
        Assert.Equal("ride", asked);
    }

    /// <summary>Razor takes "M@x" for an address and writes it as it stands: such a path draws nothing.</summary>
    [Fact]
    public void No_drawing_holds_an_unwritten_value()
    {
        string[] drawn =
        [
            Render<StackDrawing>(p =>
                p.Add(d => d.Corner, CornerPlace.FrontLeft).Add(d => d.States, [PictureSamples.Loose, PictureSamples.Seated])).Markup,
            Render<WheelInArch>(p => p.Add(a => a.Corner, CornerPlace.FrontLeft).Add(a => a.Section, PictureSamples.Section)).Markup,
            Render<TravelColumn>(p => p.Add(c => c.Picture, PictureSamples.Corner).Add(c => c.PerchHeight, 0.2)
                .Add(c => c.PerchWanted, (double _) => { })).Markup,
            Render<MarginList>(p => p.Add(l => l.Findings, [PictureSamples.Failing, PictureSamples.Waiting])).Markup,
        ];
        Assert.All(drawn, markup => Assert.DoesNotContain("@", markup, StringComparison.Ordinal));
        Assert.All(drawn, markup => Assert.DoesNotContain("NaN", markup, StringComparison.Ordinal));
    }
}
