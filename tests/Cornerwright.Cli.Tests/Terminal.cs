using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Spectre.Console;

namespace Cornerwright.Cli.Tests;

/// <summary>What one run of the program answered.</summary>
internal sealed record Answer(int Code, string Out, string Err);

/// <summary>The program without a process: files in memory, consoles in strings, an app that only says what it was asked.</summary>
internal sealed class Terminal
{
    public const string DemoPath = "demo.json";

    public MemoryFiles Files { get; } = new();

    /// <summary>The demo scan lies where a clone has it.</summary>
    public Terminal()
    {
        using var scan = DemoCar.Scan();
        using var bytes = new MemoryStream();
        scan.CopyTo(bytes);
        Files.Bytes["demo/" + DemoCar.ScanName] = bytes.ToArray();
        Files["garage.db"] = "served when no other is named";
    }

    public StillApp App { get; } = new();

    /// <summary>A terminal in whose folder the demo car lies.</summary>
    public static Terminal WithDemo()
    {
        var terminal = new Terminal();
        terminal.Files[DemoPath] = DemoCar.Text();
        return terminal;
    }

    public Answer Run(params string[] args)
    {
        using var answer = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = CommandLine.Run(args, new Surroundings(ConsoleOn(answer), ConsoleOn(error), Files, App));
        return new Answer(code, answer.ToString().ReplaceLineEndings("\n"), error.ToString().ReplaceLineEndings("\n"));
    }

    private static IAnsiConsole ConsoleOn(TextWriter writer) => AnsiConsole.Create(new AnsiConsoleSettings
    {
        Ansi = AnsiSupport.No,
        ColorSystem = ColorSystemSupport.NoColors,
        Interactive = InteractionSupport.No,
        Out = new AnsiConsoleOutput(writer),
    });
}

/// <summary>Stands in for the web app.</summary>
internal sealed class StillApp : IApp
{
    public string DemoDatabase => "demo.db";

    public string UsualDatabase => "garage.db";

    public (string Database, string Copy)? BackedUp { get; private set; }

    public Problem? Backup(string database, string copy)
    {
        BackedUp = (database, copy);
        return Refusal;
    }

    public IReadOnlyList<string> Asked { get; private set; } = [];

    /// <summary>When set, the app cannot start for this reason.</summary>
    public Problem? Refusal { get; set; }

    public Problem? Run(IReadOnlyList<string> args, Action<IReadOnlyList<string>> started)
    {
        Asked = args;
        if (Refusal is null)
        {
            started(["http://127.0.0.1:5210"]);
        }

        return Refusal;
    }
}
