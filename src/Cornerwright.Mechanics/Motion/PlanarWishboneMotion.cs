using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion;

/// <summary>
/// Measured points of two wishbones in the front view at the reference state, m, outboard and up from the hub-face centre.
/// </summary>
public readonly record struct PlanarWishbonePoints(
    PlanarPoint UpperInner, PlanarPoint UpperOuter, PlanarPoint LowerInner, PlanarPoint LowerOuter);

/// <summary>The moving part that carries a station's lower end.</summary>
public enum PickupPart
{
    LowerArm = 0,
    UpperArm = 1,
    Knuckle = 2,
}

/// <summary>The two ends of a spring or damper at the reference state, m, outboard and up from the hub-face centre.</summary>
/// <param name="Body">The end on the body.</param>
/// <param name="Moving">The other end.</param>
/// <param name="Part">What carries the other end.</param>
/// <param name="LengthAtReference">Measured D at z = 0, m; null takes it from the points.</param>
public readonly record struct PlanarPickup(
    PlanarPoint Body, PlanarPoint Moving, PickupPart Part, double? LengthAtReference = null);

/// <summary>Two wishbones in the front view: a four-bar linkage whose coupler is the knuckle.</summary>
/// <remarks>The upper ball joint is where two circles meet, on the side it had at the reference state; derivatives are exact.
/// Source: docs/theory/motion.md §4 (four-bar closure, e.g. Norton, Design of Machinery, ch. 4).</remarks>
public sealed class PlanarWishboneMotion : PlanarLinkage
{
    private readonly PlanarWishbonePoints points;
    private readonly PlanarPickup? spring;
    private readonly PlanarPickup? damper;
    private readonly PlanarPoint lowerArm;
    private readonly PlanarPoint upperArm;
    private readonly PlanarPoint coupler;
    private readonly double branch;

    /// <param name="points">Measured points, finite, no link of zero length.</param>
    /// <param name="camber">At the reference state, rad.</param>
    /// <param name="spring">Null when the spring is known in another way.</param>
    /// <param name="damper">Null when the damper is known in another way.</param>
    /// <param name="toe">At the reference state, rad.</param>
    /// <param name="toeGain">rad/m of travel; a front view cannot know it.</param>
    /// <remarks>Source: docs/theory/motion.md §4.</remarks>
    public PlanarWishboneMotion(
        in PlanarWishbonePoints points,
        double camber,
        PlanarPickup? spring,
        PlanarPickup? damper,
        double toe = 0,
        double toeGain = 0)
        : base(camber, toe, toeGain)
    {
        this.points = points;
        this.spring = spring;
        this.damper = damper;
        lowerArm = points.LowerOuter - points.LowerInner;
        upperArm = points.UpperOuter - points.UpperInner;
        coupler = points.UpperOuter - points.LowerOuter;
        branch = (points.UpperInner - points.LowerOuter).Cross(coupler) >= 0 ? 1 : -1;
    }

    private protected override bool PoseAt(double armTurn, out Pose pose)
    {
        pose = default;
        JetTurn turn = JetTurn.ByParameter(armTurn);
        JetPoint lower = turn.Apply(lowerArm) + points.LowerInner;

        // The upper ball joint: circle of the coupler round the lower one, circle of the upper arm round its pivot.
        JetPoint toPivot = JetPoint.Fixed(points.UpperInner) - lower;
        Jet square = toPivot.LengthSquared();
        if (!(square.V > 1e-10))
        {
            return false;
        }

        Jet inverse = square.Inverse();
        Jet along = ((square + (coupler.LengthSquared - upperArm.LengthSquared)) * inverse) * 0.5;
        Jet aside = (inverse * coupler.LengthSquared) - (along * along);
        if (!(aside.V > 1e-10))
        {
            return false;
        }

        Jet closure = aside.Sqrt();
        JetPoint upper = lower + (toPivot * along) + (toPivot.QuarterTurn() * (closure * branch));
        JetTurn knuckle = JetTurn.Between(coupler, upper - lower, coupler.LengthSquared);
        JetPoint hub = lower + knuckle.Apply(points.LowerOuter * -1);
        pose = new(turn, lower, upper, knuckle, hub, default, closure);
        return true;
    }

    private protected override bool LengthAt(in Pose pose, Station station, out Jet length)
    {
        length = default;
        if ((station == Station.Spring ? spring : damper) is not { } pickup)
        {
            return false;
        }

        JetPoint moving = pickup.Part switch
        {
            PickupPart.LowerArm => pose.Arm.Apply(pickup.Moving - points.LowerInner) + points.LowerInner,
            PickupPart.UpperArm => UpperTurn(pose).Apply(pickup.Moving - points.UpperInner) + points.UpperInner,
            _ => pose.LowerBall + pose.Knuckle.Apply(pickup.Moving - points.LowerOuter),
        };
        Jet square = (JetPoint.Fixed(pickup.Body) - moving).LengthSquared();
        if (!(square.V > 1e-10))
        {
            return false;
        }

        double correction = pickup.LengthAtReference is { } measured ? measured - (pickup.Body - pickup.Moving).Length : 0;
        length = square.Sqrt() + correction;
        return true;
    }

    private JetTurn UpperTurn(in Pose pose) =>
        JetTurn.Between(upperArm, pose.UpperBall - JetPoint.Fixed(points.UpperInner), upperArm.LengthSquared);
}
