using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>One arm of a twist beam, at the reference state, in the body frame.</summary>
/// <param name="Wheel">What the arm carries.</param>
/// <param name="Bush">Centre of the bushing between arm and body, m.</param>
/// <param name="ShearCentre">
/// Point of the cross member's shear centre on the car's centre plane, m: an open section twists about a line beside the section itself.
/// </param>
public sealed record TwistBeamPoints(AxleSide Wheel, Vec3 Bush, Vec3 ShearCentre)
{
    /// <summary>The same on the other side of the car. Source: reflection in the plane Y = 0.</summary>
    public TwistBeamPoints Mirrored() => new(Wheel.Mirrored(), Bush.Mirrored(), ShearCentre.Mirrored());
}

/// <summary>One wheel of a twist beam at one pose, in the body frame.</summary>
/// <param name="Why">The rest holds numbers only if this is Reached.</param>
/// <param name="HeaveTurn">rad, of the whole beam about the bushings' Y, positive lowers the wheels.</param>
/// <param name="RollTurn">rad, of the arm about the line from bushing to shear centre, positive lowers this wheel.</param>
/// <param name="Centre">Wheel centre, m.</param>
/// <param name="Spindle">Length 1, to the street side.</param>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="Contact">Lowest point of the tyre's disc, m.</param>
/// <param name="ContactShiftY">Along +Y (left), m, of the contact from its place at the reference state.</param>
/// <param name="CamberGain">d(camber), rad/m.</param>
/// <param name="ToeGain">d(toe), rad/m.</param>
/// <param name="RollCentreHeight">m above the contact, on the centre plane, from the path of the disc's lowest point.</param>
/// <param name="RollCentreHeightLocked">The same from the arm's point that is the contact now.</param>
/// <param name="ContactRecession">dx/dz of the arm's point that is the contact now, forward positive.</param>
/// <param name="CentreRecession">dx/dz of the wheel centre's path, forward positive.</param>
/// <param name="Spring">Null when none was given.</param>
/// <param name="Damper">Null when none was given.</param>
public sealed record TwistBeamState(
    Reach Why, double HeaveTurn, double RollTurn, Vec3 Centre, Vec3 Spindle, double Camber, double Toe, Vec3 Contact, double ContactShiftY,
    AxleRates CamberGain, AxleRates ToeGain, AxleRates RollCentreHeight, AxleRates RollCentreHeightLocked,
    AxleRates ContactRecession, AxleRates CentreRecession, AxleStationState? Spring, AxleStationState? Damper)
{
    internal static TwistBeamState Unreached(Reach why) => new(
        why, 0, 0, default, default, 0, 0, default, 0, default, default, default, default, default, default, null, null);
}

/// <summary>A twist beam, one side: in heave all of it turns about the bushings, in roll each arm about bushing and shear centre.</summary>
/// <remarks>
/// Closed form: the turn that brings the wheel centre to a height solves A cos θ + S sin θ = C. With both movements at once the line of the
/// second turn is carried by the first. Source: docs/theory/rigid-axles.md §6.
/// </remarks>
public sealed class TwistBeam
{
    private readonly TwistBeamPoints points;
    private readonly int side;
    private readonly Vec3 spindle;
    private readonly double contactY;

    /// <exception cref="ArgumentException">
    /// A number is not finite, or the bushing is not on the wheel's side of the shear centre: where the points come from a user,
    /// <see cref="Create"/> says so instead.
    /// </exception>
    public TwistBeam(TwistBeamPoints points)
    {
        this.points = points;
        points.Wheel.Check();
        Require.Finite(points.Bush.LengthSquared + points.ShearCentre.LengthSquared);
        side = SideOf(points);
        if (FlawOf(points) is { } flaw)
        {
            throw new ArgumentException(flaw.ToString(), nameof(points));
        }

        spindle = TyreDisc.Spindle(points.Wheel.Camber, points.Wheel.Toe, side);
        contactY = TyreDisc.Contact(points.Wheel.WheelCentre, spindle, points.Wheel.TyreRadius).Y;
    }

    /// <summary>The beam of points that a user measured.</summary>
    /// <param name="points">Finite.</param>
    /// <param name="flaw">Null, or why they make no beam.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <exception cref="ArgumentException">A number is not finite: our own bug.</exception>
    /// <remarks>Source: docs/theory/rigid-axles.md §6.</remarks>
    public static TwistBeam? Create(TwistBeamPoints points, out LinkageFlaw? flaw)
    {
        ArgumentNullException.ThrowIfNull(points);
        flaw = FlawOf(points);
        return flaw is null ? new(points) : null;
    }

    private static int SideOf(TwistBeamPoints points) => points.Wheel.WheelCentre.Y >= points.ShearCentre.Y ? 1 : -1;

    // NaN is no flaw of the points but ours: it goes on to where it is refused.
    private static LinkageFlaw? FlawOf(TwistBeamPoints points) =>
        SideOf(points) * (points.Bush.Y - points.ShearCentre.Y) <= 0 ? new(LinkageFault.BushingInboard, ["the bushing"]) : null;

    /// <summary>The points this beam was made from. Source: as given.</summary>
    public TwistBeamPoints Points => points;

    /// <summary>1 on the left, -1 on the right. Source: the side of the shear centre the wheel is on.</summary>
    public int Side => side;

