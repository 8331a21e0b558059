using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class ExportSettings : CarSettings
{
    [CommandArgument(1, "[LIST]")]
    [Description("Where to write the parts list; to the screen if not given.")]
    public string? List { get; init; }

    [CommandOption("--kind <SHELF>")]
    [PartKindsDescription("Which parts: ")]
    public string Kind { get; init; } = "";
}

/// <summary>Writes one kind of part as a CSV list that <c>import</c> reads back; what a flat list cannot hold is named.</summary>
public sealed class ExportCommand(Surroundings around) : Verb<ExportSettings>(around)
{
    protected override int Act(ExportSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = TakeCar(settings.File, out _);
        List<Problem> problems = [.. car.Problems];
        var kind = PartKind.Find(settings.Kind);
        if (kind is null)
        {
            problems.Add(new Problem("--kind", settings.Kind, string.Join(", ", PartKind.All.Select(k => k.Name)),
                "Say which parts the list is to hold."));
        }

        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        var list = PartsCsvWriter.Write(car.Value.Parts, kind!);
        int parts = kind!.On(car.Value.Parts).Count;
        if (settings.List is { } file && WriteOwn(file, list.Text, over: false) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        if (settings.Json)
        {
            Around.Out.Document(ExportJson.Write(kind, parts, settings.List, list));
        }
        else if (settings.List is null)
        {
            Around.Out.Document(list.Text.TrimEnd('\n'));
        }

        if (settings.List is not null)
        {
            Around.Err.Line($"{parts} of kind \"{kind.Label}\" written to {settings.List}.");
        }

        foreach (string left in list.LeftOut)
        {
            Around.Err.Line($"Left out, since a flat list cannot hold it: {left}");
        }

        return ExitCode.Holds;
    }
}
