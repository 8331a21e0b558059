using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.Interpolation;

namespace Cornerwright.Mechanics.Tests.Motion;

/// <summary>Tables of readings, and the agreement of the levels with each other.</summary>
public class CycledMotionTests
{
    private static readonly double[] Steps = [-0.08, -0.06, -0.04, -0.02, 0, 0.02, 0.04, 0.06, 0.08];

    [Fact]
    public void Curve_agrees_with_the_pchip_of_MathNet()
    {
        // Peer: MathNet.Numerics 5.0.0, CubicSpline.InterpolatePchipSorted.
        var random = new Random(20260);
        for (int run = 0; run < 200; run++)
        {
            int n = random.Next(3, 12);
            var x = new double[n];
            var y = new double[n];
            for (int i = 0; i < n; i++)
            {
                x[i] = (i > 0 ? x[i - 1] : -0.1) + 0.002 + (0.02 * random.NextDouble());
                y[i] = 0.5 + (0.2 * random.NextDouble());
            }

            MonotoneCurve curve = MonotoneCurve.Create(x, y, out CurveFault fault)!;
            Assert.Equal(CurveFault.None, fault);
            CubicSpline peer = CubicSpline.InterpolatePchipSorted(x, y);
            for (int k = 0; k <= 60; k++)
            {
                double at = Math.Min(x[0] + ((x[^1] - x[0]) * k / 60), x[^1]);
                var (value, first, second) = curve.At(at);
                Assert.Equal(peer.Interpolate(at), value, 1e-12);
                Assert.Equal(peer.Differentiate(at), first, 1e-9);
                if (!x.Contains(at))
                {
                    Assert.Equal(peer.Differentiate2(at), second, 1e-6);
                }
            }
        }
    }

    [Fact]
    public void Curve_never_turns_where_the_readings_do_not()
    {
        var random = new Random(4471);
        for (int run = 0; run < 300; run++)
        {
            int n = random.Next(2, 10);
            var x = new double[n];
            var y = new double[n];
            for (int i = 1; i < n; i++)
            {
                x[i] = x[i - 1] + 0.001 + random.NextDouble();
                y[i] = y[i - 1] - (random.Next(3) == 0 ? 0 : Math.Pow(random.NextDouble(), 4));
            }

            MonotoneCurve curve = MonotoneCurve.Create(x, y, out _)!;
            double last = curve.At(x[0]).Value;
            for (int k = 1; k <= 400; k++)
            {
                var (value, first, _) = curve.At(x[0] + ((x[^1] - x[0]) * k / 400));
                Assert.True(value <= last + 1e-13, $"seed 4471, run {run}: rose from {last} to {value}");
                Assert.True(first <= 1e-9, $"seed 4471, run {run}: slope {first}");
                last = value;
            }
        }
    }

    [Theory]
    [InlineData(new[] { 0.0 }, new[] { 1.0 }, CurveFault.TooFewPoints)]
    [InlineData(new[] { 0.0, 1.0 }, new[] { 1.0 }, CurveFault.LengthsDiffer)]
    [InlineData(new[] { 0.0, 0.0 }, new[] { 1.0, 2.0 }, CurveFault.NotIncreasing)]
    [InlineData(new[] { 0.0, double.NaN }, new[] { 1.0, 2.0 }, CurveFault.NotFinite)]
    public void Readings_that_make_no_curve_are_named(double[] x, double[] y, CurveFault expected)
    {
        Assert.Null(MonotoneCurve.Create(x, y, out CurveFault fault));
        Assert.Equal(expected, fault);
    }

    [Fact]
    public void Outside_the_readings_is_flagged_within_the_margin_and_refused_beyond()
    {
        CycledMotion motion = Cycle(PlanarLinkageTests.StrutMotion(), margin: 0.005);
        Assert.Equal(Reach.Reached, motion.StationAt(0.08, Station.Spring, out StationState end));
        Assert.Equal(Reach.Extrapolated, motion.StationAt(0.084, Station.Spring, out StationState beyond));
        Assert.Equal(end.Length - (0.004 * end.MotionRatio), beyond.Length, 1e-12);
        Assert.Equal(Reach.OutsideReadings, motion.StationAt(0.086, Station.Spring, out _));
        Assert.Equal(Reach.OutsideReadings, motion.WheelAt(-0.2, out WheelMotionState none));
        Assert.Equal(default, none);
        Assert.Equal(Reach.NotGiven, motion.StationAt(0, Station.Damper, out _));
        Assert.Equal(Reach.NotFinite, motion.StationAt(double.NaN, Station.Spring, out _));
    }

