using System.Runtime.CompilerServices;

namespace Cornerwright.Cli.Tests;

/// <summary>
/// What people and scripts read, kept as files and reviewed as a diff. CORNERWRIGHT_WRITE_GOLDEN=1 writes them anew; look at the
/// difference before it is committed.
/// </summary>
public class GoldenTests
{
    private const string WriteAnew = "CORNERWRIGHT_WRITE_GOLDEN";

    [Theory]
    [InlineData("list.txt", "list demo.json")]
    [InlineData("list.json", "list demo.json --json")]
    [InlineData("check.txt", "check demo.json")]
    [InlineData("check.json", "check demo.json --json")]
    [InlineData("judge-now.txt", "judge demo.json now")]
    [InlineData("judge-gravel-1.txt", "judge demo.json gravel-1")]
    [InlineData("judge-gravel-2-brief.txt", "judge demo.json gravel-2 --brief")]
    [InlineData("judge-touring-front-left.json", "judge demo.json touring --corner front-left --json")]
    [InlineData("judge-filtered.txt", "judge demo.json gravel-1 --verdict fails,tight --corner rear")]
    [InlineData("compare.txt", "compare demo.json gravel-1 gravel-2")]
    [InlineData("compare.json", "compare demo.json gravel-2 winter --json")]
    [InlineData("stack-gravel-2.txt", "stack demo.json gravel-2")]
    [InlineData("stack-touring-front-left.txt", "stack demo.json touring --corner front-left --rows 40")]
    [InlineData("stack-touring.json", "stack demo.json touring --corner left --json")]
    [InlineData("sweep-front-hardpoints.csv",
        "sweep demo.json --corner front --hardpoints --travel -60..60/30 --rack 0,40 --plate 0,5 --gravity-height 560")]
    [InlineData("sweep-left-by-angle.csv",
        "sweep demo.json gravel-3 --corner front-left --hardpoints --travel -120,0,120 --steer -32..32/32 --csv")]
    [InlineData("sweep-tape-and-cycled.csv", "sweep demo.json --travel -80..160/40")]
    [InlineData("sweep-out-of-reach.json", "sweep demo.json --corner front-left --hardpoints --travel 0,100 --rack 0,-120 --json")]
    [InlineData("help-sweep.txt", "sweep --help")]
    [InlineData("order-gravel-3.txt", "order demo.json --build gravel-3")]
    [InlineData("order-winter.json", "order demo.json --from gravel-2 --build winter --json")]
    [InlineData("rank-front.txt", "rank demo.json --axle front --from gravel-3 --parts wheels=w-gravel,w-gravel-40 "
        + "--parts tyres=t-gravel-65,t-gravel-55 --parts springs=f-8-220,f-6-250,f-helper --list 4")]
    [InlineData("rank-rear.json",
        "rank demo.json --axle rear --from gravel-2 --parts wheels=w-gravel-40 --parts tyres=t-gravel-55 --list 3 --json")]
    [InlineData("widest-rear-left.txt", "widest demo.json gravel-3 --corner rear-left")]
    [InlineData("scan-info.txt", "scan-info demo/wagtail-front-left.ply")]
    [InlineData("scan-info.json", "scan-info demo/wagtail-front-left.ply --json")]
    [InlineData("turns-gravel-3.txt", "turns demo.json gravel-3 --height front=423mm --cross 50%")]
    [InlineData("turns-gravel-3.json", "turns demo.json gravel-3 --camber front=-1deg --json")]
    [InlineData("learn.txt", "learn demo.json")]
    [InlineData("settle-gravel-2.txt", "judge demo.json gravel-2 --brief --verdict tight --settle")]
    [InlineData("problems.json", "judge demo.json nothing-like-it --json")]
    [InlineData("help.txt", "--help")]
    [InlineData("help-judge.txt", "judge --help")]
    public void The_answer_is_the_one_we_reviewed(string golden, string typed)
    {
        var answer = Terminal.WithDemo().Run(typed.Split(' '));
        string path = Path.Combine(Folder(), golden);
        if (Environment.GetEnvironmentVariable(WriteAnew) == "1")
        {
            File.WriteAllText(path, answer.Out);
        }

        Assert.True(File.Exists(path), $"{golden} is not there yet: run once with {WriteAnew}=1 and review it.");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), answer.Out);
    }

    [Fact]
    public void Every_golden_file_belongs_to_a_case()
    {
        var cases = typeof(GoldenTests).GetMethod(nameof(The_answer_is_the_one_we_reviewed))!
            .GetCustomAttributesData().Where(a => a.AttributeType == typeof(InlineDataAttribute))
            .Select(a =>
                ((IReadOnlyList<System.Reflection.CustomAttributeTypedArgument>)a.ConstructorArguments[0].Value!)[0].Value as string);
        Assert.Equal(cases.Order(StringComparer.Ordinal),
            Directory.GetFiles(Folder()).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "golden");
}
