namespace Cornerwright.Web.Benches;

/// <summary>Whether what is seen is also kept.</summary>
public enum SavedState
{
    /// <summary>The very car on the bench is in the store, on the disk, but for the entries that are still open.</summary>
    Saved,

    /// <summary>Changed; the save waits for a quiet moment.</summary>
    Waiting,
    Saving,

    /// <summary>Somebody else saved in between: both versions are at hand, nothing is lost.</summary>
    Conflict,

    /// <summary>The store did not take it; the next change, or a press on the mark, tries again.</summary>
    Failed,
}
