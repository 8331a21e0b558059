namespace Cornerwright.Storage.Rows;

/// <summary>
/// One state of a car. Only an open head is ever rewritten, and only by an autosave (docs/decisions/0007-what-an-autosave-may-fold.md).
/// </summary>
public sealed class RevisionRow
{
    public required string CarId { get; set; }

    /// <summary>1, 2, 3... within the car; never used twice.</summary>
    public int Number { get; set; }

    /// <summary>How often autosaves were folded into this revision while it was the open head.</summary>
    public int Fold { get; set; }

    /// <summary>Null for the first.</summary>
    public int? Parent { get; set; }

    /// <summary>UTC, of the first save into it.</summary>
    public DateTimeOffset OpenedAt { get; set; }

    /// <summary>UTC, of the last save into it.</summary>
    public DateTimeOffset SavedAt { get; set; }

    /// <summary>What changed against the parent, one line.</summary>
    public required string Changes { get; set; }

    public string? Label { get; set; }

    /// <summary>Who autosaved it; null when it was saved on purpose.</summary>
    public string? Session { get; set; }

    /// <summary>An autosaved head into which further autosaves of its session may be folded.</summary>
    public bool Open { get; set; }

    public required string DocumentHash { get; set; }

    public DocumentRow? Document { get; set; }
}
