using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Files;

/// <summary>What one field of a thing near the wheel cannot show: whether there is room for all that was read.</summary>
internal static class NearWheelConsistency
{
    public static IEnumerable<Problem> Check(Car car, CornerPlace place)
    {
        string path = $"{place.Words()} corner / things near the wheel";
        var things = car.At(place).Obstacles;
        if (things.Count > NearWheelLimits.MostThings)
        {
            yield return new Problem(path, $"{things.Count} things", $"at most {NearWheelLimits.MostThings} things at a corner", "Leave out what stands far away, or join gaps to one line.");
        }

        foreach (var thing in things.Where(t => t.Gaps.Count > NearWheelLimits.MostGaps))
        {
            yield return new Problem(
                $"{path} / {thing.Id} / gaps", $"{thing.Gaps.Count} gaps", $"at most {NearWheelLimits.MostGaps} gaps of one thing",
                "Make two things of it: let the second begin with the last gap of the first.");
        }
    }
}
