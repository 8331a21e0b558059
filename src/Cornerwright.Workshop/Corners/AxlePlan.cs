using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;
using T = Cornerwright.Garage.Chassis.HardpointTable;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// Where the coordinates of a rigid axle or a twist beam stand in a corner's
/// row of inputs, and the wheel's motion in both wheels' travels.
/// </summary>
internal sealed class AxlePlan
{
    /// <summary>Said of every gap where an axle that carries both wheels is known by readings, not by points.</summary>
    public const string Assumption = "motion of the axle taken as read with both wheels rising alike";

    /// <summary>
    /// Said of every gap of a wheel on an axle that carries both: the box of both travels is not all that such an axle can do.
    /// </summary>
    public const string Further =
        "ends of travel taken as with both wheels alike: a damper that stands inboard of its wheel lets one wheel alone go further";

    /// <summary>What is taken for granted of a wheel on an axle that carries both; nothing where each moves for itself.</summary>
    public static IEnumerable<string> Assumptions(MotionPlan motion) =>
        !motion.Paired ? [] : motion.BothWheels ? [Further] : [Assumption, Further];

    private const double AnyTyreRadius = 0.3;
    private const int Samples = 9;

    private readonly Side _left, _right;
    private readonly bool _isLeft, _beam;
    private readonly PointHandle _lateralBody, _lateralAxle;

    private AxlePlan(InputTable table, Car car, CornerPlace place)
    {
        _isLeft = place.IsLeft();
        _beam = LinkageOf.TableOf(car, place)!.Kind == LinkageKind.TwistBeam;
        
        if (_beam)
        {
            _left = _right = new(table, car, place, true);
            return;
        }

        var (left, right) = (_isLeft ? place : place.OtherSide(), _isLeft ? place.OtherSide() : place);
        (_left, _right) = (new(table, car, left, false), new(table, car, right, false));
        var (rod, at) = LateralOf(car, left) is { } l ? (l, left) : (LateralOf(car, right), right);
        if (rod is { } lateral)
        {
            string path = CornerPlan.JsonName(at) + "/hardpoints";
            _lateralBody = Point(table, path, lateral, nameof(T.LateralBody));
            _lateralAxle = Point(table, path, lateral, nameof(T.LateralAxle));
        }
    }

    /// <summary>Null where the corner's table is of a linkage of one wheel, or the axle's tables lack something.</summary>
    public static AxlePlan? Compile(InputTable table, Car car, CornerPlace place) =>
        LinkageOf.TableOf(car, place) is { } points && HardpointNeeds.IsAxle(points.Kind) && Missing(car, place).Count == 0
            ? new AxlePlan(table, car, place) : null;

    /// <summary>What keeps the axle from being judged by its hardpoints.</summary>
    public static IReadOnlyList<MissingReading> Missing(Car car, CornerPlace place)
    {
        var missing = new List<MissingReading>();
        var kind = LinkageOf.TableOf(car, place)!.Kind;
        foreach (var side in kind == LinkageKind.TwistBeam ? new[] { place } : [place, place.OtherSide()])
        {
            string path = CornerPlan.JsonName(side) + "/hardpoints";
            string prefix = side == place ? "hardpoint: " : $"hardpoint at the {side.Words()}: ";
            if (LinkageOf.TableOf(car, side) is not { } table || table.Kind != kind)
            {
                missing.Add(new(path, $"hardpoints of the same kind at the {side.Words()} corner"));
                continue;
            }

            missing.AddRange(HardpointNeeds.Missing(table)
                .Select(m => new MissingReading(path, prefix + char.ToLowerInvariant(m[0]) + m[1..])));
            missing.AddRange(HardpointConsistency.Carriers(table, "hardpoints")
                .Select(p => new MissingReading(path, $"{p.Field}: {p.Allowed}")));
        }

        return missing;
    }

