using System.Globalization;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>Numbers as they stand in drawings: a tenth of a drawing unit is finer than any screen or printer shows.</summary>
public static class Px
{
    /// <summary>A coordinate, rounded to a tenth; "0" for what is not finite, so that a drawing never breaks.</summary>
    public static string Of(double value)
    {
        double rounded = double.IsFinite(value) ? Math.Round(value, 1) : 0;
        return (rounded == 0 ? 0 : rounded).ToString("0.#", CultureInfo.InvariantCulture);
    }

    /// <summary>Millimetres with a sign, for travel: "+42", "−18", "0".</summary>
    public static string Travel(double metres)
    {
        double mm = Math.Round(metres * 1000, MidpointRounding.AwayFromZero);
        return mm == 0 ? "0" : mm.ToString("+0;−0", CultureInfo.InvariantCulture);
    }

    /// <summary>Millimetres without unit: "214.5".</summary>
    public static string Mm(double metres, int decimals = 1)
    {
        double mm = Math.Round(metres * 1000, decimals, MidpointRounding.AwayFromZero);
        return (mm == 0 ? 0 : mm).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }

    /// <summary>Per cent for people: whole below 99, one decimal above, never a false 100 %.</summary>
    public static string Percent(double probability)
    {
        double p = probability * 100;
        return p switch
        {
            > 99.9 => "over 99.9 %",
            > 99 => p.ToString("F1", CultureInfo.InvariantCulture) + " %",
            >= 1 => p.ToString("F0", CultureInfo.InvariantCulture) + " %",
            _ => "under 1 %",
        };
    }
}
