using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Relations;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>Numbers that do not go together, as a person reads them.</summary>
internal static class RelationText
{
    private const int Indent = 2;

    /// <summary>All of them, with the paths of the numbers in them.</summary>
    public static void Write(IAnsiConsole console, CarRelations relations)
    {
        Group(console, "Cannot be: one of these numbers is wrong", [.. relations.Open.Where(r => r.Band == Band.CannotBe)]);
        Group(console, "Surprising: look again", [.. relations.Open.Where(r => r.Band == Band.Surprising)]);
        var confirmed = relations.Found.Where(r => r.IsConfirmed).ToList();
        if (confirmed.Count > 0)
        {
            console.Heading("Confirmed");
            foreach (var relation in confirmed)
            {
                console.Sentence($"{relation.Sentence} Confirmed: {relation.Why}", Indent);
            }
        }
    }

    private static void Group(IAnsiConsole console, string title, IReadOnlyList<Relation> relations)
    {
        if (relations.Count == 0)
        {
            return;
        }

        console.Heading(title);
        foreach (var relation in relations)
        {
            console.Sentence(relation.Sentence, Indent);
            console.Sentence($"{relation.Id}: {string.Join(", ", relation.Ties.Take(MostTies).Select(t => t.Kept))}"
                + (relation.Ties.Count > MostTies ? FormattableString.Invariant($" and {relation.Ties.Count - MostTies} more") : ""),
                    Indent + 4);
        }
    }

    private const int MostTies = 6;
}
