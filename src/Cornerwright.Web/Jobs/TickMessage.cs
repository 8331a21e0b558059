using Cornerwright.Garage.Log;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Web.Jobs;

/// <summary>A tick as a phone sends it.</summary>
public sealed record TickMessage(string? Id, string? Step, string? At, bool TakenBack)
{
    private const int LongestId = 100, LongestStep = 200;

    /// <summary>Null if the tick can be kept.</summary>
    public Problem? Problem(int number)
    {
        string field = FormattableString.Invariant($"tick {number}");
        return !Plain(Id, LongestId) ? new Problem(field + " / id", Id ?? "", $"1 to {LongestId} plain characters", "Reload the page.")
            : !Plain(Step, LongestStep)
            ? new Problem(field + " / step", Step ?? "", $"1 to {LongestStep} plain characters", "Reload the page.")
            : At is null || !TickMerge.IsMoment(At) ? new Problem(field + " / at", At ?? "", "a time such as 2026-05-31T14:05:09.123Z",
                "Set the phone's clock and reload the page.")
            : null;
    }

    public Tick ToTick() => new() { Id = Id!, Step = Step!, At = At!, TakenBack = TakenBack };

    private static bool Plain(string? text, int longest) =>
        text is { Length: > 0 } && text.Length <= longest && text.Trim() == text && !text.Any(char.IsControl)
            && !text.Any(char.IsSurrogate);
}

/// <summary>What the server says of ticks that were sent.</summary>
/// <param name="Kept">Ids that are safe now, whether they came just now or long ago: the phone may forget them.</param>
/// <param name="Done">Steps that are done, by everybody's ticks.</param>
/// <param name="Count">Ticks that the job has: of two answers the one with more is the later.</param>
public sealed record TickAnswer(IReadOnlyList<string> Kept, IReadOnlyList<string> Done, int Count);
