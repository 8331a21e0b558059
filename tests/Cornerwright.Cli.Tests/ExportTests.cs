using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;

namespace Cornerwright.Cli.Tests;

public class ExportTests
{
    [Fact]
    public void What_is_exported_is_what_an_import_puts_back()
    {
        var terminal = Terminal.WithDemo();
        var answer = terminal.Run("export", "demo.json", "links.csv", "--kind", "barLinks");
        Assert.Equal(ExitCode.Holds, answer.Code);
        Assert.Contains("2 of kind \"Bar links\" written to links.csv", answer.Err);
        var demo = DemoCar.Read();
        terminal.Files["bare.json"] = CarFile.Write(demo with
        {
            Parts = demo.Parts with { BarLinks = [] },
            Builds = [.. demo.Builds.Select(b => b with
            {
                FrontLeft = b.FrontLeft with { BarLink = "" }, FrontRight = b.FrontRight with { BarLink = "" },
            })],
        });
        Assert.Equal(ExitCode.Holds, terminal.Run("import", "bare.json", "links.csv", "--kind", "barLinks").Code);
        var back = CarFile.Read(terminal.Files["bare.json"]).Value.Parts.BarLinks;
        Assert.Equal(demo.Parts.BarLinks.Select(l => (l.Id, l.Name, l.Length!.Si, l.Thickness!.Si, l.Thickness.Source)),
            back.Select(l => (l.Id, l.Name, l.Length!.Si, l.Thickness!.Si, l.Thickness.Source)));
    }

    [Fact]
    public void To_the_screen_it_is_the_list_alone_and_what_is_left_out_is_named_beside_it()
    {
        var terminal = Terminal.WithDemo();
        var answer = terminal.Run("export", "demo.json", "--kind", "bumpStops");
        Assert.Equal(ExitCode.Holds, answer.Code);
        Assert.StartsWith("id,name,", answer.Out, StringComparison.Ordinal);
        Assert.Contains("b-front / ", answer.Err);
        Assert.Contains("\"leftOut\"", terminal.Run("export", "demo.json", "--kind", "bumpStops", "--json").Out);
    }

    [Fact]
    public void A_file_that_is_there_stays_and_an_unknown_kind_is_told_the_kinds()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["mine.csv"] = "mine";
        Assert.Equal(ExitCode.BadInput, terminal.Run("export", "demo.json", "mine.csv", "--kind", "springs").Code);
        Assert.Equal("mine", terminal.Files["mine.csv"]);
        var refused = terminal.Run("export", "demo.json", "--kind", "doors");
        Assert.Equal(ExitCode.BadInput, refused.Code);
        Assert.Contains("barLinks", refused.Err);
    }
}
