using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where one corner's wheel is, and where everything stands that it may touch, for a row of inputs.</summary>
internal sealed class ThingPlaces(CornerPlan plan)
{
    private Sway? _sway;
    private SwayCorner? _at;

    private readonly CornerPlan _plan = plan;
    private readonly ClearancePlan _clearance = plan.Clearance;

    /// <summary>Swept when nothing known ends the travel, m: about the travel of a road car, either way.</summary>
    public const double UsualTravel = 0.06;

    /// <summary>The same with the wheel under a load.</summary>
    public ThingPlaces Under(in Sway sway, SwayCorner at) => new(_plan) { _sway = sway, _at = at };

    /// <summary>A pose at rest as it is under this load.</summary>
    private WheelPose Loaded(in WheelPose pose, double travel, double steer) =>
        _sway is { } sway ? sway.Under(pose, travel, steer, _at!) : pose;

    /// <summary>By how much the load moves the wheel in B, m.</summary>
    public Vec3 Moved(double travel, double steer) => _sway is { } sway ? sway.Move(travel, steer, _at!) : default;

    /// <summary>Full droop as it is swept, m.</summary>
    public double Hanging(CornerReader n) =>
        Math.Clamp(double.IsFinite(n.Droop) ? n.Droop : -UsualTravel, _plan.LowestTravel, _plan.HighestTravel);

    /// <summary>Ends of the travel swept, m.</summary>
    public (double Droop, double Bump) Range(CornerReader n)
    {
        double droop = Hanging(n), bump = double.IsFinite(n.FullBump) ? n.Beyond(n.FullBump) : UsualTravel;
        return (droop, Math.Clamp(bump, droop, _plan.HighestTravel));
    }

    /// <summary>
    /// Where a thing stands: in B if it belongs to the body, in S if to the knuckle. A coil on the strut fills all that it passes between
    /// full droop and full bump: coils slide along the strut's axis as they are squeezed, each end one way.
    /// </summary>
    public bool Place(CornerReader n, int i, Span<Vec3> points, out CylinderObstacle cylinder, out StandingLink link)
    {
        if (_clearance.Items[i].Piece is not { } piece)
        {
            return Place(n, i, 0, points, out cylinder, out link);
        }

        link = default;

        double droop = Hanging(n);
        cylinder = Cylinder(n, piece, droop);
        if (cylinder.IsSound && _plan.HasSpring && piece is StrutPiece.Spring or StrutPiece.Helper)
        {
            double bump = Range(n).Bump;
            cylinder = double.IsFinite(n.SpringSpace(bump)) ? Joined(cylinder, Cylinder(n, piece, bump)) : cylinder;
        }

        return cylinder.IsSound;
    }

    // Both stand on one axis and are as thick.
    private static CylinderObstacle Joined(in CylinderObstacle one, in CylinderObstacle other)
    {
        double shift = (other.Foot - one.Foot).Dot(one.Direction);
        double from = Math.Min(0, shift), to = Math.Max(one.Length, shift + other.Length);
        return other.IsSound ? new(one.Foot + (one.Direction * from), one.Direction, to - from, one.Radius) : one;
    }

    /// <summary>Where a thing stands: in B if it belongs to the body, in S if to the knuckle.</summary>
    /// <param name="n">The corner.</param>
    /// <param name="i">Which thing.</param>
    /// <param name="travel">At which the strut's springs are as long as they are drawn, m.</param>
    /// <param name="points">Takes the places that gaps fix.</param>
    /// <param name="cylinder">The piece of the strut.</param>
    /// <param name="link">The drop link, whose ends at the reference state are the points.</param>
    public bool Place(CornerReader n, int i, double travel, Span<Vec3> points, out CylinderObstacle cylinder, out StandingLink link)
    {
        var item = _clearance.Items[i];
        (cylinder, link) = (default, default);
        if (item.Link is { } drop)
        {
            SwingingLink stood = drop.Stand(n);
            (points[0], points[1]) = (stood.Outer, stood.BarEnd);
            bool known = drop.Outer(n, this, stood, out Vec3 outer);
            link = new(stood, outer);
            return known;
        }

        if (item.Piece is { } piece)
        {
            cylinder = Cylinder(n, piece, travel);
            return cylinder.IsSound;
        }

        var (tyre, rim) = (_plan.WheelNow!.Tyre(n.X, 0, 0), _plan.WheelNow!.Rim(n.X));
        for (int k = 0; k < points.Length; k++)
        {
            var gap = item.Gaps[k];
            var reading = new GapReading(gap.From, gap.Direction, gap.Clock, n.X[gap.Gap]);
            if (item.AttachedTo == AttachedTo.Knuckle)
            {
                points[k] = reading.InSpindle(tyre, rim);
                continue;
            }

            double travelThen = n.X.Or(gap.Travel, 0), steerThen = n.X.Or(gap.Steer, 0);
            if (!Pose(n, n.MotionNow, travelThen, steerThen, out var then))
            {
                return false;
            }

            points[k] = reading.InBody(tyre, rim, then);
        }

        return true;
    }

    /// <summary>
    /// Where the wheel is, by a motion, at a travel and steer; false where it cannot be. On an axle that carries both wheels both rise
    /// alike.
    /// </summary>
    public bool Pose(CornerReader n, CornerMotion motion, double travel, double steer, out WheelPose pose) =>
        Pose(n, motion, new PosePlace(travel, steer, travel), out pose);

