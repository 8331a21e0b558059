using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Tests.Clearance.Scans;
using Cornerwright.Mechanics.Tests.Motion.Hardpoints;
using Proof = Cornerwright.Mechanics.Clearance.Certifying.Certifying;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>Certified least gaps against closed forms, and every way a certification can end.</summary>
public class CertifyingTests
{
    private const double Radius = 0.3, HalfWidth = 0.1;
    private static readonly Vec3 Hub = new(0, 0.75, 0.3);

    /// <summary>A rectangle turned round the spindle, middle plane at the hub face.</summary>
    private static readonly WheelShape Drum = WheelShape.Of(
        [new WheelOutline(WheelPart.Tyre, [new(-HalfWidth, 0.2), new(HalfWidth, 0.2), new(HalfWidth, Radius), new(-HalfWidth, Radius)])]);

    /// <summary>Steers about an upright line through the hub face, so that plan views are plane geometry.</summary>
    private static IPoseField Upright(CornerMotion? motion = null) =>
        new RigidSteerPoses(
            motion ?? new RatioMotion(new RatioWheel(0, 0, 0), new RatioStation(0.4, 1, 0)), Hub, WheelSide.Left, new(Hub, Vec3.UnitZ));

    [Fact]
    public void A_point_over_the_crown_is_nearest_at_full_bump()
    {
        ClearanceObstacle point = ClearanceObstacle.OfPoints([Hub + new Vec3(0, 0, Radius + 0.1)]);
        CertifiedGap gap = Proof.Least(Drum, [point], Upright(), new(new(-0.08, 0, 0), new(0.06, 0, 0)));
        Holds(gap, 0.04);
        Assert.Equal(0.06, gap.Place.Travel, 1e-4);

        // With bump limited to 20 mm at any steer it is 40 mm more.
        Holds(Proof.Least(Drum, [point], Upright(), new(new(-0.08, 0, 0), new(0.06, 0, 0), [new(0, 0.02)])), 0.08);
    }

    /// <summary>
    /// A post ahead of the wheel at hub height, seen from above: the rectangle's corner sweeps a circle of √(R² + w²) and is nearest to
    /// the post at a steer of ±atan(w/R), inside the box. Source: plane geometry.
    /// </summary>
    [Fact]
    public void A_post_ahead_is_nearest_where_the_shoulder_points_at_it()
    {
        double corner = Math.Sqrt((Radius * Radius) + (HalfWidth * HalfWidth));
        ClearanceObstacle post = ClearanceObstacle.OfBar([Hub + new Vec3(0.35, 0, -0.2), Hub + new Vec3(0.35, 0, 0.2)], 0.01);
        CertifiedGap gap = Proof.Least(Drum, [post], Upright(), new(new(-0.03, -0.6, 0), new(0.02, 0.6, 0)));
        Holds(gap, 0.35 - 0.01 - corner);
        Assert.Equal(Math.Atan(HalfWidth / Radius), Math.Abs(gap.Place.Steer), 0.03);
        Assert.InRange(gap.Cells, 2, 20000);
    }

    /// <summary>
    /// The same with no lock allowed where it would be nearest: the least is at the limit's edge. Source: plane geometry.
    /// </summary>
    [Fact]
    public void A_limit_on_bump_at_lock_keeps_out_what_it_forbids()
    {
        ClearanceObstacle above = ClearanceObstacle.OfPoints([Hub + new Vec3(0, 0, Radius + 0.1)]);
        BumpAtSteer[] limit = [new(-0.5, -0.05), new(-0.2, 0.05), new(0.2, 0.05), new(0.5, -0.05)];
        CertifiedGap gap = Proof.Least(Drum, [above], Upright(), new(new(-0.05, -0.5, 0), new(0.09, 0.5, 0), limit));
        Holds(gap, 0.05);
        Assert.InRange(Math.Abs(gap.Place.Steer), 0, 0.2001);

        // Reached only beyond 0.2 rad, where bump falls by 1 m/rad/3: the post's nearest steer is 0.32, allowed up to
        // 0.05 - 0.041 m of bump.
        ClearanceObstacle high = ClearanceObstacle.OfPoints([Hub + new Vec3(0.35, 0, 0.05)]);
        CertifiedGap post = Proof.Least(Drum, [high], Upright(), new(new(-0.05, -0.5, 0), new(0.09, 0.5, 0), limit));
        double least = double.PositiveInfinity;
        for (int i = 0; i <= 4000; i++)
        {
            double steer = -0.5 + (i / 4000.0), bump = Math.Min(0.09, new PoseBox(default, default, limit).AllowedBump(steer));
            for (double z = -0.05; z <= bump; z += 0.0005)
            {
                Assert.True(Upright().TryPose(new(z, steer, 0), out WheelPose pose));
                least = Math.Min(least, Drum.SignedDistance(pose, Hub + new Vec3(0.35, 0, 0.05)));
            }
        }

        Assert.InRange(least, post.Lower, post.Upper + 2e-5);
    }

