using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Edges;

/// <summary>Files as the verbs see them: what goes wrong with one is a problem with a cure, never an exception.</summary>
public interface IFiles
{
    /// <summary>The whole content.</summary>
    Checked<ReadOnlyMemory<byte>> Read(string path);

    /// <summary>A file too large to hold, to be read from its beginning.</summary>
    Checked<Stream> Open(string path);

    bool Exists(string path);

    /// <summary>
    /// Writes a file that is not there yet; what cannot be written whole is taken away again. Whatever bears that name already stays
    /// as it is.
    /// </summary>
    /// <returns>Null when it was written.</returns>
    Problem? WriteNew(string path, string text);

    /// <summary>
    /// Writes the whole content or nothing, over the file that is there if one is: it stays until the new text is complete. Only for
    /// a file that the person asked to have changed.
    /// </summary>
    /// <returns>Null when it was written.</returns>
    Problem? WriteOver(string path, string text);
}
