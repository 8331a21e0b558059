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

    /// <summary>Writes the whole content or nothing: what stood there before stays until the new text is complete.</summary>
    /// <returns>Null when it was written.</returns>
    Problem? Write(string path, string text);
}
