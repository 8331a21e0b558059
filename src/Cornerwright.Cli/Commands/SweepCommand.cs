using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Sweeps;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class SweepSettings : CarSettings
{
    [CommandArgument(1, "[BUILD]")]
    [Description("Whose wheels and settings count; the build on which the car was measured if not given.")]
    public string? Build { get; init; }

    [CommandOption("--corner <PLACE>")]
    [Description("Only this: front-left, front-right, rear-left, rear-right, front, rear, left or right.")]
    public string[] Corners { get; init; } = [];

    [CommandOption("--travel <RANGE>")]
    [Description("Wheel travel in mm, bump positive: from..to/step, or values with commas; -60..60/10 if not given.")]
    public string? Travel { get; init; }

    [CommandOption("--rack <RANGE>")]
    [Description("Place of the rack in mm to the left of straight ahead; 0 if not given.")]
    public string? Rack { get; init; }

    [CommandOption("--steer <RANGE>")]
    [Description("In place of --rack: angle of the corner's own wheel in degrees at the reference height, left positive.")]
    public string? Steer { get; init; }

    [CommandOption("--plate <RANGE>")]
    [Description("Top plate in mm inward from its middle; as the build has it if not given.")]
    public string? Plate { get; init; }

    [CommandOption("--hardpoints")]
    [Description("Go by the table of hardpoints even where the verdict goes by tape or cycled readings.")]
    public bool Hardpoints { get; init; }

    [CommandOption("--gravity-height <LENGTH>")]
    [Description("Height of the centre of gravity in mm; gives the anti shares.")]
    public string? GravityHeight { get; init; }

    [CommandOption("--front-braking <SHARE>")]
    [Description("The front axle's share of braking in percent; 65 if not given.")]
    public string? FrontBraking { get; init; }

    [CommandOption("--csv")]
    [Description("Comma-separated values: also what is written when neither is asked for.")]
    public bool Csv { get; init; }
}

/// <summary>Sweeps corners through travel, steering and plate.</summary>
public sealed class SweepCommand(Surroundings around) : Verb<SweepSettings>(around)
{
    protected override int Act(SweepSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var build = BuildChoice.Find(car.Value, settings.Build ?? (car.Value.MeasuredBuild.Length > 0 ? car.Value.MeasuredBuild : null));
        var corners = BuildChoice.Corners(settings.Corners);
        var travel = SweepRange.Parse(settings.Travel, "-60..60/10", Units.Millimetre, "--travel", -300, 300);
        var rack = SweepRange.Parse(settings.Rack, "0", Units.Millimetre, "--rack", -200, 200);
        var steer = SweepRange.Parse(settings.Steer, null, Units.Degree, "--steer", -70, 70);
        var plate = SweepRange.Parse(settings.Plate, null, Units.Millimetre, "--plate", -60, 60);
        var height = SweepRange.Parse(settings.GravityHeight, null, Units.Millimetre, "--gravity-height", 100, 2000);
        var braking = SweepRange.Parse(settings.FrontBraking, "65", Units.Percent, "--front-braking", 0, 100);
        List<Problem> problems =
        [
            .. build.Problems, .. corners.Problems, .. travel.Problems, .. rack.Problems, .. steer.Problems, .. plate.Problems,
            .. height.Problems, .. braking.Problems,
        ];
        if (!string.IsNullOrEmpty(settings.Rack) && !string.IsNullOrEmpty(settings.Steer))
        {
            problems.Add(new Problem("--rack and --steer", $"{settings.Rack} and {settings.Steer}", "one of the two",
                "Steer by the rack's place or by the wheel's angle."));
        }

        if (settings.Csv && settings.Json)
        {
            problems.Add(new Problem("--csv and --json", "both", "one of the two", "Choose one layout."));
        }

        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        bool byAngle = steer.Value.Count > 0;
        var grid = new SweepGrid(travel.Value, byAngle ? steer.Value : rack.Value, byAngle, plate.Value);
        var wishes = new SweepWishes(settings.Hardpoints, height.Value.Count > 0 ? height.Value[0] : null, braking.Value[0]);
        var rows = new List<SweepRow>();
        foreach (var corner in corners.Value)
        {
            var swept = CornerSweep.Of(car.Value, build.Value, corner, grid, wishes);
            problems.AddRange(swept.Problems);
            rows.AddRange(swept.Ok ? swept.Value : []);
        }

        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        Around.Out.Document(settings.Json ? SweepJson.Write(car.Value, build.Value, rows) : SweepText.Csv(rows));
        return ExitCode.Holds;
    }
}
