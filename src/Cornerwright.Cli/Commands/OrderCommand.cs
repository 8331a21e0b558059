using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.WorkOrders;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class OrderSettings : CarSettings
{
    [CommandOption("--build <BUILD>")]
    [Description("The build that is to be on the car afterwards; not needed where the file has only one.")]
    public string? Build { get; init; }

    [CommandOption("--from <BUILD>")]
    [Description(
        "The build that is on the car now; if not given, the one the last finished job led to, else the one on which it was measured.")]
    public string? From { get; init; }
}

/// <summary>Writes the order of the work that turns one build into another.</summary>
public sealed class OrderCommand(Surroundings around) : Verb<OrderSettings>(around)
{
    protected override int Act(OrderSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var to = BuildChoice.Find(car.Value, settings.Build);
        string? fromId = settings.From ?? CarNow.Of(car.Value)?.Id;
        var from = fromId is null
            ? Checked<Build>.Wrong(new Problem("--from", "", string.Join(", ", car.Value.Builds.Select(b => b.Id)),
                "Say with --from which build is on the car now."))
            : BuildChoice.Find(car.Value, fromId);
        if (!to.Ok || !from.Ok)
        {
            return Refuse(settings, [.. to.Problems, .. from.Problems]);
        }

        var order = OrderWriter.Write(car.Value, from.Value, to.Value);
        if (!order.Ok)
        {
            return Refuse(settings, order.Problems);
        }

        if (settings.Json)
        {
            Around.Out.Document(OrderJson.Write(order.Value));
        }
        else
        {
            OrderText.Write(Around.Out, order.Value);
        }

        return ExitCode.Holds;
    }
}
