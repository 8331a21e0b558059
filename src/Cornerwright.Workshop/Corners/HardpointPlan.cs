using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where the coordinates of a corner's hardpoints stand in its row of inputs, and the motion they give.</summary>
internal sealed class HardpointPlan
{
    /// <summary>Only the contact of the tyre would ask for it, and no check of a corner does.</summary>
    private const double AnyTyreRadius = 0.3;

    /// <summary>
    /// Travel of road cars either way, m: ends and equilibria are looked for in it from a polynomial, beyond it from the linkage itself.
    /// </summary>
    private const double SampledTravel = 0.13;

    private readonly LinkageShape _shape;
    private readonly PointHandle[] _joints;
    private readonly PointHandle _hub, _plate;
    private readonly Handle _springAlong, _damperAlong;
    private readonly bool _mirrored, _springOnStrut, _damperOnStrut;
    private readonly int _side;

    private HardpointPlan(InputTable table, Car car, CornerPlace place, HardpointTable points)
    {
        _mirrored = car.At(place).Hardpoints!.Mirrored;
        _side = place.IsLeft() ? 1 : -1;
        string path = CornerPlan.JsonName(_mirrored ? place.OtherSide() : place) + "/hardpoints";
        _shape = LinkageShape.Of(points, car.At(place.Axle()).Steered, bar: false);
        _joints = [.. _shape.Joints.Select(f => Point(table, path, points, f))];
        _hub = Point(table, path, points, HardpointNeeds.Points.First(f => f.PropertyName == nameof(HardpointTable.HubFace)));
        bool plate = HardpointNeeds.IsStrut(points.Kind) && points.PlateInner is { X: not null, Y: not null, Z: not null };
        _plate = plate ? Point(table, path, points, HardpointNeeds.Points.First(f => f.PropertyName == nameof(HardpointTable.PlateInner)))
            : PointHandle.None;
        _springOnStrut = points.SpringOn == StationCarrier.Strut;
        _damperOnStrut = points.DamperOn == StationCarrier.Strut;
        _springAlong = _springOnStrut ? table.Add(path + "/springAlong", "spring's lower reference along the strut", points.SpringAlong)
            : Handle.None;
        _damperAlong = _damperOnStrut ? table.Add(path + "/damperAlong", "damper's lower reference along the strut", points.DamperAlong)
            : Handle.None;
    }

    /// <summary>
    /// Null where the corner has no table, or one that lacks points or hangs spring or damper on a part its kind does not have.
    /// </summary>
    public static HardpointPlan? Compile(InputTable table, Car car, CornerPlace place) =>
        LinkageOf.TableOf(car, place) is { } points && HardpointNeeds.Missing(points).Count == 0
            && !HardpointConsistency.Carriers(points, "").Any()
            ? new HardpointPlan(table, car, place, points) : null;

    /// <summary>What keeps a corner from being judged by its hardpoints.</summary>
    public static IReadOnlyList<MissingReading> Missing(Car car, CornerPlace place)
    {
        var found = LinkageOf.Corner(car, place);
        string path = CornerPlan.JsonName(place) + "/hardpoints";
        return found.Ok ? [] : LinkageOf.TableOf(car, place) is { } table && HardpointNeeds.Missing(table) is { Count: > 0 } points
            ? [.. points.Select(p => new MissingReading(path, $"hardpoint: {char.ToLowerInvariant(p[0])}{p[1..]}"))]
            : [.. found.Problems.Select(p => new MissingReading(path, $"hardpoints that hold the wheel ({p.Field}: {p.Given})"))];
    }

    /// <summary>The linkage with these numbers, as measured; travel is that of the hub's face.</summary>
    public CornerLinkage Linkage(Reader x, double camber, double toe)
    {
        var at = new Vec3[_joints.Length];
        int top = -1;
        for (int i = 0; i < at.Length; i++)
        {
            at[i] = Point(x, _joints[i]);
            top = _shape.Joints[i].PropertyName == nameof(HardpointTable.StrutTop) ? i : top;
        }

        Vec3 plate = LinkageOf.PlateDirection(top < 0 ? null : at[top], !_plate.IsGiven ? null : Point(x, _plate), _side);
        return _shape.With(at, plate,
            new(Point(x, _hub), 0, AnyTyreRadius, camber, toe, x.Optional(_springAlong), x.Optional(_damperAlong)));
    }

    /// <summary>
    /// How far the knuckle is turned against its strut, rad, when plate and clamp stand so; the clamp's own angle where it cannot stand so.
    /// </summary>
    /// <remarks>Where it cannot stand so the motion says by itself that the wheel cannot be there.</remarks>
    public double ClampTurn(Reader x, double camber, double toe, double slide, double clamp) =>
        StrutSetting.Create(Linkage(x, camber, toe), slide, clamp, out _)?.Turn ?? clamp;

    /// <summary>The motion with these numbers; one that answers nothing where the joints lock or leave the wheel loose.</summary>
    /// <param name="x">Row of inputs.</param>
    /// <param name="camber">As measured, rad.</param>
    /// <param name="toe">As measured, rad.</param>
    /// <param name="slide">Of the plate since then, m inward.</param>
    /// <param name="clamp">Camber set at the clamp since then, rad.</param>
    /// <param name="springLength">Measured axis length as the car was measured, m; null takes it from the points.</param>
    /// <param name="damperLength">Likewise.</param>
    public CornerMotion Motion(Reader x, double camber, double toe, double slide, double clamp, double? springLength, double? damperLength)
    {
        var measured = Linkage(x, camber, toe);
        if (StrutSetting.Create(measured, slide, clamp, out _) is not { } set
            || HardpointMotion.Create(
                set.Linkage, out _, 0, set.Plate, More(measured, measured.Spring, springLength),
                More(measured, measured.Damper, damperLength)) is not { } motion)
        {
            return new CycledMotion(null, null, null, null, null);
        }

        motion.SampleStations(-SampledTravel, SampledTravel);
        return motion;
    }

    /// <summary>Which tie ends the travel at each end, and where; null where the linkage cannot stand at the reference state.</summary>
    public LinkageRange? Range(Reader x, double camber, double toe, double slide, double clamp, double limit) =>
        StrutSetting.Create(Linkage(x, camber, toe), slide, clamp, out _) is { } set
            && KnuckleLinkage.Create(set.Linkage, out _) is { } linkage
            ? LinkageRange.OfTravel(linkage, 0, set.Plate, limit) : null;

    private static double More(CornerLinkage linkage, LinkageStation? station, double? measured) =>
        measured is { } length && station is not null ? length - linkage.LengthAtRest(station) : 0;

    private Vec3 Point(Reader x, PointHandle point) => new(x[point.X], _mirrored ? -x[point.Y] : x[point.Y], x[point.Z]);

    internal static PointHandle Point(InputTable table, string path, HardpointTable points, FieldShape field)
    {
        var point = (BodyPoint)field.Get(points)!;
        string words = LinkageShape.Words(field);
        return new(
            table.Add($"{path}/{field.Name}/x", words + ", X", point.X),
            table.Add($"{path}/{field.Name}/y", words + ", Y", point.Y),
            table.Add($"{path}/{field.Name}/z", words + ", Z", point.Z));
    }
}
