using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Learning;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>What was learned, for people.</summary>
internal static class LearnedText
{
    private const int Indent = 2, MostNumbers = 20;

    public static void Write(IAnsiConsole console, Car car, Learned learned, bool used)
    {
        console.Line(car.Name);
        console.Sentence(!learned.Any ? "Nothing was learned yet: no readings after the work that could be used."
            : used ? "Builds are judged with what was learned; \"learn --forget\" undoes it. Nothing that was typed has changed."
            : "Builds are judged by what was typed alone; \"learn --use\" takes what was learned.", 0);
        if (learned.HeightMiss is { } miss)
        {
            console.Sentence(FormattableString.Invariant(
                $"Heights were predicted to within {1000 * miss.First:0.0} mm (root mean square); now {1000 * miss.Now:0.0} mm."), 0);
        }

        if (learned.Readings.Count > 0)
        {
            console.Heading("Readings after the work");
            console.Table(
                ["when", "where", "what", ">read", ">expected first", ">doubt", ">now", ">doubt", ">off by", ""],
                learned.Readings.Select(r => new[]
                {
                    r.Occasion, r.Corner.Words(), r.Label, r.Read.Text, r.First.Text, "±" + r.FirstDoubt.Text, r.Expected.Text,
                        "±" + r.Doubt.Text, FormattableString.Invariant($"{r.Sigmas:0.0} sigma"),
                        r.SetAside ? "set aside: agrees with nothing else" : "",
                }),
                Indent);
        }

        if (learned.Numbers.Count > 0)
        {
            console.Heading("Numbers of the car");
            console.Table(
                ["what", ">typed", ">doubt", ">now", ">doubt", "where", ""],
                learned.Numbers.Take(MostNumbers).Select(n => new[] { n.Label, n.Before.Text, "±" + n.BeforeDoubt.Text, n.After.Text,
                    "±" + n.AfterDoubt.Text, n.Path, n.Suspect ? "probably typed wrong" : "" }),
                Indent);
            if (learned.Numbers.Count > MostNumbers)
            {
                console.Sentence($"and {learned.Numbers.Count - MostNumbers} more", Indent);
            }
        }

        foreach (string line in learned.Unused)
        {
            console.Sentence("Not used: " + line, Indent);
        }
    }
}
