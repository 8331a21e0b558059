using System.Globalization;

namespace Cornerwright.Garage.Log;

/// <summary>Ticks from several phones, sent late, twice, or out of order.</summary>
public static class TickMerge
{
    /// <summary>Far more than any order has steps: a page that sends more is broken.</summary>
    public const int MostTicks = 2000;

    /// <summary>The job with those ticks added that it does not have yet; the same object if there are none.</summary>
    public static Job Add(Job job, IEnumerable<Tick> arrived)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(arrived);
        var known = job.Ticks.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        List<Tick> fresh = [.. arrived.Where(t => known.Add(t.Id))];
        return fresh.Count == 0 ? job : job with { Ticks = [.. job.Ticks, .. fresh] };
    }

    /// <summary>
    /// Steps that are done now: of each step the tick with the latest time counts; of equal times the one that arrived last.
    /// </summary>
    public static IReadOnlySet<string> Done(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var last = new Dictionary<string, Tick>(StringComparer.Ordinal);
        foreach (var tick in job.Ticks)
        {
            if (!last.TryGetValue(tick.Step, out var before) || string.CompareOrdinal(before.At, tick.At) <= 0)
            {
                last[tick.Step] = tick;
            }
        }

        return last.Values.Where(t => !t.TakenBack).Select(t => t.Step).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>A time as ticks write it, so that later times sort later.</summary>
    public static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    public static bool IsMoment(string text) =>
        DateTime.TryParseExact(text, "yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _);
}
