using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Settling;

/// <summary>How much better a reading can be taken by hand: steps that tools allow. Common practice, no source.</summary>
internal static class FinerReading
{
    /// <summary>Above this a tape or a straight edge is held by hand, and half a millimetre is the end, m.</summary>
    private const double LongLength = 0.150;

    private static readonly double[] ShortLengths = [0.002, 0.001, 0.0005, 0.0002];
    private static readonly double[] LongLengths = [0.002, 0.001, 0.0005];
    private static readonly double[] Angles = [0.2 * Math.PI / 180, 0.1 * Math.PI / 180, 0.05 * Math.PI / 180];
    private static readonly double[] Masses = [2, 1, 0.5];
    private static readonly double[] Ratios = [0.02, 0.01, 0.005];
    private static readonly double[] Gains = [4 * Math.PI / 180, 2 * Math.PI / 180, Math.PI / 180];   // 0.004, 0.002, 0.001 °/mm
    private static readonly double[] Bends = [0.1, 0.05];                                            // 0.0001, 0.00005 1/mm
    private static readonly double[] Shares = [0.03, 0.02, 0.01];

    /// <summary>Finer two-sigma tolerances than the reading has, coarsest first, SI; empty where tools end.</summary>
    public static IEnumerable<double> Steps(FieldShape field, double value, double sigma)
    {
        double[] ladder = field.Words.Dimension switch
        {
            Dimension.Length => Math.Abs(value) > LongLength ? LongLengths : ShortLengths,
            Dimension.Angle => Angles,
            Dimension.Mass => Masses,
            Dimension.Ratio => Ratios,
            Dimension.AnglePerLength => Gains,
            Dimension.InverseLength => Bends,
            _ => [.. Shares.Select(s => s * Math.Abs(value))],
        };
        return ladder.Where(step => step > 0 && step < 0.75 * 2 * sigma);
    }

    /// <summary>The car with that reading's value as it is and its tolerance as proposed; null where there is no such field.</summary>
    public static Car? With(Car car, string path, double value, double twoSigma)
    {
        if (CarPath.Find(car, path) is not { } found || found.Field.Unit is not { } unit)
        {
            return null;
        }

        var tolerance = new Tolerance(Quantity.Of(Digits(unit.FromSi(twoSigma)), unit), ToleranceKind.TwoSigma);
        var reading = found.Reading is { } there ? there with { Tolerance = tolerance }
            : new Reading(Quantity.Of(unit.FromSi(value), unit), tolerance, ReadingSource.Gauge);
        return CarPath.With(car, path, reading);
    }

    /// <summary>"1 mm", "0.1°"; "2 % of itself" for rates and forces.</summary>
    public static string Words(FieldShape field, double value, double twoSigma) => field.Words.Dimension switch
    {
        Dimension.Length => Short(twoSigma, Units.Millimetre, "mm"),
        Dimension.Angle => Short(twoSigma, Units.Degree, "°"),
        Dimension.Mass => Short(twoSigma, Units.Kilogram, "kg"),
        Dimension.Ratio or Dimension.AnglePerLength or Dimension.InverseLength =>
            FormattableString.Invariant($"{Digits(field.Unit!.FromSi(twoSigma))} {field.Unit.Symbol}").TrimEnd(),
        _ when Math.Abs(value) > 0 => FormattableString.Invariant($"{Digits(100 * twoSigma / Math.Abs(value)):0.###} % of itself"),
        _ => new Measure(twoSigma, field.Unit!, 4).Text,
    };

    private static string Short(double si, Unit unit, string symbol) =>
        FormattableString.Invariant($"{Digits(unit.FromSi(si)):0.####}{(symbol == "°" ? "" : " ")}{symbol}");

    private static double Digits(double x) => double.Parse(x.ToString("G3", System.Globalization.CultureInfo.InvariantCulture),
        System.Globalization.CultureInfo.InvariantCulture);
}
