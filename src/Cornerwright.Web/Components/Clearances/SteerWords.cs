using System.Globalization;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>A steer angle as people say it.</summary>
public static class SteerWords
{
    /// <param name="steer">rad, left positive.</param>
    public static string Of(double steer)
    {
        double degrees = Math.Round(Math.Abs(steer) * 180 / Math.PI, 1, MidpointRounding.AwayFromZero);
        return degrees == 0 || !double.IsFinite(degrees) ? "straight ahead"
            : $"steered {degrees.ToString("0.#", CultureInfo.InvariantCulture)}° to the {(steer > 0 ? "left" : "right")}";
    }

    /// <summary>"12 o'clock", "10:30 o'clock".</summary>
    public static string Clock(double hours)
    {
        if (!double.IsFinite(hours))
        {
            return "12 o'clock";
        }

        int minutes = (int)Math.Round((((hours % 12) + 12) % 12) * 4) * 15, hour = minutes / 60 % 12;
        string at = (hour == 0 ? 12 : hour).ToString(CultureInfo.InvariantCulture);
        return (minutes % 60 == 0 ? at : at + ":" + (minutes % 60).ToString("00", CultureInfo.InvariantCulture)) + " o'clock";
    }
}
