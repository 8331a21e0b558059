using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Learning;

/// <summary>One reading after the work, against what was expected of it.</summary>
/// <param name="Occasion">Its id.</param>
/// <param name="Label">"hub to arch".</param>
/// <param name="Read">What was read.</param>
/// <param name="First">What the car's numbers said before anything was learned.</param>
/// <param name="Expected">What they say now.</param>
/// <param name="FirstDoubt">Two standard deviations of the first.</param>
/// <param name="Doubt">Two standard deviations of what they say now.</param>
/// <param name="Sigmas">How far it lies from what everything else expects, in standard deviations.</param>
/// <param name="SetAside">True for one that agrees with nothing else: nothing was learned from it.</param>
public sealed record LearnedReading(string Occasion, CornerPlace Corner, string Label, Measure Read, Measure First, Measure Expected,
    Measure FirstDoubt, Measure Doubt, double Sigmas, bool SetAside);

/// <summary>One number of the car, before and after.</summary>
/// <param name="Path">Where it stands in the car document.</param>
/// <param name="BeforeDoubt">Two standard deviations.</param>
/// <param name="AfterDoubt">Two standard deviations.</param>
/// <param name="Suspect">True where the readings pull it so far that it was probably read or typed wrong.</param>
public sealed record LearnedNumber(string Path, string Label, Measure Before, Measure BeforeDoubt, Measure After, Measure AfterDoubt,
    bool Suspect);

/// <summary>What the readings after the work say about the car.</summary>
public sealed record Learned
{
    public static Learned Nothing { get; } = new();

    public IReadOnlyList<LearnedReading> Readings { get; init; } = [];

    /// <summary>Numbers that moved or are known better, those that gained most first.</summary>
    public IReadOnlyList<LearnedNumber> Numbers { get; init; } = [];

    /// <summary>Occasions that could not be used, and why.</summary>
    public IReadOnlyList<string> Unused { get; init; } = [];

    internal LearnedState? State { get; init; }

    /// <summary>Something was learned.</summary>
    public bool Any => State is not null;

    public IEnumerable<LearnedReading> Outliers => Readings.Where(r => r.SetAside);

    /// <summary>Root mean square of read less expected over the heights used, m: before and after; null without heights.</summary>
    public (double First, double Now)? HeightMiss
    {
        get
        {
            var heights = Readings.Where(r => r.Label == CornerEvidence.HeightLabel && !r.SetAside).ToList();
            return heights.Count == 0 ? null : (Rms(heights, r => r.First), Rms(heights, r => r.Expected));

            static double Rms(List<LearnedReading> rows, Func<LearnedReading, Measure> expected) =>
                Math.Sqrt(rows.Average(r => Math.Pow(r.Read.Si - expected(r).Si, 2)));
        }
    }
}
