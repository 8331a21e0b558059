using System.Diagnostics;

namespace Cornerwright.Cli.Tests;

/// <summary>The script that runs every test, on a machine made up for it: programs that pretend, results written beforehand.</summary>
public sealed class TestScriptTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-script-").FullName;

    public TestScriptTests()
    {
        File.Copy(Path.Combine(GuideTests.Root(), "test"), PathOf("test"));
        Directory.CreateDirectory(PathOf("bin"));
        string[] all = ["bash", "dirname", "basename", "rm", "mkdir", "sed", "head", "tail", "grep", "cat", "env", "cp"];
        foreach (string needed in all)
        {
            Program(needed, $"exec {Where(needed)} \"$@\"");
        }

        Program("id", "echo 1000");
        Program("dotnet", """
            case "$1" in
                --version) echo 10.0.100; exit "${SDK_CODE:-0}" ;;
                test) echo "$@" >asked
                    while [ $# -gt 0 ]; do [ "$1" = --results-directory ] && to="$2"; shift; done
                    for trx in made/*.trx; do [ -e "$trx" ] && cp "$trx" "$to/"; done
                    exit "${TEST_CODE:-0}" ;;
            esac
            """);
        Project("Cornerwright.Cli.Tests");
        Project("Cornerwright.Storage.KillVictim", "<IsTestProject>false</IsTestProject>");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void All_that_ran_is_summed_up_and_the_last_line_says_it()
    {
        Project("Cornerwright.Garage.Tests");
        Result("Cornerwright.Cli.Tests", total: 12, passed: 12, failed: 0);
        Result("Cornerwright.Garage.Tests", total: 30, passed: 30, failed: 0);
        var (code, last, all) = Run();
        Assert.True(code == 0, all);
        Assert.Equal("42 passed, 0 failed", last);
    }

    [Theory]
    [InlineData(12, 11, 1, "1", "11 passed, 1 failed", "dotnet test ended with code 1")]
    [InlineData(12, 11, 1, "0", "11 passed, 1 failed", "11 passed")]
    [InlineData(12, 11, 0, "0", "11 passed, 0 failed", "1 tests were not run")]
    [InlineData(12, 12, 0, "134", "12 passed, 0 failed", "dotnet test ended with code 134")]
    [InlineData(0, 0, 0, "0", "0 passed, 0 failed", "no test passed")]
    public void What_failed_or_was_left_out_or_broke_off_is_no_success(
        int total, int passed, int failed, string ended, string last, string said)
    {
        Result("Cornerwright.Cli.Tests", total, passed, failed);
        var answer = With("TEST_CODE", ended);
        Assert.Equal((1, last), (answer.Code, answer.Last));
        Assert.Contains(said, answer.All, StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_of_which_no_test_ran_is_named()
    {
        Project("Cornerwright.Garage.Tests");
        Result("Cornerwright.Cli.Tests", total: 12, passed: 12, failed: 0);
        var answer = Run();
        Assert.Equal((1, "12 passed, 0 failed"), (answer.Code, answer.Last));
        Assert.Contains("Cornerwright.Garage.Tests: no test ran", answer.All, StringComparison.Ordinal);
        Assert.DoesNotContain("KillVictim", answer.All, StringComparison.Ordinal);
    }

    [Fact]
    public void When_the_build_breaks_nothing_passed_and_the_exit_code_says_so()
    {
        var answer = With("TEST_CODE", "1");
        Assert.Equal((1, "0 passed, 0 failed"), (answer.Code, answer.Last));
    }

    [Fact]
    public void Results_of_an_earlier_run_do_not_count()
    {
        Result("Cornerwright.Cli.Tests", total: 12, passed: 12, failed: 0);
        Assert.Equal(0, Run().Code);
        Directory.Delete(PathOf("made"), recursive: true);
        Assert.Equal((1, "0 passed, 0 failed"), (Run().Code, Run().Last));
    }

    [Fact]
    public void One_project_and_a_filter_are_handed_on_and_only_what_is_meant_must_run()
    {
        Project("Cornerwright.Garage.Tests");
        Project("Cornerwright.Browser.Tests");
        Result("Cornerwright.Cli.Tests", total: 3, passed: 3, failed: 0);
        var answer = Run("tests/Cornerwright.Cli.Tests", "--filter", "A&B");
        Assert.True(answer.Code == 0, answer.All);
        Assert.EndsWith("tests/Cornerwright.Cli.Tests --filter A&B", File.ReadAllText(PathOf("asked")).Trim(), StringComparison.Ordinal);
        Assert.Equal(0, Run("tests/Cornerwright.Cli.Tests/Cornerwright.Cli.Tests.csproj").Code);
        Assert.Contains("Cornerwright.Garage.Tests: no test ran", Run("tests/Cornerwright.Garage.Tests").All, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_browser_it_stops_and_says_what_to_type()
    {
        Project("Cornerwright.Browser.Tests");
        Program("apt-get", "echo apt-get >>typed");
        var answer = Run();
        Assert.Equal((1, "0 passed, 0 failed"), (answer.Code, answer.Last));
        Assert.Contains(
            "    sudo apt-get update && sudo apt-get install -y --no-install-recommends chromium fonts-dejavu-core\n", answer.All,
            StringComparison.Ordinal);
        Assert.False(File.Exists(PathOf("asked")), "No test was to run.");
        Assert.False(File.Exists(PathOf("typed")), "Nothing may be installed without the right to.");
        Program("sudo", "[ \"$1\" = -n ] && exit 1");
        Assert.Equal(1, Run().Code);
        Assert.False(File.Exists(PathOf("typed")), "sudo asked for a password.");
    }

    [Theory]
    [InlineData("0", "")]
    [InlineData("1000", "sudo ")]
    public void Where_it_may_it_installs_the_browser_itself(string user, string by)
    {
        Browser();
        Program("id", "echo " + user);
        Program("sudo", "shift; [ $# -eq 1 ] && exit 0; BY='sudo ' exec \"$@\"");
        Program("apt-get", "echo \"${BY:-}$*\" >>typed; [ \"$1\" = update ] || { cp chromium-to-be bin/chromium; }");
        File.WriteAllText(PathOf("chromium-to-be"), "#!/usr/bin/env bash\nexit 0\n");
        MayRun(PathOf("chromium-to-be"));
        var answer = Run();
        Assert.True(answer.Code == 0, answer.All);
        Assert.Equal(
            [$"{by}update -qq", $"{by}install -y -qq --no-install-recommends chromium fonts-dejavu-core"],
            File.ReadAllLines(PathOf("typed")));
    }

    [Fact]
    public void When_the_installing_fails_its_last_words_are_shown_with_what_to_type()
    {
        Browser();
        Program("id", "echo 0");
        Program("apt-get", "echo 'no network'; exit 100");
        var answer = Run();
        Assert.Equal((1, "0 passed, 0 failed"), (answer.Code, answer.Last));
        Assert.Contains("no network", answer.All, StringComparison.Ordinal);
        Assert.Contains("    apt-get update && apt-get install", answer.All, StringComparison.Ordinal);
    }

    /// <summary>Ubuntu's "chromium-browser" only says that the browser must be had elsewhere.</summary>
    [Fact]
    public void A_program_that_is_no_browser_is_not_taken_for_one()
    {
        Browser();
        Program("chromium-browser", "echo 'requires the snap to be installed'; exit 1");
        Program("snap", "exit 0");
        Assert.Contains("    sudo snap install chromium\n", Run().All, StringComparison.Ordinal);
        Program("google-chrome", "exit 0");
        Assert.Equal(0, Run().Code);
    }

    [Fact]
    public void A_browser_that_is_named_is_taken_and_a_wrong_name_is_told()
    {
        Browser();
        File.WriteAllText(PathOf("mine"), "");
        Assert.Equal(0, With("CHROMIUM_PATH", PathOf("mine")).Code);
        var answer = With("CHROMIUM_PATH", "/no/such");
        Assert.Equal(1, answer.Code);
        Assert.Contains("CHROMIUM_PATH names \"/no/such\"", answer.All, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_right_sdk_it_stops_and_says_what_to_type()
    {
        Assert.Contains("--jsonfile global.json", With("SDK_CODE", "145").All, StringComparison.Ordinal);
        File.Delete(PathOf("bin/dotnet"));
        var answer = Run();
        Assert.Equal((1, "0 passed, 0 failed"), (answer.Code, answer.Last));
        Assert.Contains("curl -fsSL https://dot.net/v1/dotnet-install.sh", answer.All, StringComparison.Ordinal);
    }

    private void Browser()
    {
        Project("Cornerwright.Browser.Tests");
        Result("Cornerwright.Cli.Tests", total: 1, passed: 1, failed: 0);
        Result("Cornerwright.Browser.Tests", total: 1, passed: 1, failed: 0);
    }

    private void Project(string name, string more = "")
    {
        Directory.CreateDirectory(PathOf("tests/" + name));
        File.WriteAllText(PathOf($"tests/{name}/{name}.csproj"), $"<Project>{more}</Project>");
    }

    /// <summary>As the runner writes it, with one attribute among its neighbours that looks alike.</summary>
    private void Result(string name, int total, int passed, int failed)
    {
        Directory.CreateDirectory(PathOf("made"));
        File.WriteAllText(PathOf($"made/{name}.trx"), $"""
            <TestRun>
              <TestDefinitions><UnitTest><TestMethod codeBase="/work/bin/{name}.dll" /></UnitTest></TestDefinitions>
              <ResultSummary outcome="Completed">
                <Counters total="{total}" executed="{total}" passed="{passed}" failed="{failed}" error="0" passedButRunAborted="7" />
              </ResultSummary>
            </TestRun>
            """);
    }

    private void Program(string name, string script)
    {
        File.WriteAllText(PathOf("bin/" + name), "#!" + Where("bash") + "\n" + script.ReplaceLineEndings("\n") + "\n");
        MayRun(PathOf("bin/" + name));
    }

    private static void MayRun(string path)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private static string Where(string program) =>
        ((string[])["/usr/bin", "/bin", "/usr/local/bin", "/opt/homebrew/bin"]).Select(f => f + "/" + program).First(File.Exists);

    private (int Code, string Last, string All) Run(params string[] args) => Run(null, args);

    private (int Code, string Last, string All) With(string name, string value) => Run((name, value), []);

    private (int Code, string Last, string All) Run((string Name, string Value)? around, string[] args)
    {
        var start = new ProcessStartInfo(Where("bash")) { RedirectStandardOutput = true, WorkingDirectory = _folder };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add("exec ./test \"$@\" 2>&1");
        start.ArgumentList.Add("test");
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        start.Environment.Clear();
        start.Environment["PATH"] = PathOf("bin");
        if (around is { } one)
        {
            start.Environment[one.Name] = one.Value;
        }

        using var process = Process.Start(start)!;
        string all = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, all.TrimEnd('\n').Split('\n')[^1], all);
    }

    private string PathOf(string name) => Path.Combine(_folder, name);
}
