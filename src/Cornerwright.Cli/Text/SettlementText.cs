using Cornerwright.Workshop.Settling;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>Which readings would settle what is in doubt, for people.</summary>
internal static class SettlementText
{
    private const int Indent = 2;

    public static void Write(IAnsiConsole console, IReadOnlyList<Settlement> settlements)
    {
        console.Heading("What would settle it");
        if (settlements.Count == 0)
        {
            console.Sentence("Nothing shown is in doubt.", Indent);
        }

        foreach (var s in settlements)
        {
            console.Sentence($"{s.Finding.Where}, {s.Finding.Title}: {s.Sentence}", Indent);
            foreach (var reading in s.Readings)
            {
                string share = VerdictWords.Percent(reading.Total ?? reading.Share);
                string then = reading.DoubtThen is { } doubt && reading.Within.Length > 0
                    ? $"; {reading.Now} now, within {reading.Within} alone leaves {VerdictWords.Percent(doubt)}" : "";
                console.Sentence($"{share} {reading.Label}{then}", Indent + 4);
            }
        }
    }
}
