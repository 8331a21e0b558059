using System.Security.Cryptography;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Cli.Edges;

/// <summary>
/// Scan files beside a car file: under their content's hash, or as they were called when they came in. Content decides, not the name.
/// </summary>
public static class ScanFolder
{
    /// <summary>The folder that is looked in besides the car file's own.</summary>
    public const string Beside = "scans";

    /// <summary>The placed scans of a car.</summary>
    /// <param name="files">Where files are.</param>
    /// <param name="car">The car.</param>
    /// <param name="carFile">Its file.</param>
    /// <param name="folder">The only folder to look in; null for the car file's own, and "scans" in it.</param>
    public static ScanShelf ShelfOf(IFiles files, Car car, string carFile, string? folder)
    {
        ArgumentNullException.ThrowIfNull(car);
        string own = Path.GetDirectoryName(carFile) ?? "";
        string[] folders = folder is not null ? [folder] : [Path.Combine(own, Beside), own];
        var names = car.Scans.ToLookup(s => s.ContentHash, s => s.FileName);
        return ScanShelf.Of(car, hash => Read(files, folders, hash, names[hash]));
    }

    private static Checked<RawScan> Read(IFiles files, string[] folders, string hash, IEnumerable<string> called)
    {
        string[] names = [.. Enum.GetValues<ScanFormat>().Select(f => hash + "." + f.Ending()),
            .. called.Where(n => n.Length > 0 && Path.GetFileName(n) == n)];
        string damaged = "";
        foreach (string path in folders.SelectMany(f => names.Select(n => Path.Combine(f, n))).Where(files.Exists))
        {
            var file = files.Open(path);
            if (!file.Try(out var stream))
            {
                continue;
            }

            using (stream)
            {
                if (Convert.ToHexStringLower(SHA256.HashData(stream)) == hash)
                {
                    stream.Position = 0;
                    return ScanFile.Read(stream, path);
                }
            }

            damaged = path;
        }

        string looked = string.Join(" and ", folders.Select(f => f.Length == 0 ? "the car file's folder" : f));
        return Checked<RawScan>.Wrong(damaged.Length > 0
            ? new Problem("file", damaged, $"content with the hash {hash}", "It is not the file that was imported: put that one there.")
            : new Problem("file", names[^1], $"a file in {looked}", "Put the scan's file there, or name its folder with --scans."));
    }
}
