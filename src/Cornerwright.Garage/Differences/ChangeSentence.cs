namespace Cornerwright.Garage.Differences;

/// <summary>All changes of a save in one line, for a list of revisions.</summary>
public static class ChangeSentence
{
    /// <summary>Two changes can be read at a glance; of more, the rest is counted.</summary>
    private const int Spelled = 2;

    /// <summary>A line that still fits a phone in two rows or three.</summary>
    private const int LongestPiece = 160;

    public static string Of(IReadOnlyList<FieldChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        if (changes.Count == 0)
        {
            return "No change";
        }

        string spelled = string.Join("; ", changes.Take(Spelled).Select(c => Shorten(c.ToString())));
        int rest = changes.Count - Spelled;
        return rest switch
        {
            <= 0 => spelled,
            1 => spelled + "; and 1 more change",
            _ => FormattableString.Invariant($"{spelled}; and {rest} more changes"),
        };
    }

    private static string Shorten(string text)
    {
        string line = text.ReplaceLineEndings(" ");
        return line.Length <= LongestPiece ? line : string.Concat(line.AsSpan(0, LongestPiece - 1), "…");
    }
}
