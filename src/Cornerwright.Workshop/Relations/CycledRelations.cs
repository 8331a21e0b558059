using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Cycled readings beside each other, beside what was read at ride, and beside ratios that were typed.</summary>
internal static class CycledRelations
{
    private const double Degree = Math.PI / 180;

    private static readonly (string Field, string Label, Func<CycledStep, Reading?> Get, double Floor)[] Columns =
    [
        ("springLength", "spring axis length", s => s.SpringLength, 0.0015), ("damperLength", "damper axis length", s => s.DamperLength,
            0.0015),
        ("camber", "camber", s => s.Camber, 0.2 * Degree), ("toe", "toe", s => s.Toe, 0.15 * Degree),
        ("outboard", "wheel out by", s => s.Outboard, 0.0015), ("forward", "wheel forward by", s => s.Forward, 0.0015),
    ];

    public static void Look(RelationBook book, CornerPlace place)
    {
        var (corner, path) = (book.Car.At(place), CornerRelations.Path(place));
        var steps = corner.Motion.Steps;
        foreach (var (field, label, get, floor) in Columns)
        {
            int[] read = [.. Enumerable.Range(0, steps.Count).Where(i => steps[i].Travel is not null && get(steps[i]) is not null)];
            for (int i = 0; i < read.Length && read.Length >= 4; i++)
            {
                Even(book, place, [.. read.Select(k => steps[k])], i, read[i], (field, label, get, floor));
            }
        }

        Meets(book, path, steps, s => s.SpringLength, Num.Of(path + "/springAxisLength", "spring axis length", corner.SpringAxisLength),
            0.004);
        Meets(book, path, steps, s => s.DamperLength, Num.Of(path + "/damperAxisLength", "damper axis length", corner.DamperAxisLength),
            0.004);
        Meets(book, path, steps, s => s.Camber, Num.Of(path + "/camber", "camber now", corner.Camber), 0.45 * Degree);
        Ratio(book, path, "springRatio", corner.Motion.SpringRatio, SlopeAtRide(steps, s => s.SpringLength));
        Ratio(book, path, "damperRatio", corner.Motion.DamperRatio, SlopeAtRide(steps, s => s.DamperLength));
    }

    // A step beside the curve through its neighbours; at either end the curve is only drawn on, and the band is wider.
    private static void Even(RelationBook book, CornerPlace place, CycledStep[] steps, int i, int index,
        (string Field, string Label, Func<CycledStep, Reading?> Get, double Floor) column)
    {
        bool end = i == 0 || i == steps.Length - 1;
        int first = Math.Clamp(i - (end ? 3 : 2), 0, Math.Max(0, steps.Length - (end ? 4 : 5)));
        int[] others = [.. Enumerable.Range(first, Math.Min(end ? 4 : 5, steps.Length - first)).Where(k => k != i)];
        double x = steps[i].Travel!.Si, expected = Through([.. others.Select(k => (steps[k].Travel!.Si, column.Get(steps[k])!.Si))], x);
        var reading = column.Get(steps[i])!;
        string at = FormattableString.Invariant($"{CornerRelations.Path(place)}/motion/steps/{index}");
        double fine = column.Floor + (3 * reading.StandardDeviation * (end ? 4.5 : 1.4));
        var number = Num.Of($"{at}/{column.Field}", column.Label, reading);
        book.Add(Kinds.CycledEven, number.Path, reading.Si - expected, Bands.Around(fine, 60 * fine),
            () => $"{place.Words()} cycled readings: {column.Label} is {number.Typed} at {steps[i].Travel!.Typed} of travel; its "
                + $"neighbours lead to "
                + new Measure(expected, reading.Value.Unit, 1).Text + ".",
            [Num.Of(at + "/travel", "travel", steps[i].Travel), number]);
    }

    private static void Meets(RelationBook book, string path, IReadOnlyList<CycledStep> steps, Func<CycledStep, Reading?> get, Num read,
        double fine)
    {
        if (AtRide(steps, get) is { } here)
        {
            book.Add(Kinds.CycledMeets, read.Path, read.Si - here, Bands.Around(fine, 15 * fine),
                () => $"{read.Label} was read as {read.Typed} at ride; the cycled readings of {path} give "
                    + (fine > 0.005 ? new Measure(here, Units.Degree, 2).Text : Say.Mm(here)) + " there.", read);
        }
    }

    private static void Ratio(RelationBook book, string path, string field, Reading? typed, double slope)
    {
        if (!double.IsFinite(slope))
        {
            return;
        }

        var ratio = Num.Of($"{path}/motion/{field}", "motion ratio", typed);
        book.Add(Kinds.CycledRatio, ratio.Path, ratio.Si + slope, Bands.Around(0.06, 0.5),
            () => $"A motion ratio of {ratio.Typed} was typed; the cycled readings have "
                + FormattableString.Invariant($"{-slope:0.00} at ride."), ratio);
    }

    /// <summary>d reading / d travel at the reference height; NaN where the steps do not reach round it.</summary>
    public static double SlopeAtRide(IReadOnlyList<CycledStep> steps, Func<CycledStep, Reading?> get) =>
        Round(steps, get) is { } pair ? (pair.After.Y - pair.Before.Y) / (pair.After.X - pair.Before.X) : double.NaN;

    private static double? AtRide(IReadOnlyList<CycledStep> steps, Func<CycledStep, Reading?> get)
    {
        (double, double)[] points = [.. steps.Where(s => s.Travel is not null && get(s) is not null)
            .OrderBy(s => Math.Abs(s.Travel!.Si)).Take(4).Select(s => (s.Travel!.Si, get(s)!.Si))];
        return Round(steps, get) is null || points.Length < 3 ? null : Through(points, 0);
    }

    private static ((double X, double Y) Before, (double X, double Y) After)? Round(IReadOnlyList<CycledStep> steps, Func<CycledStep,
        Reading?> get)
    {
        (double X, double Y)[] points = [.. steps.Where(s => s.Travel is not null && get(s) is not null).Select(s => (s.Travel!.Si,
            get(s)!.Si))];
        for (int i = 1; i < points.Length; i++)
        {
            if (points[i - 1].X <= 0 && points[i].X >= 0 && points[i].X > points[i - 1].X)
            {
                return (points[i - 1], points[i]);
            }
        }

        return null;
    }

    /// <summary>The polynomial through the points, at x. Source: Lagrange's form.</summary>
    private static double Through((double X, double Y)[] points, double x)
    {
        double sum = 0;
        for (int i = 0; i < points.Length; i++)
        {
            double term = points[i].Y;
            for (int k = 0; k < points.Length; k++)
            {
                term *= k == i ? 1 : (x - points[k].X) / (points[i].X - points[k].X);
            }

            sum += term;
        }

        return sum;
    }
}
