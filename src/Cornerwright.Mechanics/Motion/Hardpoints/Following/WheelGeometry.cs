using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>
/// Everything a wheel's geometry says at one travel, rack and plate. Points in the body frame, m; a right wheel's lie at negative Y.
/// </summary>
/// <param name="Centre">Wheel centre.</param>
/// <param name="Spindle">Length 1, outboard.</param>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="Contact">Lowest point of the tyre as a rigid disc.</param>
/// <param name="ContactShift">From its place at the reference state.</param>
/// <param name="Steering">Steering axis.</param>
/// <param name="FreedAxis">Screw axis of the knuckle when the rack moves and the wheel's height is held; as a steering axis.</param>
/// <param name="Screw">Screw axis in travel.</param>
/// <param name="CamberByTravel">rad/m.</param>
/// <param name="ToeByTravel">Bump steer, rad/m.</param>
/// <param name="CamberByRack">rad/m of rack along +Y.</param>
/// <param name="SteerByRack">Toe by rack, rad/m: positive towards toe-in.</param>
/// <param name="CamberByPlate">rad/m along the plate's direction.</param>
/// <param name="ToeByPlate">rad/m.</param>
/// <param name="RollCentreHeight">Above the contact, m, by the path of the disc's lowest point, both wheels alike in mirror.</param>
/// <param name="RollCentreHeightFixed">The same by the path of the knuckle's point that is at the contact now.</param>
/// <param name="ContactByRiseAcross">Path slope of the contact, outboard per rise.</param>
/// <param name="ContactByRiseAhead">Path slope of the knuckle's point at the contact, forward per rise: brakes on the wheel.</param>
/// <param name="CentreByRiseAhead">Path slope of the wheel centre, forward per rise: drive from the body.</param>
/// <param name="Spring">
/// Length, motion ratio (positive when bump shortens) and its slope; null when there is none or it cannot reach.
/// </param>
/// <param name="Damper">Likewise.</param>
/// <param name="Bar">The anti-roll bar's end; null when there is none or its link cannot reach.</param>
/// <remarks>Every rate is exact. Source: docs/theory/hardpoints.md §4 to §7; signs in docs/frames.md.</remarks>
public readonly record struct WheelGeometry(
    Vec3 Centre, Vec3 Spindle, double Camber, double Toe, Vec3 Contact, Vec3 ContactShift, SteeringAxis Steering, SteeringAxis FreedAxis,
    ScrewAxis Screw, double CamberByTravel, double ToeByTravel, double CamberByRack, double SteerByRack, double CamberByPlate,
    double ToeByPlate, double RollCentreHeight, double RollCentreHeightFixed, double ContactByRiseAcross, double ContactByRiseAhead,
    double CentreByRiseAhead, StationState? Spring, StationState? Damper, BarState? Bar = null)
{
    /// <summary>Roll centre above the body frame's ground, m.</summary>
    public double RollCentreZ => Contact.Z + RollCentreHeight;

    /// <summary>Share of the pitching moment of braking that the linkage takes, 1 for all, brakes on the wheel.</summary>
    /// <param name="front">True for a front axle.</param>
    /// <param name="share">This axle's share of the braking force, 0 to 1.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="centreOfGravity">Height, m.</param>
    /// <remarks>Source: Milliken and Milliken, Race Car Vehicle Dynamics (1995), §17.5; docs/theory/hardpoints.md §7.</remarks>
    public double AntiBrake(bool front, double share, double wheelbase, double centreOfGravity) =>
        (front ? 1 : -1) * share * ContactByRiseAhead * wheelbase / centreOfGravity;

    /// <summary>Share of the pitching moment of driving that the linkage takes, 1 for all, all drive on this axle, from the body.</summary>
    /// <param name="front">True for a front axle.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="centreOfGravity">Height, m.</param>
    /// <remarks>Source: Milliken and Milliken, Race Car Vehicle Dynamics (1995), §17.5; docs/theory/hardpoints.md §7.</remarks>
    public double AntiDrive(bool front, double wheelbase, double centreOfGravity) =>
        (front ? 1 : -1) * CentreByRiseAhead * wheelbase / centreOfGravity;

    /// <summary>The wheel where a follower is now.</summary>
    /// <returns>False at a dead centre, where rates have no end; then <paramref name="wheel"/> is the default.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §4 to §7.</remarks>
    public static bool TryRead(KnuckleFollower follower, out WheelGeometry wheel)
    {
        wheel = default;
        if (!follower.Rates(out KnuckleRates rates))
        {
            return false;
        }

        KnuckleLinkage linkage = follower.Linkage;
        KnucklePose pose = follower.Pose;
        var turn = new KnuckleTurn(pose);
        Vec3 spindle = turn.Apply(linkage.Spindle), toCentre = turn.Apply(linkage.WheelCentre), centre = pose.Origin + toCentre;
        var disc = new DiscMotion(spindle, linkage.TyreRadius);
        Vec3 contact = centre + disc.ToContact, toContact = contact - pose.Origin;

        // Paths in travel.
        KnuckleTwist t = rates.ByTravel;
        Vec3 centreRate = t.Velocity(toCentre), heldRate = t.Velocity(toContact), lowestRate = centreRate + disc.ContactRate(t.Turn);
        double across = lowestRate.Y / lowestRate.Z;

        var (camberByTravel, toeByTravel) = disc.AngleRates(t.Turn);
        var (camberByRack, steerByRack) = disc.AngleRates(rates.ByRack.Turn);
        var (camberByPlate, toeByPlate) = disc.AngleRates(rates.ByPlate.Turn);

        // Stations.
        var moving = new MovingKnuckle(pose, t, rates.ByTravelTwice);
        Vec3 top = follower.TopShift;
        StationState? spring = StationOf(linkage.Spring, moving, top), damper = StationOf(linkage.Damper, moving, top);

        // Axes.
        Vec3 rackCentre = rates.ByRack.Velocity(toCentre);
        SteeringAxis freed = linkage.Steering.Kind == SteeringAxisKind.None
            ? default : AxisOf(ScrewAxis.Of(rates.ByRack.Turn, centre, rackCentre), contact, centre, spindle);
        SteeringAxis steering = linkage.Steering.Line(pose, top, out Vec3 point, out Vec3 direction)
            ? SteeringAxis.Of(point, direction, 0, contact, centre, spindle)
            : linkage.Steering.Kind == SteeringAxisKind.Screw
            ? SpringHeld(follower, rates, spring, centre, toCentre, contact, spindle) : default;
        ScrewAxis screw = ScrewAxis.Of(t.Turn, centre, centreRate);

        wheel = new(
            linkage.Inward(centre), linkage.Inward(spindle), disc.Camber, disc.Toe, linkage.Inward(contact),
            linkage.Inward(contact - linkage.Contact), Outward(steering, linkage), Outward(freed, linkage),
            screw with { Point = linkage.Inward(screw.Point), Direction = linkage.Inward(screw.Direction) }, camberByTravel, toeByTravel,
            camberByRack, steerByRack, camberByPlate, toeByPlate, contact.Y * across, contact.Y * heldRate.Y / heldRate.Z, across,
            heldRate.X / heldRate.Z, centreRate.X / centreRate.Z, spring, damper, linkage.Bar?.Bar(moving));
        return true;
    }

    internal static StationState? StationOf(StationPath? path, in MovingKnuckle moving, in Vec3 top) =>
        path is not null && path.Length(moving, top, out Jet length) ? new(length.V, -length.D, -length.DD) : null;

    /// <summary>The rack moves and the wheel gives in height so that the spring keeps its length.</summary>
    private static SteeringAxis SpringHeld(
        KnuckleFollower follower, in KnuckleRates rates, StationState? spring, in Vec3 centre, in Vec3 toCentre, in Vec3 contact,
        in Vec3 spindle)
    {
        KnuckleTwist held = rates.ByRack;
        if (spring is { } s && Math.Abs(s.MotionRatio) > 1e-6
            && follower.Linkage.Spring!.Length(new MovingKnuckle(follower.Pose, held, default), follower.TopShift, out Jet byRack))
        {
            held += rates.ByTravel * (byRack.D / s.MotionRatio);
        }

        return AxisOf(ScrewAxis.Of(held.Turn, centre, held.Velocity(toCentre)), contact, centre, spindle);
    }

    private static SteeringAxis AxisOf(in ScrewAxis screw, in Vec3 contact, in Vec3 centre, in Vec3 spindle) =>
        screw.Exists ? SteeringAxis.Of(screw.Point, screw.Direction, screw.Pitch, contact, centre, spindle) : default;

    private static SteeringAxis Outward(in SteeringAxis axis, KnuckleLinkage linkage) =>
        linkage.Side > 0 ? axis : axis with { Point = linkage.Inward(axis.Point), Direction = linkage.Inward(axis.Direction) };
}

