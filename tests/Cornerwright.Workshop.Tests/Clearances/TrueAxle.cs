using System.Text.Json;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Tests.Linkages;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// The rigid axle R1 or the twist beam T1 of the mechanics tests' data, made straight from its points, and the least gap of one of its
/// wheels by looking at many poses: the answer to which the judge's is compared.
/// </summary>
internal sealed class TrueAxle
{
    private readonly RigidAxle? _axle;
    private readonly TwistBeam? _beam;
    private readonly bool _left;
    private readonly Vec3 _hub;

    public TrueAxle(bool rigid, bool left, double camber, double toe)
    {
        JsonElement inputs = OracleTables.Read(rigid ? "R1.json" : "T1.json").GetProperty("inputs");
        Vec3 hub = At(inputs, "wheel_center");
        var side = new AxleSide(hub, camber, toe, 0.3);
        (_left, _hub) = (left, left ? hub : hub.Mirrored());
        if (rigid)
        {
            var rods = inputs.GetProperty("links").EnumerateArray()
                .Select(l => new AxleRod(l.GetProperty("name").GetString()!, At(l, "b"), At(l, "k"))).ToList();
            _axle = new RigidAxle(new(side, side.Mirrored(), Symmetric(rods)));
            return;
        }

        JsonElement pivot = inputs.GetProperty("pivot");
        var points = new TwistBeamPoints(side, At(pivot, "b_bush"), At(pivot, "shear_centre"));
        _beam = new TwistBeam(left ? points : points.Mirrored());
    }

    /// <summary>The wheel's pose from the hub's place at the reference state.</summary>
    public WheelPose Pose(double travel, double other)
    {
        Vec3 centre, spindle;
        if (_axle is not null)
        {
            var state = _left ? _axle.At(travel, other) : _axle.At(other, travel);
            var wheel = (_left ? state.Left : state.Right)!;
            (centre, spindle) = (wheel.Centre, wheel.Spindle);
        }
        else
        {
            var state = _beam!.At(0.5 * (travel + other), 0.5 * (travel - other));
            (centre, spindle) = (state.Centre, state.Spindle);
        }

        return new(centre - _hub, spindle);
    }

    /// <summary>The least gap over a box of both travels, m, by as many poses each way; and with both wheels rising alike.</summary>
    public (double Least, double Alike) Sampled(WheelShape shape, IReadOnlyList<Vec3> line, PoseBox box, int count = 81)
    {
        double least = double.PositiveInfinity, alike = double.PositiveInfinity;
        for (int i = 0; i < count; i++)
        {
            double travel = box.Least.Travel + ((box.Most.Travel - box.Least.Travel) * i / (count - 1));
            alike = Math.Min(alike, Gap(shape, line, Pose(travel, travel)));
            for (int k = 0; k < count; k++)
            {
                least = Math.Min(least, Gap(shape, line, Pose(travel, box.Least.Third
                    + ((box.Most.Third - box.Least.Third) * k / (count - 1)))));
            }
        }

        return (least, alike);
    }

    // A line by many of its points.
    private static double Gap(WheelShape shape, IReadOnlyList<Vec3> line, in WheelPose pose)
    {
        const int Parts = 24;
        double least = shape.SignedDistance(pose, line[0]);
        for (int s = 1; s < line.Count; s++)
        {
            for (int k = 1; k <= Parts; k++)
            {
                Vec3 point = line[s - 1] + ((line[s] - line[s - 1]) * k / Parts);
                least = Math.Min(least, shape.SignedDistance(pose, point));
            }
        }

        return least;
    }

    // As the car's file has it: the right side mirrored from the left, the lateral rod as it is.
    private static List<AxleRod> Symmetric(List<AxleRod> rods) =>
    [
        .. rods.Where(r => r.Name.EndsWith("left", StringComparison.Ordinal)).SelectMany(r => new[]
        {
            r, new AxleRod(r.Name + ", mirrored", r.OnBody.Mirrored(), r.OnAxle.Mirrored()),
        }),
        rods.Single(r => r.Name.StartsWith("lateral", StringComparison.Ordinal)),
    ];

    private static Vec3 At(JsonElement row, string name)
    {
        double[] xyz = [.. row.GetProperty(name).EnumerateArray().Select(n => n.GetDouble() / 1000)];
        return new(xyz[0], xyz[1], xyz[2]);
    }
}
