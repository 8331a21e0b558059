using System.Text;
using Cornerwright.Cli.Commands;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Cornerwright.Cli;

/// <summary>The door of the command line.</summary>
public static class CommandLine
{
    public static int Main(string[] args)
    {
        ArgumentNullException.ThrowIfNull(args);
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return Run(args, new Surroundings(ConsoleOn(Console.Out), ConsoleOn(Console.Error), new DiskFiles(), new WebApp()));
    }

    /// <summary>Runs one verb; nothing outside <paramref name="around"/> is touched.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(IReadOnlyList<string> args, Surroundings around)
    {
        ArgumentNullException.ThrowIfNull(around);
        var app = new CommandApp(new Registrar(around));
        app.Configure(tree => Plant(tree, around));
        try
        {
            return app.Run(args, CancellationToken.None);
        }
        catch (CommandAppException error)
        {
            string typed = string.Join(' ', args);
            ProblemText.Write(around.Err, [new Problem("command line", typed, "a verb and its options",
                error.Message + " \"cornerwright --help\" lists the verbs, \"cornerwright VERB --help\" the options.")]);
            return ExitCode.BadInput;
        }
    }

    private static void Plant(IConfigurator tree, Surroundings around)
    {
        tree.SetApplicationName("cornerwright");
        tree.SetApplicationVersion(typeof(CommandLine).Assembly.GetName().Version!.ToString(3));
        tree.ConfigureConsole(around.Out);
        tree.UseStrictParsing();
        tree.PropagateExceptions();
        tree.AddCommand<DemoCommand>("demo").WithDescription("Write a car file with an invented car, its parts and its builds.");
        tree.AddCommand<CheckCommand>("check").WithDescription("Look for mistakes in a car file; --tidy writes it in its normal form.");
        tree.AddCommand<ListCommand>("list").WithDescription("List the builds and parts of a car file.");
        tree.AddCommand<JudgeCommand>("judge")
            .WithDescription("Judge a build: what holds, what fails, by how much, how surely, and what would cure it.");
        tree.AddCommand<CompareCommand>("compare").WithDescription("Judge two builds and set them side by side.");
        tree.AddCommand<RankCommand>("rank")
            .WithDescription("Rank the builds that the parts of a file make: how surely each holds, what it costs, what the rest lacks.");
        tree.AddCommand<StackCommand>("stack").WithDescription("Draw a build's spring stacks to scale at full droop, ride and full bump.");
        tree.AddCommand<SweepCommand>("sweep")
            .WithDescription("Sweep corners through travel, steering and plate: all that their geometry says, as CSV or JSON.");
        tree.AddCommand<OrderCommand>("order")
            .WithDescription("Write the work order that turns one build into another: steps, torques, tools, parts, cautions.");
        tree.AddCommand<ScanInfoCommand>("scan-info")
            .WithDescription("Say what a scan's file holds, and how large it would be in each unit.");
        tree.AddCommand<TurnsCommand>("turns")
            .WithDescription("From how the car stands and how it should stand: turns of collars, plates and tie rods, in order.");
        tree.AddCommand<LearnCommand>("learn")
            .WithDescription("What the readings after the work say about the car's numbers; --use judges with it.");
        tree.AddCommand<WidestCommand>("widest")
            .WithDescription("Say how wide wheels and tyres can be: the sizes and offsets that clear everything known, scans included.");
        tree.AddCommand<ImportCommand>("import").WithDescription("Put a parts list (CSV) on the shelf of a car file.");
        tree.AddCommand<ExportCommand>("export").WithDescription("Write one kind of part of a car file as a parts list (CSV).");
        tree.AddCommand<SchemaCommand>("schema").WithDescription("Write the JSON Schema of car files.");
        tree.AddCommand<BackupCommand>("backup")
            .WithDescription("Copy a whole garage, scans and photos too, while the app may go on saving.");
        tree.AddCommand<ServeCommand>("serve").WithDescription("Start the app for the browser and print its address.");
    }

    private static IAnsiConsole ConsoleOn(TextWriter writer) =>
        AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(writer), Interactive = InteractionSupport.No });
}
