using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Ranking;

/// <summary>One stack laid out for quick evaluation. What the parts' data do not give is NaN, and then decides nothing.</summary>
internal sealed class StaticStack
{
    private StaticStack(IReadOnlyList<Part> parts) => Parts = parts;

    public IReadOnlyList<Part> Parts { get; }

    /// <summary>From the perch upward; empty where a piece lacks a number.</summary>
    public StackElement[] Elements { get; private init; } = [];

    public bool Complete => Elements.Length > 0;

    public int Main { get; private init; } = -1;
    public int Helper { get; private init; } = -1;
    public Spring? HelperSpring => Helper < 0 ? null : (Spring)Parts[Helper];
    public Spring MainSpring => (Spring)Parts[Main];

    public double FreeLength { get; private init; } = double.NaN;
    public double SolidLength { get; private init; } = double.NaN;
    public double BindForce { get; private init; } = double.NaN;

    /// <summary>Bore of the lowest and of the highest spring, m; NaN where a sheet lies there or nobody gave it.</summary>
    public double LowestBore { get; private init; } = double.NaN;
    public double HighestBore { get; private init; } = double.NaN;

    /// <summary>Least collar height of the sheets that carry one, m; infinite where none does.</summary>
    public double LeastCollar { get; private init; } = double.PositiveInfinity;

    /// <summary>Smallest distance to a limit of any fit between pieces, m; infinite where nothing can be said.</summary>
    public double FitMargin { get; private init; } = double.PositiveInfinity;

    /// <summary>
    /// Shear stress of the main spring for one newton, as a share of its tensile strength; NaN where the wire is not known.
    /// </summary>
    public double StressPerNewton { get; private init; } = double.NaN;

    public double GreatestDeflection { get; private init; } = double.NaN;

    /// <summary>Deflection at which the main spring bows out, m; NaN where its diameter is not known.</summary>
    public double CriticalDeflection { get; private init; } = double.NaN;

    public double PlannedCrossover { get; private init; } = double.NaN;

    /// <param name="parts">From the perch upward, one main spring among them.</param>
    /// <param name="pieces">Of every spring and sheet whose data are complete.</param>
    /// <param name="tightest">Limit of fits, m.</param>
    /// <param name="loosest">Limit of fits, m.</param>
    public static StaticStack Of(IReadOnlyList<Part> parts, IReadOnlyDictionary<string, StackElement> pieces, double tightest,
        double loosest)
    {
        StackElement[] elements = parts.All(p => pieces.ContainsKey(p.Id)) ? [.. parts.Select(p => pieces[p.Id])] : [];
        int main = Find(parts, s => s.Role == SpringRole.Main), helper = Find(parts, s => s.Role != SpringRole.Main);
        var spring = (Spring)parts[main];
        double? mean = SpringChecks.MeanDiameter(spring);
        return new StaticStack(parts)
        {
            Elements = elements,
            Main = main,
            Helper = helper,
            FreeLength = elements.Length > 0 ? SpringStack.FreeLength(elements) : double.NaN,
            SolidLength = elements.Length > 0 ? SpringStack.SolidLength(elements) : double.NaN,
            BindForce = elements.Length > 0 ? SpringStack.BindForce(elements) : double.NaN,
            LowestBore = (parts[0] as Spring)?.InnerDiameter?.Si ?? double.NaN,
            HighestBore = (parts[^1] as Spring)?.InnerDiameter?.Si ?? double.NaN,
            LeastCollar = parts.OfType<Sheet>().Where(s => s.CollarHeight is not null).Select(s => s.CollarHeight!.Si)
            .DefaultIfEmpty(double.PositiveInfinity).Min(),
            FitMargin = FitBetween(parts, tightest, loosest),
            StressPerNewton = spring.WireDiameter is not null && spring.TensileStrength is not null && mean is not null
                ? new WireSpring(spring.WireDiameter.Si, mean.Value, 1, SpringSteel.ShearModulusOilTempered)
                .ShearStress(1) / spring.TensileStrength.Si : double.NaN,
            GreatestDeflection = spring.GreatestDeflection?.Si ?? double.NaN,
            CriticalDeflection = mean is null || elements.Length == 0 ? double.NaN
                : SpringChecks.CriticalDeflection(elements[main], mean.Value),
            PlannedCrossover = helper >= 0 && parts[helper] is Spring { Role: SpringRole.Tender, PlannedCrossover: { } planned }
                ? planned.Si : double.NaN,
        };
    }

    private static int Find(IReadOnlyList<Part> parts, Func<Spring, bool> wanted)
    {
        for (int i = 0; i < parts.Count; i++)
        {
            if (parts[i] is Spring spring && wanted(spring))
            {
                return i;
            }
        }

        return -1;
    }

    // As the judge has it: registers of sheets in the springs below and above, springs standing bare on each other.
    private static double FitBetween(IReadOnlyList<Part> parts, double tightest, double loosest)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < parts.Count; i++)
        {
            if (parts[i] is Sheet sheet)
            {
                least = i > 0
                    ? Lower(least, Margin((parts[i - 1] as Spring)?.InnerDiameter?.Si - sheet.LowerRegister?.Si, -tightest, loosest))
                    : least;
                least = i + 1 < parts.Count
                    ? Lower(least, Margin((parts[i + 1] as Spring)?.InnerDiameter?.Si - sheet.UpperRegister?.Si, -tightest, loosest))
                    : least;
            }
            else if (i + 1 < parts.Count && parts[i + 1] is Spring second)
            {
                least = Lower(least, Margin(second.InnerDiameter?.Si - ((Spring)parts[i]).InnerDiameter?.Si, -loosest, loosest));
            }
        }

        return least;

        static double Lower(double a, double b) => b < a ? b : a;
    }

    private static double Margin(double? value, double low, double high) =>
        value is { } v ? Math.Min(v - low, high - v) : double.PositiveInfinity;
}
