using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Ranking;

/// <summary>Where a sliding top plate stands for the camber wanted at the height wanted: solved, not tried in steps.</summary>
internal static class PlateSetting
{
    /// <summary>Plates are set to this, m: their scales are ruled in millimetres and read to the half.</summary>
    private const double Step = 0.0005;

    private const int MostHalvings = 24;

    /// <returns>Null where no camber is wished, the mount has no plate, or the motion
    /// is not known; the nearer end where the wish is out of reach.</returns>
    public static Reading? Solve(SearchSpace space, TopMount? mount, CornerPlace place)
    {
        if (space.Wishes.Camber is not { } wanted || mount is not { SlideIn: { } inward, SlideOut: { } outward })
        {
            return null;
        }

        // Camber falls as the plate goes inward. Every try is a plan of its own: the plate moves the motion.
        double low = -outward.Si, high = inward.Si;
        double atLow = CamberAt(space, mount, place, low), atHigh = CamberAt(space, mount, place, high);
        if (!double.IsFinite(atLow) || !double.IsFinite(atHigh))
        {
            return null;
        }

        double sign = atHigh < atLow ? -1 : 1, goal = sign * wanted.Si;
        if (goal <= sign * atLow)
        {
            high = low;
        }
        else if (goal >= sign * atHigh)
        {
            low = high;
        }

        for (int i = 0; i < MostHalvings && high - low > Step / 8; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = sign * CamberAt(space, mount, place, middle) < goal ? (middle, high) : (low, middle);
        }

        double slide = Math.Clamp(Math.Round((low + high) / 2 / Step) * Step, -outward.Si, inward.Si);
        return SearchSpace.Setting(slide, Units.Millimetre, 1);
    }

    private static double CamberAt(SearchSpace space, TopMount mount, CornerPlace place, double slide)
    {
        var corner = space.OnMount(place, mount) with { Slide = SearchSpace.Setting(slide, Units.Millimetre, 6) };
        var plan =
            CornerPlan.Compile(space.Car, (space.Start with { Id = "choice" }).With(place, corner), place, CarLearning.InUse(space.Car));
        if (!plan.HasMotion)
        {
            return double.NaN;
        }

        double height = plan.Corner.RideHeight?.Si ?? double.NaN;
        double travel = double.IsNaN(space.HeightTarget) || double.IsNaN(height) ? 0 : height - space.HeightTarget;
        return plan.Motion.Make(plan.Inputs.Best()).WheelAt(travel, out var wheel).IsUsable() ? wheel.Camber : double.NaN;
    }
}
