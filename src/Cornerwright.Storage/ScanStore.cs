using System.Buffers;
using System.Security.Cryptography;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Storage;

/// <summary>A scan file in the store.</summary>
/// <param name="Hash">SHA-256 of its content, 64 hexadecimal digits.</param>
/// <param name="Format">Its kind, from its name.</param>
/// <param name="Bytes">Its size.</param>
public sealed record KeptScan(string Hash, ScanFormat Format, long Bytes)
{
    /// <summary>It came in now and was not there before.</summary>
    public bool Fresh { get; init; }
}

/// <summary>
/// Keeps scan files in a folder, each under the hash of its content: written beside, flushed to the disk, then renamed, so that a file
/// that stands there is whole; read only after its content was found to have its hash.
/// </summary>
public sealed class ScanStore
{
    private const string Unfinished = ".part";

    /// <summary>An unfinished file that nobody wrote to for so long was left by a crash.</summary>
    private static readonly TimeSpan Abandoned = TimeSpan.FromHours(12);

    private ScanStore(string folder) => Folder = folder;

    public string Folder { get; }

    /// <summary>The folder that belongs to a database file.</summary>
    public static string FolderOf(string databaseFile) =>
        Path.Combine(Path.GetDirectoryName(Path.GetFullPath(databaseFile))!, Path.GetFileNameWithoutExtension(databaseFile) + "-scans");

    /// <summary>A store in a folder, which is made when the first file comes.</summary>
    public static ScanStore At(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        return new ScanStore(Path.GetFullPath(folder));
    }

    /// <summary>Takes a file in. Cancelled or failed, nothing of it stays.</summary>
    /// <param name="content">Read to its end; its length need not be known.</param>
    /// <param name="format">Its kind.</param>
    /// <param name="mostBytes">More than this is refused while it comes.</param>
    /// <param name="progress">Told the bytes taken so far.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public async Task<Checked<KeptScan>> Keep(Stream content, ScanFormat format, long mostBytes = ScanLimits.MostBytes,
        IProgress<long>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(content);
        string beside = "";
        try
        {
            Directory.CreateDirectory(Folder);
            beside = Path.Combine(Folder, Guid.NewGuid().ToString("N") + Unfinished);
            string hash;
            long bytes;
            await using (
                var file = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.Asynchronous))
            {
                (hash, bytes) = await Copy(content, file, mostBytes, progress, cancel);
                if (bytes < 0)
                {
                    return Checked<KeptScan>.Wrong(new Problem("scan file / size", "more than " + Megabytes(mostBytes),
                        "at most " + Megabytes(mostBytes), "Crop the scan to the wheel arch, or export it coarser."));
                }

                file.Flush(flushToDisk: true);
            }

            cancel.ThrowIfCancellationRequested();
            string there = PathOf(hash, format);
            if (Find(hash) is { } known && await IsWhole(known, cancel))
            {
                return Checked<KeptScan>.From(known);
            }