    /// <summary>The wheel where the axle heaves and rolls. Source: docs/theory/rigid-axles.md §6.</summary>
    /// <param name="heave">Mean travel of both wheels, m, bump positive.</param>
    /// <param name="roll">What this wheel travels more than the mean, m; the other wheel of a symmetric beam travels as much less.</param>
    /// <returns>Why is NotFinite, or LinkageCannotClose where the arm cannot reach so far.</returns>
    public TwistBeamState At(double heave, double roll)
    {
        if (!double.IsFinite(heave) || !double.IsFinite(roll))
        {
            return TwistBeamState.Unreached(Reach.NotFinite);
        }

        Jet h = new(heave, 0, 0), r = new(roll, 0, 0);
        return Turned(h with { D = 1 }, r, out Arm up) && Turned(h, r with { D = 1 }, out Arm over)
            && Turned(h with { D = 0.5 }, r with { D = 0.5 }, out Arm alone)
            ? State(up, over, alone)
            : TwistBeamState.Unreached(Reach.LinkageCannotClose);
    }

    /// <summary>The arm after both turns, moving with one parameter.</summary>
    private readonly record struct Arm(JetPoint3 Bush, JetTurn Heave, JetPoint3 RollAxis, JetTurn Roll, JetPoint3 HeaveAxis)
    {
        public JetPoint3 Turned(in Vec3 v) => JetPoint3.Fixed(v).TurnedAbout(HeaveAxis, Heave).TurnedAbout(RollAxis, Roll);

        public JetPoint3 Point(in Vec3 p) => Bush + Turned(p - Bush.V);

        public JetPoint3 Locked(in Vec3 now)
        {
            Vec3 arm = now - Bush.V;
            return Point(Bush.V + new Vec3(Turned(Vec3.UnitX).V.Dot(arm), Turned(Vec3.UnitY).V.Dot(arm), Turned(Vec3.UnitZ).V.Dot(arm)));
        }
    }

    private bool Turned(in Jet heave, in Jet roll, out Arm arm)
    {
        arm = default;
        Vec3 wheel = points.Wheel.WheelCentre - points.Bush, shear = points.ShearCentre - points.Bush;

        // All of the beam about Y; both axes point to the right, so that a turn has one sign on either side of the car.
        JetPoint3 heaveAxis = JetPoint3.Fixed(-Vec3.UnitY), d = JetPoint3.Fixed(wheel);
        if (!TurnToHeight(d, heaveAxis, heave + wheel.Z, out JetTurn first))
        {
            return false;
        }

        // Then this arm about the line that the first turn carried along.
        JetPoint3 rollAxis = JetPoint3.Fixed(side * shear.Unit()).TurnedAbout(heaveAxis, first);
        if (!TurnToHeight(d.TurnedAbout(heaveAxis, first), rollAxis, heave + roll + wheel.Z, out JetTurn second))
        {
            return false;
        }

        arm = new(JetPoint3.Fixed(points.Bush), first, rollAxis, second, heaveAxis);
        return true;
    }

    /// <summary>The turn about an axis through the origin that lifts a point to a height, on the branch of no turn.</summary>
    private static bool TurnToHeight(in JetPoint3 point, in JetPoint3 axis, in Jet height, out JetTurn turn)
    {
        // Rodrigues, third row: A cos θ + S sin θ = C.
        Jet along = axis.Z * axis.Dot(point), a = point.Z - along, s = axis.Cross(point).Z, c = height - along;
        return TurnEquation.Solve(a, s, c, Math.Sign(s.V), out turn);
    }

    private TwistBeamState State(in Arm up, in Arm over, in Arm alone)
    {
        JetPoint3 wheel = up.Point(points.Wheel.WheelCentre);
        Vec3 axis = up.Turned(spindle).V, contact = TyreDisc.Contact(wheel.V, axis, points.Wheel.TyreRadius);
        var (h, r, o) = (Path(up, contact), Path(over, contact), Path(alone, contact));
        return new(
            Reach.Reached, up.Heave.Angle, up.Roll.Angle, wheel.V, axis, Math.Asin(-axis.Z), Math.Atan2(axis.X, side * axis.Y),
            contact, contact.Y - contactY, new(h.Camber, r.Camber, o.Camber), new(h.Toe, r.Toe, o.Toe),
            new(h.Rc, r.Rc, o.Rc), new(h.RcLocked, r.RcLocked, o.RcLocked),
            new(h.ContactRecession, r.ContactRecession, o.ContactRecession), new(h.CentreRecession, r.CentreRecession, o.CentreRecession),
            Station(points.Wheel.Spring, up, over, alone), Station(points.Wheel.Damper, up, over, alone));
    }

    private (double Camber, double Toe, double Rc, double RcLocked, double ContactRecession, double CentreRecession) Path(
        in Arm arm, in Vec3 now)
    {
        JetPoint3 axis = arm.Turned(spindle), wheel = arm.Point(points.Wheel.WheelCentre), locked = arm.Locked(now);
        JetPoint3 contact = TyreDisc.Contact(wheel, axis, points.Wheel.TyreRadius);
        return (
            JetAngle.OfSine(axis.Z * -1).D, JetAngle.Of(axis.X, axis.Y * side).D, now.Y * contact.Y.D / contact.Z.D,
            now.Y * locked.Y.D / locked.Z.D, locked.X.D / locked.Z.D, wheel.X.D / wheel.Z.D);
    }

    private static AxleStationState? Station(StationPoints? ends, in Arm up, in Arm over, in Arm alone)
    {
        if (ends is not { } given)
        {
            return null;
        }

        JetPoint3 top = JetPoint3.Fixed(given.OnBody);
        Jet heave = (up.Point(given.OnMoving) - top).Length(), roll = (over.Point(given.OnMoving) - top).Length();
        Jet one = (alone.Point(given.OnMoving) - top).Length();
        return new(heave.V, new(-heave.D, -roll.D, -one.D), new(-heave.DD, -roll.DD, -one.DD));
    }
}
