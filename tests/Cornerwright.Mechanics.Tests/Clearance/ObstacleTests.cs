using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Numerics;
using Cornerwright.Mechanics.Tests.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Obstacles whose gap is known by hand, overlap depths, and what the hot path must not do.</summary>
public class ObstacleTests
{
    private static readonly TyreSection Tyre = TyreSection.WithEstimates(-0.040, 0.216, 0.190, 0.640, 0.225);
    private static readonly RimSection Rim = RimSection.WithEstimates(-0.040, 0.190, 0.218);
    private const double InnerWall = -0.040 - 0.1125;

    [Theory]
    [InlineData(0.010)]
    [InlineData(0.001)]
    [InlineData(-0.004)]
    public void An_upright_tube_beside_the_wall_is_its_axis_less_its_radius(double gap)
    {
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, new double[WheelSolid.BufferLength(6)]);
        var tube = new CylinderObstacle(new(InnerWall - 0.025 - gap, 0.1, 0), Vec3.UnitY, 0.3, 0.025);
        Clearing got = CylinderClearing.Of(wheel, tube);
        Assert.Equal(gap, got.Gap, 1e-6);
        Assert.Equal(Tyre.WidestRadius, got.WheelR, 2e-3);
        Assert.Equal((Tyre.WidestRadius - 0.1) / 0.3, got.Along, 1e-2);
        Assert.Equal(WheelPart.Tyre, got.Part);
    }

    [Fact]
    public void A_perch_flat_over_the_crown_is_as_far_as_it_is_high()
    {
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, new double[WheelSolid.BufferLength(6)]);
        var perch = new CylinderObstacle(new(-0.05, Tyre.CrownRadius + 0.012, 0.01), Vec3.UnitY, 0.02, 0.06);
        Clearing got = CylinderClearing.Of(wheel, perch);
        Assert.Equal(0.012, got.Gap, 1e-9);
        Assert.Equal(0, got.Along);
        Clearing turned = CylinderClearing.Of(wheel, new(perch.Foot + new Vec3(0, 0.02, 0), -Vec3.UnitY, 0.02, 0.06));
        Assert.Equal(0.012, turned.Gap, 1e-9);
        Assert.Equal(1, turned.Along);

        // Lowered until it overlaps: 3 mm of crown stand in the face.
        Clearing deep = CylinderClearing.Of(wheel, perch with { Foot = perch.Foot - new Vec3(0, 0.015, 0) });
        Assert.True(deep.Gap <= -0.003 + 1e-9, $"{deep.Gap}");
    }

    [Fact]
    public void A_bar_is_its_line_less_its_radius_and_a_line_through_the_tyre_is_as_deep_as_its_deepest_point()
    {
        WheelSolid wheel = WheelSolid.Write(Tyre, default, 6, new double[WheelSolid.BufferLength(6)]);
        Vec3[] over = [new(-0.3, 0.35, 0), new(0.2, 0.35, 0), new(0.3, 0.5, 0)];
        Clearing line = PolylineClearing.Of(wheel, over), bar = PolylineClearing.OfBar(wheel, over, 0.006);
        Assert.Equal(0.35 - 0.32, line.Gap, 1e-6);
        Assert.Equal(0.26 / 0.5, line.Along, 1e-3);
        Assert.Equal(line.Gap - 0.006, bar.Gap, 1e-12);
        Assert.Equal(bar.Gap, (bar.OnWheel - bar.OnObstacle).Length, 1e-9);

        // Across the crown 8 mm below its top: at the middle 8 mm deep.
        Vec3[] through = [new(-0.3, 0.312, 0), new(0.2, 0.312, 0)];
        Assert.Equal(-0.008, PolylineClearing.Of(wheel, through).Gap, 1e-5);   // the crown is made of chords
        Assert.Throws<ArgumentException>(
            () => PolylineClearing.Of(WheelSolid.Write(Tyre, default, 6, new double[WheelSolid.BufferLength(6)]), []));
        Assert.Throws<ArgumentException>(() =>
            PolylineClearing.Of(
                WheelSolid.Write(Tyre, default, 6, new double[WheelSolid.BufferLength(6)]), [Vec3.UnitX, new(double.NaN, 0, 0)]));
        Assert.Throws<ArgumentException>(() => CylinderClearing.Of(
            WheelSolid.Write(Tyre, default, 6, new double[WheelSolid.BufferLength(6)]), new(Vec3.UnitX, new(0, 2, 0), 0.1, 0.1)));
    }

    [Fact]
    public void A_line_within_the_barrel_sees_the_barrel()
    {
        // Along the spindle, 50 mm from it, inside the rim: the barrel's inner surface less 50 mm.
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, new double[WheelSolid.BufferLength(6)]);
        Vec3[] shaft = [new(-0.3, 0.05, 0), new(0.1, 0.05, 0)];
        Clearing got = PolylineClearing.Of(wheel, shaft);
        Assert.Equal(Rim.InnerRadius - 0.05, got.Gap, 1e-9);
        Clearing hub = CylinderClearing.Of(wheel, new(new(-0.1, 0, 0), Vec3.UnitX, 0.1, 0.07));
        Assert.Equal(Rim.InnerRadius - 0.07, hub.Gap, 1e-6);
    }

    // Seen: 1.5 mm too much gap (0.18500 for 0.18346 m, both bodies sampled) for a tube that crosses in front of the
    // wheel's inner face. Its axis passes the spindle inside the lip's ring and so comes near the lip twice; the
    // nearer low was at the tube's end, whose rim stood further off than the side at the other low. Cause: one search for the whole axis.
    // The axis is now searched before and after its place nearest the spindle.
    [Fact]
    public void A_tube_across_the_wheels_face_is_seen_on_both_sides_of_the_spindle()
    {
        var tyre = new TyreSection(
            -0.0022775941073324493, 0.2413, 0.16320694277501058, 0.6580704248988276, 0.16680463097151585, 0.16050369765829312,
            0.0020847287223610764);
        RimSection rim = RimSection.WithEstimates(tyre.AxialCentre, tyre.BeadWidth, 0.2433);
        WheelSolid wheel = WheelSolid.Write(tyre, rim, 6, new double[WheelSolid.BufferLength(6)]);
        var tube = new CylinderObstacle(
            new(-0.2395642035266219, -0.06155395588804523, -0.0651037524026303),
            new Vec3(-0.24734337101748727, 0.9513742274689471, -0.18359830097680593).Unit(), 0.2476087042352225, 0.020768965322416726);
        Clearing got = CylinderClearing.Of(wheel, tube);
        Assert.Equal(0.183461414, got.Gap, 1e-5);
        Assert.InRange(got.Along, 0.7, 1);
        Assert.Equal(got.Gap, (got.OnWheel - got.OnObstacle).Length, 1e-9);
    }

    [Fact]
    public void Overlap_of_a_side_is_the_least_over_all_its_points_as_far_as_one_piece_is_deep()
    {
        // Property: the value never exceeds the signed distance of any point of the cylinder's axis less the radius,
        // nor of any face point found.
        var random = new Random(95);
        int overlapping = 0;
        for (int run = 0; run < 300; run++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelSolid wheel = WheelSolid.Write(tyre, rim, 4, new double[WheelSolid.BufferLength(4)]);
            Vec3 direction = RandomCorner.Direction(random);
            var cylinder = new CylinderObstacle(
                Clock.PointAt(random.Between(-0.2, 0.2), random.Between(0.1, 0.4), random.Between(0, 12)), direction,
                random.Between(0.01, 0.3), random.Between(0.01, 0.06));
            double got = CylinderClearing.Of(wheel, cylinder).Gap;
            Vec3 across = direction.Cross(new Vec3(0.1, 0.5, 0.8)).Unit(), other = direction.Cross(across);
            double deepest = double.PositiveInfinity;
            for (int k = 0; k < 400; k++)
            {
                double angle = random.Between(0, 2 * Math.PI), ring = cylinder.Radius * Math.Sqrt(random.NextDouble());
                Vec3 p = cylinder.Foot + (direction * (cylinder.Length * random.NextDouble())) + (across * (ring * Math.Cos(angle)))
                    + (other * (ring * Math.Sin(angle)));
                deepest = Math.Min(deepest, wheel.SignedDistance(p));
            }

            overlapping += deepest < 0 ? 1 : 0;
            Assert.True(deepest >= 0 ? got <= deepest + 1e-9 : got <= 0, $"seed 95, run {run}: {got}, a point at {deepest}");
        }

        Assert.True(overlapping > 50, $"only {overlapping} overlap");
    }

    [Fact]
    public void A_small_step_of_the_tube_changes_its_gap_by_at_most_the_step_also_while_overlapping_from_the_side()
    {
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, new double[WheelSolid.BufferLength(6)]);
        double last = double.NaN;
        for (int k = 0; k <= 300; k++)
        {
            double a = InnerWall - 0.055 + (k * 2e-4);
            var tube = new CylinderObstacle(new(a, -0.05, 0.01), new Vec3(-0.1, 1, 0.02).Unit(), 0.4, 0.025);
            double gap = CylinderClearing.Of(wheel, tube).Gap;
            Assert.False(k > 0 && !(Math.Abs(gap - last) <= 2e-4 + 2e-6), $"step {k}: {last} to {gap}");
            last = gap;
        }
    }

    [Fact]
    public void The_hot_path_allocates_nothing()
    {
        PlanarStrutMotion motion = PlanarLinkageTests.StrutMotion();
        double sum = Once(motion, 0.01);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 50; i++)
        {
            sum += Once(motion, (i - 25) * 1e-3);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(double.IsFinite(sum));
    }

    private readonly struct TubeGap(CornerMotion motion, CylinderObstacle tubeInBody) : IFunctionOfOne
    {
        public double At(double travel)
        {
            Span<double> buffer = stackalloc double[WheelSolid.BufferLength(4)];
            WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 4, buffer);
            motion.WheelAt(travel, out WheelMotionState state);
            WheelPose pose = WheelPose.StraightAhead(new(0, 0.75, 0.31), WheelSide.Left, state, travel);
            return CylinderClearing.Of(wheel, tubeInBody.ToSpindle(SpindleFrame.Of(pose))).Gap;
        }
    }

    private static double Once(CornerMotion motion, double shift)
    {
        var gap = new TubeGap(motion, new(new(shift, 0.5, 0.4), Vec3.UnitZ, 0.3, 0.03));
        var (_, least) = GoldenSection.Least(gap, -0.06, 0.06, 1e-5);
        StrutLine line = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.008, 0.025, 0.1, 0);
        motion.StationAt(0.01, Station.Spring, out StationState station);
        return least + line.LowerReference.X + station.Length;
    }
}
