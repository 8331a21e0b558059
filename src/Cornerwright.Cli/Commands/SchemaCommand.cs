using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Files;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class SchemaSettings : VerbSettings
{
    [CommandArgument(0, "[FILE]")]
    [Description("Where to write it; to the screen if not given.")]
    public string? File { get; init; }
}

/// <summary>Writes the JSON Schema of car files. It is JSON with or without --json.</summary>
public sealed class SchemaCommand(Surroundings around) : Verb<SchemaSettings>(around)
{
    protected override int Act(SchemaSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        string schema = CarSchema.Write();
        if (settings.File is null)
        {
            Around.Out.Document(schema);
            return ExitCode.Holds;
        }

        if (Around.Files.Write(settings.File, schema) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        Around.Err.Line($"Schema written to {settings.File}.");
        return ExitCode.Holds;
    }
}
