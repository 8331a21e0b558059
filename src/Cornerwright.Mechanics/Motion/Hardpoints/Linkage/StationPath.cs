using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>A spring's or damper's two ends as the knuckle moves.</summary>
/// <remarks>Source: docs/theory/hardpoints.md §5.</remarks>
internal abstract class StationPath
{
    /// <summary>Length with both derivatives by the knuckle's parameter, m.</summary>
    /// <param name="knuckle">Its pose and motion.</param>
    /// <param name="top">How far the plate has carried the strut's top, m, and nothing by the parameter.</param>
    /// <param name="length">Usable only if true is returned.</param>
    public abstract bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length);

    /// <exception cref="ArgumentOutOfRangeException">A number of it is not finite.</exception>
    public static StationPath? For(KnuckleLinkage linkage, LinkageStation? station)
    {
        Require.Finite(station is LinkageStation.OnRod rod ? rod.Share : station is LinkageStation.OnStrut strut ? strut.Along : 0);
        return Made(linkage, station);
    }

    private static StationPath? Made(KnuckleLinkage linkage, LinkageStation? station) => station switch
    {
        null => null,
        LinkageStation.OnKnuckle s => new KnucklePath(linkage.Joint(s.Body), linkage.OnKnuckle(s.Knuckle)),
        LinkageStation.OnRod s => new RodPath(linkage.Joint(s.Body), linkage.Joint(s.RodBody), linkage.OnKnuckle(s.RodKnuckle), s.Share),
        LinkageStation.OnStrut s => new StrutPath(linkage.Joint(s.Top), linkage.OnKnuckle(s.Low), s.Along),
        LinkageStation.OnArm s => new ArmPath(linkage.Joint(s.Body), ArmPoint.Of(linkage, s.Moving, s.First, s.Second, s.Ball)),
        LinkageStation.OnRocker s => new RockerPath(linkage, s),
        _ => throw new ArgumentOutOfRangeException(nameof(station), station, "A known kind of station."),
    };

    private static bool Between(in Vec3 body, in JetPoint3 moving, out Jet length)
    {
        Jet square = (moving - JetPoint3.Fixed(body)).LengthSquared();
        bool apart = square.V > 1e-10;
        length = apart ? square.Sqrt() : default;
        return apart;
    }

    private sealed class KnucklePath(Vec3 body, Vec3 onKnuckle) : StationPath
    {
        public override bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length) =>
            Between(body, knuckle.Point(onKnuckle), out length);
    }

    private sealed class RodPath(Vec3 body, Vec3 inner, Vec3 onKnuckle, double share) : StationPath
    {
        public override bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length) =>
            Between(body, (knuckle.Point(onKnuckle) * share) + JetPoint3.Fixed(inner * (1 - share)), out length);
    }

    private sealed class StrutPath(Vec3 top0, Vec3 low, double along) : StationPath
    {
        public override bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length)
        {
            bool apart = Between(top0 + top, knuckle.Point(low), out length);
            length += -along;
            return apart;
        }
    }

    private sealed class ArmPath(Vec3 body, ArmPoint point) : StationPath
    {
        public override bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length) => Between(body, point.At(knuckle), out length);
    }

    /// <summary>A pushrod from the arm turns a rocker about its pivot; the station's foot rides on the rocker.</summary>
    internal sealed class RockerPath : StationPath
    {
        private readonly ArmPoint? onArm;
        private readonly Vec3 onKnuckle;
        private readonly Vec3 body, pivot, axis, rodAlong, rodAcross, rodTurned, foot;
        private readonly double lengths;      // half of |r|² - |rod|²
        private readonly int branch;

        public RockerPath(KnuckleLinkage linkage, LinkageStation.OnRocker s)
        {
            onArm = s.First == LinkageStation.OnRocker.FromKnuckle ? null : ArmPoint.Of(linkage, s.RodOnArm, s.First, s.Second, s.Ball);
            onKnuckle = linkage.OnKnuckle(s.RodOnArm);
            body = linkage.Joint(s.Body);
            pivot = linkage.Joint(s.Pivot);
            axis = linkage.Inward(s.Axis).Unit();
            Vec3 r = linkage.Joint(s.RodOnRocker) - pivot, rod = linkage.Joint(s.RodOnArm) - linkage.Joint(s.RodOnRocker);
            rodAlong = axis * axis.Dot(r);
            rodAcross = r - rodAlong;
            rodTurned = axis.Cross(r);
            lengths = 0.5 * (r.LengthSquared - rod.LengthSquared);
            branch = Math.Sign((linkage.Joint(s.RodOnArm) - pivot).Dot(rodTurned));
            foot = linkage.Joint(s.Moving) - pivot;
        }

        public override bool Length(in MovingKnuckle knuckle, in Vec3 top, out Jet length)
        {
            length = default;
            return Turn(knuckle, out JetTurn turn) && Between(body - pivot, FromPivot(foot, turn), out length);
        }

        /// <summary>Where a point that rides on the rocker is now; null when the pushrod cannot reach.</summary>
        public Vec3? Now(in MovingKnuckle knuckle, in Vec3 atRest) =>
            Turn(knuckle, out JetTurn turn) ? pivot + FromPivot(atRest - pivot, turn).V : null;

        /// <summary>A bar's end: how far it has turned, and how fast it goes along its link.</summary>
        public BarState? Bar(in MovingKnuckle knuckle)
        {
            if (!Turn(knuckle, out JetTurn turn))
            {
                return null;
            }

            // The rocker's foot is the link's joint on the bar here.
            JetPoint3 end = JetPoint3.Fixed(pivot) + FromPivot(foot, turn);
            Vec3 along = (RodEnd(knuckle).V - end.V).Unit(), velocity = new(end.X.D, end.Y.D, end.Z.D);
            return new(
                Math.Atan2(turn.Sin.V, turn.Cos.V), (turn.Cos.V * turn.Sin.D) - (turn.Sin.V * turn.Cos.D), Math.Abs(velocity.Dot(along)));
        }

        /// <summary>Where the pushrod's or link's joint on the arm or knuckle is now.</summary>
        public Vec3 Foot(in MovingKnuckle knuckle) => RodEnd(knuckle).V;

        private JetPoint3 RodEnd(in MovingKnuckle knuckle) => onArm is { } arm ? arm.At(knuckle) : knuckle.Point(onKnuckle);

        private bool Turn(in MovingKnuckle knuckle, out JetTurn turn)
        {
            // |d - R(θ) r|² = |rod|², with R(θ) r = rodAlong + rodAcross cos θ + rodTurned sin θ.
            JetPoint3 d = RodEnd(knuckle) - JetPoint3.Fixed(pivot);
            Jet c = (d.LengthSquared() * 0.5) + (d.Dot(rodAlong) * -1) + lengths;
            return TurnEquation.Solve(d.Dot(rodAcross), d.Dot(rodTurned), c, branch, out turn);
        }

        private JetPoint3 FromPivot(in Vec3 atRest, in JetTurn turn) => JetPoint3.Fixed(atRest).TurnedAbout(JetPoint3.Fixed(axis), turn);
    }
}