/// <summary>The tyre's disc about a spindle: angles, contact, and how both go with a turn of the knuckle.</summary>
/// <remarks>Source: docs/theory/hardpoints.md §4.</remarks>
internal readonly struct DiscMotion
{
    private readonly Vec3 spindle;
    private readonly double radius;
    private readonly double level;       // of the spindle's part in the ground plane; 1 for an upright wheel

    public DiscMotion(in Vec3 spindle, double radius)
    {
        (this.spindle, this.radius) = (spindle, radius);
        level = Math.Sqrt((spindle.X * spindle.X) + (spindle.Y * spindle.Y));
        double k = radius / level;
        ToContact = new(k * spindle.Z * spindle.X, k * spindle.Z * spindle.Y, -radius * level);
    }

    /// <summary>From the wheel centre to the lowest point, m.</summary>
    public Vec3 ToContact { get; }

    public double Camber => Math.Atan2(-spindle.Z, level);

    public double Toe => Math.Atan2(spindle.X, spindle.Y);

    /// <summary>rad per unit, for a turn in rad per unit.</summary>
    public (double Camber, double Toe) AngleRates(in Vec3 turn)
    {
        Vec3 rate = turn.Cross(spindle);
        return (-rate.Z / level, ((rate.X * spindle.Y) - (spindle.X * rate.Y)) / (level * level));
    }

    /// <summary>Of the vector from the wheel centre to the lowest point, m per unit.</summary>
    public Vec3 ContactRate(in Vec3 turn)
    {
        Vec3 rate = turn.Cross(spindle);
        double levelRate = -spindle.Z * rate.Z / level, k = radius / level, kRate = -k * levelRate / level;
        return new(
            (k * ((rate.Z * spindle.X) + (spindle.Z * rate.X))) + (kRate * spindle.Z * spindle.X),
            (k * ((rate.Z * spindle.Y) + (spindle.Z * rate.Y))) + (kRate * spindle.Z * spindle.Y),
            -radius * levelRate);
    }
}
