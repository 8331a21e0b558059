using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

/// <summary>A corner's joints, rack and plate, all of which may move with the parameter; and what they ask of the knuckle.</summary>
/// <remarks>Lengths and angles of parts are those of the reference state and move with the joints. Source: docs/theory/fit.md §1.</remarks>
internal sealed class LinkageSystem : IPoseSystem
{
    public static readonly int[] Free = [PoseNumber.X, PoseNumber.Y, PoseNumber.Yaw, PoseNumber.Roll, PoseNumber.Pitch];

    private readonly CornerLinkage linkage;
    private readonly JetPoint3[] joints;
    private readonly JetPoint3 plate;
    private readonly JetPoint3 rack;
    private readonly JetPoint3 wheelCentre;

    public LinkageSystem(CornerLinkage linkage, JetPoint3[] joints, in Jet rack, in Jet plate)
    {
        (this.linkage, this.joints) = (linkage, joints);
        this.rack = new(default, rack, default);
        wheelCentre = JetPoint3.Fixed(linkage.WheelCentre);
        double length = linkage.PlateDirection.Length;
        this.plate = JetPoint3.Fixed(length > 0 ? linkage.PlateDirection / length : default) * plate;
    }

    public static JetPoint3[] Still(CornerLinkage linkage) => [.. linkage.Joints.Select(joint => JetPoint3.Fixed(joint.At))];

    /// <inheritdoc/>
    public void At(in PoseNumbers<Jet> q, Span<Jet> g)
    {
        var frame = new PoseFrame(q);
        int row = 0;
        foreach (LinkageTie tie in linkage.Ties)
        {
            switch (tie)
            {
                case LinkageTie.Rod rod:
                    JetPoint3 inner = rod.Steers ? joints[rod.Body] + rack : joints[rod.Body];
                    g[row++] = (Moved(frame, rod.Knuckle) - inner).Length() - (joints[rod.Knuckle] - joints[rod.Body]).Length();
                    break;
                case LinkageTie.Strut strut:
                    JetPoint3 line = joints[strut.Top] - joints[strut.Low];
                    Across(frame, line, joints[strut.Top] + plate - Moved(frame, strut.Low), g[row..]);
                    row += 2;
                    break;
                case LinkageTie.Hinge hinge:
                    JetPoint3 off = Moved(frame, hinge.First) - joints[hinge.First];
                    (g[row], g[row + 1], g[row + 2]) = (off.X, off.Y, off.Z);
                    Across(
                        frame, joints[hinge.Second] - joints[hinge.First], joints[hinge.Second] - Moved(frame, hinge.First),
                        g[(row + 3)..]);
                    row += 5;
                    break;
            }
        }
    }

    public JetPoint3 Moved(in PoseFrame frame, int knuckleJoint) => frame.Point(joints[knuckleJoint] - wheelCentre);

    /// <summary>Length of a station, m.</summary>
    /// <returns>False when a rocker's pushrod cannot reach.</returns>
    public bool Length(in PoseFrame frame, LinkageStation station, out Jet length)
    {
        length = default;
        JetPoint3 body, moving;
        switch (station)
        {
            case LinkageStation.OnKnuckle s:
                (body, moving) = (joints[s.Body], Moved(frame, s.Knuckle));
                break;
            case LinkageStation.OnArm s:
                (body, moving) = (joints[s.Body], OnArm(frame, s.Moving, s.First, s.Second, s.Ball));
                break;
            case LinkageStation.OnRod s:
                JetPoint3 inner = joints[s.RodBody];
                (body, moving) = (joints[s.Body], inner + ((Moved(frame, s.RodKnuckle) - inner) * s.Share));
                break;
            case LinkageStation.OnStrut s:
                length = (joints[s.Top] + plate - Moved(frame, s.Low)).Length() + -s.Along;
                return true;
            case LinkageStation.OnRocker s:
                body = joints[s.Body];
                if (!OnRocker(frame, s, out moving))
                {
                    return false;
                }

                break;
            default:
                return false;
        }

        length = (moving - body).Length();
        return true;
    }

    /// <summary>Both parts of a vector across a line of the knuckle; they vanish when it lies along the line.</summary>
    private static void Across(in PoseFrame frame, in JetPoint3 line, in JetPoint3 vector, Span<Jet> parts)
    {
        // Two directions across the line at the reference state: one perpendicular to the axis the line is furthest from.
        Vec3 v = line.V;
        double x = Math.Abs(v.X), y = Math.Abs(v.Y), z = Math.Abs(v.Z);
        JetPoint3 axis = JetPoint3.Fixed(x <= y && x <= z ? Vec3.UnitX : y <= z ? Vec3.UnitY : Vec3.UnitZ);
        JetPoint3 first = Unit(axis.Cross(line)), second = Unit(line.Cross(first));
        parts[0] = frame.Turned(first).Dot(vector);
        parts[1] = frame.Turned(second).Dot(vector);
    }

    private JetPoint3 OnArm(in PoseFrame frame, int moving, int first, int second, int ball)
    {
        // The arm's own axes: along the bushings, towards the ball joint, across both; at the reference state and now.
        JetPoint3 a = joints[first], along = Unit(joints[second] - a), p = joints[moving] - a;
        JetPoint3 out0 = Outward(along, joints[ball] - a), out1 = Outward(along, Moved(frame, ball) - a);
        return a + (along * along.Dot(p)) + (out1 * out0.Dot(p)) + (along.Cross(out1) * along.Cross(out0).Dot(p));
    }

    private JetPoint3 RodEnd(in PoseFrame frame, LinkageStation.OnRocker s) => s.First == LinkageStation.OnRocker.FromKnuckle
        ? Moved(frame, s.RodOnArm) : OnArm(frame, s.RodOnArm, s.First, s.Second, s.Ball);

    private static JetPoint3 Outward(in JetPoint3 along, in JetPoint3 toBall) => Unit(toBall - (along * along.Dot(toBall)));

    private bool OnRocker(in PoseFrame frame, LinkageStation.OnRocker s, out JetPoint3 moving)
    {
        JetPoint3 pivot = joints[s.Pivot], axis = JetPoint3.Fixed(s.Axis.Unit()), r = joints[s.RodOnRocker] - pivot;
        JetPoint3 rod0 = joints[s.RodOnArm] - joints[s.RodOnRocker], d = RodEnd(frame, s) - pivot;
        JetPoint3 rAlong = axis * axis.Dot(r), rAcross = r - rAlong, rTurned = axis.Cross(r), d0 = joints[s.RodOnArm] - pivot;

        // |d - R(θ) r|² = |rod|², with R(θ) r = rAlong + rAcross cos θ + rTurned sin θ.
        Jet c = ((d.Dot(d) + r.Dot(r) - rod0.Dot(rod0)) * 0.5) - d.Dot(rAlong);
        int branch = Math.Sign(d0.Dot(rTurned).V);
        moving = default;
        if (!TurnEquation.Solve(d.Dot(rAcross), d.Dot(rTurned), c, branch, out JetTurn turn))
        {
            return false;
        }

        moving = pivot + (joints[s.Moving] - pivot).TurnedAbout(axis, turn);
        return true;
    }

    private static JetPoint3 Unit(in JetPoint3 v) => v * v.Length().Inverse();
}