            File.Move(beside, there, overwrite: true);
            beside = "";
            return Checked<KeptScan>.From(new KeptScan(hash, format, bytes) { Fresh = true });
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return Checked<KeptScan>.Wrong(new Problem("scans' folder", Folder, "a folder that can be written, with room for the file",
                "Make room, or choose another place. " + error.Message));
        }
        finally
        {
            Forget(beside);
        }
    }

    /// <summary>The file of a hash; null if it is not here.</summary>
    public KeptScan? Find(string hash)
    {
        if (!IsHash(hash))
        {
            return null;
        }

        foreach (var format in Enum.GetValues<ScanFormat>())
        {
            var file = new FileInfo(PathOf(hash, format));
            if (file.Exists)
            {
                return new KeptScan(hash, format, file.Length);
            }
        }

        return null;
    }

    /// <summary>Opens a file for reading, once its content was found to have its hash; nobody can exchange it in between.</summary>
    public Checked<FileStream> Open(string hash, CancellationToken cancel = default)
    {
        if (Find(hash) is not { } kept)
        {
            return Checked<FileStream>.Wrong(
                new Problem("scan file", hash, "a file that is kept in " + Folder, "Import the scan's file again."));
        }

        FileStream? file = null;
        try
        {
            file = new FileStream(PathOf(hash, kept.Format), FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16,
                FileOptions.SequentialScan);
            if (HashOf(file, cancel) != hash)
            {
                file.Dispose();
                return Checked<FileStream>.Wrong(new Problem("scan file", hash, "content that has its hash",
                    "The file was changed or damaged on the disk: import it again."));
            }

            file.Position = 0;
            return Checked<FileStream>.From(file);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            file?.Dispose();
            return Checked<FileStream>.Wrong(new Problem("scan file", hash, "a file that can be read", error.Message));
        }
        catch (OperationCanceledException)
        {
            file?.Dispose();
            throw;
        }
    }

    /// <summary>Opens and reads a file.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public Checked<RawScan> Read(string hash, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        var file = Open(hash, cancel);
        if (!file.Try(out var stream))
        {
            return Checked<RawScan>.Wrong(file.Problems);
        }

        using (stream)
        {
            return ScanFile.Read(stream, stream.Name, progress, cancel);
        }
    }

    /// <summary>Everything kept, by hash.</summary>
    public IReadOnlyList<KeptScan> List()
    {
        if (!Directory.Exists(Folder))
        {
            return [];
        }

        return [.. new DirectoryInfo(Folder).EnumerateFiles()
            .Select(f => (File: f, Format: ScanFormats.OfName(f.Name), Hash: Path.GetFileNameWithoutExtension(f.Name)))
            .Where(f => f.Format is not null && IsHash(f.Hash))
            .Select(f => new KeptScan(f.Hash, f.Format!.Value, f.File.Length))
            .OrderBy(f => f.Hash, StringComparer.Ordinal)];
    }

    /// <summary>What no car names any more; nothing is taken away by itself, since a car's history may still need it.</summary>
    /// <param name="used">Hashes named in any car, and in any of its revisions that shall still be read.</param>
    public IReadOnlyList<KeptScan> Unused(IEnumerable<string> used)
    {
        var named = used.ToHashSet(StringComparer.Ordinal);
        return [.. List().Where(f => !named.Contains(f.Hash))];
    }

    /// <summary>Takes a file away. False if it is not here.</summary>
    public bool Remove(string hash)
    {
        if (Find(hash) is not { } kept)
        {
            return false;
        }

        File.Delete(PathOf(hash, kept.Format));
        return true;
    }

    /// <summary>Takes away what crashes left half-written.</summary>
    /// <param name="now">UTC.</param>
    /// <returns>How many.</returns>
    public int Sweep(DateTimeOffset now)
    {
        int swept = 0;
        foreach (var file in Directory.Exists(Folder) ? new DirectoryInfo(Folder).EnumerateFiles("*" + Unfinished) : [])
        {
            if (now.UtcDateTime - file.LastWriteTimeUtc > Abandoned)
            {
                file.Delete();
                swept++;
            }
        }

        return swept;
    }

    /// <summary>Copies every file into another store, as part of a backup; what is there already is not copied again.</summary>
    /// <returns>Null when all are there, whole.</returns>
    public async Task<Problem?> CopyTo(ScanStore other, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(other);
        foreach (var kept in List())
        {
            if (other.Find(kept.Hash) is { } there && there.Bytes == kept.Bytes)
            {
                continue;
            }

            var file = Open(kept.Hash, cancel);
            if (!file.Try(out var stream))
            {
                return file.Problems[0];
            }

            await using (stream)
            {
                var copied = await other.Keep(stream, kept.Format, long.MaxValue, null, cancel);
                if (!copied.Ok)
                {
                    return copied.Problems[0];
                }
            }
        }

        return null;
    }

    private static async Task<(string Hash, long Bytes)> Copy(Stream from, FileStream to, long mostBytes, IProgress<long>? progress,
        CancellationToken cancel)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] buffer = ArrayPool<byte>.Shared.Rent(1 << 17);
        try
        {
            long bytes = 0;
            for (int count = await from.ReadAsync(buffer, cancel); count > 0; count = await from.ReadAsync(buffer, cancel))
            {
                bytes += count;
                if (bytes > mostBytes)
                {
                    return ("", -1);
                }

                hash.AppendData(buffer, 0, count);
                await to.WriteAsync(buffer.AsMemory(0, count), cancel);
                progress?.Report(bytes);
            }

            return (Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private async Task<bool> IsWhole(KeptScan kept, CancellationToken cancel)
    {
        await using var file = new FileStream(PathOf(kept.Hash, kept.Format), FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16,
            FileOptions.Asynchronous | FileOptions.SequentialScan);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancel)) == kept.Hash;
    }

    private static string HashOf(FileStream file, CancellationToken cancel)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] buffer = ArrayPool<byte>.Shared.Rent(1 << 17);
        try
        {
            for (int count = file.Read(buffer); count > 0; count = file.Read(buffer))
            {
                cancel.ThrowIfCancellationRequested();
                hash.AppendData(buffer, 0, count);
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    // No path comes from outside: the name is made of a checked hash and a known ending.
    private string PathOf(string hash, ScanFormat format) => Path.Combine(Folder, hash + "." + format.Ending());

    private static bool IsHash(string? text) => text is { Length: 64 } && text.All(c => c is >= '0' and <= '9' or >= 'a' and <= 'f');

    private static string Megabytes(long bytes) => FormattableString.Invariant($"{bytes / (1024 * 1024)} MB");

    private static void Forget(string beside)
    {
        try
        {
            if (beside.Length > 0)
            {
                File.Delete(beside);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // It stays under its own name and is swept later; no scan is ever read from it.
        }
    }
}