    /// <summary>
    /// The motion with these numbers over a range of travel; one that answers nothing where the axle cannot follow over all of it.
    /// </summary>
    /// <param name="x">Row of inputs.</param>
    /// <param name="camber">Of this wheel as it is set, rad.</param>
    /// <param name="toe">rad.</param>
    /// <param name="lengths">Measured axis lengths of spring and damper, m; null takes them from the points.</param>
    /// <param name="range">Ends of travel, m.</param>
    public CornerMotion Motion(Reader x, double camber, double toe, (double? Spring, double? Damper) lengths,
        (double Droop, double Bump) range)
    {
        var (axle, beam) = Exact(x, camber, toe);
        if (Heave(axle, beam) is not { } exact)
        {
            return Nothing();
        }

        double[] at = ChebyshevCurve.Points(range.Droop, range.Bump, Samples), rows = new double[6 * Samples];
        if (!exact.StationAt(0, Station.Spring, out var spring0).IsUsable()
            || !exact.StationAt(0, Station.Damper, out var damper0).IsUsable())
        {
            return Nothing();
        }

        double springMore = lengths.Spring is { } s ? s - spring0.Length : 0, damperMore = lengths.Damper is { } d ? d - damper0.Length : 0;
        for (int i = 0; i < Samples; i++)
        {
            if (!exact.WheelAt(at[i], out var wheel).IsUsable() || !exact.StationAt(at[i], Station.Spring, out var spring).IsUsable()
                || !exact.StationAt(at[i], Station.Damper, out var damper).IsUsable())
            {
                return Nothing();
            }

            (rows[i], rows[Samples + i], rows[(2 * Samples) + i]) = (wheel.Camber, wheel.Toe, wheel.LateralShift);
            (rows[(3 * Samples) + i], rows[(4 * Samples) + i]) = (spring.Length + springMore, damper.Length + damperMore);
            rows[(5 * Samples) + i] = wheel.ForwardShift;
        }

        ChebyshevCurve Curve(int row) => ChebyshevCurve.Through(range.Droop, range.Bump, rows.AsSpan(row * Samples, Samples));
        var together = new CycledMotion(Curve(0), Curve(1), Curve(2), Curve(3), Curve(4), 0, Curve(5));
        return axle is not null ? new SolvedAxleMotion(axle, _isLeft, together) : new SolvedAxleMotion(beam!, together);
    }

    /// <summary>How far the axle goes with both wheels alike, and the rod that gives first at each end.</summary>
    public LinkageRange? Range(Reader x, double camber, double toe, double limit)
    {
        var (axle, beam) = Exact(x, camber, toe);
        if (Heave(axle, beam) is not { } exact)
        {
            return null;
        }

        var (droop, bump) = exact.ReachableTravel(limit, limit);
        return new(droop, bump, droop > -limit ? Stop(x, camber, toe, droop, -1) : null,
            bump < limit ? Stop(x, camber, toe, bump, 1) : null);
    }

    private CannotReach Stop(Reader x, double camber, double toe, double at, int sign)
    {
        const double Further = 1e-3;
        string tie = "trailing arm";
        double missing = 0;
        if (!_beam)
        {
            var state = new RigidAxle(Axle(x, camber, toe)).At(at + (sign * Further), at + (sign * Further));
            tie = state.WorstRod.Length > 0 ? state.WorstRod : "axle";
            missing = state.RodChanges.Count > 0 ? state.RodChanges.MaxBy(Math.Abs) : 0;
        }

        return new(new(at, 0, 0), tie, 0, missing);
    }

    private CornerMotion? Heave(RigidAxle? axle, TwistBeam? beam) =>
        axle is not null ? new RigidAxleMotion(axle, _isLeft) : beam is not null ? new TwistBeamMotion(beam) : null;

    // Neither where the points make no axle.
    private (RigidAxle? Axle, TwistBeam? Beam) Exact(Reader x, double camber, double toe)
    {
        if (!_beam)
        {
            return (RigidAxle.Create(Axle(x, camber, toe), out _), null);
        }

        // The section lies on the middle plane; where it was measured a little beside it counts for nothing.
        var shear = Read(x, _left.Shear, _left.Mirrored) with { Y = 0 };
        return (null, TwistBeam.Create(new(_left.At(x, camber, toe), Read(x, _left.Bush, _left.Mirrored), shear), out _));
    }

