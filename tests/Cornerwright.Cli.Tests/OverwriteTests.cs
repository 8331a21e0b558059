using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;

namespace Cornerwright.Cli.Tests;

/// <summary>
/// No verb destroys a file that it was not asked to change. Seen once: "schema my-car.json", a slip for "check my-car.json", put the
/// schema in place of the car and answered with exit code 0.
/// </summary>
public class OverwriteTests
{
    public static TheoryData<string> SomebodysFiles => new()
    {
        DemoCar.Text(),
        "id,name,Rate (N/mm)\n",
        "",
        "{}",
        "[1, 2]",
        """{ "$schema": "https://json-schema.org/draft/2020-12/schema", "properties": { "format": { "const": "another" } } }""",
        """{ "$schema": "x", "properties": { "format": { "const": "cornerwright-car" }, "format": 1 } }""",
    };

    [Theory]
    [MemberData(nameof(SomebodysFiles))]
    public void Schema_leaves_a_file_alone_that_is_no_schema_of_ours(string theirs)
    {
        var terminal = new Terminal();
        terminal.Files["mine.json"] = theirs;
        var refused = terminal.Run("schema", "mine.json");
        Assert.Equal(ExitCode.BadInput, refused.Code);
        Assert.Equal(theirs, terminal.Files["mine.json"]);
        Assert.Contains("mine.json", refused.Err);
        Assert.Contains("the name of a new file", refused.Err);
        Assert.Contains("--force", refused.Err);
        Assert.Equal(ExitCode.Holds, terminal.Run("schema", "mine.json", "--force").Code);
        Assert.Equal(CarSchema.Write(), terminal.Files["mine.json"]);
    }

    [Fact]
    public void Schema_renews_an_older_schema_of_ours()
    {
        var terminal = new Terminal();
        terminal.Files["car.schema.json"] = CarSchema.Write().Replace("A car with its readings", "A car", StringComparison.Ordinal);
        Assert.Equal(ExitCode.Holds, terminal.Run("schema", "car.schema.json").Code);
        Assert.Equal(CarSchema.Write(), terminal.Files["car.schema.json"]);
    }

    /// <summary>Verbs with a car file where they take a file, right or by a slip.</summary>
    [Theory]
    [InlineData("demo mine.json", ExitCode.BadInput)]
    [InlineData("schema mine.json", ExitCode.BadInput)]
    [InlineData("schema other.csv", ExitCode.BadInput)]
    [InlineData("demo other.csv", ExitCode.BadInput)]
    [InlineData("import other.csv mine.json --kind springs", ExitCode.BadInput)]
    [InlineData("import mine.json other.csv --kind springs --try", ExitCode.Holds)]
    [InlineData("check mine.json", ExitCode.Holds)]
    [InlineData("check other.csv --tidy", ExitCode.BadInput)]
    [InlineData("list mine.json", ExitCode.Holds)]
    [InlineData("learn mine.json", ExitCode.Holds)]
    [InlineData("learn other.csv --use", ExitCode.BadInput)]
    [InlineData("judge mine.json gravel-1 --brief", ExitCode.Fails)]
    [InlineData("order mine.json --build gravel-3", ExitCode.Holds)]
    [InlineData("sweep mine.json --corner rear --travel 0", ExitCode.Holds)]
    [InlineData("turns mine.json gravel-3", ExitCode.Holds)]
    [InlineData("turns mine.json gravel-3 --height rear=390mm", ExitCode.Fails)]   // reached, and into its stops
    [InlineData("stack mine.json gravel-3", ExitCode.Holds)]
    [InlineData("compare mine.json now gravel-1", ExitCode.Fails)]
    [InlineData("scan-info mine.json", ExitCode.BadInput)]
    [InlineData("rank mine.json --axle rear --from gravel-3 --parts wheels=w-gravel-40 --parts tyres=t-gravel-55", ExitCode.Holds)]
    public void What_no_verb_was_told_to_change_stays_as_it_was(string typed, int code)
    {
        // Not in its normal form, so that writing it back in silence would show.
        string car = DemoCar.Text().Replace("\n", "\n ", StringComparison.Ordinal);
        const string list = "id,name,Rate (N/mm),Free length (mm)\na,A,55,240\n";
        var terminal = new Terminal();
        (terminal.Files["mine.json"], terminal.Files["other.csv"]) = (car, list);
        var answer = terminal.Run(typed.Split(' '));
        Assert.True(answer.Code == code, $"exit {answer.Code}\n{answer.Err}");
        Assert.Equal(car, terminal.Files["mine.json"]);
        Assert.Equal(list, terminal.Files["other.csv"]);
    }

    [Theory]
    [InlineData("check mine.json --tidy")]
    [InlineData("learn mine.json --use")]
    [InlineData("import mine.json other.csv --kind springs --map wire=")]
    [InlineData("rank mine.json --axle rear --from gravel-3 --parts wheels=w-gravel-40 --parts tyres=t-gravel-55 --take 1")]
    public void What_somebody_saved_while_a_verb_ran_is_not_lost(string typed)
    {
        var terminal = new Terminal();
        terminal.Files["mine.json"] = DemoCar.Text().Replace("\n", "\n ", StringComparison.Ordinal);
        terminal.Files["other.csv"] = "id,name,Rate (N/mm),Free length (mm),wire\na,A,55,240,\n";
        terminal.Files.Meanwhile = () => terminal.Files["mine.json"] = "saved in an editor";
        var answer = terminal.Run(typed.Split(' '));
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("run the command again", answer.Err);
        Assert.Equal("saved in an editor", terminal.Files["mine.json"]);
    }
}
