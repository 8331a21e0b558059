using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Findings;

/// <summary>Numbers in a mechanic's sentence.</summary>
internal static class Say
{
    public static string Mm(double metres, int decimals = 1) => new Measure(metres, Units.Millimetre, decimals).Text;

    public static string N(double newtons) => new Measure(newtons, Units.Newton, 0).Text;

    public static string Turns(double turns) => new Measure(turns, Units.Turn, 1).Text;

    public static string Percent(double share, int decimals = 0) => new Measure(share, Units.Percent, decimals).Text;

    public static string Kg(double kilograms) => new Measure(kilograms, Units.Kilogram, 0).Text;

    /// <summary>SI value of a limit; a limit always has one, from the build, the car or the default.</summary>
    public static double Limit(Reading? limit) => limit?.Si ?? throw new InvalidOperationException("A limit without a default.");
}
