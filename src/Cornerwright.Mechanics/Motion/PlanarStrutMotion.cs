using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion;

/// <summary>Measured points of a strut in the front view at the reference state, m, outboard and up from the hub-face centre.</summary>
/// <param name="ArmInner">The lower arm's inner pivot, on the body.</param>
/// <param name="BallJoint">The lower arm's outer joint, on the knuckle.</param>
/// <param name="StrutTop">Where the strut's axis meets the body mount, on the body; the plate stands at zero.</param>
/// <param name="LowerReference">
/// A point on the tube's axis that belongs to the knuckle (clamp-bolt height); it need not lie on the ball joint.
/// </param>
public readonly record struct PlanarStrutPoints(
    PlanarPoint ArmInner, PlanarPoint BallJoint, PlanarPoint StrutTop, PlanarPoint LowerReference);

/// <summary>A strut in the front view: the tube is fixed to the knuckle, its axis always points at the strut top.</summary>
/// <remarks>
/// The lower arm turns by an angle; the axis keeps its distance e from the ball joint, so the angle between axis and the line from
/// ball joint to strut top has sine e/ρ. Planar: fore-aft lean of the strut is left out (docs/theory/motion.md §3 gives its size).
/// Moving the plate tilts knuckle, wheel and strut together. Derivatives are exact. Source: docs/theory/motion.md §3.
/// </remarks>
public sealed class PlanarStrutMotion : PlanarLinkage
{
    private readonly PlanarPoint armInner;
    private readonly PlanarPoint arm;               // p from inner pivot to ball joint at the reference state
    private readonly PlanarPoint strutTop;
    private readonly PlanarPoint ballToHub;
    private readonly PlanarPoint axis;              // unit, up along the tube at the reference state
    private readonly double axisOffset;             // e: ball joint to axis, signed, m
    private readonly double referenceAlong;         // lower reference along the axis from the ball joint's foot, m
    private readonly double lengthCorrection;       // measured D0 minus the points' own distance, m

    /// <param name="points">Measured points, finite; strut top and lower reference apart, arm longer than zero.</param>
    /// <param name="camber">At the reference state with the plate at zero, rad.</param>
    /// <param name="toe">At the reference state, rad.</param>
    /// <param name="toeGain">rad/m of travel; a front view cannot know it.</param>
    /// <param name="plateOutboard">How far the strut top is moved outboard on its plate, m.</param>
    /// <param name="plateUp">How far the strut top is moved up, m.</param>
    /// <param name="lengthAtReference">Measured D at z = 0 with the plate at zero, m; null takes it from the points.</param>
    /// <remarks>Source: docs/theory/motion.md §3.</remarks>
    public PlanarStrutMotion(
        in PlanarStrutPoints points,
        double camber,
        double toe = 0,
        double toeGain = 0,
        double plateOutboard = 0,
        double plateUp = 0,
        double? lengthAtReference = null)
        : base(camber, toe, toeGain)
    {
        armInner = points.ArmInner;
        arm = points.BallJoint - points.ArmInner;
        strutTop = points.StrutTop + new PlanarPoint(plateOutboard, plateUp);
        ballToHub = points.BallJoint * -1;
        PlanarPoint tube = points.StrutTop - points.LowerReference;
        axis = tube * (1 / tube.Length);
        axisOffset = axis.Cross(points.StrutTop - points.BallJoint);
        referenceAlong = axis.Dot(points.LowerReference - points.BallJoint);
        lengthCorrection = (lengthAtReference ?? tube.Length) - tube.Length;
    }

    private protected override bool PoseAt(double armTurn, out Pose pose)
    {
        JetTurn turn = JetTurn.ByParameter(armTurn);
        JetPoint ball = turn.Apply(arm) + armInner;
        JetPoint toTop = JetPoint.Fixed(strutTop) - ball;
        Jet square = toTop.LengthSquared();
        Jet along = square + (-axisOffset * axisOffset);
        if (!(along.V > 1e-8))
        {
            pose = default;
            return false;
        }

        // toTop = (q + i e) u in the complex plane, hence u = toTop (q - i e) / ρ².
        Jet q = along.Sqrt();
        Jet inverse = square.Inverse();
        JetPoint u = new(
            ((toTop.Outboard * q) + (toTop.Up * axisOffset)) * inverse,
            ((toTop.Up * q) - (toTop.Outboard * axisOffset)) * inverse);
        JetTurn knuckle = JetTurn.Between(axis, u, 1);
        JetPoint hub = ball + knuckle.Apply(ballToHub);
        pose = new(turn, ball, default, knuckle, hub, q + (lengthCorrection - referenceAlong), q);
        return pose.Length.V > 0;
    }

    private protected override bool LengthAt(in Pose pose, Station station, out Jet length)
    {
        length = pose.Length;
        return true;
    }
}
