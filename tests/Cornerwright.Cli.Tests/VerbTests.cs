using System.Text.Json;
using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Cli.Tests;

public class VerbTests
{
    [Fact]
    public void Demo_writes_a_file_that_the_other_verbs_read()
    {
        var terminal = new Terminal();
        Assert.Equal(ExitCode.Holds, terminal.Run("demo", "my.json").Code);
        Assert.True(CarFile.Read(terminal.Files["my.json"]).Ok);
        Assert.Equal(ExitCode.Holds, terminal.Run("check", "my.json").Code);
    }

    [Fact]
    public void Demo_writes_over_a_file_only_when_told()
    {
        var terminal = new Terminal();
        terminal.Files["my.json"] = "mine";
        var refused = terminal.Run("demo", "my.json");
        Assert.Equal(ExitCode.BadInput, refused.Code);
        Assert.Equal("mine", terminal.Files["my.json"]);
        Assert.Contains("--force", refused.Err);
        Assert.Equal(ExitCode.Holds, terminal.Run("demo", "my.json", "--force").Code);
        Assert.NotEqual("mine", terminal.Files["my.json"]);
    }

    [Theory]
    [InlineData("judge demo.json nothing-like-it", "nothing-like-it", "gravel-1")]
    [InlineData("judge demo.json", "(nothing)", "gravel-1")]
    [InlineData("judge demo.json now --corner middle", "middle", "front-left")]
    [InlineData("judge demo.json now --verdict good", "good", "fails, tight, unknown, holds")]
    [InlineData("judge demo.json now --check luck", "luck", "seated-at-droop")]
    [InlineData("judge nowhere.json now", "nowhere.json", "a file that can be read")]
    [InlineData("stack demo.json now --rows 3", "3", "10 to 200")]
    [InlineData("rank demo.json nothing-kept", "nothing-kept", "gravel-front")]
    [InlineData("rank demo.json --axle middle", "middle", "front, rear")]
    [InlineData("rank demo.json --height 12mm", "12mm", "150 to 800 mm")]
    [InlineData("rank demo.json --from luck", "luck", "gravel-1")]
    [InlineData("rank demo.json --budget plenty", "plenty", "a number, 0 or more")]
    [InlineData("rank demo.json --list 0", "0", "1 to 500")]
    [InlineData("rank demo.json --parts springs=f-99", "f-99", "f-6-250")]
    [InlineData("rank demo.json --parts luck=f-99", "luck=f-99", "springs")]
    [InlineData("rank demo.json --axle rear --from gravel-3 --parts springs=f-helper", "1 springs", "at least one main spring")]
    [InlineData("serve --port 70000", "70000", "0 to 65535")]
    [InlineData("jugde demo.json now", "jugde", "a verb")]
    [InlineData("judge demo.json now --colour", "--colour", "a verb")]
    public void Bad_input_names_what_was_given_and_what_is_allowed(string typed, string given, string allowed)
    {
        var answer = Terminal.WithDemo().Run(typed.Split(' '));
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Contains(given, answer.Err);
        Assert.Contains(allowed, answer.Err);
        Assert.Contains("mend:", answer.Err);
    }

