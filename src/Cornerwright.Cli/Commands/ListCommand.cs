using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class ListSettings : CarSettings
{
    [CommandOption("--builds")]
    [Description("Only the builds.")]
    public bool Builds { get; init; }

    [CommandOption("--parts")]
    [Description("Only the parts.")]
    public bool Parts { get; init; }
}

/// <summary>Lists what a car file holds.</summary>
public sealed class ListCommand(Surroundings around) : Verb<ListSettings>(around)
{
    protected override int Act(ListSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        bool both = settings.Builds == settings.Parts;
        if (settings.Json)
        {
            Around.Out.Document(CarJson.WriteList(car.Value, both || settings.Builds, both || settings.Parts));
        }
        else
        {
            ListText.Write(Around.Out, car.Value, both || settings.Builds, both || settings.Parts);
        }

        return ExitCode.Holds;
    }
}