    private RigidAxlePoints Axle(Reader x, double camber, double toe)
    {
        var rods = new List<AxleRod>();
        foreach (var (side, words) in new[] { (_left, "left"), (_right, "right") })
        {
            rods.Add(new($"lower link, {words}", Read(x, side.LowerBody, side.Mirrored), Read(x, side.LowerAxle, side.Mirrored)));
            rods.Add(new($"upper link, {words}", Read(x, side.UpperBody, side.Mirrored), Read(x, side.UpperAxle, side.Mirrored)));
        }

        if (_lateralBody.IsGiven)
        {
            rods.Add(new("lateral rod", Read(x, _lateralBody, false), Read(x, _lateralAxle, false)));
        }

        // The other wheel's angles move nothing in heave.
        return new(_left.At(x, _isLeft ? camber : 0, _isLeft ? toe : 0), _right.At(x, _isLeft ? 0 : camber, _isLeft ? 0 : toe), rods);
    }

    private static CycledMotion Nothing() => new(null, null, null, null, null);

    private static T? LateralOf(Car car, CornerPlace place) =>
        car.At(place).Hardpoints is { Mirrored: false, LateralBody: { X: not null, Y: not null, Z: not null },
            LateralAxle: { X: not null, Y: not null, Z: not null } } table ? table : null;

    private static Vec3 Read(Reader x, PointHandle point, bool mirrored) =>
        new(x[point.X], mirrored ? -x[point.Y] : x[point.Y], x[point.Z]);

    private static PointHandle Point(InputTable table, string path, T points, string property)
    {
        var field = HardpointNeeds.Points.First(f => f.PropertyName == property);
        var point = (BodyPoint)field.Get(points)!;
        string words = LinkageShape.Words(field);
        return new(
            table.Add($"{path}/{field.Name}/x", words + ", X", point.X),
            table.Add($"{path}/{field.Name}/y", words + ", Y", point.Y),
            table.Add($"{path}/{field.Name}/z", words + ", Z", point.Z));
    }

    /// <summary>One wheel's end of the axle.</summary>
    private sealed class Side
    {
        private readonly PointHandle _hub, _springMoving, _springBody, _damperMoving, _damperBody;

        public Side(InputTable table, Car car, CornerPlace place, bool beam)
        {
            Mirrored = car.At(place).Hardpoints!.Mirrored;
            var points = LinkageOf.TableOf(car, place)!;
            string path = CornerPlan.JsonName(Mirrored ? place.OtherSide() : place) + "/hardpoints";
            PointHandle At(string property) => Point(table, path, points, property);
            _hub = At(nameof(T.HubFace));
            (_springMoving, _springBody, _damperMoving, _damperBody) =
                (At(nameof(T.SpringMoving)), At(nameof(T.SpringBody)), At(nameof(T.DamperMoving)), At(nameof(T.DamperBody)));
            (Bush, Shear, LowerBody, LowerAxle, UpperBody, UpperAxle) = beam
                ? (At(nameof(T.ArmOuter)), At(nameof(T.ShearCentre)), PointHandle.None, PointHandle.None, PointHandle.None,
                    PointHandle.None)
                : (PointHandle.None, PointHandle.None, At(nameof(T.LowerFrontInner)), At(nameof(T.LowerFrontOuter)),
                    At(nameof(T.UpperFrontInner)), At(nameof(T.UpperFrontOuter)));
        }

        public bool Mirrored { get; }
        public PointHandle Bush { get; }
        public PointHandle Shear { get; }
        public PointHandle LowerBody { get; }
        public PointHandle LowerAxle { get; }
        public PointHandle UpperBody { get; }
        public PointHandle UpperAxle { get; }

        public AxleSide At(Reader x, double camber, double toe) => new(
            Read(x, _hub, Mirrored), camber, toe, AnyTyreRadius,
            new StationPoints(Read(x, _springBody, Mirrored), Read(x, _springMoving, Mirrored)),
            new StationPoints(Read(x, _damperBody, Mirrored), Read(x, _damperMoving, Mirrored)));
    }
}
