using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Nodes;
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

    [CommandOption("--force")]
    [Description("Write over a file that is there already, whatever it holds. An older schema of ours is replaced without.")]
    public bool Force { get; init; }
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

        bool over = settings.Force || (Around.Files.Read(settings.File).Try(out var there) && IsOurs(there));
        if (WriteOwn(settings.File, schema, over) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        Around.Err.Line($"Schema written to {settings.File}.");
        return ExitCode.Holds;
    }

    /// <summary>Whether a file is a schema of car files, of this version or another: then nothing of anybody's is lost with it.</summary>
    private static bool IsOurs(ReadOnlyMemory<byte> file)
    {
        try
        {
            return JsonNode.Parse(file.Span) is JsonObject root
                && root["$schema"] is JsonValue
                && root["properties"] is JsonObject properties
                && properties["format"] is JsonObject format
                && format["const"] is JsonValue name
                && name.TryGetValue(out string? said)
                && said == CarFile.Format;
        }
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            return false;
        }
    }
}
