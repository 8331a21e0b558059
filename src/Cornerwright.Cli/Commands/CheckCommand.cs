using System.ComponentModel;
using System.Text;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Files;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class CheckSettings : CarSettings
{
    [CommandOption("--tidy")]
    [Description("Write the file back in its normal form: fields in order, one reading a line. No value changes.")]
    public bool Tidy { get; init; }
}

/// <summary>Reads a car file and says whether anything is wrong with it.</summary>
public sealed class CheckCommand(Surroundings around) : Verb<CheckSettings>(around)
{
    protected override int Act(CheckSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = TakeCar(settings.File, out var asRead);
        if (!car.Ok)
        {
            return Refuse(settings, car.Problems);
        }

        bool normal = CarFile.Write(car.Value) == Encoding.UTF8.GetString(asRead.Span);
        bool tidied = settings.Tidy && !normal;
        if (tidied && PutBack(settings.File, car.Value, asRead) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        if (settings.Json)
        {
            Around.Out.Document(CarJson.WriteCheck(car.Value, normal, tidied));
            return ExitCode.Holds;
        }

        int parts = car.Value.Parts.All().Count();
        Around.Out.Line($"{car.Value.Name}: nothing wrong. "
            + $"{Many(car.Value.Builds.Count, "build")}, {Many(parts, "part")}, {Many(car.Value.LoadCases.Count, "load case")}.");
        Around.Out.Line(normal ? "The file is in its normal form."
            : tidied ? "It was written back in its normal form."
            : "It is not in its normal form; --tidy would write it so.");
        return ExitCode.Holds;
    }

    private static string Many(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