    [Fact]
    public void Obstacles_of_knuckle_and_body_prune_each_other_and_the_least_is_named()
    {
        var tube = new CylinderObstacle(new(-0.15, 0.1, 0), new(0, 1, 0), 0.3, 0.02);
        ClearanceObstacle onKnuckle = ClearanceObstacle.OfCylinder(tube, ObstacleFrame.Knuckle);
        ClearanceObstacle above = ClearanceObstacle.OfPoints([Hub + new Vec3(0, 0, Radius + 0.15)]);
        PoseBox box = new(new(-0.05, -0.3, 0), new(0.05, 0.3, 0));
        CertifiedGap gap = Proof.Least(Drum, [above, onKnuckle], Upright(), box);
        Holds(gap, 0.03);
        Assert.Equal(1, gap.Obstacle);

        // The tube stands at 12 o'clock, and so the place is told.
        Assert.Equal(1, Math.Cos(gap.Clearing.ClockHours * Math.PI / 6), 1e-3);
        Holds(Proof.Least(Drum, [above], Upright(), box), 0.1);
    }

    /// <summary>
    /// A calliper inside the rim: a disc of knuckle parts against the barrel. By hand: 0.2 less 0.17 less half a
    /// millimetre of prism at most.
    /// </summary>
    [Fact]
    public void A_calliper_inside_the_barrel()
    {
        ClearanceObstacle calliper = ClearanceObstacle.OfCylinder(new(new(-0.05, 0, 0), Vec3.UnitX, 0.08, 0.17), ObstacleFrame.Knuckle);
        CertifiedGap gap = Proof.Least(Drum, [calliper], Upright(), new(default, default));
        Holds(gap, 0.03);
    }

    [Fact]
    public void What_is_clear_by_far_is_shown_without_looking_for_the_least()
    {
        ClearanceObstacle point = ClearanceObstacle.OfPoints([Hub + new Vec3(0, 0, Radius + 0.3)]);
        PoseBox box = new(new(-0.08, -0.6, 0), new(0.08, 0.6, 0));
        CertifiedGap gap = Proof.Least(Drum, [point], Upright(), box, new(UpTo: 0.02));
        Assert.Equal((CertifyingStop.ClearByLimit, -1, double.PositiveInfinity), (gap.Why, gap.Obstacle, gap.Upper));
        Assert.InRange(gap.Lower, 0.0198, 0.02);
    }

    [Fact]
    public void A_range_measured_once_serves_every_wheel()
    {
        ClearanceObstacle arch = ClearanceObstacle.Of(InventedArch.Mesh(2000));
        PoseBox box = new(new(-0.08, -0.3, 0), new(0.03, 0.3, 0));
        PoseRange range = PoseRange.Measure(Upright(), box);
        foreach (double radius in new[] { 0.29, 0.3, 0.31 })
        {
            WheelShape drum = WheelShape.Of(
                [new WheelOutline(
                    WheelPart.Tyre, [new(-HalfWidth, 0.2), new(HalfWidth, 0.2), new(HalfWidth, radius), new(-HalfWidth, radius)])]);
            CertifiedGap once = Proof.Least(drum, [arch], range), anew = Proof.Least(drum, [arch], Upright(), box);
            Assert.Equal((anew.Lower, anew.Upper, anew.Cells), (once.Lower, once.Upper, once.Cells));
        }
    }

    [Fact]
    public void A_deep_overlap_is_not_measured_to_the_tenth()
    {
        ClearanceObstacle wall = ClearanceObstacle.OfBox(Hub + new Vec3(0, 0, Radius), Vec3.UnitX, Vec3.UnitY, 0.2, 0.2, 0.05);
        CertifiedGap gap = Proof.Least(Drum, [wall], Upright(), new(new(-0.08, -0.6, 0), new(0.08, 0.6, 0)));
        Assert.Equal(CertifyingStop.DeepOverlap, gap.Why);
        Assert.InRange(gap.Upper, -0.0501, -0.02);
        Assert.InRange(gap.Lower, -0.0501, gap.Upper);
    }

