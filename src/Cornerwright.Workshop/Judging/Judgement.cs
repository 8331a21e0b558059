using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;

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

    /// <summary>Fails if anything fails, else tight, else unknown if anything is, else holds.</summary>
    public Verdict Verdict => Findings.Count == 0 ? Verdict.Unknown : Findings.Min(f => f.Verdict);

    /// <summary>That all that is known holds at once, 0 to 1; null where nothing is known. Worked out when it is first asked for.</summary>
    public double? Probability => Joint?.Value;

    internal Lazy<double?>? Joint { get; init; }

    public int Count(Verdict verdict) => Findings.Count(f => f.Verdict == verdict);
}
