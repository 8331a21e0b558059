using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Tests.Geometry;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

public class WheelFitTests(ITestOutputHelper output)
{
    private const int Seed = 20260923;

    private static readonly TyreSection Tyre = TyreSection.WithEstimates(-0.04, 0.2032, 0.178, 0.632, 0.205);
    private static readonly RimSection Rim = RimSection.WithEstimates(-0.04, 0.178, 0.2027);

    /// <summary>
    /// Random places, starts 10 mm and 1.5 degrees off, 0.8 mm of noise, an arch and spokes among the points, only the street half seen.
    /// </summary>
    [Fact]
    public void A_wheel_is_found_to_a_fraction_of_a_millimetre_and_says_how_well()
    {
        double[] buffer = new double[WheelSolid.BufferLength(12)];
        var solid = WheelSolid.Write(Tyre, Rim, 12, buffer);
        var random = new Random(Seed);
        double worst = 0, worstTurn = 0, worstShare = 0;
        for (int run = 0; run < 8; run++)
        {
            var place = RigidFitTests.RandomTransform(random);
            Vec3[] points = Scene(random, place, 0.0008);
            Vec3 spindle = place.Turn(Vec3.UnitX);
            Vec3 start = place.Shift + RigidFitTests.Noise(random, 0.006);
            var fit = WheelFit.Fit(solid, 0.36, points, start, (spindle + RigidFitTests.Noise(random, 0.015)).Unit());
            Assert.Equal(WheelFitStop.Fitted, fit.Why);
            double off = (fit.HubFace - place.Shift).Length, turn = fit.Spindle.Cross(spindle).Length;
            (worst, worstTurn) = (Math.Max(worst, off), Math.Max(worstTurn, turn));
            worstShare = Math.Max(worstShare, Math.Max(off, turn * 0.316) / fit.Doubt);
            Assert.InRange(fit.Deviation, 0.0005, 0.0016);
        }

        output.WriteLine(
            $"seed {Seed}: hub face within {worst * 1e3:0.00} mm, spindle within {worstTurn * 180 / Math.PI:0.000} deg, "
            + $"at most {worstShare:0.0} of the stated standard deviation");
        Assert.InRange(worst, 0, 0.001);
        Assert.InRange(worstTurn * 0.316, 0, 0.001);
        Assert.InRange(worstShare, 0, 3);
    }

    [Fact]
    public void Where_no_wheel_is_it_says_so()
    {
        double[] buffer = new double[WheelSolid.BufferLength(12)];
        var solid = WheelSolid.Write(Tyre, Rim, 12, buffer);
        var random = new Random(Seed + 1);
        Vec3[] cloud = [.. Enumerable.Range(0, 200).Select(_ => RigidFitTests.Noise(random, 2))];
        Assert.NotEqual(WheelFitStop.Fitted, WheelFit.Fit(solid, 0.36, cloud, default, Vec3.UnitY).Why);
        Assert.Equal(WheelFitStop.TooFew, WheelFit.Fit(solid, 0.36, [], default, Vec3.UnitY).Why);

        // A strip of tread round one hour says nothing of the wheel's place across.
        Vec3[] strip =
            [.. Enumerable.Range(0, 400).Select(i => new Vec3(-0.04, 0.316 * Math.Cos(0.01 * i / 400), 0.316 * Math.Sin(0.01 * i / 400)))];
        var little = WheelFit.Fit(solid, 0.36, strip, default, Vec3.UnitX);
        Assert.True(little.Why != WheelFitStop.Fitted || little.Doubt > 0.003);
    }

    // In the wheel's own frame a is X; the street half of the tyre, spokes, and an arch 40 mm beyond the tread.
    private static Vec3[] Scene(Random random, RigidTransform place, double noise)
    {
        Span<ProfilePoint> profile = stackalloc ProfilePoint[TyreProfile.PointCount(12)];
        int corners = TyreProfile.Write(Tyre, 12, profile);
        var points = new List<Vec3>();
        for (int i = 0; i < 3000; i++)
        {
            int k = random.Next((corners / 2) + 4);
            double share = random.NextDouble(), angle = 2 * Math.PI * random.NextDouble();
            double a = profile[k].A + (share * (profile[k + 1].A - profile[k].A)),
                r = profile[k].R + (share * (profile[k + 1].R - profile[k].R));
            points.Add(new(a, r * Math.Cos(angle), r * Math.Sin(angle)));
        }

        for (int i = 0; i < 1000; i++)
        {
            double angle = 2 * Math.PI * random.NextDouble(), r = 0.03 + (0.16 * random.NextDouble());
            points.Add(new(0.01, r * Math.Cos(angle), r * Math.Sin(angle)));
            double up = 2.4 * (random.NextDouble() - 0.5);
            points.Add(new(-0.2 + (0.25 * random.NextDouble()), 0.356 * Math.Cos(up), 0.356 * Math.Sin(up)));
        }

        return [.. points.Select(p => place.Apply(p) + RigidFitTests.Noise(random, noise))];
    }
}
