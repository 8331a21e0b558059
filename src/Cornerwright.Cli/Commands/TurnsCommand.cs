using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Workshop.Setting;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class TurnsSettings : CarSettings
{
    [CommandArgument(1, "[BUILD]")]
    [Description("The build on the car; not needed where the file has only one.")]
    public string? Build { get; init; }

    [CommandOption("--height <WHERE=HEIGHT>")]
    [Description("Hub centre to arch edge wanted: front=415mm, rear-left=430mm. If not given, what the file wants.")]
    public string[] Heights { get; init; } = [];

    [CommandOption("--camber <WHERE=ANGLE>")]
    [Description("Camber wanted: front=-1.5deg.")]
    public string[] Cambers { get; init; } = [];

    [CommandOption("--toe <WHERE=ANGLE>")]
    [Description("Toe wanted of each wheel, toe-in positive: front=0.1deg.")]
    public string[] Toes { get; init; } = [];

    [CommandOption("--cross <SHARE>")]
    [Description("Cross weight wanted, right front and left rear: 50%.")]
    public string? Cross { get; init; }

    [CommandOption("--every-collar")]
    [Description("Turn a collar also where it gains little: fewer misses, more moves.")]
    public bool EveryCollar { get; init; }
}

/// <summary>From how the car stands and how it should stand to turns of collars, plates and tie rods.</summary>
public sealed class TurnsCommand(Surroundings around) : Verb<TurnsSettings>(around)
{
    protected override int Act(TurnsSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = ReadCar(settings.File);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var build = BuildChoice.Find(car.Value, settings.Build);
        if (!build.Ok)
        {
            return Refuse(settings, build.Problems);
        }

        var wish = SettingOptions.Read(car.Value.Wish(build.Value.Id) ?? TurnTableMaker.UsualWish(car.Value, build.Value), settings);
        if (!wish.Ok)
        {
            return Refuse(settings, wish.Problems);
        }

        var table = TurnTableMaker.Make(car.Value, build.Value, wish.Value, settings.EveryCollar ? 0 : CollarSearch.Price);
        if (!table.Ok)
        {
            return Refuse(settings, table.Problems);
        }

        var verdict = TurnVerdict.Of(car.Value, table.Value);
        if (settings.Json)
        {
            Around.Out.Document(TurnsJson.Write(car.Value, table.Value, verdict));
        }
        else
        {
            TurnsText.Write(Around.Out, car.Value, table.Value, verdict);
        }

        return table.Value.Shortfalls.Count > 0 || verdict.Fails ? ExitCode.Fails : ExitCode.Holds;
    }
}