    [Fact]
    public void Limits_are_answers()
    {
        ClearanceObstacle arch = ClearanceObstacle.Of(InventedArch.Mesh(2000));
        PoseBox box = new(new(-0.08, -0.3, 0), new(0.03, 0.3, 0));
        CertifiedGap whole = Proof.Least(Drum, [arch], Upright(), box);
        CertifiedGap few = Proof.Least(Drum, [arch], Upright(), box, new(MostCells: 3));
        Assert.Equal(CertifyingStop.CellLimit, few.Why);
        Assert.InRange(few.Lower, double.NegativeInfinity, whole.Upper);
        Assert.Equal(CertifyingStop.Cancelled, Proof.Least(Drum, [arch], Upright(), box, stop: () => true).Why);
        Assert.Equal(CertifyingStop.Unreachable, Proof.Least(Drum, [arch], new Nowhere(), box).Why);
    }

    /// <summary>Travel that jumps 40 mm outboard above 10 mm of bump: never a wrong interval, whatever it is called.</summary>
    [Fact]
    public void A_motion_that_jumps_is_not_trusted()
    {
        ClearanceObstacle wall = ClearanceObstacle.OfPoints([Hub + new Vec3(0, 0.2, 0.28)]);
        PoseBox box = new(new(-0.05, 0, 0), new(0.05, 0, 0));
        CertifiedGap gap = Proof.Least(Drum, [wall], new Jumping(), box, new(MostCells: 5000));
        double least = Enumerable.Range(0, 10001).Min(i =>
            new Jumping().TryPose(new(-0.05 + (i * 1e-5), 0, 0), out WheelPose pose)
            ? Drum.SignedDistance(pose, Hub + new Vec3(0, 0.2, 0.28)) : 1);
        Assert.True(gap.Lower <= least && (gap.Why != CertifyingStop.Closed || gap.Upper <= least + 2e-5), $"{gap}, sampled {least}");
    }

    // A swerve of 20 mm within a few millimetres of travel falls between the samples by which the motion's bend is measured: what is
    // seen at the corners of cells contradicts it, and the bounds grow. With that ignored, 6 of these 40 are proved to be further away
    // than they are.
    [Fact]
    public void A_swerve_between_the_samples_is_found_by_contradiction()
    {
        WheelShape drum = WheelShape.Of([new WheelOutline(WheelPart.Tyre, [new(-0.1, 0), new(0.1, 0), new(0.1, 0.3), new(-0.1, 0.3)])]);
        Vec3 beside = new(0, 0.14, 0);
        ClearanceObstacle post = ClearanceObstacle.OfPoints([beside]);
        for (int i = 0; i < 40; i++)
        {
            var field = new Swerving(-0.05 + (0.1 * (i + 0.5) / 40));
            CertifiedGap gap = Proof.Least(drum, [post], field, new(new(-0.05, 0, 0), new(0.05, 0, 0)), new(MostCells: 20_000));
            double least = Enumerable.Range(0, 5001).Min(j => drum.SignedDistance(field.At(-0.05 + (j * 2e-5)), beside));
            Assert.True(gap.Lower <= least + 1e-6, $"{i}: {gap}, sampled {least}");
        }
    }

    [Fact]
    public void Misuse_is_refused()
    {
        ClearanceObstacle point = ClearanceObstacle.OfPoints([Hub]);
        PoseBox box = new(default, default);
        Assert.Throws<ArgumentException>(() => Proof.Least(Drum, [], Upright(), box));
        Assert.Throws<ArgumentException>(() => Proof.Least(Drum, [point], Upright(), new(new(1, 0, 0), default)));
        Assert.Throws<ArgumentException>(() => Proof.Least(Drum, [point], Upright(), new(new(double.NaN, 0, 0), default)));
        Assert.Throws<ArgumentException>(() => Proof.Least(Drum, [point], Upright(), new(default, default, [new(0, 1), new(0, 2)])));
        Assert.Throws<ArgumentException>(() => Proof.Least(Drum, [point], Upright(), box, new(Tolerance: 1e-6)));
        Assert.Throws<ArgumentException>(() => ClearanceObstacle.OfBar([Hub], 0.01));
        Assert.Throws<ArgumentException>(() => ClearanceObstacle.OfCylinder(default));
        Assert.Throws<ArgumentException>(() => ClearanceObstacle.OfBox(Hub, Vec3.UnitX, Vec3.UnitX, 1, 1, 1));
        Assert.Throws<ArgumentException>(() => ClearanceObstacle.OfPoints([new(double.NaN, 0, 0)]));
    }

