using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;
using Cornerwright.Workshop.Relations;

namespace Cornerwright.Workshop.Judging;

/// <summary>All that is said of one build of one car.</summary>
public sealed record Judgement
{
    public required Car Car { get; init; }
    public required Build Build { get; init; }

    /// <summary>Worst first: fails, tight, unknown, holds; within each by probability.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    public required IReadOnlyList<Figure> Figures { get; init; }

    /// <summary>In the order of <see cref="Places.Corners"/>.</summary>
    public required IReadOnlyList<CornerPicture> Pictures { get; init; }

    /// <summary>Of the worst check: fails if anything fails, else tight, else unknown if anything is, else holds.</summary>
    public Verdict Worst => Findings.Count == 0 ? Verdict.Unknown : Findings.Min(f => f.Verdict);

    /// <summary>
    /// Of the whole build: that of its worst check, but it holds only where all that is known holds at once as surely as is asked for,
    /// and where no numbers that it stands on contradict each other.
    /// </summary>
    public Verdict Verdict => Worst != Verdict.Holds ? Worst
        : Relations.Contradicts ? Verdict.Unknown : WholeBuild.Verdict(Probability, unknown: 0, Certainty);

    /// <summary>Numbers this build stands on that do not go together. Looked at when they are first asked for.</summary>
    public CarRelations Relations => Related?.Value ?? CarRelations.None;

    internal Lazy<CarRelations>? Related { get; init; }

    /// <summary>The probability from which on something counts as holding, of one check and of the whole build alike.</summary>
    public double Certainty { get; init; } = 1;

    /// <summary>That all that is known holds at once, 0 to 1; null where nothing is known. Worked out when it is first asked for.</summary>
    public double? Probability => Joint?.Value;

    internal Lazy<double?>? Joint { get; init; }

    public int Count(Verdict verdict) => Findings.Count(f => f.Verdict == verdict);
}
