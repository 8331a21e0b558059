using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Checks;

/// <summary>
/// One check of one corner: a value that changes smoothly with the inputs, and the limits between which it must lie.
/// </summary>
internal sealed record CornerCheck : CornerValue
{
    public required CheckKind Kind { get; init; }

    /// <summary>Of the part whose check it is; empty where it is of none.</summary>
    public string PartId { get; init; } = "";

    /// <summary>For the title.</summary>
    public string PartName { get; init; } = "";

    /// <summary>Where the kind's own does not fit.</summary>
    public Unit? OwnUnit { get; init; }

    public string Id => Kind.IdOf(PartId);

    public string Title => Kind.TitleOf(PartName);

    public Unit Unit => OwnUnit ?? Kind.Unit;

    public int Decimals => Kind.Decimals;

    /// <summary>
    /// Readings without which nothing is known at lock: that the value lies
    /// within its limits with the wheel straight ahead is then no answer.
    /// </summary>
    public IReadOnlyList<MissingReading> MissingAtLock { get; init; } = [];

    /// <summary>
    /// Readings without which the travel's ends are not known: that the value lies within its limits over some usual travel is no answer.
    /// </summary>
    public IReadOnlyList<MissingReading> MissingAtEnds { get; init; } = [];

    public double Low { get; init; } = double.NegativeInfinity;
    public double High { get; init; } = double.PositiveInfinity;

    /// <summary>What a mechanic would say of this value.</summary>
    public required Func<CornerReader, double, string> Sentence { get; init; }

    public Func<CornerReader, WorstState?> Worst { get; init; } = _ => null;

    /// <summary>What the check takes for granted beyond the readings' own assumptions.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>False for a check of the readings themselves: nothing on the car would cure it.</summary>
    public bool Curable { get; init; } = true;

    /// <summary>The clearance that this check reads, by its place in the corner's list; -1 for all other checks.</summary>
    public int Clearance { get; init; } = -1;

    /// <summary>True for a value that is proved over all poses, and only followed in one of them while an input is moved.</summary>
    public bool Proved { get; init; }

    /// <summary>A cure of the check's own, beside those that a corner's levers give: from its value and the margin wanted.</summary>
    public Func<double, double, Cure>? OwnCure { get; init; }

    /// <summary>
    /// True where a value that holds says nothing, because it may not hold at lock or at the ends of travel; one that fails already does
    /// fail.
    /// </summary>
    public bool UnknownInPart(double value) => MissingAtLock.Count + MissingAtEnds.Count > 0 && value >= Low && value <= High;
}