    /// <summary>The same at a place whose third way is the travel of the axle's other wheel, where one axle carries both.</summary>
    public bool Pose(CornerReader n, CornerMotion motion, in PosePlace place, out WheelPose pose)
    {
        var (travel, steer) = (place.Travel, place.Steer);
        if (motion is HardpointMotion linkage)
        {
            // A steer angle is where the rack stood when this wheel showed it, as the car was measured.
            double rack = 0;
            bool there = steer == 0 || (n.MotionNow is HardpointMotion now && now.RackFor(steer, out rack) == Reach.Reached);
            pose = default;
            bool reached = there && linkage.PoseAt(travel, rack, out pose) == Reach.Reached;
            pose = reached ? Loaded(pose, travel, steer) : pose;
            return reached;
        }

        bool usable = Upright(n, motion, place, out pose);
        pose = usable && steer != 0 ? pose.SteeredTo(Axis(n, pose), Steer(n, place)) : pose;
        pose = usable ? Loaded(pose, travel, steer) : pose;
        return usable;
    }

    /// <summary>Where a point of the knuckle is in B, m: it turns with the steering about the axis itself.</summary>
    /// <param name="n">The corner.</param>
    /// <param name="place">Where the wheel is.</param>
    /// <param name="inSpindle">The point in S with the wheel straight ahead at the reference state.</param>
    /// <param name="inBody">Its place.</param>
    /// <returns>False where the wheel cannot be.</returns>
    public bool OnKnuckle(CornerReader n, in PosePlace place, in Vec3 inSpindle, out Vec3 inBody)
    {
        var (motion, travel, steer) = (n.Motion, place.Travel, place.Steer);
        inBody = default;
        if (motion is HardpointMotion linkage)
        {
            double rack = 0;
            bool reached = (steer == 0 || (n.MotionNow is HardpointMotion now && now.RackFor(steer, out rack) == Reach.Reached))
                && linkage.PointAt(travel, rack, inSpindle, out inBody) == Reach.Reached;
            inBody += Moved(travel, steer);
            return reached;
        }

        if (!Upright(n, motion, place, out var pose))
        {
            return false;
        }

        inBody = SpindleFrame.Of(pose).ToBody(inSpindle);
        if (steer != 0)
        {
            var axis = Axis(n, pose);
            inBody = axis.Point + (inBody - axis.Point).RotatedAbout(axis.Direction, pose.TurnTo(axis, Steer(n, place)));
        }

        inBody += Moved(travel, steer);
        return true;
    }

    // Straight ahead, by a tape or on an axle.
    private bool Upright(CornerReader n, CornerMotion motion, in PosePlace place, out WheelPose pose)
    {
        double travel = place.Travel;
        Reach reach = motion is PairedMotion paired ? paired.WheelAt(travel, place.Third, out var wheel)
            : motion.WheelAt(travel, out wheel);
        if (_plan.Motion.Fore is { } fore)
        {
            double arm = _plan.Motion.ForeByMean ? 0.5 * (travel + place.Third) : travel;
            wheel = wheel with { ForwardShift = wheel.ForwardShift + fore.At(n.X, arm) };
        }

        pose = WheelPose.StraightAhead(default, _clearance.Side, wheel, travel);
        return reach.IsUsable();
    }

    // An unknown axis stands upright through the hub face: the wheel then turns on the spot.
    private SteeringLine Axis(CornerReader n, in WheelPose upright)
    {
        double kingpin = n.X.Or(_clearance.Kingpin, 0), caster = n.X.Or(_clearance.Caster, 0), offset = n.X.Or(_clearance.HubOffset, 0);
        return SteeringLine.AtHubHeight(upright, _clearance.Side, kingpin, caster, offset, n.X.Or(_clearance.TrailAtHub, 0));
    }

    // Of the road wheel, at this travel.
    private double Steer(CornerReader n, in PosePlace place) =>
        place.Steer * (1 - (n.X.Or(_clearance.SteerFade, 0) * place.Travel));

    /// <summary>The strut's line in S as it was measured.</summary>
    public StrutLine StrutAxis(CornerReader n)
    {
        var (c, x) = (_clearance, n.X);
        return StrutLine.FromGap(
            _plan.WheelNow!.Tyre(x, 0, 0), _plan.WheelNow!.Rim(x), c.StrutFrom, Mechanics.Clearance.GapDirection.Nearest,
            x[c.StrutGap], x[c.TubeNow] / 2, x[c.StrutLean], x[c.StrutReference]);
    }

    /// <summary>The wheel's frame at a place, by the motion of the build; false where it cannot be.</summary>
    public bool Frame(CornerReader n, in PosePlace place, out SpindleFrame frame)
    {
        bool there = Pose(n, n.Motion, place, out var pose);
        frame = there ? SpindleFrame.Of(pose) : default;
        return there;
    }

    /// <summary>A piece of the strut in S, at a travel.</summary>
    public CylinderObstacle Cylinder(CornerReader n, StrutPiece piece, double travel)
    {
        var (c, x) = (_clearance, n.X);
        var line = StrutAxis(n).AfterClamp(_plan.Motion.ClampTurn(x));
        double perch = x.Or(_plan.Station.Perch, 0);
        double body = x.Or(_plan.Station.Body, perch);
        double space = _plan.HasSpring ? n.SpringSpace(travel) : 0;
        double stack = _plan.HasSpring && double.IsFinite(space) ? Math.Min(space, SpringStack.FreeLength(n.Stack)) : 0;
        double force = c.HelperSlot >= 0 && _plan.HasSpring ? n.StackAt(travel).Force : 0;
        double helper = c.HelperSlot >= 0 && _plan.HasSpring ? n.Stack[c.HelperSlot].LengthAt(double.IsFinite(force) ? force : 0) : 0;
        var parts = new StrutParts(
            x[c.Tube], 0, Math.Max(body, 0), x[c.PerchDiameter], perch, x[c.PerchDepth], x[c.SpringDiameter], stack,
            x.Or(c.HelperDiameter, 0), helper, c.HelperBelow);
        return StrutFurniture.Piece(line, parts, piece);
    }
}
