using Cornerwright.Cli.Commands;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Setting;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>A turn table for people: what to do, in which order, and what comes of it.</summary>
internal static class TurnsText
{
    private const int Indent = 2;
    private const double Gravity = Mechanics.Loads.RideRates.StandardGravity;

    public static void Write(IAnsiConsole console, Car car, TurnTable table, TurnVerdict verdict)
    {
        console.Line($"{car.Name}: {table.Build.Name}");
        console.Sentence(From(table), 0);
        if (table.Done)
        {
            console.Heading("Nothing to turn: it stands as it is wanted.");
        }

        console.Heading(table.Moves == 1 ? "1 move" : $"{table.Moves} moves");
        console.Table(
            ["corner", "collar", ">perch then", "plate", "clamp", "tie rod", ">exact turns"],
            table.Corners.Select(c => new[]
            {
                c.Corner.Words(), c.Collar is { } collar ? TurnWords.Collar(collar.Quarters) : "does not turn",
                    c.Collar is { } k ? Mm(k.After) : "", c.Plate == 0 ? "" : TurnWords.Plate(c.Plate),
                c.Clamp == 0 ? "" : Deg(c.Clamp), c.ToeChange == 0 ? "" : c.Flats is { } flats ? TurnWords.TieRod(flats) : Deg(c.ToeChange),
                c.Collar is { } exact ? Signed(exact.Exact) : "",
            }),
            Indent);
        console.Heading("What comes of it");
        console.Table(
            ["corner", ">height now", ">wanted", ">then", ">load now", ">then", ">camber now", ">then", ">toe now", ">then"],
            table.Corners.Select(c => new[]
            {
                c.Corner.Words(), Mm(c.Present.Height), c.Wanted.Height is { } h ? Mm(h.Si) : "", Mm(c.Predicted.Height),
                    Kg(c.Present.Load), Kg(c.Predicted.Load),
                Deg(c.Present.Camber), Deg(c.Predicted.Camber), Deg(c.Present.Toe), Deg(c.Predicted.Toe),
            }),
            Indent);
        string wanted = table.Wish.CrossWeight is { } cross ? $", wanted {Share(cross.Si)}" : "";
        console.Sentence(
            $"Cross weight (right front and left rear): {Share(table.CrossNow)} now{wanted}, {Share(table.CrossPredicted)} then.", Indent);
        console.Heading("What it does to the car");
        console.Sentence(verdict.Summary, Indent);
        foreach (string line in verdict.Lines)
        {
            console.Sentence("- " + line, Indent);
        }

        Steps(console, table);
        List(console, "Not reached", table.Shortfalls);
        List(console, "Taken for granted", table.Assumptions);
    }

    private static void Steps(IAnsiConsole console, TurnTable table)
    {
        if (table.Steps.Count == 0)
        {
            return;
        }

        console.Heading("In this order");
        for (int i = 0; i < table.Steps.Count; i++)
        {
            var step = table.Steps[i];
            console.Sentence($"{i + 1}. "
                + $"{(step.Corner is { } corner ? char.ToUpperInvariant(corner.Words()[0]) + corner.Words()[1..] + ": " : "")}{step.Words}",
                Indent);
            if (step.Caution.Length > 0)
            {
                console.Sentence("Caution: " + step.Caution, Indent + 3);
            }
        }
    }

    private static void List(IAnsiConsole console, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count > 0)
        {
            console.Heading(title);
            foreach (string line in lines)
            {
                console.Sentence("- " + line, Indent);
            }
        }
    }

    private static string From(TurnTable table) => table.From switch
    {
        PresentFrom.Occasion => $"From the newest readings after the work; loads: {table.LoadsFrom}.",
        PresentFrom.Measured => $"From the readings with which the car was measured; loads: {table.LoadsFrom}.",
        _ => $"Nobody has read this build yet: from where its springs should carry it; loads: {table.LoadsFrom}.",
    };

    private static string Mm(double si) => new Measure(si, Units.Millimetre, 1).Text;

    private static string Kg(double newtons) => new Measure(newtons / Gravity, Units.Kilogram, 0).Text;

    private static string Deg(double? rad) => rad is { } r ? new Measure(r, Units.Degree, 2).Text : "";

    private static string Share(double share) => new Measure(share, Units.Percent, 1).Text;

    private static string Signed(double turns) => JudgementText.Signed(new Measure(turns, Units.Turn, 2));
}
