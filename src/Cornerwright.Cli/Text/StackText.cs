using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Pictures;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>The stacks of a build: one drawing a corner, its states side by side with their lengths and forces.</summary>
internal static class StackText
{
    private const double MillimetresPerMetre = 1000;
    private const int Label = 12;

    public static void Write(IAnsiConsole console, Judgement judgement, IReadOnlyList<CornerPicture> pictures, int rows)
    {
        console.Line($"{judgement.Car.Name}, build \"{judgement.Build.Name}\": spring stacks");

        // One scale for all corners, so that they compare.
        double scale = StackDrawing.Scale(pictures.SelectMany(p => p.Stack), rows);
        if (scale > 0)
        {
            console.Line($"To scale, one row {Millimetres(scale)} mm. /..\\ open coils, #==# coils touching, [__] sheet; a piece thinner "
                + $"than a row takes one row.");
        }

        foreach (var picture in pictures)
        {
            console.Heading(picture.Corner.Words());
            if (picture.Stack.Count == 0 || scale == 0)
            {
                console.Line("  Cannot be drawn: the spring, its seats or the wheel's "
                    + "motion is not known. \"judge\" names the readings that are missing.");
                continue;
            }

            Draw(console, picture.Stack, scale);
        }
    }

    private static void Draw(IAnsiConsole console, IReadOnlyList<StackState> states, double scale)
    {
        Row(console, "", states.Select(s => s.State));

        // Bottoms level: the perch stands still, as it does for someone who kneels before the wheel.
        var drawings = states.Select(s => StackDrawing.Rows(s, scale)).ToList();
        int height = drawings.Max(d => d.Count);
        for (int i = 0; i < height; i++)
        {
            Row(console, "", drawings.Select(d => i < height - d.Count ? "" : d[i - (height - d.Count)]));
        }

        Row(console, "travel", states.Select(s => Signed(s.Travel) + " mm"));
        Row(console, "space", states.Select(s => Millimetres(s.Space) + " mm"));
        if (states.Any(s => s.Gap > 0))
        {
            Row(console, "gap", states.Select(s => s.Gap > 0 ? Millimetres(s.Gap) + " mm" : "-"));
        }

        Row(console, "force", states.Select(s => s.Force.ToString("F0", CultureInfo.InvariantCulture) + " N"));
        if (states.Any(s => s.RodShowing is not null))
        {
            Row(console, "rod showing", states.Select(s => s.RodShowing is { } rod ? Millimetres(rod) + " mm" : "-"));
        }

        console.Line("");
        var pieces = states[0].Pieces;
        var lengths = Enumerable.Range(0, pieces.Count).Reverse().Select(i => (IReadOnlyList<string>)
        [
            StackDrawing.Letter(i), pieces[i].Name,
            .. states.Select(s => Millimetres(s.Pieces[i].Length) + (s.Pieces[i] is { Coil: true, Shut: true } ? " shut" : "")),
            Millimetres(pieces[i].FreeLength), Millimetres(pieces[i].SolidLength),
        ]);
        console.Table(["", "from the top, mm", .. states.Select(s => ">" + s.State), ">free", ">solid"], lengths, 2);
    }

    private static void Row(IAnsiConsole console, string label, IEnumerable<string> cells) =>
        console.Line(("  " + label.PadRight(Label) + string.Join("  ", cells.Select(Centred))).TrimEnd());

    private static string Centred(string text) =>
        text.Length >= StackDrawing.Width ? text : text.PadLeft((StackDrawing.Width + text.Length) / 2).PadRight(StackDrawing.Width);

    private static string Millimetres(double metres)
    {
        double rounded = Math.Round(metres * MillimetresPerMetre, 1, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F1", CultureInfo.InvariantCulture);
    }

    private static string Signed(double metres)
    {
        string number = Millimetres(metres);
        return number[0] == '-' ? number : "+" + number;
    }
}
