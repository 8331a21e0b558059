using BenchmarkDotNet.Attributes;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;

namespace Cornerwright.Bench;

/// <summary>
/// A pose of a hardpoint linkage while travel goes up and down in steps of 2 mm, each solve starting from the pose before: ours, against
/// MathNet.Numerics on the same five conditions: its Broyden solver, and Newton with its LU on an analytic Jacobian.
/// </summary>
public class HardpointBench
{
    private const int Poses = 160;

    private readonly double[] travels = [.. Enumerable.Range(0, Poses).Select(i => 0.002 * (i <= 40 ? i : i <= 120 ? 80 - i : i - 160))];
    private readonly double[] mapTravels = [.. Enumerable.Range(-40, 81).Select(i => i * 0.002)];
    private readonly double[] mapRacks = [.. Enumerable.Range(-20, 41).Select(i => i * 0.003)];
    private readonly double[] mapPlates = [0, 0.005, 0.01, 0.015, 0.02];
    private readonly KnucklePose[] map = new KnucklePose[81 * 41 * 5];
    private CornerLinkage corner = null!;
    private KnuckleLinkage linkage = null!;
    private KnuckleFollower follower = null!;
    private HardpointMotion motion = null!;

    [Params("MacPherson", "double wishbone")]
    public string Kind { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        corner = Kind == "MacPherson" ? Strut() : Wishbones();
        linkage = new(corner);
        follower = new(linkage);
        motion = new(linkage);
        double ours = Follow(), broyden = ByBroyden(), newton = ByNewton();
        if (!(Math.Abs(ours - broyden) < 1e-6) || !(Math.Abs(ours - newton) < 1e-9))
        {
            throw new InvalidOperationException($"The ways differ: {ours}, {broyden}, {newton}.");
        }
    }

    /// <summary>The pose alone.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Poses)]
    public double Follow()
    {
        double sum = 0;
        foreach (double z in travels)
        {
            follower.MoveTo(z);
            sum += follower.Pose.Origin.Y;
        }

        return sum;
    }

    /// <summary>With all rates, axes, roll centre and stations.</summary>
    [Benchmark(OperationsPerInvoke = Poses)]
    public double WholeGeometry()
    {
        double sum = 0;
        foreach (double z in travels)
        {
            follower.MoveTo(z);
            WheelGeometry.TryRead(follower, out WheelGeometry wheel);
            sum += wheel.Camber;
        }

        return sum;
    }

    /// <summary>What the judge asks: the wheel and the spring's station.</summary>
    [Benchmark(OperationsPerInvoke = Poses)]
    public double WheelAndSpring()
    {
        double sum = 0;
        foreach (double z in travels)
        {
            motion.WheelAt(z, out WheelMotionState wheel);
            motion.StationAt(z, Station.Spring, out StationState spring);
            sum += wheel.Camber + spring.Length;
        }

        return sum;
    }

    /// <summary>From a table of hardpoints to a motion.</summary>
    [Benchmark]
    public HardpointMotion Construct() => new(new KnuckleLinkage(corner));

    /// <summary>81 travels x 41 places of the rack x 5 of the plate: the time is that of the whole map.</summary>
    [Benchmark]
    public int WholeMap() => LinkageMap.Fill(follower, mapTravels, mapRacks, mapPlates, map);

