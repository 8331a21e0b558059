using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Readings;

/// <summary>
/// Two-sigma tolerances assumed when the user gave none. Common practice, no source; each is listed as an assumption where it is used.
/// </summary>
public static class DefaultTolerances
{
    private const double Millimetre = 1e-3;
    private const double Degree = Math.PI / 180;

    /// <returns>Half of the two-sigma tolerance, SI unit of the dimension.</returns>
    public static double StandardDeviation(ReadingSource source, Dimension dimension, double si) =>
        source == ReadingSource.Setting ? 0 : TwoSigma(source, dimension, Math.Abs(si)) / 2;

    private static double TwoSigma(ReadingSource source, Dimension dimension, double size) => (dimension, source) switch
    {
        (Dimension.Length, ReadingSource.Calliper) => 0.2 * Millimetre,
        (Dimension.Length, ReadingSource.Gauge) => 0.5 * Millimetre,
        (Dimension.Length, ReadingSource.DataSheet) => 1 * Millimetre,
        (Dimension.Length, ReadingSource.Guess) => Math.Max(5 * Millimetre, 0.05 * size),
        (Dimension.Length, _) => 2 * Millimetre,
        (Dimension.Angle, ReadingSource.Gauge) => 0.2 * Degree,
        (Dimension.Angle, ReadingSource.Guess) => 2 * Degree,
        (Dimension.Angle, _) => 0.5 * Degree,
        (Dimension.Mass or Dimension.Force, ReadingSource.Scale) => 0.01 * size,
        (Dimension.Distance, _) => 0,
        (_, ReadingSource.Guess) => 0.20 * size,
        (_, ReadingSource.DataSheet) => 0.02 * size,
        _ => 0.03 * size,
    };
}
