using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Workshop.Comparing;

/// <summary>How many pieces of a part a build needs: as often as corners name it, as its slot says.</summary>
internal static class PieceCount
{
    /// <summary>Over the whole car.</summary>
    public static int Of(Car car, Build build, PartKind kind, string id) =>
        CornerSlot.Of(kind).Sum(slot => slot.About.Pieces == SlotPieces.OneAnAxle
            ? Enum.GetValues<AxlePlace>().Count(axle => Places.Corners.Any(c => c.Axle() == axle && slot.Holds(build.At(c), kind, id)))
            : Places.Corners.Sum(c => At(car, build, slot, kind, id, c)));

    /// <summary>At one corner; a part that serves an axle counts at each of its wheels.</summary>
    private static int At(Car car, Build build, CornerSlot slot, PartKind kind, string id, CornerPlace place)
    {
        int named = slot.Kinds.Contains(kind) ? slot.Ids(build.At(place)).Count(x => x == id) : 0;
        return slot.About.Pieces == SlotPieces.OneAWheelBolt ? named * WheelBolts(car, build, place) : named;
    }

    /// <summary>As counted on the hub, else as the rim's designation says; 1 where neither does.</summary>
    private static int WheelBolts(Car car, Build build, CornerPlace place) =>
        car.At(place.Axle()).Hub.Bolts is { } counted ? counted
        : car.Parts.Wheels.FirstOrDefault(w => w.Id == build.At(place).Wheel) is { } wheel
            && RimDesignation.Parse(wheel.Designation, "rim").Try(out var rim) && rim.BoltCount is { } holes ? holes : 1;
}
