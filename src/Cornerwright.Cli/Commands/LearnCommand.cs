using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Learning;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class LearnSettings : CarSettings
{
    [CommandOption("--use")]
    [Description("Write into the file that builds are judged with what was learned.")]
    public bool Use { get; init; }

    [CommandOption("--forget")]
    [Description("Write into the file that builds are judged by what was typed alone.")]
    public bool Forget { get; init; }
}

/// <summary>What the readings after the work say about the car's numbers.</summary>
public sealed class LearnCommand(Surroundings around) : Verb<LearnSettings>(around)
{
    protected override int Act(LearnSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = TakeCar(settings.File, out var asRead);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        if (settings is { Use: true, Forget: true })
        {
            return Refuse(settings, [new Problem("--use", "--forget", "one of the two",
                "Say whether builds are to be judged with what was learned or without.")]);
        }

        if ((settings.Use || settings.Forget)
            && PutBack(settings.File, car.Value with { UseLearned = settings.Use }, asRead) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        var learned = CarLearning.Of(car.Value);
        bool used = settings.Use || (car.Value.UseLearned && !settings.Forget);
        if (settings.Json)
        {
            Around.Out.Document(LearnedJson.Write(car.Value, learned, used));
        }
        else
        {
            LearnedText.Write(Around.Out, car.Value, learned, used);
        }

        return ExitCode.Holds;
    }
}
