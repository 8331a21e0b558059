using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Relations;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Judging;

/// <summary>What a judgement is to hold.</summary>
/// <param name="Cures">Solve cures for what fails or is tight.</param>
/// <param name="Pictures">Work out what the pictures are drawn from.</param>
public readonly record struct JudgeOptions(bool Cures, bool Pictures)
{
    /// <summary>The points of the scans that the car names; null where there are none at hand.</summary>
    public ScanShelf? Scans { get; init; }

    /// <summary>What was judged before; null to work everything out anew.</summary>
    public JudgeMemory? Memory { get; init; }

    public static JudgeOptions Everything => new(true, true);

    /// <summary>Verdicts, margins and doubt alone: for ranking many builds.</summary>
    public static JudgeOptions FindingsOnly => new(false, false);
}

/// <summary>The main verb: does a build hold on a car, by how much, how surely, and what would cure what does not.</summary>
public static class Judge
{
    /// <summary>Judges a build of the car by its id, with everything.</summary>
    /// <exception cref="ArgumentException">The car has no build of that id.</exception>
    public static Judgement Build(Car car, string buildId) => Build(car, buildId, JudgeOptions.Everything);

    /// <inheritdoc cref="Build(Car, string)"/>
    public static Judgement Build(Car car, string buildId, JudgeOptions options)
    {
        ArgumentNullException.ThrowIfNull(car);
        return Build(car, car.Build(buildId) ?? throw new ArgumentException($"No build \"{buildId}\".", nameof(buildId)), options);
    }

    /// <summary>Judges a build, which need not be among the car's own.</summary>
    public static Judgement Build(Car car, Build build, JudgeOptions options)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        double certainty = Say.Limit(LimitsInForce.Of(car, build).Certainty);
        JudgedCorner[] judged = [.. Places.Corners.Select(place => JudgeMemory.Corner(car, build, place, options))];
        CornerResult[] corners = [.. judged.Select(c => c.Result)];
        var findings = new List<Finding>(judged.SelectMany(c => c.Findings(options.Cures)));
        var figures = new List<Figure>(judged.SelectMany(c => c.Figures));
        findings.AddRange(WholeCarChecks.For(car, corners, certainty));
        findings.AddRange(AbsentScans.For(options.Scans));
        figures.AddRange(CarFigures.For(car));
        Finding[] sorted = [.. findings.OrderBy(f => f.Verdict).ThenBy(f => f.Probability ?? 0).ThenBy(f => f.Key, StringComparer.Ordinal)];
        return new Judgement
        {
            Car = car,
            Build = build,
            Findings = sorted,
            Certainty = certainty,
            Joint = new(() => WholeBuild.Probability(corners, sorted)),
            Related = new(() => CarRelations.Of(car, build)),
            Figures = figures,
            Pictures = options.Pictures ? [.. judged.Select(c => c.Picture)] : [],
        };
    }
}
