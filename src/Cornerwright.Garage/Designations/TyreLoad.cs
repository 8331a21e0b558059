namespace Cornerwright.Garage.Designations;

/// <summary>The pressure at which a tyre carries the load of its index, and how its load falls below that.</summary>
/// <param name="Reference">Pa.</param>
/// <param name="Exponent">L = Lmax·(p/Reference)^Exponent.</param>
/// <param name="Assumption">What the size does not say and was taken, in words; empty if it says all.</param>
public sealed record TyreInflation(double Reference, double Exponent, string Assumption = "");

/// <summary>Load a tyre carries at less than its reference pressure.</summary>
/// <remarks>
/// Sources: ETRTO Standards Manual: L = Lmax·(p/pref)^0.8, passenger car tyres, metric designation; commercial tyres (C) likewise, from
/// memory. Light-truck tyres (LT): exponent 0.7, load and inflation table of LT235/85R16 (Tire and Rim Association values, printed in a
/// coach owner's specification page): 1,700 lb at 35 psi, 3,042 lb at 80 psi.
/// </remarks>
public static class TyreLoad
{
    public const double Exponent = 0.8, LightTruckExponent = 0.7;

    private const double Psi = 6894.757;

    /// <summary>By what the tyre is and how it is marked.</summary>
    /// <remarks>
    /// Sources: light-truck load ranges C, D, E, F at 50, 65, 80, 95 psi: Tire and Rim Association, E by the table above, the others from
    /// memory; commercial tyres of load range C, D, E (6, 8, 10 ply) at 375, 450, 575 kPa and temporary spares at 420 kPa: from memory.
    /// Where no load range is marked the tyre's wall says the pressure; the higher one that is usual is taken, which bears less.
    /// </remarks>
    public static TyreInflation Inflation(TyreDesignation tyre)
    {
        if (tyre.Prefix == TyrePrefix.T)
        {
            return new(420_000, Exponent, "temporary spare: taken as carrying its full load at 4.2 bar");
        }

        if (tyre.Prefix == TyrePrefix.LT || tyre.LightTruckSuffix)
        {
            return tyre.LoadRange switch
            {
                'B' => new(35 * Psi, LightTruckExponent),
                'C' => new(50 * Psi, LightTruckExponent),
                'D' => new(65 * Psi, LightTruckExponent),
                'E' => new(80 * Psi, LightTruckExponent),
                'F' => new(95 * Psi, LightTruckExponent),
                _ => new(80 * Psi, LightTruckExponent,
                    "load range of the light-truck tyre not marked: taken as E, full load at 5.5 bar; its wall says the pressure"),
            };
        }

        return !tyre.Commercial ? new(ReferencePressure(tyre.LoadClass, tyre.Prefix == TyrePrefix.P), Exponent) : tyre.LoadRange switch
        {
            'C' => new(375_000, Exponent),
            'D' => new(450_000, Exponent),
            'E' => new(575_000, Exponent),
            _ => new(450_000, Exponent,
                "ply rating of the commercial tyre not marked: taken as 8, full load at 4.5 bar; its wall says the pressure"),
        };
    }

    /// <summary>Pressure at which the load index's load is carried, Pa.</summary>
    /// <remarks>
    /// Source: ETRTO (from memory): 250 kPa standard load, 290 kPa extra load and high load; for P-metric sizes the Tire
    /// and Rim Association's 240 kPa (35 psi) and 280 kPa (41 psi), from memory.
    /// </remarks>
    public static double ReferencePressure(TyreLoadClass loadClass, bool passengerMetric = false) =>
        (loadClass == TyreLoadClass.Standard, passengerMetric) switch
        {
            (true, false) => 250_000,
            (false, false) => 290_000,
            (true, true) => 240_000,
            (false, true) => 280_000,
        };

    /// <summary>
    /// Load carried at a pressure, in the unit of <paramref name="greatestLoad"/>; more pressure than the reference carries no more.
    /// </summary>
    /// <param name="greatestLoad">Load of the index, N or kg.</param>
    /// <param name="pressure">Pa, at least 0.</param>
    /// <param name="referencePressure">Pa, above 0.</param>
    /// <param name="exponent">By the kind of tyre.</param>
    public static double AtPressure(double greatestLoad, double pressure, double referencePressure, double exponent = Exponent) =>
        greatestLoad * Math.Pow(Math.Clamp(pressure / referencePressure, 0, 1), exponent);

    /// <summary>Least pressure for a load, Pa; null if the tyre cannot carry it at any permitted pressure.</summary>
    /// <param name="load">In the unit of <paramref name="greatestLoad"/>, at least 0.</param>
    /// <param name="greatestLoad">Load of the index.</param>
    /// <param name="referencePressure">Pa, above 0.</param>
    public static double? PressureFor(double load, double greatestLoad, double referencePressure) =>
        load >= 0 && load <= greatestLoad ? referencePressure * Math.Pow(load / greatestLoad, 1 / Exponent) : null;
}
