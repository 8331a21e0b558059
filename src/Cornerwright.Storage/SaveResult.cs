using Cornerwright.Garage.Problems;

namespace Cornerwright.Storage;

/// <summary>What became of a save. Whatever it is, the database is whole, and nothing is half-saved.</summary>
public abstract record SaveResult
{
    private SaveResult()
    {
    }

    /// <summary>The state that is now in hand and to be given with the next save; null if this one was not taken.</summary>
    public abstract RevisionMark? Mark { get; }

    /// <summary>A revision of its own, on the disk, never to be rewritten.</summary>
    public sealed record Saved(RevisionMark Now) : SaveResult
    {
        public override RevisionMark? Mark => Now;
    }

    /// <summary>Autosaved and on the disk; later autosaves of the same field by the same session may be folded into it.</summary>
    public sealed record Kept(RevisionMark Now) : SaveResult
    {
        public override RevisionMark? Mark => Now;
    }

    /// <summary>The latest revision is the same document: there was nothing to save.</summary>
    public sealed record Unchanged(RevisionMark Now) : SaveResult
    {
        public override RevisionMark? Mark => Now;
    }

    /// <summary>Somebody else saved since: here is what he saved. Look at both, then save with its mark.</summary>
    public sealed record Conflict(StoredCar Latest) : SaveResult
    {
        public override RevisionMark? Mark => null;
    }

    /// <summary>The car could not be read back as it is, so it was not stored: every reason.</summary>
    public sealed record Refused(IReadOnlyList<Problem> Problems) : SaveResult
    {
        public override RevisionMark? Mark => null;
    }
}
