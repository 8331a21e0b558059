using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Judging.Checks;

/// <summary>
/// One check of one corner: a value that changes smoothly with the inputs, and the limits between which it must lie.
/// </summary>
internal sealed record CornerCheck
{
    public required string Id { get; init; }
    public required string Title { get; init; }
    public required Unit Unit { get; init; }
    public int Decimals { get; init; } = 1;

    /// <summary>Readings without which the value cannot be computed; then nothing else of the check is asked.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>SI; not finite where the state is out of the motion's reach.</summary>
    public required Func<CornerNumbers, double> Value { get; init; }

    public double Low { get; init; } = double.NegativeInfinity;
    public double High { get; init; } = double.PositiveInfinity;

    /// <summary>What a mechanic would say of this value.</summary>
    public required Func<CornerNumbers, double, string> Sentence { get; init; }

    public Func<CornerNumbers, WorstState?> Worst { get; init; } = _ => null;

    /// <summary>What the check takes for granted beyond the readings' own assumptions.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>True for a value that is only carried to whole-axle or whole-car checks and makes no finding itself.</summary>
    public bool Silent { get; init; }

    /// <summary>True for a silent value that whole-axle or whole-car checks are made of.</summary>
    public bool Carried { get; init; }

    /// <summary>False for a check of the readings themselves: nothing on the car would cure it.</summary>
    public bool Curable { get; init; } = true;

    /// <summary>True if travel, loads and springs play a part; false for what only the parts' dimensions decide.</summary>
    public bool NeedsSolving { get; init; } = true;

    /// <summary>The clearance that this check reads, by its place in the corner's list; -1 for all other checks.</summary>
    public int Clearance { get; init; } = -1;

    /// <summary>True for a value that reads where the tyre first touches.</summary>
    public bool ReadsTouch { get; init; }

    /// <summary>True for a value that reads the wheel's outline and poses itself, as clearances to scans do.</summary>
    public bool ReadsWheel { get; init; }

    /// <summary>A cure of the check's own, beside those that a corner's levers give: from its value and the margin wanted.</summary>
    public Func<double, double, Cure>? OwnCure { get; init; }

    /// <summary>What has to be worked out before the value can be read, when any input may have moved.</summary>
    public InputEffect Reads => ReadsTouch ? InputEffect.Everything
        : Clearance >= 0 ? new(true, true, true, 1UL << Clearance)
        : new(Travel: true, Motion: true);

    /// <summary>True if a change with this effect can change the value. An input without any effect is one that checks read directly.</summary>
    public bool Feels(InputEffect effect) =>
        effect.Travel || effect.IsNone || (ReadsWheel && (effect.Wheel || effect.Motion || effect.Items != 0)) || !NeedsSolving || (effect.Items != 0 && (ReadsTouch || (Clearance >= 0 && (effect.Items & (1UL << Clearance)) != 0)));

    public bool CanSpeak => Missing.Count == 0;
}

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
