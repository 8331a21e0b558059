using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>Clock positions in words, to the half hour: nobody reads a clock face on a tyre more finely.</summary>
internal static class ClockWords
{
    public static string Of(double hours)
    {
        int halves = (int)Math.Round(hours * 2, MidpointRounding.AwayFromZero) % 24;
        int hour = halves / 2 == 0 ? 12 : halves / 2;
        return halves % 2 == 0 ? $"{hour} o'clock" : $"half past {hour}";
    }
}
