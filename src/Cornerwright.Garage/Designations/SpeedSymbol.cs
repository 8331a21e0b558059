namespace Cornerwright.Garage.Designations;

/// <summary>Speed symbols of a service description and what they permit.</summary>
public static class SpeedSymbol
{
    /// <summary>
    /// ZR in a size without W or Y says only this: for more than so many km/h. Source: UN Regulation No. 30, ZR marking, from memory.
    /// </summary>
    public const double ZrMoreThanKmh = 240;

    private const double KmhPerMetrePerSecond = 3.6;

    /// <summary>Greatest speed of a symbol, km/h; null if there is no such symbol.</summary>
    /// <remarks>
    /// Source: UN Regulation No. 30, speed category table, and No. 54 / ISO 4000-1 for A1 to K (from memory).
    /// Of (Y), above 300 km/h, the tyre maker says how far; see <see cref="ServiceDescription.Bracketed"/>.
    /// </remarks>
    public static double? Kmh(string? symbol) => symbol switch
    {
        "A1" => 5, "A2" => 10, "A3" => 15, "A4" => 20, "A5" => 25, "A6" => 30, "A7" => 35, "A8" => 40,
        "B" => 50, "C" => 60, "D" => 65, "E" => 70, "F" => 80, "G" => 90, "J" => 100, "K" => 110, "L" => 120,
        "M" => 130, "N" => 140, "P" => 150, "Q" => 160, "R" => 170, "S" => 180, "T" => 190, "U" => 200,
        "H" => 210, "V" => 240, "W" => 270, "Y" => 300,
        _ => null,
    };

    /// <summary>Greatest speed of a symbol, m/s; null if there is no such symbol.</summary>
    public static double? MetresPerSecond(string? symbol) => Kmh(symbol) / KmhPerMetrePerSecond;

    /// <summary>
    /// Share of the load index's load that the tyre may carry at a speed, 0.85 to 1; null above its speed, or for no symbol.
    /// </summary>
    /// <param name="symbol">E.g. "W".</param>
    /// <param name="speed">m/s, at least 0.</param>
    /// <remarks>
    /// Source: UN Regulation No. 30, definition of maximum load rating: V loses 9 % linearly from 210 to 240 km/h,
    /// W 15 % from 240 to 270, Y 15 % from 270 to 300. Others carry the full load up to their speed.
    /// </remarks>
    public static double? LoadShare(string? symbol, double speed)
    {
        // A hair of tolerance, so that 240 km/h through m/s is still 240.
        double kmh = Math.Round(speed * KmhPerMetrePerSecond, 9);
        if (Kmh(symbol) is not { } most || !(kmh >= 0 && kmh <= most))
        {
            return null;
        }

        (double from, double loss) = symbol switch
        {
            "V" => (210.0, 0.09),
            "W" => (240.0, 0.15),
            "Y" => (270.0, 0.15),
            _ => (most, 0.0),
        };
        return kmh <= from ? 1 : 1 - (loss * (kmh - from) / (most - from));
    }
}
