namespace Cornerwright.Storage.Rows;

/// <summary>One car, on the list or in the bin. Its content lies in its revisions.</summary>
public sealed class CarRow
{
    public required string Id { get; set; }

    /// <summary>The name in the latest revision, so that the list needs no document.</summary>
    public required string Name { get; set; }

    /// <summary>Number of the latest revision.</summary>
    public int Head { get; set; }

    /// <summary>UTC; null while the car is on the list.</summary>
    public DateTimeOffset? BinnedAt { get; set; }
}
