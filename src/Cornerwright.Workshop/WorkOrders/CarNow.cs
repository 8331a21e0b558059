using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>What is on the car now.</summary>
public static class CarNow
{
    /// <summary>
    /// The build that the last finished job led to; without one, the build on which the car was measured; null where neither is known.
    /// </summary>
    public static Build? Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var last = car.Log.Jobs.Where(j => j.Finished is not null).OrderBy(j => j.Finished).LastOrDefault();
        return car.Build(last?.To ?? "") ?? car.Build(car.MeasuredBuild);
    }
}
