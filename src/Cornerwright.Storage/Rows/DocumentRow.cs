namespace Cornerwright.Storage.Rows;

/// <summary>One car file as text, packed; equal texts are kept once, however many revisions have them.</summary>
public sealed class DocumentRow
{
    /// <summary>SHA-256 of the UTF-8 text, lower-case hexadecimal.</summary>
    public required string Hash { get; set; }

    /// <summary>The UTF-8 text, packed with gzip.</summary>
    public required byte[] Gzip { get; set; }
}
