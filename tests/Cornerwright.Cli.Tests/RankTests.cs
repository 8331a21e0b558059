using System.Text.Json;
using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Cli.Tests;

public class RankTests
{
    private const string Small = "--axle rear --from gravel-3 --parts wheels=w-gravel-40 --parts tyres=t-gravel-55";

    [Fact]
    public void The_build_taken_holds_at_its_axle()
    {
        var terminal = Terminal.WithDemo();
        var answer = terminal.Run([.. "rank demo.json".Split(' '), .. Small.Split(' '), "--take", "1"]);
        Assert.Equal(ExitCode.Holds, answer.Code);
        Assert.Contains("\"choice-1\"", answer.Out);
        var car = CarFile.Read(terminal.Files["demo.json"]).Value;
        var judged = Judge.Build(car, "choice-1", JudgeOptions.FindingsOnly);
        Assert.DoesNotContain(judged.Findings, f => f.Corner?.Axle() == AxlePlace.Rear && f.Verdict == Verdict.Fails);
    }

    [Fact]
    public void A_search_of_the_file_is_repeated_and_changed()
    {
        var terminal = Terminal.WithDemo();
        var kept = new Wishes { Id = "kept", Name = "Kept", Axle = AxlePlace.Rear, StartingBuild = "gravel-3", Wheels = ["w-gravel-40"],
            Tyres = ["t-gravel-55"], Listed = 2 };
        terminal.Files["demo.json"] = CarFile.Write(DemoCar.Read().With(kept));
        using var first = JsonDocument.Parse(terminal.Run("rank", "demo.json", "kept", "--json").Out);
        using var typed =
            JsonDocument.Parse(Terminal.WithDemo().Run([.. "rank demo.json".Split(' '), .. Small.Split(' '), "--list", "2", "--json"]).Out);
        Assert.Equal(typed.RootElement.GetRawText(), first.RootElement.GetRawText());
        using var one = JsonDocument.Parse(terminal.Run("rank", "demo.json", "kept", "--list", "1", "--json").Out);
        Assert.Equal(1, one.RootElement.GetProperty("listed").GetArrayLength());
    }

    [Fact]
    public void Where_nothing_holds_the_exit_code_says_so_and_the_nearest_are_named()
    {
        var answer = Terminal.WithDemo().Run([.. "rank demo.json".Split(' '), .. Small.Split(' '), "--height", "460 mm"]);
        Assert.Equal(ExitCode.Fails, answer.Code);
        Assert.Contains("none holds", answer.Out);
        Assert.Contains("Refused first by", answer.Out);
        Assert.Empty(answer.Err);
    }

    [Fact]
    public void A_rank_that_is_not_listed_is_refused()
    {
        var answer = Terminal.WithDemo().Run([.. "rank demo.json".Split(' '), .. Small.Split(' '), "--list", "1", "--take", "7"]);
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("1 to 1", answer.Err);
    }
}
