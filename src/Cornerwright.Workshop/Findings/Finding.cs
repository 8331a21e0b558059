using Cornerwright.Garage.Chassis;


namespace Cornerwright.Workshop.Findings;

/// <summary>The state in which a check comes out worst.</summary>
/// <param name="Words">"at full bump, load case full".</param>
/// <param name="Travel">Wheel travel, m, bump positive; null where travel plays no part.</param>
/// <param name="Steer">rad, to the left positive; null where steering plays no part.</param>
/// <param name="Clock">Clock position on the wheel, hours; null where there is none.</param>
/// <param name="OtherTravel">Travel of the axle's other wheel, m; null where each wheel moves for itself.</param>
public sealed record WorstState(
    string Words, double? Travel = null, double? Steer = null, double? Clock = null, double? OtherTravel = null);

/// <summary>Something that would bring a failing or tight check to its limit.</summary>
/// <param name="Sentence">What to do, as an order: "Turn the collar up 2.25 turns."</param>
/// <param name="Gain">How much the margin improves when it is done.</param>
/// <param name="MarginAfter">The margin then.</param>
/// <param name="Side">What else changes: checks that turn worse, in words; empty when none does.</param>
/// <param name="Setting">The setting or part field that changes, by its path in the build; empty where a part must be bought.</param>
/// <param name="NewValue">The setting's new value as it would be typed; empty where a part must be bought.</param>
public sealed record Cure(string Sentence, Measure Gain, Measure MarginAfter, string Side, string Setting = "", string NewValue = "")
{
    /// <summary>True if nothing else of the corner fails once it is done.</summary>
    public bool CornerHolds { get; init; }
}

/// <summary>A reading whose doubt decides a check.</summary>
/// <param name="Path">Where it stands in the car document.</param>
/// <param name="Label">In words.</param>
/// <param name="Share">Of the margin's variance, 0 to 1.</param>
public sealed record DecidingReading(string Path, string Label, double Share);

/// <summary>One check of one place: does it hold, by how much, how surely, where is it worst, what would cure it.</summary>
public sealed record Finding
{
    /// <summary>The check's name in files and scripts, e.g. "seated-at-droop".</summary>
    public required string Check { get; init; }

    /// <summary>The check's name for people.</summary>
    public required string Title { get; init; }

    /// <summary>"front left", "front axle" or "car".</summary>
    public required string Where { get; init; }

    public CornerPlace? Corner { get; init; }
    public AxlePlace? Axle { get; init; }
    public required Verdict Verdict { get; init; }

    /// <summary>The measured quantity itself; null when unknown.</summary>
    public Measure? Value { get; init; }

    /// <summary>The value must not be below this; null when there is no lower limit.</summary>
    public Measure? Low { get; init; }

    /// <summary>The value must not be above this; null when there is no upper limit.</summary>
    public Measure? High { get; init; }

    /// <summary>Distance from the nearer limit, positive inside; null when unknown.</summary>
    public Measure? Margin { get; init; }

    /// <summary>Two standard deviations of the value; null when unknown.</summary>
    public Measure? Doubt { get; init; }

    /// <summary>
    /// What the allowances take from the margin, positive: so much more would be left on a car that stands still. Null where they take
    /// nothing or were not asked for.
    /// </summary>
    public Measure? Allowed { get; init; }

    /// <summary>That the value lies within its limits, 0 to 1; null when unknown.</summary>
    public double? Probability { get; init; }

    /// <summary>False where the value bends so much within its doubt that first-order propagation is not enough.</summary>
    public bool FirstOrderEnough { get; init; } = true;

    public WorstState? Worst { get; init; }

    /// <summary>What a mechanic would say.</summary>
    public required string Sentence { get; init; }

    public IReadOnlyList<Cure> Cures { get; init; } = [];

    /// <summary>Largest share first.</summary>
    public IReadOnlyList<DecidingReading> Deciding { get; init; } = [];

    /// <summary>Numbers nobody typed that this finding stands on.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Readings without which the check cannot speak.</summary>
    public IReadOnlyList<MissingReading> Missing { get; init; } = [];

    /// <summary>"front-left/seated-at-droop": the same check of the same place in another build has the same key.</summary>
    public string Key => Where.Replace(' ', '-') + "/" + Check;
}

/// <summary>A result that is worth knowing but has no limit: a rate, a frequency, a deflection.</summary>
/// <param name="Doubt">Two standard deviations.</param>
public sealed record Figure(string Name, string Title, string Where, CornerPlace? Corner, Measure Value, Measure? Doubt, string Note = "")
{
    public string Key => Where.Replace(' ', '-') + "/" + Name;
}
