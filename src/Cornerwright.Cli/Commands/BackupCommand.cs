using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class BackupSettings : VerbSettings
{
    [CommandArgument(0, "<COPY>")]
    [Description("The database file to write; it must not be there yet. Scans and photos go into folders beside it.")]
    public string Copy { get; init; } = "";

    [CommandOption("--database <FILE>")]
    [Description("The database to copy; the one that serve takes if not given.")]
    public string? Database { get; init; }

    [CommandOption("--demo")]
    [Description("Copy the demo's database.")]
    public bool Demo { get; init; }
}

/// <summary>Copies a whole garage: cars with every revision, scans, photos. The app may run meanwhile.</summary>
public sealed class BackupCommand(Surroundings around) : Verb<BackupSettings>(around)
{
    protected override int Act(BackupSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Demo && settings.Database is not null)
        {
            return Refuse(settings, [new Problem("--database", settings.Database, "either --demo or --database",
                "The demo has a database of its own: take one of the two out.")]);
        }

        string database = settings.Demo ? Around.App.DemoDatabase : settings.Database ?? Around.App.UsualDatabase;
        if (!Around.Files.Exists(database))
        {
            return Refuse(settings,
                [new Problem("--database", database, "a database that is there", "Name the one that serve was started with.")]);
        }

        if (Around.App.Backup(database, settings.Copy) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        if (settings.Json)
        {
            Around.Out.Document(BackupJson.Write(database, settings.Copy));
        }
        else
        {
            Around.Out.Line($"{database} is copied to {settings.Copy}, with its scans and photos.");
        }

        return ExitCode.Holds;
    }
}