    [Fact]
    public void The_levels_agree_on_one_invented_strut()
    {
        // Truth: the planar strut. Cycled every 20 mm it returns within a tenth of a millimetre and 1.5 % of ratio between the steps.
        PlanarStrutMotion truth = PlanarLinkageTests.StrutMotion();
        CycledMotion cycled = Cycle(truth, 0.01);
        truth.StationAt(0, Station.Spring, out StationState s0);
        double gain = Slope(truth);
        truth.WheelAt(0, out WheelMotionState w0);
        var ratio = new RatioMotion(new RatioWheel(w0.Camber, gain), new RatioStation(s0.Length, s0.MotionRatio, s0.MotionRatioSlope));
        for (double z = -0.08; z <= 0.0801; z += 0.0037)
        {
            truth.StationAt(z, Station.Spring, out StationState t);
            truth.WheelAt(z, out WheelMotionState wt);
            Assert.Equal(Reach.Reached, cycled.StationAt(z, Station.Spring, out StationState c));
            Assert.Equal(Reach.Reached, ratio.StationAt(z, Station.Damper, out StationState r));
            Assert.Equal(Reach.Reached, cycled.WheelAt(z, out WheelMotionState wc));
            Assert.Equal(t.Length, c.Length, 1e-4);
            Assert.Equal(t.MotionRatio, c.MotionRatio, 0.015);
            Assert.Equal(wt.Camber, wc.Camber, 2e-4);
            Assert.Equal(wt.LateralShift, wc.LateralShift, 2e-4);

            // A Taylor series to second order: what is left grows with the cube of travel.
            Assert.True(Math.Abs(t.Length - r.Length) <= 0.7 * Math.Abs(z * z * z) + 1e-12, $"z {z}: {t.Length - r.Length}");
            Assert.True(Math.Abs(t.MotionRatio - r.MotionRatio) <= 2.1 * z * z + 1e-12, $"z {z}: {t.MotionRatio - r.MotionRatio}");
        }
    }

    [Fact]
    public void Ratio_level_is_its_own_series()
    {
        var motion = new RatioMotion(
            new RatioWheel(Camber: -0.01, CamberGain: -0.3, CamberCurve: 2, Toe: 0.002, ToeGain: 0.05, LateralGain: -0.1),
            new RatioStation(0.30, 0.70, 0.5),
            new RatioStation(0.45, 0.92, 0));
        Assert.Equal(Reach.Reached, motion.WheelAt(0.05, out WheelMotionState w));
        Assert.Equal(-0.01 - 0.015 + 0.0025, w.Camber, 1e-15);
        Assert.Equal(0.0045, w.Toe, 1e-15);
        Assert.Equal(-0.005, w.LateralShift, 1e-15);
        motion.StationAt(0.05, Station.Spring, out StationState s);
        Assert.Equal(0.30 - 0.035 - 0.000625, s.Length, 1e-15);
        Assert.Equal(0.725, s.MotionRatio, 1e-15);
        Assert.Equal(0.5, s.MotionRatioSlope);
        motion.StationAt(0.05, Station.Damper, out StationState d);
        Assert.Equal(0.404, d.Length, 1e-15);
        Assert.Equal(Reach.NotFinite, motion.WheelAt(double.PositiveInfinity, out _));
    }

    private static double Slope(CornerMotion motion)
    {
        motion.WheelAt(1e-4, out WheelMotionState up);
        motion.WheelAt(-1e-4, out WheelMotionState down);
        return (up.Camber - down.Camber) / 2e-4;
    }

    private static CycledMotion Cycle(CornerMotion truth, double margin)
    {
        var (length, camber, toe, lateral) =
            (new double[Steps.Length], new double[Steps.Length], new double[Steps.Length], new double[Steps.Length]);
        for (int i = 0; i < Steps.Length; i++)
        {
            truth.StationAt(Steps[i], Station.Spring, out StationState s);
            truth.WheelAt(Steps[i], out WheelMotionState w);
            (length[i], camber[i], toe[i], lateral[i]) = (s.Length, w.Camber, w.Toe, w.LateralShift + 0.123);
        }

        return new(Curve(camber), Curve(toe), Curve(lateral), Curve(length), null, margin);
    }

    private static MonotoneCurve Curve(double[] y) => MonotoneCurve.Create(Steps, y, out _)!;
}
