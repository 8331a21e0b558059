using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Judging;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class StackSettings : CarSettings
{
    [CommandArgument(1, "[BUILD]")]
    [Description("The build's id; not needed where the file has only one.")]
    public string? Build { get; init; }

    [CommandOption("--corner <PLACE>")]
    [Description("Draw only this: front-left, front-right, rear-left, rear-right, front, rear, left or right.")]
    public string[] Corners { get; init; } = [];

    [CommandOption("--rows <COUNT>")]
    [Description("Lines of text for the longest stack, 10 to 200; 30 if not given.")]
    public int Rows { get; init; } = 30;
}

/// <summary>Draws spring stacks to scale.</summary>
public sealed class StackCommand(Surroundings around) : Verb<StackSettings>(around)
{
    protected override int Act(StackSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var build = BuildChoice.Find(car.Value, settings.Build);
        var corners = BuildChoice.Corners(settings.Corners);
        List<Problem> problems = [.. build.Problems, .. corners.Problems];
        if (settings.Rows is < 10 or > 200)
        {
            problems.Add(
                new Problem("--rows", $"{settings.Rows}", "10 to 200", "Choose how many lines of text the longest stack may take."));
        }

        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        var judgement = Judge.Build(car.Value, build.Value.Id, new JudgeOptions(Cures: false, Pictures: true));
        var pictures = judgement.Pictures.Where(p => corners.Value.Contains(p.Corner)).ToList();
        if (settings.Json)
        {
            Around.Out.Document(StackJson.Write(judgement, pictures));
            return ExitCode.Holds;
        }

        StackText.Write(Around.Out, judgement, pictures, settings.Rows);
        return ExitCode.Holds;
    }
}
