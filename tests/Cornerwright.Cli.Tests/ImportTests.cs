using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;

namespace Cornerwright.Cli.Tests;

public class ImportTests
{
    private const string List = """
        id,name,Rate (N/mm),Len,Solid height (mm),Colour
        f-new-60,"Front, 60 N/mm",60,240,95,grey
        f-new-70,"Front, 70 N/mm",70,9.5 in,92,black

        """;

    [Fact]
    public void A_list_goes_on_the_shelf_and_the_columns_are_shown()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["springs.csv"] = List;
        int before = DemoCar.Read().Parts.Springs.Count;
        var answer = terminal.Run("import", "demo.json", "springs.csv", "--kind", "springs", "--map", "Len=freeLength:mm");
        Assert.Equal(ExitCode.Holds, answer.Code);
        var springs = CarFile.Read(terminal.Files["demo.json"]).Value.Parts.Springs;
        Assert.Equal(before + 2, springs.Count);
        var added = springs.Single(s => s.Id == "f-new-70");

        // 9.5 in by the inch's definition, 25.4 mm.
        Assert.Equal(0.2413, added.FreeLength!.Si, 1e-12);
        Assert.Equal(70_000, added.Rate!.Si, 1e-6);
        Assert.Contains("(left out)", answer.Out);
        Assert.Contains("2 of kind \"Springs\" put on the shelf", answer.Out);
    }

    [Fact]
    public void Trying_writes_nothing()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["springs.csv"] = List;
        var answer =
            terminal.Run("import", "demo.json", "springs.csv", "--kind", "springs", "--map", "Len=freeLength:mm", "--try", "--json");
        Assert.Equal(ExitCode.Holds, answer.Code);
        Assert.Equal(DemoCar.Text(), terminal.Files["demo.json"]);
        Assert.Contains("\"written\": false", answer.Out);
    }

    [Fact]
    public void One_bad_row_keeps_all_out_and_every_problem_is_named()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["springs.csv"] = List.Replace("60,240", "sixty,2400", StringComparison.Ordinal);
        var answer = terminal.Run("import", "demo.json", "springs.csv", "--kind", "springs", "--map", "Len=freeLength:mm");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Equal(DemoCar.Text(), terminal.Files["demo.json"]);
        Assert.Contains("sixty", answer.Err);
        Assert.Contains("5 to 900 mm", answer.Err);
    }

    [Theory]
    [InlineData("--kind", "gearboxes", "", "topMounts")]
    [InlineData("--kind", "springs", "Length=freeLength", "Solid height (mm)")]
    [InlineData("--kind", "springs", "Len=weight", "freeLength")]
    [InlineData("--kind", "springs", "Len=freeLength:kg", "a unit such as mm")]
    [InlineData("--kind", "springs", "Len=freeLength.luck", "tolerance, spread, source or date")]
    public void A_wrong_choice_says_what_there_is_to_choose(string option, string kind, string map, string allowed)
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["springs.csv"] = List;
        string[] more = map.Length > 0 ? ["--map", map] : [];
        var answer = terminal.Run(["import", "demo.json", "springs.csv", option, kind, .. more]);
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains(allowed, answer.Err);
    }
}
