using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

/// <summary>What can be read on a corner, with its derivatives by one parameter.</summary>
internal readonly record struct TraceJets(Jet Camber, Jet Toe, Jet Outboard, JetPoint3 Contact, Jet Spring, Jet Damper);

/// <summary>A corner at one pose as its readings see it.</summary>
/// <param name="Why">The rest holds numbers only if this is Reached.</param>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="Outboard">m, shift of the wheel centre from the reference state.</param>
/// <param name="Contact">Lowest point of the tyre's disc, body frame, m.</param>
/// <param name="Spring">Default when there is none.</param>
/// <param name="Damper">Default when there is none.</param>
public readonly record struct TraceState(
    Reach Why, double Camber, double Toe, double Outboard, Vec3 Contact, StationState Spring, StationState Damper);

/// <summary>The path of a corner's wheel from its joints, in arithmetic that lets every joint move.</summary>
/// <remarks>
/// Slower than a dedicated solver and independent of it: made for the questions which joint matters and which joints fit the readings.
/// Source: docs/theory/fit.md §1.
/// </remarks>
public static class LinkageTrace
{
    private const double FurthestMove = 40;          // m or rad per m of travel or rack; short steering arms near lock turn 15 rad/m

    /// <summary>The corner at one pose. Source: docs/theory/fit.md §1.</summary>
    /// <param name="linkage">Ties that do not take five freedoms together are a fault of the caller.</param>
    /// <param name="travel">Of the wheel centre, m, bump positive.</param>
    /// <param name="rack">Along +Y, m.</param>
    /// <param name="plate">Along the plate's direction, m.</param>
    public static TraceState At(CornerLinkage linkage, double travel, double rack = 0, double plate = 0)
    {
        Reach why = Pose(linkage, travel, rack, plate, out PoseNumbers<double> q);
        if (why != Reach.Reached)
        {
            return new(why, 0, 0, 0, default, default, default);
        }

        Jet up = new(travel, 1, 0);
        if (!Along(linkage, LinkageSystem.Still(linkage), q, up, new(rack, 0, 0), new(plate, 0, 0), default, default, out TraceJets s))
        {
            return new(Reach.LinkageCannotClose, 0, 0, 0, default, default, default);
        }

        static StationState Read(in Jet length) => new(length.V, -length.D, -length.DD);
        return new(why, s.Camber.V, s.Toe.V, s.Outboard.V, s.Contact.V, Read(s.Spring), Read(s.Damper));
    }

    /// <summary>The knuckle's six numbers, followed from the reference state.</summary>
    internal static Reach Pose(CornerLinkage linkage, double travel, double rack, double plate, out PoseNumbers<double> q)
    {
        q = default;
        if (!double.IsFinite(travel) || !double.IsFinite(rack) || !double.IsFinite(plate))
        {
            return Reach.NotFinite;
        }

        (q[PoseNumber.X], q[PoseNumber.Y], q[PoseNumber.Z]) = (linkage.WheelCentre.X, linkage.WheelCentre.Y, linkage.WheelCentre.Z);
        JetPoint3[] joints = LinkageSystem.Still(linkage);
        bool Step(double share, ref PoseNumbers<double> at, out int sign)
        {
            at[PoseNumber.Z] = linkage.WheelCentre.Z + (travel * share);
            var system = new LinkageSystem(linkage, joints, new(rack * share, 0, 0), new(plate * share, 0, 0));
            return PoseNewton.Solve(system, LinkageSystem.Free, ref at, out sign);
        }

        double span = Math.Max(Math.Abs(travel), Math.Max(Math.Abs(rack), Math.Abs(plate)));
        return PoseNewton.Follow(Step, span, keepBranch: true, FurthestMove, ref q) ? Reach.Reached : Reach.LinkageCannotClose;
    }

    /// <summary>Readings while travel, rack, plate, joints and the reference angles move with one parameter.</summary>
    /// <param name="camberOff">Added to the camber at the reference state, rad.</param>
    /// <param name="toeOff">Added to the toe at the reference state, rad.</param>
    internal static bool Along(
        CornerLinkage linkage, JetPoint3[] joints, in PoseNumbers<double> q, in Jet travel, in Jet rack, in Jet plate,
        in Jet camberOff, in Jet toeOff, out TraceJets readings)
    {
        readings = default;
        var system = new LinkageSystem(linkage, joints, rack, plate);
        PoseNumbers<Jet> moving = PoseNewton.Still(q);
        moving[PoseNumber.Z] = travel + linkage.WheelCentre.Z;
        if (!PoseNewton.Derivatives(system, LinkageSystem.Free, ref moving))
        {
            return false;
        }

        var frame = new PoseFrame(moving);
        JetTurn camber = JetAngle.Turn(camberOff + linkage.Camber), toe = JetAngle.Turn(toeOff + linkage.Toe);
        JetPoint3 spindle = frame.Turned(new JetPoint3(camber.Cos * toe.Sin, camber.Cos * toe.Cos * linkage.Side, camber.Sin * -1));
        Jet spring = default, damper = default;
        if ((linkage.Spring is { } s && !system.Length(frame, s, out spring))
            || (linkage.Damper is { } d && !system.Length(frame, d, out damper)))
        {
            return false;
        }

        readings = new(
            JetAngle.OfSine(spindle.Z * -1), JetAngle.Of(spindle.X, spindle.Y * linkage.Side),
            (frame.Origin.Y + -linkage.WheelCentre.Y) * linkage.Side, TyreDisc.Contact(frame.Origin, spindle, linkage.TyreRadius), spring,
            damper);
        return true;
    }
}
