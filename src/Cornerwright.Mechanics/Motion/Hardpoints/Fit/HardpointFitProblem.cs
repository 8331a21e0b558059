using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Fit;

/// <summary>A fit in unknowns that count standard deviations from the rough values.</summary>
/// <remarks>Source: docs/theory/fit.md §3.</remarks>
internal sealed class FitProblem
{
    /// <summary>A tolerance is two standard deviations.</summary>
    public const double Limit = 2;

    private const int CamberOff = -1, ToeOff = -2;

    private readonly CornerLinkage rough;
    private readonly IReadOnlyList<FitReading> readings;
    private readonly (int Joint, int Axis, double Deviation)[] unknowns;

    private FitProblem(CornerLinkage rough, IReadOnlyList<FitReading> readings, (int, int, double)[] unknowns) =>
        (this.rough, this.readings, this.unknowns) = (rough, readings, unknowns);

    public CornerLinkage Rough => rough;

    public IReadOnlyList<FitReading> Readings => readings;

    public int Unknowns => unknowns.Length;

    public static FitProblem For(
        CornerLinkage rough, IReadOnlyList<Vec3> tolerances, IReadOnlyList<FitReading> readings, double angleTolerance)
    {
        if (tolerances.Count != rough.Joints.Count)
        {
            throw new ArgumentException($"{rough.Joints.Count} joints, {tolerances.Count} tolerances.", nameof(tolerances));
        }

        Require.NotNegative(angleTolerance);
        foreach (FitReading reading in readings)
        {
            Require.Positive(reading.Deviation);
            Require.Finite(reading.Value + reading.Travel + reading.Rack);
            if (reading.Quantity is TraceQuantity.SpringRatio or TraceQuantity.DamperRatio)
            {
                throw new ArgumentException("A motion ratio is not read but computed: give lengths.", nameof(readings));
            }
        }

        var unknowns = new List<(int, int, double)>();
        void Add(int joint, int axis, double tolerance)
        {
            Require.NotNegative(tolerance);
            if (tolerance > 0)
            {
                unknowns.Add((joint, axis, tolerance / Limit));
            }
        }

        for (int i = 0; i < tolerances.Count; i++)
        {
            Add(i, 0, tolerances[i].X);
            Add(i, 1, tolerances[i].Y);
            Add(i, 2, tolerances[i].Z);
        }

        Add(CamberOff, 0, angleTolerance);
        Add(ToeOff, 0, angleTolerance);
        return new(rough, readings, [.. unknowns]);
    }

    public static bool IsAtLimit(double x) => Math.Abs(x) >= Limit * (1 - 1e-9);

    /// <summary>Half the gradient of the sum: Jᵀr + u.</summary>
    public static double[] Slope(double[] residual, double[] jacobian, double[] u) =>
        [.. u.Select((x, a) => x + residual.Select((r, i) => r * jacobian[(i * u.Length) + a]).Sum())];

    /// <summary>JᵀJ + I, n × n: the rough points are readings of themselves.</summary>
    public static double[] Normal(double[] jacobian, int n, int rows)
    {
        double[] normal = new double[n * n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; b < n; b++)
            {
                double sum = a == b ? 1 : 0;
                for (int i = 0; i < rows; i++)
                {
                    sum += jacobian[(i * n) + a] * jacobian[(i * n) + b];
                }

                normal[(a * n) + b] = sum;
            }
        }

        return normal;
    }

    public Vec3 Moved(double[] u, int joint) => PerAxis(joint, k => u[k] * unknowns[k].Deviation);

    /// <summary>A value for each free coordinate of a joint, 0 for the others.</summary>
    public Vec3 PerAxis(int joint, Func<int, double> value)
    {
        Span<double> three = stackalloc double[3];
        three.Clear();
        for (int k = 0; k < unknowns.Length; k++)
        {
            if (unknowns[k].Joint == joint)
            {
                three[unknowns[k].Axis] = value(k);
            }
        }

        return new(three[0], three[1], three[2]);
    }

    public double Deviation(int unknown) => unknowns[unknown].Deviation;

    public bool Any(int joint, Func<int, bool> holds) =>
        Enumerable.Range(0, unknowns.Length).Any(k => unknowns[k].Joint == joint && holds(k));

    public CornerLinkage At(double[] u) => rough.WithJointsAt([.. rough.Joints.Select((joint, i) => joint.At + Moved(u, i))]) with
    {
        Camber = rough.Camber + Off(u, CamberOff),
        Toe = rough.Toe + Off(u, ToeOff),
    };

    /// <summary>Model minus reading over the reading's deviation, and its derivatives by the unknowns, row by row.</summary>
    /// <returns>False when a reading's pose cannot be reached.</returns>
    public bool Evaluate(double[] u, out double[] residual, out double[] jacobian)
    {
        int n = unknowns.Length;
        residual = new double[readings.Count];
        jacobian = new double[readings.Count * n];
        CornerLinkage linkage = At(u);
        (double Travel, double Rack)? solved = null;
        var columns = new TraceJets[n];
        for (int i = 0; i < readings.Count; i++)
        {
            FitReading reading = readings[i];
            if (solved != (reading.Travel, reading.Rack))
            {
                if (!Columns(linkage, reading.Travel, reading.Rack, columns))
                {
                    return false;
                }

                solved = (reading.Travel, reading.Rack);
            }

            residual[i] = (Pick(columns[0], reading.Quantity).V - reading.Value) / reading.Deviation;
            for (int k = 0; k < n; k++)
            {
                jacobian[(i * n) + k] = Pick(columns[k], reading.Quantity).D * unknowns[k].Deviation / reading.Deviation;
            }
        }

        return true;
    }

    private bool Columns(CornerLinkage linkage, double travel, double rack, TraceJets[] columns)
    {
        if (LinkageTrace.Pose(linkage, travel, rack, 0, out PoseNumbers<double> q) != Reach.Reached)
        {
            return false;
        }

        JetPoint3[] still = LinkageSystem.Still(linkage);
        for (int k = 0; k < unknowns.Length; k++)
        {
            var (joint, axis, _) = unknowns[k];
            JetPoint3[] joints = [.. still];
            if (joint >= 0)
            {
                joints[joint] = Sensitivity.Pushed(joints[joint], axis, 1);
            }

            Jet camber = new(0, joint == CamberOff ? 1 : 0, 0), toe = new(0, joint == ToeOff ? 1 : 0, 0);
            if (!LinkageTrace.Along(linkage, joints, q, new(travel, 0, 0), new(rack, 0, 0), default, camber, toe, out columns[k]))
            {
                return false;
            }
        }

        return true;
    }

    private double Off(double[] u, int which) => Moved(u, which).X;

    private static Jet Pick(in TraceJets readings, TraceQuantity quantity) => quantity switch
    {
        TraceQuantity.Camber => readings.Camber,
        TraceQuantity.Toe => readings.Toe,
        TraceQuantity.Outboard => readings.Outboard,
        TraceQuantity.SpringLength => readings.Spring,
        _ => readings.Damper,
    };
}