    /// <summary>
    /// Prisms against the exact cylinders of <see cref="CylinderClearing"/>: never further away, never nearer by more than the excess.
    /// </summary>
    [Fact]
    public void A_cylinder_is_its_prism_within_the_excess()
    {
        var random = new Random(41);
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(4)];
        int apart = 0;
        for (int i = 0; i < 200; i++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelPose pose = RandomCorner.Pose(random);
            var cylinder = new CylinderObstacle(
                RandomCorner.Near(random, pose, 0.4), RandomCorner.Direction(random), random.Between(0.003, 0.3),
                random.Between(0.002, 0.06));
            ClearanceObstacle prism = ClearanceObstacle.OfCylinder(cylinder);
            double exact = CylinderClearing.Of(WheelSolid.Write(tyre, rim, 4, buffer), cylinder.ToSpindle(SpindleFrame.Of(pose))).Gap;
            double got = ScanClearing.Of(prism.Tree, WheelShape.Of(tyre, rim, 4), pose).Gap;
            if (exact > 0.001)
            {
                apart++;
                Assert.InRange(got, exact - prism.Excess - 2e-5, exact + 1.1e-5);
            }
        }

        Assert.InRange(apart, 60, 200);
    }

    /// <summary>On hardpoints, left and right: rack and plate as steer and plate, checked against poses of the same linkage.</summary>
    [Theory]
    [InlineData("M1")]
    [InlineData("W1")]
    public void On_hardpoints_the_interval_holds_too(string id)
    {
        var linkage = new KnuckleLinkage(TracedCorners.Linkage(id), 0.04);
        var poses = new LinkagePoses(linkage);
        Assert.True(poses.TryPose(default, out WheelPose rest));
        Assert.Equal(Math.Sign(linkage.Side), Math.Sign(rest.Spindle.Y));
        var tyre = TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233);
        WheelShape shape = WheelShape.Of(tyre, default, 4);
        ClearanceObstacle ahead =
            ClearanceObstacle.OfPoints([rest.HubFace + new Vec3(0.33, -0.12 * linkage.Side, 0.1), rest.HubFace + new Vec3(-0.2, 0, 0.42)]);
        PoseBox box = new(new(-0.06, -0.04, 0), new(0.06, 0.04, 0));
        CertifiedGap gap = Proof.Least(shape, [ahead], poses, box);
        Assert.True(gap.Why == CertifyingStop.Closed && gap.Width <= 1.001e-4, $"{gap}");
        double least = double.PositiveInfinity;
        for (int i = 0; i <= 60; i++)
        {
            for (int j = 0; j <= 60; j++)
            {
                Assert.True(poses.TryPose(new(-0.06 + (0.002 * i), -0.04 + (0.08 * j / 60), 0), out WheelPose pose));
                int nearest = -1;
                least = ScanClearing.TryBelow(ahead.Tree, shape, pose, ref nearest, out Clearing c, least) ? c.Gap : least;
            }
        }

        Assert.InRange(least, gap.Lower, gap.Upper + 1e-3);
    }

    private static void Holds(CertifiedGap gap, double known)
    {
        Assert.True(gap.Why == CertifyingStop.Closed && gap.Width <= 1e-4 + 1e-9, $"{gap}");
        Assert.True(known >= gap.Lower && known <= gap.Upper + 1e-6, $"known {known}: {gap}");
    }

    private sealed class Nowhere : IPoseField
    {
        public bool TryPose(in PosePlace place, out WheelPose pose)
        {
            pose = default;
            return false;
        }
    }

    private sealed class Swerving(double where) : IPoseField
    {
        public bool TryPose(in PosePlace place, out WheelPose pose)
        {
            pose = At(place.Travel);
            return true;
        }

        public WheelPose At(double travel)
        {
            double off = (travel - where) / 0.002;
            return new(new Vec3(0, (2 * travel * travel) + (0.02 * Math.Exp(-off * off)), travel), Vec3.UnitY);
        }
    }

    private sealed class Jumping : IPoseField
    {
        public bool TryPose(in PosePlace place, out WheelPose pose)
        {
            pose = new(Hub + new Vec3(0, place.Travel > 0.01 ? 0.04 : 0, place.Travel), Vec3.UnitY);
            return true;
        }
    }
}
