using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;

namespace Cornerwright.Workshop.Corners;

/// <summary>People and ballast that are aboard while the car is read or set.</summary>
internal static class LoadAboard
{
    /// <summary>What a load on board puts on one wheel, N, by statics alone: as on four equal springs.</summary>
    internal static double ShareOf(Car car, CornerPlace place, IReadOnlyList<PlacedLoad> aboard)
    {
        double length = car.Wheelbase?.Si ?? double.NaN, track = car.At(place.Axle()).Track?.Si ?? double.NaN, sum = 0;
        foreach (var load in aboard.Where(l => l.IsComplete))
        {
            double behind = load.Behind!.Si / length, left = load.Left!.Si / track;
            sum += load.Mass!.Si * RideRates.StandardGravity * (place.Axle() == AxlePlace.Front ? 1 - behind : behind) * (
                0.5 + (place.IsLeft() ? left : -left));
        }

        return sum;
    }
}
