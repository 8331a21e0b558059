using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Edges;

/// <summary>The app for the browser, as the command line sees it.</summary>
public interface IApp
{
    /// <summary>The database that belongs to the demo alone.</summary>
    string DemoDatabase { get; }

    /// <summary>The database that serves when none is named.</summary>
    string UsualDatabase { get; }

    /// <summary>Copies everything that belongs to a database into a new one, while the app may go on saving.</summary>
    /// <param name="database">A database file that is there.</param>
    /// <param name="copy">A file that is not there yet; scans and photos go into folders that belong to it.</param>
    /// <returns>Null when the copy is whole; otherwise what it lacks.</returns>
    Problem? Backup(string database, string copy);

    /// <summary>Runs until it is stopped.</summary>
    /// <param name="args">The app's own arguments.</param>
    /// <param name="started">Told the addresses once they answer.</param>
    /// <returns>Null after an orderly stop; why it could not start otherwise.</returns>
    Problem? Run(IReadOnlyList<string> args, Action<IReadOnlyList<string>> started);
}
