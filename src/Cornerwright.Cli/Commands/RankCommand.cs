using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Ranking;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class RankSettings : ScannedCarSettings
{
    [CommandArgument(1, "[SEARCH]")]
    [Description("A search kept in the file, by its id; the options below change it. Without one, everything starts empty.")]
    public string? Search { get; init; }

    [CommandOption("--axle <PLACE>")]
    [Description("front or rear.")]
    public string? Axle { get; init; }

    [CommandOption("--from <BUILD>")]
    [Description("The build from which everything else is taken; if left out, the one on which the car was measured.")]
    public string? From { get; init; }

    [CommandOption("--height <LENGTH>")]
    [Description("Hub centre to arch edge; every collar is turned to it.")]
    public string? Height { get; init; }

    [CommandOption("--gap <LENGTH>")]
    [Description("Least gap of tyre and rim to anything.")]
    public string? Gap { get; init; }

    [CommandOption("--softest <FREQUENCY>")]
    [Description("Ride frequency at least.")]
    public string? FrequencyLow { get; init; }

    [CommandOption("--stiffest <FREQUENCY>")]
    [Description("Ride frequency at most.")]
    public string? FrequencyHigh { get; init; }

    [CommandOption("--camber <ANGLE>")]
    [Description("Camber wanted at ride; a sliding plate is moved to it.")]
    public string? Camber { get; init; }

    [CommandOption("--budget <MONEY>")]
    [Description("To spend at most, both sides of the axle.")]
    public string? Budget { get; init; }

    [CommandOption("--helper <WORD>")]
    [Description("either, with or without.")]
    public string? Helper { get; init; }

    [CommandOption("--prefer <WORD>")]
    [Description("What comes first of builds that are equally sure: cheapest, softest, stiffest or nearestHeight.")]
    public string? Prefer { get; init; }

    [CommandOption("--parts <KIND=IDS>")]
    [Description("Only these parts of a kind: \"springs=f-6-250,f-helper\". May be repeated.")]
    public string[] Parts { get; init; } = [];

    [CommandOption("--list <COUNT>")]
    [Description("Builds to list, 1 to 500; if left out, 30.")]
    public int? Listed { get; init; }

    [CommandOption("--take <RANK>")]
    [Description("Put the build of this rank into the file.")]
    public int? Take { get; init; }

    [CommandOption("--threads <COUNT>")]
    [Description("At most this many; if left out, all of the machine. The answer is the same.")]
    public int Threads { get; init; }
}

/// <summary>Ranks the builds that the parts of a file make for one axle.</summary>
public sealed class RankCommand(Surroundings around) : Verb<RankSettings>(around)
{
    protected override int Act(RankSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = TakeCar(settings.File, out var asRead);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        var wishes = WishOptions.Read(settings, car.Value);
        if (!wishes.Ok)
        {
            return Refuse(settings, wishes.Problems);
        }

        var scans = ScansOf(settings, car.Value);
        if (!scans.Ok)
        {
            return Refuse(settings, scans.Problems);
        }

        var search = BuildSearch.Prepare(car.Value, wishes.Value, scans.Value);
        if (!search.Ok)
        {
            return Refuse(settings, search.Problems);
        }

        search.Value.Run(CancellationToken.None, Around.Err.Profile.Out.IsTerminal ? new ProgressLine(Around.Err) : null, settings.Threads);
        var result = search.Value.Result();
        string taken = "";
        if (settings.Take is { } rank)
        {
            if (result.Listed.FirstOrDefault(b => b.Rank == rank) is not { } chosen)
            {
                return Refuse(settings, [new Problem("--take", rank.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    result.Listed.Count > 0 ? $"1 to {result.Listed.Count}" : "(no build holds)", "Name a rank that is listed.")]);
            }

            taken = ChosenBuild.FreshId(car.Value);
            if (PutBack(settings.File, car.Value.With(ChosenBuild.Named(chosen, taken)), asRead) is { } problem)
            {
                return Refuse(settings, [problem]);
            }
        }

        if (settings.Json)
        {
            Around.Out.Document(RankingJson.Write(car.Value, result, taken));
        }
        else
        {
            RankingText.Write(Around.Out, car.Value, result, taken, settings.File);
        }

        return result.Listed.Count > 0 ? ExitCode.Holds : ExitCode.Fails;
    }
}
