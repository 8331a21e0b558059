using System.Security.Cryptography;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Storage;

/// <summary>Kinds of pictures that every browser shows.</summary>
public enum PhotoKind
{
    Jpeg,
    Png,
    Webp,
}

/// <summary>A photo in the store.</summary>
/// <param name="Hash">SHA-256 of its content, 64 small hexadecimal digits.</param>
/// <param name="Kind">By its first bytes, not by its name.</param>
public sealed record KeptPhoto(string Hash, PhotoKind Kind, long Bytes);

/// <summary>
/// Keeps the log's photos in a folder beside the database, each under the hash of its content: written beside, flushed to the disk, then
/// renamed, so that a file that stands there is whole. Nothing is taken away by itself, since a car's history may still need it.
/// </summary>
public sealed class PhotoStore
{
    /// <summary>A phone's largest pictures have about 15 MB.</summary>
    public const int MostBytes = 25 * 1024 * 1024;

    private PhotoStore(string folder) => Folder = folder;

    public string Folder { get; }

    public static string FolderOf(string databaseFile) =>
        Path.Combine(Path.GetDirectoryName(Path.GetFullPath(databaseFile))!, Path.GetFileNameWithoutExtension(databaseFile) + "-photos");

    /// <summary>A store in a folder, which is made when the first photo comes.</summary>
    public static PhotoStore At(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        return new PhotoStore(Path.GetFullPath(folder));
    }

    /// <summary>Takes a photo in; the same one again is the same one.</summary>
    public async Task<Checked<KeptPhoto>> Keep(Stream content, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(content);
        byte[] bytes = new byte[MostBytes + 1];
        int count = await content.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancel);
        if (count > MostBytes)
        {
            return Wrong("more than 25 MB", "at most 25 MB", "Let the phone send it smaller.");
        }

        var whole = bytes.AsMemory(0, count);
        if (KindOf(whole.Span) is not { } kind)
        {
            return Wrong("no picture that browsers show", "JPEG, PNG or WebP", "Save it as a JPEG and choose it again.");
        }

        string hash = Convert.ToHexStringLower(SHA256.HashData(whole.Span));
        if (Find(hash) is { } known && known.Bytes == count)
        {
            return Checked<KeptPhoto>.From(known);
        }

        string beside = Path.Combine(Folder, Guid.NewGuid().ToString("N") + ".part");
        try
        {
            Directory.CreateDirectory(Folder);
            await using (
                var file = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.Asynchronous))
            {
                await file.WriteAsync(whole, cancel);
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, PathOf(hash, kind), overwrite: true);
            return Checked<KeptPhoto>.From(new KeptPhoto(hash, kind, count));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Checked<KeptPhoto>.Wrong(new Problem("photos' folder", Folder, "a folder that can be written, with room for the photo",
                "Make room, or choose another place. " + error.Message));
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>Null if there is none of that hash, or the text is no hash.</summary>
    public KeptPhoto? Find(string hash)
    {
        if (!IsHash(hash))
        {
            return null;
        }

        foreach (var kind in Enum.GetValues<PhotoKind>())
        {
            var file = new FileInfo(PathOf(hash, kind));
            if (file.Exists)
            {
                return new KeptPhoto(hash, kind, file.Length);
            }
        }

        return null;
    }

    /// <summary>Where a photo lies that was found.</summary>
    public string PathOf(KeptPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return PathOf(photo.Hash, photo.Kind);
    }

    /// <summary>Copies every photo into another store, as part of a backup. Null when all are there.</summary>
    public async Task<Problem?> CopyTo(PhotoStore other, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (!Directory.Exists(Folder))
        {
            return null;
        }

        foreach (var file in new DirectoryInfo(Folder).EnumerateFiles().Where(f => IsHash(Path.GetFileNameWithoutExtension(f.Name)))
            .OrderBy(f => f.Name, StringComparer.Ordinal))
        {
            await using var stream = file.OpenRead();
            var kept = await other.Keep(stream, cancel);
            if (!kept.Ok)
            {
                return kept.Problems[0];
            }
        }

        return null;
    }

    public static string MimeOf(PhotoKind kind) => kind switch
    {
        PhotoKind.Png => "image/png",
        PhotoKind.Webp => "image/webp",
        _ => "image/jpeg",
    };

    /// <remarks>Source: ITU-T T.81 (JPEG), annex B; PNG (Third Edition), W3C, 5.2; RFC 9649 (WebP), 2.4.</remarks>
    private static PhotoKind? KindOf(ReadOnlySpan<byte> content) => content switch
    {
        [0xFF, 0xD8, 0xFF, ..] => PhotoKind.Jpeg,
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => PhotoKind.Png,
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => PhotoKind.Webp,
        _ => null,
    };

    private static bool IsHash(string text) => text.Length == 64 && text.All(c => c is (>= '0' and <= '9') or (>= 'a' and <= 'f'));

    private static Checked<KeptPhoto> Wrong(string given, string allowed, string cure) =>
        Checked<KeptPhoto>.Wrong(new Problem("photo", given, allowed, cure));

    private string PathOf(string hash, PhotoKind kind) =>
        Path.Combine(Folder, hash + kind switch { PhotoKind.Png => ".png", PhotoKind.Webp => ".webp", _ => ".jpg" });
}
