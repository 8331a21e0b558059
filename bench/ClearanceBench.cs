using BenchmarkDotNet.Attributes;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Bench;

/// <summary>Wheel against its surroundings: time a pose for a point and for a strut tube.</summary>
public class ClearanceBench
{
    private const int Poses = 64;
    private const double Droop = -0.08, Bump = 0.07;
    private const int ArcPoints = 6;

    /// <summary>A lip over the tyre, in B: 60 mm above the crown at rest.</summary>
    private static readonly Vec3 Lip = new(0.02, 0.83, 0.70);

    private readonly RatioMotion _motion = new(new RatioWheel(-0.02, -0.35, LateralGain: -0.05), new RatioStation(0.40, 0.95, 0.1));
    private readonly Vec3 _hub = new(0, 0.75, 0.31);
    private readonly TyreSection _tyre = TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233);
    private readonly RimSection _rim = RimSection.WithEstimates(-0.040, 0.2032, 0.2285);
    private double[] _buffer = [];
    private WheelPose[] _poses = [];

    [GlobalSetup]
    public void Setup()
    {
        _buffer = new double[WheelSolid.BufferLength(ArcPoints)];
        _poses = [.. Enumerable.Range(0, Poses).Select(i => PoseAt(Droop + ((Bump - Droop) * i / (Poses - 1))))];
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public double PointPerPose()
    {
        var wheel = Wheel();
        double least = double.PositiveInfinity;
        foreach (var pose in _poses)
        {
            least = Math.Min(least, wheel.SignedDistance(SpindleFrame.Of(pose).ToSpindle(Lip)));
        }

        return least;
    }

    [Benchmark(OperationsPerInvoke = Poses)]
    public double TubePerPose()
    {
        // A strut tube beside the wheel, fixed to the body here so that every pose is another question.
        var tube = new CylinderObstacle(new Vec3(0, 0.58, 0.40), new Vec3(0, -0.139, 0.990).Unit(), 0.35, 0.026);
        var wheel = Wheel();
        double least = double.PositiveInfinity;
        foreach (var pose in _poses)
        {
            least = Math.Min(least, CylinderClearing.Of(wheel, tube.ToSpindle(SpindleFrame.Of(pose))).Gap);
        }

        return least;
    }

    private WheelSolid Wheel() => WheelSolid.Write(_tyre, _rim, ArcPoints, _buffer);

    private WheelPose PoseAt(double travel)
    {
        _motion.WheelAt(travel, out var wheel);
        return WheelPose.StraightAhead(_hub, WheelSide.Left, wheel, travel);
    }
}