/// <summary>
/// A point of an arm that turns about two bushings and carries a ball joint of the knuckle: linear in the ball joint's place.
/// </summary>
/// <remarks>Source: docs/theory/hardpoints.md §5.</remarks>
internal readonly record struct ArmPoint(Vec3 Foot, Vec3 First, Vec3 Along, double Out, double Aside, Vec3 Ball)
{
    public static ArmPoint Of(KnuckleLinkage linkage, int moving, int first, int second, int ball)
    {
        Vec3 a = linkage.Joint(first), along = linkage.Joint(second) - a;
        along = along.Unit();
        Vec3 toBall = linkage.Joint(ball) - a, outward = toBall - (along * along.Dot(toBall)), p = linkage.Joint(moving) - a;
        double square = outward.LengthSquared;
        return new(
            a + (along * along.Dot(p)), a, along, outward.Dot(p) / square, along.Cross(outward).Dot(p) / square, linkage.OnKnuckle(ball));
    }

    public JetPoint3 At(in MovingKnuckle knuckle)
    {
        JetPoint3 toBall = knuckle.Point(Ball) - JetPoint3.Fixed(First);
        Jet s = toBall.Dot(Along);
        Vec3 k = Along;
        JetPoint3 outward = toBall - new JetPoint3(s * k.X, s * k.Y, s * k.Z);
        JetPoint3 aside = new(
            (toBall.Z * k.Y) - (toBall.Y * k.Z), (toBall.X * k.Z) - (toBall.Z * k.X), (toBall.Y * k.X) - (toBall.X * k.Y));
        return JetPoint3.Fixed(Foot) + (outward * Out) + (aside * Aside);
    }
}
