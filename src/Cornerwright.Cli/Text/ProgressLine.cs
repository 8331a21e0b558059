using Cornerwright.Workshop.Ranking;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>One line of progress that is written over itself; for a terminal only.</summary>
internal sealed class ProgressLine(IAnsiConsole console) : IProgress<SearchProgress>
{
    private const int Width = 30, Columns = 79;

    private string _last = "";

    public void Report(SearchProgress value)
    {
        int full = (int)(value.Share * Width);
        string line = FormattableString.Invariant(
            $"[{new string('#', full)}{new string('.', Width - full)}] {value.Share * 100,3:0} %  {value.Words}").PadRight(Columns);
        if (line == _last)
        {
            return;
        }

        _last = line;
        console.Profile.Out.Writer.Write("\r" + line[..Columns] + (value.Share >= 1 ? "\n" : ""));
        console.Profile.Out.Writer.Flush();
    }
}
