using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Clearances;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>Sizes and offsets that fit, a table a corner.</summary>
internal static class WidestText
{
    public static void Write(IAnsiConsole console, Car car, Build build, IReadOnlyList<(CornerPlace Place, WidestAnswer Answer)> answers)
    {
        console.Line($"{car.Name}, build \"{build.Name}\": how wide can the wheels be");
        console.Line("Clear of everything known by the wanted gaps at every travel and steer, with the largest tyre a "
            + "size may be. Spokes, brake callipers and how far a wheel may stand out of its wing are not judged.");
        foreach (var (place, answer) in answers)
        {
            console.Heading(place.Words());
            if (answer.Missing.Count > 0)
            {
                console.Line("  Not known: " + string.Join(", ", answer.Missing) + ".");
                continue;
            }

            if (answer.Sizes.Count == 0)
            {
                console.Line(string.Create(CultureInfo.InvariantCulture,
                    $"  None of {answer.Tried} sizes clears by the wanted gaps with any offset."));
                continue;
            }

            console.Table(
                ["size", ">rim", ">offset from", ">to", ">rolls"],
                answer.Sizes.Select(s => new[]
                {
                    s.Size,
                    string.Create(CultureInfo.InvariantCulture, $"{s.RimWidthCode:0.#} x {s.RimCode:0.#}"),
                    string.Create(CultureInfo.InvariantCulture, $"ET{s.LeastOffsetMm}"),
                    string.Create(CultureInfo.InvariantCulture, $"ET{s.MostOffsetMm}"),
                    string.Create(CultureInfo.InvariantCulture, $"{100 * s.Rolls:+0.0;-0.0;0.0} %"),
                }),
                2);
            if (answer.Doubt > 0)
            {
                console.Line(string.Create(CultureInfo.InvariantCulture, $"  The scans lie within {1000 * answer.Doubt:0.0} mm of where "
                    + $"they stand, 19 in 20; that is not taken off here. Judge the build before you buy."));
            }
        }
    }
}
