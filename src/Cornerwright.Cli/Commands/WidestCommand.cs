using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Scanning;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class WidestSettings : CarSettings
{
    [CommandArgument(1, "[BUILD]")]
    [Description("The build's id; not needed where the file has only one.")]
    public string? Build { get; init; }

    [CommandOption("--corner <PLACE>")]
    [Description("Only this: front-left, front-right, rear-left, rear-right, front, rear, left or right.")]
    public string[] Corners { get; init; } = [];

    [CommandOption("--rim <CODE>")]
    [Description("Rim diameter code, such as 17; the build's own if not given.")]
    public double? Rim { get; init; }

    [CommandOption("--scans <FOLDER>")]
    [Description("Where the files of the car's scans are; beside the car file, or in the folder scans there, if not given.")]
    public string? Scans { get; init; }
}

/// <summary>How wide one can go: the room round the wheel, and sizes with their offsets.</summary>
public sealed class WidestCommand(Surroundings around) : Verb<WidestSettings>(around)
{
    protected override int Act(WidestSettings settings)
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
        if (settings.Rim is { } code && !Garage.Designations.RimCodes.IsDiameterCode(code))
        {
            problems.Add(new Problem("--rim", $"{code}", "a rim diameter code, 10 to 30",
                "Give the number that a tyre of that size carries last, such as 17."));
        }

        var scans = ScanFolder.ShelfOf(Around.Files, car.Value, settings.File, settings.Scans);
        problems.AddRange(scans.Problems);
        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        List<(CornerPlace Place, WidestAnswer Answer)> answers =
            [.. corners.Value.Select(place => (place, WidestWheel.Of(car.Value, build.Value, place, scans, new WidestTask(settings.Rim))))];
        if (settings.Json)
        {
            Around.Out.Document(WidestJson.Write(car.Value, build.Value, answers));
        }
        else
        {
            WidestText.Write(Around.Out, car.Value, build.Value, answers);
        }

        return answers.All(a => a.Answer.Sizes.Count > 0) ? ExitCode.Holds : ExitCode.Fails;
    }
}
