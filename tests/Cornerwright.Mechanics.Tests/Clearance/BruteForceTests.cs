using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>
/// Points, polylines, tubes and discs against dense sampling of both surfaces: 500 random wheels, poses and obstacles that do not
/// overlap, and the overlapping ones between them for their sign.
/// </summary>
public class BruteForceTests(ITestOutputHelper output)
{
    private const int ArcPoints = 6;
    private const double Agreement = 0.05e-3;

    // Sampling can only find pairs further apart than the nearest: ours may not be larger than what it found by more than its stated error.
    private const double Attained = 1e-5;

    [Theory]
    [InlineData("point", 125, 501)]
    [InlineData("polyline", 125, 502)]
    [InlineData("cylinder", 125, 503)]
    [InlineData("disc", 125, 504)]
    public void Gaps_agree_with_sampling_of_both_bodies(string kind, int cases, int seed)
    {
        var random = new Random(seed);
        double worst = 0, worstOver = 0;
        int done = 0, overlapping = 0, uncertified = 0;
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(ArcPoints)];
        Span<ProfilePoint> tyreCorners = stackalloc ProfilePoint[TyreProfile.PointCount(ArcPoints)];
        Span<ProfilePoint> rimCorners = stackalloc ProfilePoint[RimProfile.PointCount];
        for (int attempt = 0; attempt < 20 * cases && done < cases; attempt++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelPose pose = RandomCorner.Pose(random);
            SpindleFrame frame = SpindleFrame.Of(pose);
            WheelSolid wheel = WheelSolid.Write(tyre, rim, ArcPoints, buffer);
            TyreProfile.Write(tyre, ArcPoints, tyreCorners);
            RimProfile.Write(rim, rimCorners);
            Obstacle obstacle = Obstacle.Random(kind, random, pose);
            Clearing got = obstacle.Clearing(wheel, frame);
            uncertified += got.Certified ? 0 : 1;
            bool overlap = Overlaps(obstacle, frame, new ProfilePolygon(tyreCorners), new ProfilePolygon(rimCorners));
            if (overlap)
            {
                overlapping++;
                Assert.True(got.Gap <= 1e-9, $"seed {seed}, attempt {attempt}: sampling overlaps, gap {got.Gap}");
                continue;
            }

            double sampled = new SampledGap(tyreCorners, rimCorners, pose).To(
                obstacle.At, obstacle.UMost, obstacle.VMost, obstacle.UMetres, obstacle.VMetres);
            if (got.Gap < 0)
            {
                // Samples 2 to 4 mm apart can miss an overlap shallower than they are apart, never a deep one.
                Assert.True(got.Gap > -0.004, $"seed {seed}, attempt {attempt}: gap {got.Gap} but no sample inside");
                overlapping++;
                continue;
            }

            done++;
            worst = Math.Max(worst, sampled - got.Gap);
            worstOver = Math.Max(worstOver, got.Gap - sampled);
            Assert.True(Math.Abs(sampled - got.Gap) < Agreement, $"seed {seed}, attempt {attempt}: {got}, sampled {sampled}");
            Assert.True(got.Gap < sampled + Attained, $"seed {seed}, attempt {attempt}: {got}, sampled {sampled}");

            // What it names must be that pair of points: on both surfaces, that far apart.
            Assert.Equal(got.Gap, (got.OnWheel - got.OnObstacle).Length, 1e-9);
            Assert.Equal(0, wheel.SignedDistance(got.OnWheel), 1e-9);
            if (obstacle.Cylinder is { } solid)
            {
                CylinderObstacle c = solid.ToSpindle(frame);
                Vec3 off = got.OnObstacle - c.Foot;
                double along = off.Dot(c.Direction), aside = (off - (c.Direction * along)).Length;
                Assert.True(
                    along > -1e-6 && along < c.Length + 1e-6 && aside < c.Radius + 1e-9,
                    $"seed {seed}, attempt {attempt}: {got} is not on {c}");
            }
        }

