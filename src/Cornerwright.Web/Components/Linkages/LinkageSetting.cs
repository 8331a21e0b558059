using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>One corner's linkage as one build sets it: wheel, plate, clamp, and where that build rides and stops.</summary>
/// <param name="Name">Of the build, as people read it.</param>
/// <param name="Points">The table made ready, with the build's wheel.</param>
/// <param name="Clamp">How far the wheel was turned in the strut's clamp since
/// the car was measured, rad, positive when its top went outward.</param>
/// <param name="MeasuredFoot">How far the tyre's foot stood from the car's middle when it was measured, m.</param>
/// <param name="RackLock">Rack from straight ahead to its stop, m; null while unknown.</param>
/// <param name="Ride">m of travel in the load case in which heights are wanted; null while unknown.</param>
/// <param name="Droop">m of travel of the hanging wheel; null while unknown.</param>
/// <param name="Bump">m of travel at which the first of its stops ends it; null while unknown.</param>
/// <param name="Wheel">Section of wheel and tyre from the judgement; null while unknown.</param>
public sealed record LinkageSetting(
    string Name, CornerHardpoints Points, double Clamp, double MeasuredFoot, double? RackLock, double? Ride, double? Droop, double? Bump,
    WheelSection? Wheel)
{
    /// <summary>m along the plate's direction from where it stood when the car was measured.</summary>
    public double Plate => Points.Plate;

    /// <summary>1 on the left, -1 on the right.</summary>
    public int Side => Points.Linkage.Side;

    /// <summary>True where a plate can slide the strut's top.</summary>
    public bool HasPlate => Points.Linkage.PlateDirection.Length > 0;

    /// <summary>True where a rack moves one of the rods.</summary>
    public bool Steers => Points.Linkage.Ties.OfType<LinkageTie.Rod>().Any(rod => rod.Steers);

    /// <summary>How far the rack is shown either way, m.</summary>
    public double RackShown => RackLock ?? LinkageSweep.UsualRack;

    /// <param name="car">Its table at this corner, or the other wheel's.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="build">Null for the car as it was measured.</param>
    /// <param name="judgement">Of that build; null while it is not there.</param>
    /// <returns>Or every reason why the table makes no linkage.</returns>
    public static Checked<LinkageSetting> Of(Car car, CornerPlace place, Build? build, Judgement? judgement)
    {
        ArgumentNullException.ThrowIfNull(car);
        var found = LinkageOf.Corner(car, place, build);
        if (!found.Try(out var points))
        {
            return Checked<LinkageSetting>.Wrong(found.Problems);
        }

        double clamp = build is null ? 0 : ClampOf(build, place) - ClampOf(car.Build(car.MeasuredBuild), place);
        var picture = judgement?.Pictures.FirstOrDefault(p => p.Corner == place);
        return Checked<LinkageSetting>.From(new(
            build?.Name ?? car.Build(car.MeasuredBuild)?.Name ?? "as measured", points, clamp, Foot(LinkageOf.Corner(car, place), points),
            car.At(place).Steering?.RackTravel?.Si,
            RideOf(car, picture), At(picture, TravelEvent.DroopStop), FirstStop(picture), picture?.Wheel));
    }

    /// <summary>Without a strut the wheel turns against its carrier about the centre of the hub's face, and its middle with it.</summary>
    internal static CornerLinkage Turned(CornerHardpoints points, double clamp)
    {
        var before = points.Linkage;
        var after = before with { Camber = before.Camber + clamp };
        return after with { WheelCentre = before.WheelCentre + ((Spindle(before) - Spindle(after)) * points.HubFaceOutboard) };
    }

    private static double Foot(Checked<CornerHardpoints> measured, CornerHardpoints otherwise) =>
        WheelGeometry.TryRead(new KnuckleFollower((measured.Try(out var found) ? found : otherwise).Ready()), out var wheel)
            ? Math.Abs(wheel.Contact.Y) : 0;

    private static Vec3 Spindle(CornerLinkage linkage) =>
        new KnuckleLinkage(linkage).Spindle is var s && linkage.Side > 0 ? s : new Vec3(s.X, -s.Y, s.Z);

    private static double ClampOf(Build? build, CornerPlace place) => build?.At(place).ClampCamber?.Si ?? 0;

    private static double? RideOf(Car car, CornerPicture? picture)
    {
        string words = car.LoadCases is [{ } first, ..] ? "ride, " + first.Name : "ride";
        return picture?.Marks.FirstOrDefault(m => m.Event == TravelEvent.Ride && m.Words == words)?.Travel;
    }

    private static double? At(CornerPicture? picture, TravelEvent what) => picture?.Marks.FirstOrDefault(m => m.Event == what)?.Travel;

    private static double? FirstStop(CornerPicture? picture) => picture?.Marks
        .Where(m => m.Event is TravelEvent.StopSpent or TravelEvent.DamperShut or TravelEvent.CoilBind or TravelEvent.MetalMeets)
        .Select(m => (double?)m.Travel).Min();
}
