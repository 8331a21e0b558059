using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;
using static Cornerwright.Workshop.Setting.TurnWords;

namespace Cornerwright.Workshop.Setting;

/// <summary>What cannot be done, said before anything is turned.</summary>
internal static class SettingChecks
{
    public static IEnumerable<Problem> OfCar(Car car)
    {
        if (car.Wheelbase is null)
        {
            yield return new Problem("wheelbase", "", "800 to 6000 mm", "Measure it from wheel centre to wheel centre.");
        }

        foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
        {
            if (car.At(axle).Track is null)
            {
                yield return new Problem($"{axle.Words()} axle / track", "", "600 to 2500 mm",
                    "Measure it on the ground between the middles of the two treads.");
            }
        }
    }

    /// <summary>People and ballast without a mass or a place.</summary>
    public static IEnumerable<Problem> OfLoads(IEnumerable<PlacedLoad> loads) => loads.Where(l => !l.IsComplete)
        .Select(l => new Problem($"on board / {(l.Name.Length > 0 ? l.Name : "without a name")}", "", "mass, and where it sits",
            "Give its mass, how far behind the front axle and how far left of the middle it sits, or take it out."));

    /// <summary>Targets that contradict each other, or that no setting can reach.</summary>
    public static IEnumerable<Problem> OfWish(SettingModel model)
    {
        var stance = CarBalance.Solve(model.Car, model.Corners, [0, 0, 0, 0]);
        if (stance.Why != BalanceStop.Converged)
        {
            yield break;   // Said by the search itself.
        }

        double[] pattern = Warp.LoadPattern(model.Car.Wheels);
        if (model.Wish.CrossWeight?.Si is { } cross)
        {
            var (least, greatest) = Warp.CrossWeightRange([.. stance.Load], pattern);
            if (!(cross > least && cross < greatest))
            {
                yield return new Problem("cross weight", model.Wish.CrossWeight!.Typed, $"between {Share(least)} and {Share(greatest)}",
                    "Beyond that a wheel leaves the ground: the weight of this car does not allow it, whatever the collars do.");
            }
        }

        if (model.Targets.Travel.All(t => t is not null) && Twist(model, stance, pattern) is { } twist)
        {
            yield return twist;
        }
    }

    // Three heights lay the body down; the fourth follows. What four heights ask beyond that is a twist of the body.
    private static Problem? Twist(SettingModel model, CarStance stance, double[] pattern)
    {
        double twist = 0, size = 0;
        double[] rise = new double[4];
        for (int i = 0; i < 4; i++)
        {
            rise[i] = stance.HubRise[i] - model.Targets.Travel[i]!.Value;
            twist += pattern[i] * rise[i];
            size += Math.Abs(pattern[i]);
        }

        if (!(Math.Abs(twist) / size > model.HeightBand))
        {
            return null;
        }

        // The height typed last is the one to give way.
        var last = Places.Corners[3];
        double fits = model.Wish.At(last).Height!.Si - (twist / pattern[3]);
        return new Problem(
            "heights wanted", string.Join(", ", Places.Corners.Select(p => $"{p.Words()} {Mm(model.Wish.At(p).Height!.Si, 0)}")),
            $"four heights of a body that does not bend; with the first three, {last.Words()} comes to {Mm(fits, 0)}",
            "From how it stands now, three heights decide the fourth. Leave one out, or say how they may differ.");
    }
}
