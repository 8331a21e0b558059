using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Cures;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Judging;

/// <summary>One corner worked out, and what is said of it: each part when it is first asked for, by whoever asks.</summary>
internal sealed class JudgedCorner
{
    private readonly Lazy<IReadOnlyList<Finding>> _findings, _withCures;
    private readonly Lazy<IReadOnlyList<Figure>> _figures;
    private readonly Lazy<CornerPicture> _picture;
    private readonly Lazy<CornerResult> _atRest;

    public JudgedCorner(CornerResult result)
    {
        Result = result;
        double certainty = Say.Limit(result.Plan.Limits.Certainty);
        _findings = new(() => [.. Enumerable.Range(0, result.Checks.Count).Select(i => FindingWriter.Of(result, i, certainty))]);
        _atRest = new(() => CornerResult.AtBest(result.Plan.AtRest()));
        _withCures = new(() => [.. _findings.Value.Select((f, i) => WithAllowed(WithCures(f, i, certainty), i))]);
        _figures = new(() => [.. FiguresOf(result)]);
        _picture = new(() => PictureMaker.Of(result));
    }

    public CornerResult Result { get; }

    public IReadOnlyList<Figure> Figures => _figures.Value;

    public CornerPicture Picture => _picture.Value;

    public IReadOnlyList<Finding> Findings(bool cures) => cures ? _withCures.Value : _findings.Value;

    private Finding WithCures(Finding finding, int check, double certainty) =>
        Result.Checks[check].Curable && (finding.Verdict is Verdict.Fails or Verdict.Tight)
            ? finding with { Cures = CureFinder.Find(Result, check, certainty) } : finding;

    // The same corner with nothing allowed for tells what the allowances have taken; scans, which it lacks, are not asked again.
    private Finding WithAllowed(Finding finding, int check)
    {
        if (finding.Margin is not { } margin || _atRest.Value.Find(finding.Check) is not (var there and >= 0))
        {
            return finding;
        }

        var (now, rest) = (Result.Checks[check], _atRest.Value.Value(there));
        double taken = Math.Min(rest - now.Low, now.High - rest) - margin.Si;
        var measure = margin.With(taken);
        return double.IsFinite(taken) && measure.Number != measure.With(0).Number ? finding with { Allowed = measure } : finding;
    }

    private static IEnumerable<Figure> FiguresOf(CornerResult corner)
    {
        foreach (var (figure, index) in corner.Figures)
        {
            if (figure.CanSpeak && double.IsFinite(corner.Value(index)))
            {
                var measure = new Measure(corner.Value(index), figure.Kind.Unit, figure.Kind.Decimals);
                yield return new Figure(
                    figure.Kind.Id, figure.Kind.Title, corner.Plan.Place.Words(), corner.Plan.Place, measure,
                    measure.With(2 * corner.Doubtful(index).Doubt.StandardDeviation));
            }
        }
    }
}
