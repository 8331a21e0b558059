using Cornerwright.Garage.Problems;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Cornerwright.Cli.Text;

/// <summary>Every problem: where, what was given, what is allowed, how to mend it.</summary>
public static class ProblemText
{
    public static void Write(IAnsiConsole console, IReadOnlyList<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        console.Line(problems.Count == 1 ? "One thing must be mended:" : $"{problems.Count} things must be mended:");
        foreach (var problem in problems)
        {
            console.Line([new Segment("  "), new Segment(problem.Field, new Style(decoration: Decoration.Bold))]);
            Part(console, "given", problem.Given.Length == 0 ? "(nothing)" : problem.Given);
            Part(console, "allowed", problem.Allowed);
            Part(console, "mend", problem.Cure);
        }
    }

    private static void Part(IAnsiConsole console, string name, string text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return;
        }

        const int Indent = 14;
        string label = $"    {name}:".PadRight(Indent);
        foreach (string line in Wrapping.Lines(text, Page.WidthOf(console) - Indent))
        {
            console.Line(label + line);
            label = new string(' ', Indent);
        }
    }
}