    [Fact]
    public void Every_problem_of_a_file_is_named_at_once()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files["bad.json"] = """
            { "format": "cornerwright-car", "version": 1, "id": "x", "name": "X", "wheelbase": "7,750 mm", "topSpeed": "-3 km/h", "colour": "red" }
            """;
        var answer = terminal.Run("check", "bad.json");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.StartsWith("3 things must be mended:", answer.Err);
        Assert.Contains("7,750 mm", answer.Err);
        Assert.Contains("30 to 450 km/h", answer.Err);
        Assert.Contains("colour", answer.Err);
    }

    [Fact]
    public void With_json_the_problems_are_the_document()
    {
        var answer = Terminal.WithDemo().Run("judge", "demo.json", "nothing-like-it", "--corner", "front", "--json");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        using var document = JsonDocument.Parse(answer.Out);
        var problem = Assert.Single(document.RootElement.GetProperty("problems").EnumerateArray());
        Assert.Equal("nothing-like-it", problem.GetProperty("given").GetString());
        Assert.NotEqual("", problem.GetProperty("mend").GetString());
    }

    [Fact]
    public void The_exit_code_is_the_verdict_of_the_whole_build_whatever_is_shown()
    {
        var car = DemoCar.Read();
        foreach (var build in car.Builds)
        {
            var verdict = Judge.Build(car, build.Id, JudgeOptions.FindingsOnly).Verdict;
            int expected = verdict == Verdict.Fails ? ExitCode.Fails : ExitCode.Holds;
            int strict = verdict == Verdict.Holds ? ExitCode.Holds : ExitCode.Fails;
            Assert.Equal(expected, Terminal.WithDemo().Run("judge", "demo.json", build.Id, "--brief", "--verdict", "holds").Code);
            Assert.Equal(strict, Terminal.WithDemo().Run("judge", "demo.json", build.Id, "--brief", "--strict").Code);
            Assert.Equal(expected, Terminal.WithDemo().Run("compare", "demo.json", "now", build.Id).Code);
        }

        Assert.Equal(ExitCode.Fails, Terminal.WithDemo().Run("judge", "demo.json", "gravel-1", "--brief").Code);
    }

    [Fact]
    public void The_json_judgement_holds_every_finding()
    {
        var car = DemoCar.Read();
        var judgement = Judge.Build(car, "gravel-1", JudgeOptions.FindingsOnly);
        using var document = JsonDocument.Parse(Terminal.WithDemo().Run("judge", "demo.json", "gravel-1", "--json").Out);
        var findings = document.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.Equal(judgement.Findings.Select(f => f.Key), findings.Select(f => f.GetProperty("key").GetString()));
        Assert.Equal(judgement.Findings.Select(f => f.Margin?.Shown ?? double.NaN), findings.Select(Margin), Close);
        Assert.Equal(judgement.Figures.Count, document.RootElement.GetProperty("figures").GetArrayLength());

        static double Margin(JsonElement finding) =>
            finding.GetProperty("margin") is { ValueKind: JsonValueKind.Object } m ? m.GetProperty("value").GetDouble() : double.NaN;

        // Shown margins have at least no decimals: half a unit is the printed rounding at worst.
        static bool Close(double a, double b) => (double.IsNaN(a) && double.IsNaN(b)) || Math.Abs(a - b) <= 0.5;
    }

    [Fact]
    public void Filters_show_only_what_was_asked_for()
    {
        using var document = JsonDocument.Parse(Terminal.WithDemo()
            .Run("judge", "demo.json", "gravel-1", "--json", "--verdict", "fails", "--corner", "rear-left").Out);
        var findings = document.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.Equal("fails", f.GetProperty("verdict").GetString()));
        Assert.All(findings, f => Assert.Contains(f.GetProperty("where").GetString(), new[] { "rear left", "rear axle", "car" }));
    }

    [Fact]
    public void Check_tidies_without_changing_a_value()
    {
        var terminal = Terminal.WithDemo();
        string normal = CarFile.Write(DemoCar.Read());
        terminal.Files["untidy.json"] = normal.Replace("\n", "\n   ", StringComparison.Ordinal);
        Assert.Contains("not in its normal form", terminal.Run("check", "untidy.json").Out);
        Assert.NotEqual(normal, terminal.Files["untidy.json"]);
        Assert.Equal(ExitCode.Holds, terminal.Run("check", "untidy.json", "--tidy").Code);
        Assert.Equal(normal, terminal.Files["untidy.json"]);
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_bad_input()
    {
        var terminal = Terminal.WithDemo();
        terminal.Files.Locked.Add("locked.json");
        Assert.Equal(ExitCode.BadInput, terminal.Run("demo", "locked.json").Code);
        Assert.Equal(ExitCode.BadInput, terminal.Run("schema", "locked.json").Code);
    }

    [Fact]
    public void Schema_is_written_where_it_is_wanted()
    {
        var terminal = new Terminal();
        string shown = terminal.Run("schema").Out;
        Assert.Equal(ExitCode.Holds, terminal.Run("schema", "car.schema.json").Code);
        Assert.Equal(shown, terminal.Files["car.schema.json"]);
        Assert.Equal(CarSchema.Write(), shown);
    }

    [Fact]
    public void Serve_hands_its_choices_to_the_app_and_prints_the_address()
    {
        var terminal = new Terminal();
        var answer = terminal.Run("serve", "--demo", "--port", "0");
        Assert.Equal(ExitCode.Holds, answer.Code);
        Assert.Equal(["--urls", "http://127.0.0.1:0", "--database", "demo.db"], terminal.App.Asked);
        Assert.Contains("http://127.0.0.1:5210", answer.Out);
    }

    [Fact]
    public void Serve_tells_the_app_by_which_names_it_may_be_called()
    {
        var terminal = new Terminal();
        Assert.Equal(ExitCode.Holds, terminal.Run("serve", "--network", "--name", "garage.example", "--name", "10.0.0.7").Code);
        Assert.Equal(
            ["--urls", "http://0.0.0.0:5210", "--answer-network", "true", "--answer-names", "garage.example,10.0.0.7"], terminal.App.Asked);
        terminal.Run("serve");
        Assert.Equal(["--urls", "http://127.0.0.1:5210"], terminal.App.Asked);
    }

    [Fact]
    public void Serve_refuses_what_cannot_be_a_name()
    {
        var refused = new Cornerwright.Cli.Edges.WebApp().Run(["--answer-names", "http://garage.example"], _ => { });
        Assert.Equal("http://garage.example", refused!.Given);
        Assert.Contains("without http://", refused.Cure);
    }

    [Fact]
    public void Serve_says_why_it_could_not_start()
    {
        var terminal = new Terminal();
        terminal.App.Refusal = new Problem("--port", "5210", "a free port", "Choose another with --port.");
        var answer = terminal.Run("serve", "--json");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("\"allowed\": \"a free port\"", answer.Out);
    }
}
