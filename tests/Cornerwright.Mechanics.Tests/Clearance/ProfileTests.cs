using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Cross-sections, their features and their distances.</summary>
public class ProfileTests
{
    [Fact]
    public void Tyre_polygons_are_convex_and_reach_what_was_measured()
    {
        var random = new Random(71);
        Span<ProfilePoint> corners = stackalloc ProfilePoint[TyreProfile.PointCount(8)];
        for (int run = 0; run < 500; run++)
        {
            var (tyre, _) = RandomCorner.Wheel(random);
            int n = TyreProfile.Write(tyre, 8, corners);
            Assert.Equal(TyreProfile.PointCount(8), n);
            double turned = 0;
            for (int i = 0; i < n; i++)
            {
                ProfilePoint p = corners[i], q = corners[(i + 1) % n], s = corners[(i + 2) % n];
                double ux = q.A - p.A, uy = q.R - p.R, vx = s.A - q.A, vy = s.R - q.R;
                double turn = Math.Atan2((ux * vy) - (uy * vx), (ux * vx) + (uy * vy));
                Assert.True(turn > -1e-9, $"seed 71, run {run}, corner {i} of {tyre}: turns back by {turn}");
                turned += turn;
            }

            Assert.Equal(2 * Math.PI, turned, 1e-9);
            var (most, least, top) = (corners.ToArray().Max(c => c.A), corners.ToArray().Min(c => c.A), corners.ToArray().Max(c => c.R));
            Assert.Equal(Math.Max(tyre.SectionWidth, tyre.BeadWidth), most - least, 1e-12);
            Assert.Equal(tyre.CrownRadius, top, 1e-12);
        }
    }

    [Fact]
    public void Convex_and_general_distances_agree()
    {
        var random = new Random(72);
        Span<ProfilePoint> corners = stackalloc ProfilePoint[TyreProfile.PointCount(6)];
        Span<double> buffer = stackalloc double[ConvexProfile.BufferLength(TyreProfile.PointCount(6))];
        for (int run = 0; run < 100; run++)
        {
            var (tyre, _) = RandomCorner.Wheel(random);
            TyreProfile.Write(tyre, 6, corners);
            ConvexProfile fast = ConvexProfile.Write(corners, buffer);
            var slow = new ProfilePolygon(corners);
            for (int k = 0; k < 200; k++)
            {
                double a = random.Between(-0.3, 0.3), r = random.Between(0, 0.5);
                double d = fast.SignedDistance(a, r, out double ga, out double gr);
                ProfileHit hit = slow.Nearest(a, r);
                Assert.Equal(hit.Distance, d, 1e-13);
                Assert.Equal(1, (ga * ga) + (gr * gr), 1e-9);
                Assert.Equal(0, slow.SignedDistance(a - (d * ga), r - (d * gr)), 1e-12);
            }
        }
    }

    [Fact]
    public void A_solid_disc_has_no_surface_on_its_own_axis()
    {
        // A disc 0.02 thick, radius 0.3, its section reaching the spindle: at the middle of it the nearest face is
        // 0.01 away, not the axis 0.
        ProfilePoint[] disc = [new(-0.01, 0), new(0.01, 0), new(0.01, 0.3), new(-0.01, 0.3)];
        Assert.Equal(-0.01, new ProfilePolygon(disc).SignedDistance(0, 0.001), 1e-15);
        Assert.Equal(0.04, new ProfilePolygon(disc).SignedDistance(0.05, 0), 1e-15);
        Assert.Equal(0.05, new ProfilePolygon(disc).SignedDistance(0.04, 0.34), 1e-15);
    }

