using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Fit;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Fits of rough points to readings made up from points that are known.</summary>
public class HardpointFitTests(ITestOutputHelper output)
{
    private const double Minute = Math.PI / 180 / 60;
    private static readonly double[] Travels = [-0.06, -0.045, -0.03, -0.015, 0, 0.015, 0.03, 0.045, 0.06];

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Rough points round the true ones: each coordinate off by a standard deviation, cut off at two.</summary>
    private static CornerLinkage Rough(CornerLinkage truth, double deviation, Random random)
    {
        double Off() => deviation * Math.Clamp(Normal(random), -1.9, 1.9);
        return truth.WithJointsAt([.. truth.Joints.Select(joint => joint.At + new Vec3(Off(), Off(), Off()))]);
    }

    private static List<FitReading> Readings(CornerLinkage truth, double camber, double shift, double length, Random? noise)
    {
        var readings = new List<FitReading>();
        foreach (double z in Travels)
        {
            TraceState s = LinkageTrace.At(truth, z);
            void Add(TraceQuantity quantity, double value, double deviation) =>
                readings.Add(new(quantity, z, value + (noise is null ? 0 : deviation * Normal(noise)), deviation));
            Add(TraceQuantity.Camber, s.Camber, camber);
            Add(TraceQuantity.Toe, s.Toe, camber);
            Add(TraceQuantity.Outboard, s.Outboard, shift);
            Add(TraceQuantity.DamperLength, s.Damper.Length, length);
        }

        return readings;
    }

    private static Vec3[] Tolerances(CornerLinkage linkage, double tolerance) =>
        [.. linkage.Joints.Select(_ => new Vec3(tolerance, tolerance, tolerance))];

    private static double CamberError(CornerLinkage linkage, CornerLinkage truth) =>
        Math.Sqrt(Travels.Average(z => Math.Pow(LinkageTrace.At(linkage, z).Camber - LinkageTrace.At(truth, z).Camber, 2)));

    [Theory]
    [InlineData("M1")]
    [InlineData("W1")]
    [InlineData("F1")]
    public void The_fit_knows_the_camber_curve_better_than_the_rough_points(string id)
    {
        const int Seed = 4711, Rounds = 8;
        var random = new Random(Seed);
        CornerLinkage truth = TracedCorners.Linkage(id);
        double rough2 = 0, fitted2 = 0, misfit = 0;
        int readings = 0, covered = 0, coordinates = 0;
        for (int round = 0; round < Rounds; round++)
        {
            CornerLinkage rough = Rough(truth, 0.003, random);
            List<FitReading> read = Readings(truth, 2 * Minute, 0.0003, 0.0003, random);
            HardpointFitResult fit = HardpointFit.Fit(rough, Tolerances(rough, 0.006), read);
            Assert.True(fit.Why == FitStop.Converged, $"seed {Seed}, {id}, round {round}: {fit.Why} after {fit.Iterations}");
            rough2 += Math.Pow(CamberError(rough, truth), 2);
            fitted2 += Math.Pow(CamberError(fit.Linkage, truth), 2);
            misfit += fit.MisfitPerReading * read.Count;
            readings += read.Count;
            for (int i = 0; i < fit.Joints.Count; i++)
            {
                Vec3 off = truth.Joints[i].At - fit.Linkage.Joints[i].At, sigma = fit.Joints[i].Deviation;
                Assert.True(
                    Math.Max(
                        Math.Abs(fit.Joints[i].Moved.X),
                        Math.Max(Math.Abs(fit.Joints[i].Moved.Y), Math.Abs(fit.Joints[i].Moved.Z))) <= 0.006 + 1e-12);
                Assert.All(new[] { sigma.X, sigma.Y, sigma.Z }, s => Assert.InRange(s, 1e-6, 0.003 + 1e-12));
                covered += new[] { off.X / sigma.X, off.Y / sigma.Y, off.Z / sigma.Z }.Count(x => Math.Abs(x) <= 2);
                coordinates += 3;
            }
        }

        string said =
            $"seed {Seed}, {id}: rough {Math.Sqrt(rough2 / Rounds) / Minute:f2}', "
            + $"fitted {Math.Sqrt(fitted2 / Rounds) / Minute:f2}', misfit {misfit / readings:f3}, covered {covered}/{coordinates}";
        output.WriteLine(said);
        Assert.True(fitted2 < 0.1 * rough2, said);

        // 288 readings: chi-square over its mean is 1 ± 0.083; the points were cut off at 1.9 deviations, which takes a little away.
        Assert.True(misfit / readings is > 0.65 and < 1.3, said);
        Assert.True(covered > 0.9 * coordinates, said);
    }

