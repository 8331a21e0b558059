using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>What the tests of the search share.</summary>
internal static class Spaces
{
    public static SearchSpace Of(Car car, Wishes wishes) => new(car, wishes, car.Build(wishes.StartingBuild)!, PartsPool.Of(car, wishes));

    public static Reading Degrees(string text) => Reading.Of(text, Dimension.Angle);

    public static Reading Millimetres(string text) => Reading.Of(text, Dimension.Length);

    /// <summary>Runs a search to its end.</summary>
    public static RankingResult Found(Car car, Wishes wishes, int threads = 0)
    {
        var search = BuildSearch.Prepare(car, wishes).Value;
        search.Run(CancellationToken.None, threads: threads);
        return search.Result();
    }
}
