using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class DemoSettings : CarSettings
{
    [CommandOption("--force")]
    [Description("Write over a file that is there already.")]
    public bool Force { get; init; }
}

/// <summary>Writes the demo car as a file to play with.</summary>
public sealed class DemoCommand(Surroundings around) : Verb<DemoSettings>(around)
{
    protected override int Act(DemoSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (!settings.Force && Around.Files.Exists(settings.File))
        {
            return Refuse(settings, [new Problem("file", settings.File, "the name of a new file", "Choose another name, or add --force to write over it.")]);
        }

        var car = DemoCar.Read();
        if (WriteCar(settings.File, car) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        if (settings.Json)
        {
            Around.Out.Document(CarJson.WriteList(car, builds: true, parts: false));
        }
        else
        {
            Around.Out.Line($"{car.Name} written to {settings.File}. Now try:");
            Around.Out.Line($"  cornerwright judge {settings.File} {car.Builds[0].Id}");
        }

        return ExitCode.Holds;
    }
}
