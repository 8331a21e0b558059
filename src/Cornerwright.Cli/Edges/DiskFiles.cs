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
            return Checked<Stream>.From(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan));
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

    public Problem? Write(string path, string text)
    {
        string? beside = null;
        try
        {
            string full = Path.GetFullPath(path);
            string folder = Path.GetDirectoryName(full) ?? full;
            if (!Directory.Exists(folder))
            {
                return new Problem("file", path, "a place in a folder that exists", $"Make the folder {folder} first.");
            }

            beside = Path.Combine(folder, $".{Path.GetFileName(full)}.{Environment.ProcessId}.new");
            File.WriteAllText(beside, text, Utf8);
            File.Move(beside, full, overwrite: true);
            return null;
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            Forget(beside);
            return new Problem("file", path, "a file that can be written", Why(error));
        }
    }

    private static void Forget(string? beside)
    {
        try
        {
            if (beside is not null)
            {
                File.Delete(beside);
            }
        }
        catch (Exception error) when (IsAboutTheFile(error))
        {
            // The half-written copy stays beside the file, under a name of its own; the file itself is untouched.
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
