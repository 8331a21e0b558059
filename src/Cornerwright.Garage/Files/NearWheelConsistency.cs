using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>
/// What one field of a wheel's surroundings cannot show: whether there is
/// room for all that was read, and whether the wheel steers as they say.
/// </summary>
internal static class NearWheelConsistency
{
    public static IEnumerable<Problem> Check(Car car, CornerPlace place)
    {
        string path = $"{place.Words()} corner / things near the wheel";
        var things = car.At(place).Obstacles;
        if (things.Count > NearWheelLimits.MostThings)
        {
            yield return new Problem(path, $"{things.Count} things", $"at most {NearWheelLimits.MostThings} things at a corner",
                "Leave out what stands far away, or join gaps to one line.");
        }

        foreach (var thing in things.Where(t => t.Gaps.Count > NearWheelLimits.MostGaps))
        {
            yield return new Problem(
                $"{path} / {thing.Id} / gaps", $"{thing.Gaps.Count} gaps", $"at most {NearWheelLimits.MostGaps} gaps of one thing",
                "Make two things of it: let the second begin with the last gap of the first.");
        }

        foreach (var problem in car.At(place.Axle()).Steered ? [] : Unsteered(car, place, path))
        {
            yield return problem;
        }
    }

    // On an axle that does not steer these would be ignored: one of the two is a slip.
    private static IEnumerable<Problem> Unsteered(Car car, CornerPlace place, string things)
    {
        string axle = $"{place.Axle().Words()} axle", tick = $"Tick \"Steered\" on the {axle}, or take this out.";
        var shape = RecordShape.Of<SteeringAxis>();
        foreach (var field in car.At(place).Steering is { } steering ? shape.Fields.Where(f => f.Get(steering) is Reading) : [])
        {
            yield return new Problem(
                $"{place.Words()} corner / steering axis / {field.Label.ToLowerInvariant()}",
                ((Reading)field.Get(car.At(place).Steering!)!).Typed,
                $"nothing while the {axle} is not steered", tick);
        }

        foreach (var (thing, gap) in car.At(place).Obstacles.SelectMany(t => t.Gaps.Select((g, i) => (t, i))))
        {
            if (thing.Gaps[gap].Steer is { } steer && steer.Si != 0)
            {
                yield return new Problem($"{things} / {thing.Id} / gap {gap + 1} / steered when read", steer.Typed,
                    $"0 while the {axle} is not steered", tick);
            }
        }

        foreach (var scan in car.Scans.Where(s => s.Corner == place && s.Steer is { } steer && steer.Si != 0))
        {
            yield return new Problem($"scan {scan.Id} / steered when scanned", scan.Steer!.Typed,
                $"0 while the {axle} is not steered", tick);
        }
    }
}