        output.WriteLine(
            $"{kind}, seed {seed}: {done} apart, {overlapping} overlapping, {uncertified} uncertified; "
            + $"sampled above ours by at most {worst:E1} m, ours above sampled by {worstOver:E1} m");
        Assert.Equal(cases, done);
        Assert.Equal(0, uncertified);
    }

    private static bool Overlaps(in Obstacle obstacle, in SpindleFrame frame, in ProfilePolygon tyre, in ProfilePolygon rim)
    {
        int nu = obstacle.UMost > 0 ? (int)(obstacle.UMetres / 0.002) + 2 : 1,
            nv = obstacle.VMost > 0 ? (int)(obstacle.VMetres / 0.004) + 2 : 1;
        for (int i = 0; i < nu; i++)
        {
            for (int j = 0; j < nv; j++)
            {
                Vec3 p = frame.ToSpindle(obstacle.At(
                    nu > 1 ? obstacle.UMost * i / (nu - 1) : 0, nv > 1 ? obstacle.VMost * j / (nv - 1) : 0));
                double r = Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z));
                if (tyre.SignedDistance(p.X, r) < -1e-9 || rim.SignedDistance(p.X, r) < -1e-9)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>An obstacle in B as a map of two parameters, and as the code under test takes it.</summary>
    private readonly record struct Obstacle(
        Func<double, double, Vec3> At, double UMost, double VMost, double UMetres, double VMetres, Vec3[] Corners,
        CylinderObstacle? Cylinder)
    {
        public static Obstacle Random(string kind, Random random, WheelPose pose)
        {
            if (kind == "point")
            {
                Vec3 p = RandomCorner.Near(random, pose);
                return new((_, _) => p, 0, 0, 0, 0, [p], null);
            }

            if (kind == "polyline")
            {
                var corners = new Vec3[5];
                corners[0] = RandomCorner.Near(random, pose);
                for (int i = 1; i < corners.Length; i++)
                {
                    corners[i] = corners[i - 1] + (RandomCorner.Direction(random) * random.Between(0.02, 0.25));
                }

                double length = 0;
                for (int i = 1; i < corners.Length; i++)
                {
                    length += (corners[i] - corners[i - 1]).Length;
                }

                return new(
                    (u, _) =>
                        corners[Math.Min((int)u, 3)]
                        + ((corners[Math.Min((int)u, 3) + 1] - corners[Math.Min((int)u, 3)]) * (u - Math.Min((int)u, 3))),
                    4, 0, length, 0, corners, null);
            }

            bool disc = kind == "disc";
            Vec3 direction = RandomCorner.Direction(random);
            if (random.Next(3) > 0)
            {
                // Two in three as struts stand: near square to the spindle, or faces near parallel to the wheel plane.
                Vec3 upright = (pose.ClockDirection(random.Between(0, 12)) + (pose.Spindle * random.Between(-0.3, 0.3))).Unit();
                direction = upright;
            }

            var cylinder = new CylinderObstacle(
                RandomCorner.Near(random, pose), direction,
                disc ? random.Between(0.004, 0.02) : random.Between(0.1, 0.35),
                disc ? random.Between(0.04, 0.09) : random.Between(0.015, 0.07));
            Vec3 one = direction.Cross(new Vec3(0.2, 0.7, 0.4)).Unit(), two = direction.Cross(one);
            double radius = cylinder.Radius, l = cylinder.Length, most = (2 * radius) + l;
            return new(
                (u, v) =>
                {
                    double ring = u < radius ? u : u > radius + l ? most - u : radius;
                    double along = Math.Clamp(u - radius, 0, l);
                    return cylinder.Foot + (direction * along) + (one * (ring * Math.Cos(v))) + (two * (ring * Math.Sin(v)));
                },
                most, 2 * Math.PI, most, 2 * Math.PI * radius, [], cylinder);
        }

        public Clearing Clearing(in WheelSolid wheel, in SpindleFrame frame)
        {
            if (Cylinder is { } cylinder)
            {
                return CylinderClearing.Of(wheel, cylinder.ToSpindle(frame));
            }

            var inSpindle = new Vec3[Corners.Length];
            for (int i = 0; i < inSpindle.Length; i++)
            {
                inSpindle[i] = frame.ToSpindle(Corners[i]);
            }

            return inSpindle.Length == 1
                ? Mechanics.Clearance.Clearing.OfPoint(wheel, inSpindle[0])
                : PolylineClearing.Of(wheel, inSpindle);
        }
    }
}
