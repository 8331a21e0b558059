namespace Cornerwright.Garage.Designations;

/// <summary>Load a car tyre carries at less than its reference pressure.</summary>
/// <remarks>Source: ETRTO Standards Manual, passenger car tyres, metric designation: L = Lmax·(p/pref)^0.8.</remarks>
public static class TyreLoad
{
    public const double Exponent = 0.8;

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
    public static double AtPressure(double greatestLoad, double pressure, double referencePressure) =>
        greatestLoad * Math.Pow(Math.Clamp(pressure / referencePressure, 0, 1), Exponent);

    /// <summary>Least pressure for a load, Pa; null if the tyre cannot carry it at any permitted pressure.</summary>
    /// <param name="load">In the unit of <paramref name="greatestLoad"/>, at least 0.</param>
    /// <param name="greatestLoad">Load of the index.</param>
    /// <param name="referencePressure">Pa, above 0.</param>
    public static double? PressureFor(double load, double greatestLoad, double referencePressure) =>
        load >= 0 && load <= greatestLoad ? referencePressure * Math.Pow(load / greatestLoad, 1 / Exponent) : null;
}