    [Benchmark(OperationsPerInvoke = Poses)]
    public double ByBroyden()
    {
        double sum = 0;
        double[] x = new double[5];
        foreach (double z in travels)
        {
            x = Broyden.FindRoot(q => Missed(Turned(q), q, z, null), x, 1e-10, 200);
            sum += corner.WheelCentre.Y + x[4];
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public double ByNewton()
    {
        // Turns are small steps from the pose before, so the Jacobian of the first step is exact.
        double sum = 0;
        Func<Vec3, Vec3> pose = v => v;
        double x = 0, y = 0;
        Vec3[] frame = [Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ];
        foreach (double z in travels)
        {
            for (int i = 0; i < 10; i++)
            {
                var jacobian = Matrix<double>.Build.Dense(5, 5);
                Vec3[] f = frame;
                pose = v => (f[0] * v.X) + (f[1] * v.Y) + (f[2] * v.Z);
                double[] missed = Missed(pose, [0, 0, 0, x, y], z, jacobian);
                var step = jacobian.LU().Solve(Vector<double>.Build.Dense(missed));
                var turn = new Vec3(-step[0], -step[1], -step[2]);
                double angle = turn.Length;
                if (angle > 0)
                {
                    frame = [.. frame.Select(v => v.RotatedAbout(turn / angle, angle))];
                }

                (x, y) = (x - step[3], y - step[4]);
                if (step.L2Norm() < 1e-9)
                {
                    break;
                }
            }

            sum += corner.WheelCentre.Y + y;
        }

        return sum;
    }

    private static Func<Vec3, Vec3> Turned(double[] q)
    {
        var turn = new Vec3(q[0], q[1], q[2]);
        double angle = turn.Length;
        return angle > 0 ? v => v.RotatedAbout(turn / angle, angle) : v => v;
    }

    private double[] Missed(Func<Vec3, Vec3> turned, double[] q, double z, Matrix<double>? jacobian)
    {
        double[] missed = new double[5];
        Vec3 origin = corner.WheelCentre + new Vec3(q[3], q[4], z);
        int row = 0;
        void Row(double value, Vec3 moment, Vec3 force)
        {
            missed[row] = value;
            jacobian?.SetRow(row, [moment.X, moment.Y, moment.Z, force.X, force.Y]);
            row++;
        }

        foreach (LinkageTie tie in corner.Ties)
        {
            if (tie is LinkageTie.Rod rod)
            {
                Vec3 body = corner.Joints[rod.Body].At, knuckle = corner.Joints[rod.Knuckle].At, arm = turned(knuckle - corner.WheelCentre);
                Vec3 along = origin + arm - body;
                double length = along.Length;
                Row(length - (knuckle - body).Length, arm.Cross(along / length), along / length);
            }
            else if (tie is LinkageTie.Strut strut)
            {
                Vec3 top = corner.Joints[strut.Top].At, axis = (top - corner.Joints[strut.Low].At).Unit(),
                    first = Vec3.UnitX.Cross(axis).Unit();
                foreach (Vec3 across in (Vec3[])[first, axis.Cross(first)])
                {
                    Vec3 e = turned(across), reach = top - origin;
                    Row(e.Dot(reach) - across.Dot(top - corner.WheelCentre), e.Cross(reach), -e);
                }
            }
        }

        return missed;
    }

    private static Vec3 Mm(double x, double y, double z) => new Vec3(x, y, z) / 1000;

    private static CornerLinkage Strut() => new(
        [
            new("arm front", Mm(20, 370, 210)), new("arm rear", Mm(-270, 385, 205)), new("ball", Mm(5, 700, 185)),
            new("strut top", Mm(-30, 585, 840)),
            new("strut low", Mm(-5, 665, 400)), new("tie rod inner", Mm(-140, 350, 270)), new("tie rod outer", Mm(-125, 690, 260)),
        ],
        [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Strut(3, 4), new LinkageTie.Rod(5, 6, true)],
        Mm(0, 745, 310), -0.015, 0.002, 0.31, new LinkageStation.OnStrut(3, 4, 0.2), new LinkageStation.OnStrut(3, 4, 0),
        Mm(40, -985, -165));

    private static CornerLinkage Wishbones() => new(
        [
            new("lower front", Mm(140, 355, 180)), new("lower rear", Mm(-170, 370, 172)), new("lower ball", Mm(8, 710, 168)),
            new("upper front", Mm(90, 440, 440)), new("upper rear", Mm(-120, 450, 420)), new("upper ball", Mm(-24, 670, 450)),
            new("tie rod inner", Mm(-130, 350, 212)), new("tie rod outer", Mm(-122, 705, 209)), new("spring top", Mm(-12, 512, 566)),
            new("spring foot", Mm(2, 600, 182)),
        ],
        [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Rod(3, 5), new LinkageTie.Rod(4, 5),
            new LinkageTie.Rod(6, 7, true)],
        Mm(0, 760, 304), -0.015, 0.002, 0.31, new LinkageStation.OnArm(8, 9, 0, 1, 2), new LinkageStation.OnArm(8, 9, 0, 1, 2));
}
