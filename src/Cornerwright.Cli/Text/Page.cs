using Spectre.Console;
using Spectre.Console.Rendering;

namespace Cornerwright.Cli.Text;

/// <summary>Whole lines on a console: laid out here and never broken again, so that a pipe gets what a screen gets.</summary>
public static class Page
{
    /// <summary>Sentences are wrapped to this many columns where the console does not say how wide it is.</summary>
    public const int UsualWidth = 100;

    private const int NarrowestWidth = 60;
    private const int WidestWidth = 120;

    /// <summary>Columns to lay out for: the terminal's own width within reason, and always the same in a pipe or a file.</summary>
    public static int WidthOf(IAnsiConsole console)
    {
        ArgumentNullException.ThrowIfNull(console);
        return console.Profile.Out.IsTerminal ? Math.Clamp(console.Profile.Width, NarrowestWidth, WidestWidth) : UsualWidth;
    }

    /// <summary>One line of pieces, each in its own style.</summary>
    public static void Line(this IAnsiConsole console, params IReadOnlyList<Segment> pieces)
    {
        ArgumentNullException.ThrowIfNull(console);
        console.Write(new Whole([.. pieces, Segment.LineBreak]));
    }

    public static void Line(this IAnsiConsole console, string text) => console.Line([new Segment(text)]);

    /// <summary>A sentence over as many lines as it needs, each begun with the indent.</summary>
    public static void Sentence(this IAnsiConsole console, string text, int indent, Style? style = null)
    {
        foreach (string line in Wrapping.Lines(text, WidthOf(console) - indent))
        {
            console.Line([new Segment(new string(' ', indent)), new Segment(line, style ?? Style.Plain)]);
        }
    }

    /// <summary>A heading with an empty line before it.</summary>
    public static void Heading(this IAnsiConsole console, string text)
    {
        console.Line("");
        console.Line([new Segment(text, new Style(decoration: Decoration.Bold))]);
    }

    /// <summary>A document for a script: bytes as they are, no layout.</summary>
    public static void Document(this IAnsiConsole console, string text)
    {
        ArgumentNullException.ThrowIfNull(console);
        console.Profile.Out.Writer.Write(text);
        console.Profile.Out.Writer.Flush();
    }

    private sealed class Whole(IReadOnlyList<Segment> pieces) : Renderable
    {
        protected override IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => pieces;
    }
}
