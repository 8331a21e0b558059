namespace Cornerwright.Cli;

/// <summary>The door of the command line.</summary>
public static class CommandLine
{
    public static int Main(string[] args)
    {
        ArgumentNullException.ThrowIfNull(args);
        return 0;
    }
}
