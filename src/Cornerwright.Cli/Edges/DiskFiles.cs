using System.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Edges;

/// <summary>The files of this machine.</summary>
public sealed class DiskFiles : IFiles
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public bool Exists(string path) => File.Exists(path);

    public Checked<Stream> Open(string path)
    {
        try
        {
            return Checked<Stream>.From(
                new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan));
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            return Checked<Stream>.Wrong(new Problem("file", path, "a file that can be read", Why(error)));
        }
    }

    public Checked<ReadOnlyMemory<byte>> Read(string path)
    {
        try
        {
            var file = new FileInfo(path);
            if (file.Exists && file.Length > CarFile.GreatestBytes)
            {
                return Checked<ReadOnlyMemory<byte>>.Wrong(
                    new Problem("file", path, $"at most {CarFile.GreatestBytes / (1024 * 1024)} MB", "This is not one of our files."));
            }

            return Checked<ReadOnlyMemory<byte>>.From(File.ReadAllBytes(path));
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            return Checked<ReadOnlyMemory<byte>>.Wrong(new Problem("file", path, "a file that can be read", Why(error)));
        }
    }

    public Problem? WriteNew(string path, string text)
    {
        string? made = null;
        try
        {
            string full = Path.GetFullPath(path);
            if (NoFolder(path, full) is { } problem)
            {
                return problem;
            }

            if (Path.Exists(full))
            {
                return Taken(path);
            }

            // The system makes the file or refuses in one step; to look first and to move something there afterwards would let two
            // of many win.
            using (var file = new FileStream(full, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                made = full;
                Fill(file, text);
            }

            return null;
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            Forget(made);
            return made is null && error is IOException && Path.Exists(path) ? Taken(path) : Unwritten(path, error);
        }
    }

    public Problem? WriteOver(string path, string text)
    {
        string? made = null;
        try
        {
            // A link stays a link: what it leads to is written.
            string full = Path.GetFullPath(path);
            full = File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
            if (NoFolder(path, full) is { } problem)
            {
                return problem;
            }

            if (Directory.Exists(full))
            {
                return Taken(path);
            }

            string beside = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Path.GetRandomFileName()}");
            using (var file = Beside(beside, full))
            {
                made = beside;
                Fill(file, text);
            }

            File.Move(beside, full, overwrite: true);
            return null;
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            Forget(made);
            return Unwritten(path, error);
        }
    }

    private static void Fill(FileStream file, string text)
    {
        file.Write(Utf8.GetBytes(text));
        file.Flush(flushToDisk: true);
    }

    /// <summary>A file that nobody has yet, open to those who may open the one it will replace and to nobody else.</summary>
    private static FileStream Beside(string path, string replaced)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (OperatingSystem.IsWindows() || !File.Exists(replaced))
        {
            return new FileStream(path, options);
        }

        // Once at its making, so that nobody looks in meanwhile, and once more, since the making leaves out what the umask does.
        options.UnixCreateMode = File.GetUnixFileMode(replaced);
        var file = new FileStream(path, options);
        File.SetUnixFileMode(file.SafeFileHandle, options.UnixCreateMode.Value);
        return file;
    }

    private static Problem? NoFolder(string path, string full)
    {
        string folder = Path.GetDirectoryName(full) ?? full;
        return Directory.Exists(folder) ? null
            : new Problem("file", path, "a place in a folder that exists", $"Make the folder {folder} first.");
    }

    private static Problem Unwritten(string path, Exception error) => new("file", path, "a file that can be written", Why(error));

    private static Problem Taken(string path) =>
        new("file", path, "the name of a new file", "Something of that name is there already: choose another name, or move it away.");

    private static void Forget(string? made)
    {
        try
        {
            if (made is not null)
            {
                File.Delete(made);
            }
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            // What was half written stays, under a name that was nobody's; a file that was there before is untouched.
        }
    }

    private static bool IsAboutTheFile(Exception error) =>
        error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    private static string Why(Exception error) => error switch
    {
        FileNotFoundException or DirectoryNotFoundException => "There is no such file: check the name and the folder.",
        UnauthorizedAccessException => "It may not be opened: check whose it is, and that it is not a folder.",
        _ => error.Message,
    };
}
