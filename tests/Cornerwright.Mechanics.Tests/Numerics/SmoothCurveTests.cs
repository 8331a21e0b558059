using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class SmoothCurveTests
{
    [Fact]
    public void A_cubic_given_exactly_comes_back_with_its_derivatives()
    {
        double[] at = [-0.11, -0.07, -0.03, 0.01, 0.05, 0.09, 0.13];
        static double Y(double z) => 0.269 - (0.62 * z) - (0.15 * z * z) + (0.8 * z * z * z);
        var curve = SmoothCurve.Create(at, [.. at.Select(Y)])!;
        foreach (double z in new[] { -0.11, -0.02, 0, 0.04, 0.13 })
        {
            var (value, first, second) = curve.At(z);
            Assert.Equal(Y(z), value, 1e-12);
            Assert.Equal(-0.62 - (0.3 * z) + (2.4 * z * z), first, 1e-10);
            Assert.Equal(-0.3 + (4.8 * z), second, 1e-8);
        }
    }

    // Against a general-purpose library: MathNet.Numerics 5.0.0, Fit.Polynomial (QR decomposition).
    [Fact]
    public void Least_squares_agree_with_a_general_library()
    {
        const int Seed = 20261125;
        var random = new Random(Seed);
        for (int k = 0; k < 200; k++)
        {
            int n = random.Next(5, 14);
            double z = -0.1 - (0.1 * random.NextDouble());
            double[] at = [.. Enumerable.Range(0, n).Select(_ => z += 0.01 + (0.03 * random.NextDouble()))];
            double[] value = [.. at.Select(_ => random.NextDouble())];
            var curve = SmoothCurve.Create(at, value)!;
            double[] p = Fit.Polynomial(at, value, 3);
            double middle = (at[0] + at[^1]) / 2;
            Assert.Equal(Polynomial.Evaluate(middle, p), curve.At(middle).Value, 1e-9);
            Assert.Equal(Polynomial.Evaluate(at[1], p), curve.At(at[1]).Value, 1e-9);
        }
    }

    // Common practice, no source: half a millimetre of error at seven steps of 40 mm. The fitted slope must be at least
    // twice as good as the slope of a curve through the readings.
    [Fact]
    public void Errors_of_the_readings_average_out_of_the_slope()
    {
        const int Seed = 7;
        var random = new Random(Seed);
        double[] at = [-0.11, -0.07, -0.03, 0.01, 0.05, 0.09, 0.13];
        double smooth = 0, through = 0;
        for (int k = 0; k < 400; k++)
        {
            double[] value = [.. at.Select(z => 0.269 - (0.62 * z) + (0.0005 * ((2 * random.NextDouble()) - 1)))];
            smooth += Math.Pow(SmoothCurve.Create(at, value)!.At(-0.015).First + 0.62, 2);
            through += Math.Pow(MonotoneCurve.Create(at, value, out _)!.At(-0.015).First + 0.62, 2);
        }

        Assert.True(smooth < through / 4, $"variance of the slope: {smooth / 400:E2} among, {through / 400:E2} through");
    }

    [Fact]
    public void Beyond_the_readings_the_end_goes_on_straight()
    {
        double[] at = [0, 1, 2, 3, 4];
        var curve = SmoothCurve.Create(at, [0, 1, 4, 9, 16])!;
        var (value, first, second) = curve.At(5);
        Assert.Equal(16 + 8, value, 1e-9);
        Assert.Equal(8, first, 1e-9);
        Assert.Equal(0, second);
    }

    [Theory]
    [InlineData(new double[] { 0, 1, 2, 3 })]
    [InlineData(new double[] { 0, 1, 1, 2, 3 })]
    [InlineData(new double[] { 0, 1, 2, double.NaN, 3 })]
    public void Too_few_or_unordered_readings_make_no_curve(double[] at) =>
        Assert.Null(SmoothCurve.Create(at, at));
}
