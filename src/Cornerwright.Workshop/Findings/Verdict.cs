namespace Cornerwright.Workshop.Findings;

/// <summary>What a check says, from bad to good.</summary>
public enum Verdict
{
    /// <summary>The best estimate breaks the limit.</summary>
    Fails,

    /// <summary>The best estimate holds, but not surely enough.</summary>
    Tight,

    /// <summary>A reading is missing.</summary>
    Unknown,

    /// <summary>Holds, and surely enough.</summary>
    Holds,
}
