using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Judging;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class CompareSettings : ScannedCarSettings
{
    [CommandArgument(1, "<BUILD>")]
    [Description("The build to start from.")]
    public string Left { get; init; } = "";

    [CommandArgument(2, "<OTHER>")]
    [Description("The build to go to; the exit code speaks of this one.")]
    public string Right { get; init; } = "";

    [CommandOption("--all")]
    [Description("Show also the checks that hold in both.")]
    public bool All { get; init; }

    [CommandOption("--strict")]
    [Description("Exit code 1 also where a check of the other build is tight or unknown.")]
    public bool Strict { get; init; }
}

/// <summary>Judges two builds of one car and pairs what was found.</summary>
public sealed class CompareCommand(Surroundings around) : Verb<CompareSettings>(around)
{
    protected override int Act(CompareSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var left = BuildChoice.Find(car.Value, settings.Left);
        var right = BuildChoice.Find(car.Value, settings.Right);
        if (!left.Ok || !right.Ok)
        {
            return Refuse(settings, [.. left.Problems, .. right.Problems]);
        }

        var scans = ScansOf(settings, car.Value);
        if (!scans.Ok)
        {
            return Refuse(settings, scans.Problems);
        }

        var options = JudgeOptions.FindingsOnly with { Scans = scans.Value };
        var comparison =
            BuildComparison.Between(Judge.Build(car.Value, left.Value.Id, options), Judge.Build(car.Value, right.Value.Id, options));
        if (settings.Json)
        {
            Around.Out.Document(ComparisonJson.Write(comparison));
        }
        else
        {
            ComparisonText.Write(Around.Out, comparison, settings.All);
        }

        return JudgeCommand.CodeOf(comparison.Right, settings.Strict);
    }
}
