using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Web.Benches;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Components.Pages;

/// <summary>
/// The judgement of the build that is on the car, kept while only another build is changed: a slider that moves the
/// proposed build does not judge the present one again and again.
/// </summary>
public sealed class PresentJudgement
{
    private Judgement? _known;

    /// <returns>Null while it is not known, and where the proposed build is the present one.</returns>
    public Judgement? Of(Car car, string proposedId, Workbench bench)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(bench);
        if (car.Build(car.MeasuredBuild) is not { } present || present.Id == proposedId)
        {
            return null;
        }

        if (_known is null || !SameBasis(_known.Car, car, present))
        {
            _known = bench.JudgementOf(present.Id) ?? _known;
        }

        return _known;
    }

    /// <summary>True when nothing that the present build's judgement stands on differs.</summary>
    internal static bool SameBasis(Car before, Car after, Build present) =>
        ReferenceEquals(before, after)
        || (ReferenceEquals(before.Build(present.Id), present) && before with { Builds = [] } == after with { Builds = [] });
}