    [Fact]
    public void A_wrong_reading_is_named()
    {
        const int Seed = 99;
        var random = new Random(Seed);
        CornerLinkage truth = TracedCorners.Linkage("W1"), rough = Rough(truth, 0.002, random);
        List<FitReading> read = Readings(truth, 2 * Minute, 0.0003, 0.0003, random);
        HardpointFitResult clean = HardpointFit.Fit(rough, Tolerances(rough, 0.004), read);
        Assert.Null(clean.Outlier);

        // Camber at 30 mm droop read twenty minutes off.
        int wrong = read.FindIndex(r => r.Quantity == TraceQuantity.Camber && r.Travel == -0.03);
        read[wrong] = read[wrong] with { Value = read[wrong].Value + (20 * Minute) };
        HardpointFitResult fit = HardpointFit.Fit(rough, Tolerances(rough, 0.004), read);
        Assert.Equal(wrong, fit.Outlier);
        Assert.True(
            fit.MisfitPerReading > 1.5 * clean.MisfitPerReading, $"seed {Seed}: {fit.MisfitPerReading} and {clean.MisfitPerReading}");
        Assert.InRange(fit.Readings[wrong].After, 5 * Minute, 25 * Minute);
    }

    [Fact]
    public void Perfect_readings_of_the_truth_leave_it_alone()
    {
        CornerLinkage truth = TracedCorners.Linkage("M1");
        HardpointFitResult fit = HardpointFit.Fit(truth, Tolerances(truth, 0.004), Readings(truth, Minute, 0.0002, 0.0002, null));
        Assert.Equal(FitStop.Converged, fit.Why);
        Assert.All(fit.Joints, joint => Assert.True(joint.Moved.Length < 1e-10 && !joint.AtLimit));
        Assert.Null(fit.Outlier);
        Assert.True(fit.MisfitPerReading < 1e-12);
    }

    [Fact]
    public void A_coordinate_that_wants_past_its_tolerance_stays_at_it()
    {
        CornerLinkage truth = TracedCorners.Linkage("W1");
        int ball = truth.Joints.ToList().FindIndex(joint => joint.Name == "upper front");
        CornerLinkage rough = truth.WithJointsAt([.. truth.Joints.Select((j, i) => i == ball ? j.At + new Vec3(0, 0, 0.012) : j.At)]);
        Vec3[] tolerances = [.. truth.Joints.Select((_, i) => i == ball ? new Vec3(0, 0, 0.004) : default)];
        HardpointFitResult fit = HardpointFit.Fit(rough, tolerances, Readings(truth, 0.2 * Minute, 0.0001, 0.0001, null));
        Assert.Equal(FitStop.Converged, fit.Why);
        Assert.True(fit.Joints[ball].AtLimit);
        Assert.Equal(new Vec3(0, 0, -0.004).Z, fit.Joints[ball].Moved.Z, 1e-12);
        Assert.True(fit.MisfitPerReading > 5);
        Assert.All(fit.Joints.Where((_, i) => i != ball), joint => Assert.Equal(default, joint.Moved));
    }

    [Fact]
    public void The_angles_of_the_reference_state_may_be_fitted_too()
    {
        CornerLinkage truth = TracedCorners.Linkage("M1");
        CornerLinkage rough = truth with { Camber = truth.Camber + (10 * Minute), Toe = truth.Toe - (5 * Minute) };
        HardpointFitResult fit = HardpointFit.Fit(
            rough, Tolerances(truth, 0), Readings(truth, 0.2 * Minute, 0.0001, 0.0001, null), angleTolerance: 30 * Minute);
        Assert.Equal(FitStop.Converged, fit.Why);
        Assert.Equal(truth.Camber, fit.Linkage.Camber, 0.02 * Minute);
        Assert.Equal(truth.Toe, fit.Linkage.Toe, 0.02 * Minute);
    }

    [Fact]
    public void Says_why_nothing_was_fitted()
    {
        CornerLinkage rough = TracedCorners.Linkage("W1");
        Vec3[] tolerances = Tolerances(rough, 0.003);
        FitReading far = new(TraceQuantity.Camber, 0.9, 0, Minute);
        Assert.Equal(FitStop.NothingToFit, HardpointFit.Fit(rough, tolerances, []).Why);
        Assert.Equal(FitStop.NothingToFit, HardpointFit.Fit(rough, Tolerances(rough, 0), [far]).Why);
        HardpointFitResult fit = HardpointFit.Fit(rough, tolerances, [far]);
        Assert.Equal(FitStop.RoughCannotReach, fit.Why);
        Assert.Same(rough, fit.Linkage);

        Assert.Throws<ArgumentException>(() => HardpointFit.Fit(rough, [], [far]));
        Assert.Throws<ArgumentException>(() => HardpointFit.Fit(rough, tolerances, [far with { Quantity = TraceQuantity.SpringRatio }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HardpointFit.Fit(rough, tolerances, [far with { Deviation = 0 }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HardpointFit.Fit(rough, tolerances, [far with { Value = double.NaN }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HardpointFit.Fit(rough, Tolerances(rough, double.NaN), [far]));
    }
}
