using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Files;
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
        var car = DemoCar.Read();
        if (WriteOwn(settings.File, CarFile.Write(car), settings.Force) is { } problem)
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
