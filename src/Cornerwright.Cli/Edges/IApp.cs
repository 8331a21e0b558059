using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Edges;

/// <summary>The app for the browser, as the command line sees it.</summary>
public interface IApp
{
    /// <summary>The database that belongs to the demo alone.</summary>
    string DemoDatabase { get; }

    /// <summary>Runs until it is stopped.</summary>
    /// <param name="args">The app's own arguments.</param>
    /// <param name="started">Told the addresses once they answer.</param>
    /// <returns>Null after an orderly stop; why it could not start otherwise.</returns>
    Problem? Run(IReadOnlyList<string> args, Action<IReadOnlyList<string>> started);
}
