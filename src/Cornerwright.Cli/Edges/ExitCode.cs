namespace Cornerwright.Cli.Edges;

/// <summary>What the program tells the script that called it.</summary>
public static class ExitCode
{
    /// <summary>Done; nothing that was judged fails.</summary>
    public const int Holds = 0;

    /// <summary>Something that was judged fails.</summary>
    public const int Fails = 1;

    /// <summary>A file, an option or a name could not be used; nothing was written.</summary>
    public const int BadInput = 2;
}
