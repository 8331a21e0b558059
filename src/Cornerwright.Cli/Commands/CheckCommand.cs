using System.ComponentModel;
using System.Text;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Relations;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class CheckSettings : CarSettings
{
    [CommandOption("--tidy")]
    [Description("Write the file back in its normal form: fields in order, one reading a line. No value changes.")]
    public bool Tidy { get; init; }

    [CommandOption("--confirm <RELATION>")]
    [Description("Say that what does not fit together is right all the same; needs --why. It lapses when one of the numbers changes.")]
    public string? Confirm { get; init; }

    [CommandOption("--why <WORDS>")]
    [Description("Why it is so; kept in the file beside the numbers.")]
    public string? Why { get; init; }
}

/// <summary>Reads a car file and says whether anything is wrong with it, and which of its numbers do not fit together.</summary>
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

        var confirmed = Confirmed(settings, car.Value);
        if (!confirmed.Ok)
        {
            return Refuse(settings, confirmed.Problems);
        }

        var checkedCar = confirmed.Value;
        bool normal = CarFile.Write(car.Value) == Encoding.UTF8.GetString(asRead.Span);
        bool tidied = settings.Tidy && !normal;
        if ((tidied || settings.Confirm is not null) && PutBack(settings.File, checkedCar, asRead) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        var relations = CarRelations.Of(checkedCar);
        if (settings.Json)
        {
            Around.Out.Document(CarJson.WriteCheck(checkedCar, relations, normal, tidied));
        }
        else
        {
            Write(checkedCar, relations, normal, tidied);
        }

        return relations.Contradicts ? ExitCode.Fails : ExitCode.Holds;
    }

    private void Write(Car car, CarRelations relations, bool normal, bool tidied)
    {
        int parts = car.Parts.All().Count();
        string fits = relations.OpenWords;
        Around.Out.Line($"{car.Name}: {(fits.Length > 0 ? fits : "nothing wrong")}. "
            + $"{Many(car.Builds.Count, "build")}, {Many(parts, "part")}, {Many(car.LoadCases.Count, "load case")}.");
        Around.Out.Line(FormattableString.Invariant($"{relations.Looked} relations between its numbers were looked at")
            + (fits.Length > 0 ? "." : ": they fit together."));
        Around.Out.Line(normal ? "The file is in its normal form."
            : tidied ? "It was written back in its normal form."
            : "It is not in its normal form; --tidy would write it so.");
        RelationText.Write(Around.Out, relations);
    }

    private static Checked<Car> Confirmed(CheckSettings settings, Car car)
    {
        if (settings.Confirm is not { } id)
        {
            return settings.Why is null ? Checked<Car>.From(car)
                : Checked<Car>.Wrong(new Problem("--why", settings.Why, "with --confirm", "Say which relation it is about."));
        }

        if (string.IsNullOrWhiteSpace(settings.Why))
        {
            return Checked<Car>.Wrong(new Problem("--confirm", id, "with --why \"...\"", "Say in a word why it is so."));
        }

        var open = CarRelations.Of(car).Found;
        return open.FirstOrDefault(r => r.Id == id) is { } relation
            ? Checked<Car>.From(Confirming.With(car, relation, settings.Why))
            : Checked<Car>.Wrong(new Problem("--confirm", id,
                open.Count == 0 ? "nothing: all fits together" : string.Join(", ", open.Take(20).Select(r => r.Id)), "Take one of these."));
    }

    private static string Many(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
