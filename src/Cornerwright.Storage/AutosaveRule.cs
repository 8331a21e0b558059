namespace Cornerwright.Storage;

/// <summary>
/// When an autosave is folded into the open head instead of making a revision (docs/decisions/0007-what-an-autosave-may-fold.md).
/// </summary>
/// <param name="Pause">A longer pause between two autosaves ends the folding.</param>
/// <param name="Span">A revision stays open for at most this long.</param>
public sealed record AutosaveRule(TimeSpan Pause, TimeSpan Span)
{
    /// <summary>Ticks of a job lose nothing when they are folded, whatever lies between them: a day's work is one revision.</summary>
    public TimeSpan JobSpan { get; init; } = TimeSpan.FromHours(18);

    /// <summary>Common practice, no source: a slider drag pauses for less than 10 s, and a minute of work is worth a revision.</summary>
    public static AutosaveRule Default { get; } = new(TimeSpan.FromSeconds(10), TimeSpan.FromMinutes(1));
}
