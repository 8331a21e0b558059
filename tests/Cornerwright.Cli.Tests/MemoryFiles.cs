using System.Text;
using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Tests;

/// <summary>Files that live as long as a test.</summary>
internal sealed class MemoryFiles : IFiles
{
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);

    /// <summary>Paths that refuse to be written, as a full disk would.</summary>
    public HashSet<string> Locked { get; } = [];

    public string this[string path]
    {
        get => _texts[path];
        set => _texts[path] = value;
    }

    /// <summary>Files that are no text.</summary>
    public Dictionary<string, byte[]> Bytes { get; } = new(StringComparer.Ordinal);

    public bool Exists(string path) => _texts.ContainsKey(path) || Bytes.ContainsKey(path);

    public Checked<Stream> Open(string path) => Bytes.TryGetValue(path, out byte[]? bytes)
        ? Checked<Stream>.From(new MemoryStream(bytes))
        : Read(path) is { Ok: true } text ? Checked<Stream>.From(new MemoryStream(text.Value.ToArray()))
        : Checked<Stream>.Wrong(Read(path).Problems);

    /// <summary>Done once, after the next reading: what somebody else does to the files while a verb runs.</summary>
    public Action? Meanwhile { get; set; }

    public Checked<ReadOnlyMemory<byte>> Read(string path)
    {
        var read = _texts.TryGetValue(path, out string? text)
            ? Checked<ReadOnlyMemory<byte>>.From(Encoding.UTF8.GetBytes(text))
            : Checked<ReadOnlyMemory<byte>>.Wrong(
                new Problem("file", path, "a file that can be read", "There is no such file: check the name and the folder."));
        var others = Meanwhile;
        Meanwhile = null;
        others?.Invoke();
        return read;
    }

    public Problem? WriteNew(string path, string text) =>
        Exists(path)
            ? new Problem("file", path, "the name of a new file", "Something of that name is there already.")
            : WriteOver(path, text);

    public Problem? WriteOver(string path, string text)
    {
        if (Locked.Contains(path))
        {
            return new Problem("file", path, "a file that can be written", "It may not be opened.");
        }

        _texts[path] = text;
        return null;
    }
}
