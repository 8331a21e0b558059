using System.Text.RegularExpressions;
using Cornerwright.Cli.Edges;

namespace Cornerwright.Cli.Tests;

/// <summary>What the guides tell people to type does what they say.</summary>
public partial class GuideTests
{
    [Theory]
    [InlineData("docs/command-line.md", 15)]
    [InlineData("docs/user-guide.md", 3)]
    public void Every_line_of_the_guide_runs_as_it_says(string guide, int atLeast)
    {
        var terminal = new Terminal();
        int lines = 0;
        foreach (Match block in Block().Matches(File.ReadAllText(Path.Combine(Root(), guide)).ReplaceLineEndings("\n")))
        {
            string kind = block.Groups["kind"].Value, text = block.Groups["text"].Value;
            if (kind.StartsWith("csv ", StringComparison.Ordinal))
            {
                terminal.Files[kind["csv ".Length..].Trim()] = text;
                continue;
            }

            foreach (Match line in Typed().Matches(text))
            {
                int expected = line.Groups["code"].Success ? line.Groups["code"].Value[0] - '0' : ExitCode.Holds;
                var answer = terminal.Run(line.Groups["typed"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries));
                Assert.True(answer.Code == expected, $"{line.Value}: exit {answer.Code}\n{answer.Err}");
                lines++;
            }
        }

        Assert.True(lines >= atLeast, $"{guide}: only {lines} lines were found to run.");
    }

    [Fact]
    public void The_readme_gives_the_commands_that_CI_and_people_run()
    {
        string readme = File.ReadAllText(Path.Combine(Root(), "README.md")).ReplaceLineEndings("\n");
        string script = File.ReadAllText(Path.Combine(Root(), "test")), ci = File.ReadAllText(Path.Combine(Root(), ".ci", "run"));
        Assert.Contains("\n./test\n", readme);
        Assert.Contains("\ndotnet test ", script.ReplaceLineEndings("\n"));
        Assert.Contains("/../test\" \"$@\"", ci);
        string run =
            Regex.Match(readme, @"^dotnet run --project src/Cornerwright\.Cli -- (.+)$", RegexOptions.Multiline).Groups[1].Value.Trim();
        Assert.Equal(ExitCode.Holds, new Terminal().Run(run.Split(' ')).Code);
    }

    [Fact]
    public void What_the_readme_points_to_is_there()
    {
        var missing = Regex.Matches(File.ReadAllText(Path.Combine(Root(), "README.md")), @"\]\((?!http)([^)#]+)\)")
            .Select(m => m.Groups[1].Value)
            .Where(p => !Path.Exists(Path.Combine(Root(), p)));
        Assert.Empty(missing);
    }

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from within the repository.");
        }

        return folder.FullName;
    }

    [GeneratedRegex(@"^```(?<kind>csv \S+|console)\n(?<text>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex(@"^\$ cornerwright (?<typed>[^#\n]+?)\s*(?:# exit (?<code>\d))?$", RegexOptions.Multiline)]
    private static partial Regex Typed();
}
