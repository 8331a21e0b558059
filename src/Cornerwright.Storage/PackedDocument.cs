using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Cornerwright.Storage.Rows;

namespace Cornerwright.Storage;

/// <summary>Packs a car file's text for the database, and unpacks it.</summary>
internal static class PackedDocument
{
    public static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    public static DocumentRow Pack(string text, string hash)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest))
        {
            gzip.Write(Encoding.UTF8.GetBytes(text));
        }

        return new DocumentRow { Hash = hash, Gzip = packed.ToArray() };
    }

    /// <exception cref="InvalidDataException">The database was changed by something else: the text no longer has its hash.</exception>
    public static string Unpack(DocumentRow row)
    {
        using var gzip = new GZipStream(new MemoryStream(row.Gzip), CompressionMode.Decompress);
        using var reader = new StreamReader(gzip, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        string text = reader.ReadToEnd();
        return HashOf(text) == row.Hash ? text : throw new InvalidDataException($"Document {row.Hash} is damaged.");
    }
}
