using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Benches;

/// <summary>The way from the pages to the judgement.</summary>
public static class Judging
{
    public static Judgement Build(Car car, string buildId)
    {
        ArgumentNullException.ThrowIfNull(car);
        return new Judgement { Car = car, Build = car.Build(buildId) ?? throw new ArgumentException($"no build {buildId}", nameof(buildId)), Findings = [], Figures = [], Pictures = [] };
    }
}