    // Source: the geometry of offset: on one hub the outer lip moves out by (W2-W1)/2 - (ET2-ET1) + (s2-s1), the inner lip moves in by
    // (W2-W1)/2 + (ET2-ET1) - (s2-s1).
    [Theory]
    [InlineData(7.5, 45, 0, 8.5, 35, 0)]
    [InlineData(8, 35, 0, 9.5, 38, 5)]
    [InlineData(6, 40, 3, 6, 20, 0)]
    public void Lips_move_as_width_offset_and_spacer_say(double w1, double et1, double s1, double w2, double et2, double s2)
    {
        const double Inch = 0.0254, Mm = 1e-3;
        RimSection one = RimSection.WithEstimates(WheelPlacement.AxialCentre(et1 * Mm, s1 * Mm), w1 * Inch, 0.22);
        RimSection two = RimSection.WithEstimates(WheelPlacement.AxialCentre(et2 * Mm, s2 * Mm), w2 * Inch, 0.22);
        double outMove = ((w2 - w1) * Inch / 2) - ((et2 - et1) * Mm) + ((s2 - s1) * Mm);
        double inMove = ((w2 - w1) * Inch / 2) + ((et2 - et1) * Mm) - ((s2 - s1) * Mm);
        Assert.Equal(outMove, Lip(two, WheelFeature.RimOuterLip) - Lip(one, WheelFeature.RimOuterLip), 1e-12);
        Assert.Equal(-inMove, Lip(two, WheelFeature.RimInnerLip) - Lip(one, WheelFeature.RimInnerLip), 1e-12);

        Span<ProfilePoint> a = stackalloc ProfilePoint[RimProfile.PointCount], b = stackalloc ProfilePoint[RimProfile.PointCount];
        RimProfile.Write(one, a);
        RimProfile.Write(two, b);
        Assert.Equal(outMove, b.ToArray().Max(p => p.A) - a.ToArray().Max(p => p.A), 1e-12);
        Assert.Equal(inMove, a.ToArray().Min(p => p.A) - b.ToArray().Min(p => p.A), 1e-12);
    }

    [Fact]
    public void Features_are_corners_and_their_normals_point_to_the_nearest_way_out()
    {
        var random = new Random(73);
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(6)];
        for (int run = 0; run < 300; run++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelSolid bare = WheelSolid.Write(tyre, default, 6, buffer);
            foreach (WheelFeature feature in Enum.GetValues<WheelFeature>())
            {
                if (feature is WheelFeature.RimOuterLip or WheelFeature.RimInnerLip)
                {
                    continue;   // the tyre may stand nearer to a place measured from a lip
                }

                double gap = random.Between(0.001, 0.05);
                var reading = new GapReading(feature, GapDirection.Nearest, random.Between(0, 12), gap);
                Vec3 p = reading.InSpindle(tyre, rim);
                Assert.True(
                    Math.Abs(gap - bare.SignedDistance(p)) < 1e-12,
                    $"seed 73, run {run}: {feature} of {tyre}: {bare.SignedDistance(p)} for {gap}");
                Assert.Equal(0, bare.SignedDistance((reading with { Gap = 0 }).InSpindle(tyre, rim)), 1e-12);
            }
        }
    }

    [Fact]
    public void Distance_never_changes_by_more_than_the_point_moves()
    {
        var random = new Random(74);
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(4)];
        for (int run = 0; run < 200; run++)
        {
            var (tyre, rim) = RandomCorner.Wheel(random);
            WheelSolid wheel = WheelSolid.Write(tyre, rim, 4, buffer);
            for (int k = 0; k < 200; k++)
            {
                Vec3 p = new(random.Between(-0.3, 0.3), random.Between(-0.5, 0.5), random.Between(-0.5, 0.5));
                Vec3 q = p + (RandomCorner.Direction(random) * Math.Pow(10, random.Between(-6, -0.5)));
                Assert.True(
                    Math.Abs(wheel.SignedDistance(p) - wheel.SignedDistance(q)) <= (p - q).Length + 1e-13,
                    $"seed 74, run {run}: {p} to {q}");
            }
        }
    }

    [Fact]
    public void A_section_that_makes_no_tyre_is_refused()
    {
        var tyre = TyreSection.WithEstimates(0, 0.2, 0.2, 0.62, 0.22);
        Assert.True(tyre.IsSound);
        Assert.False((tyre with { TreadWidth = 0.25 }).IsSound);
        Assert.False((tyre with { OuterDiameter = 0.39 }).IsSound);
        Assert.False((tyre with { ShoulderDrop = double.NaN }).IsSound);
        Assert.False((tyre with { SectionWidth = double.PositiveInfinity }).IsSound);
        Assert.Throws<ArgumentOutOfRangeException>(() => TyreProfile.Write(tyre with { BeadWidth = -1 }, 4, new ProfilePoint[200]));
        Assert.Throws<ArgumentOutOfRangeException>(() => TyreProfile.Write(tyre, 3, new ProfilePoint[200]));
        Assert.False(default(RimSection).IsSound);
    }

    private static double Lip(in RimSection rim, WheelFeature feature) => WheelFeatures.At(default, rim, feature).At.A;
}
