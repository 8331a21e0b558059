using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class ChebyshevCurveTests
{
    // T2 = 2t² - 1 over (-1, 1) at cos(5π/6), cos(3π/6), cos(π/6): by hand ½, -1, ½.
    [Fact]
    public void Three_points_by_hand()
    {
        double[] at = ChebyshevCurve.Points(-1, 1, 3);
        Assert.Equal(-Math.Sqrt(3) / 2, at[0], 1e-15);
        Assert.Equal(0, at[1], 1e-15);
        Assert.Equal(Math.Sqrt(3) / 2, at[2], 1e-15);
        var curve = ChebyshevCurve.Through(-1, 1, [0.5, -1, 0.5]);
        foreach (double t in new[] { -1, -0.3, 0, 0.7, 1 })
        {
            var (value, first, second) = curve.At(t);
            Assert.Equal((2 * t * t) - 1, value, 1e-14);
            Assert.Equal(4 * t, first, 1e-14);
            Assert.Equal(4, second, 1e-13);
        }
    }

    // Any polynomial of a degree below the number of points comes back with both derivatives: Horner as the second way.
    [Theory]
    [InlineData(4)]
    [InlineData(9)]
    [InlineData(16)]
    [InlineData(17)]
    [InlineData(20)]
    public void A_polynomial_comes_back_with_its_derivatives(int count)
    {
        var random = new RandomMatrix(count);
        double[] c = random.Row(count);
        (double V, double D, double DD) Horner(double x)
        {
            double v = 0, d = 0, dd = 0;
            foreach (double a in c.Reverse())
            {
                (dd, d, v) = ((dd * x) + (2 * d), (d * x) + v, (v * x) + a);
            }

            return (v, d, dd);
        }

        const double Start = -0.6, End = 0.9;
        double[] at = ChebyshevCurve.Points(Start, End, count);
        Assert.Equal(at.Order(), at);
        Assert.Equal(count, at.Length);
        var curve = ChebyshevCurve.Through(Start, End, [.. at.Select(x => Horner(x).V)]);
        for (double x = Start; x <= End; x += 0.05)
        {
            var (v, d, dd) = Horner(x);
            var found = curve.At(x);
            Assert.Equal(v, found.Value, 1e-12);
            Assert.Equal(d, found.First, 1e-10);
            Assert.Equal(dd, found.Second, 1e-8);
        }
    }

    // Trefethen (2013), ch. 8: for a function analytic in the ellipse of sum ρ the error falls as ρ⁻ⁿ. 1/(1 + 25x²): ρ = 1.2198.
    [Fact]
    public void The_error_falls_as_the_book_says()
    {
        const double Rho = 1.2198;
        double Worst(int n)
        {
            double[] at = ChebyshevCurve.Points(-1, 1, n);
            var curve = ChebyshevCurve.Through(-1, 1, [.. at.Select(x => 1 / (1 + (25 * x * x)))]);
            return Enumerable.Range(0, 1001).Max(
                i => Math.Abs(curve.At((i / 500.0) - 1).Value - (1 / (1 + (25 * ((i / 500.0) - 1) * ((i / 500.0) - 1))))));
        }

        double fall = Worst(41) / Worst(21);
        Assert.Equal(Math.Pow(Rho, -20), fall, 0.3 * Math.Pow(Rho, -20));
    }

    [Fact]
    public void Beyond_the_ends_it_goes_on_straight()
    {
        double[] at = ChebyshevCurve.Points(0, 2, 5);
        var curve = ChebyshevCurve.Through(0, 2, [.. at.Select(x => x * x)]);
        Assert.Equal((0, 2), (curve.Start, curve.End));
        var above = curve.At(3);
        Assert.Equal(4 + 4, above.Value, 1e-12);
        Assert.Equal(4, above.First, 1e-12);
        Assert.Equal(0, above.Second);
        var below = curve.At(-1);
        Assert.Equal(0, below.Value, 1e-12);
        Assert.Equal(0, below.First, 1e-12);
        Assert.Equal(0, below.Second);
        Assert.Equal(2, curve.At(2).Second, 1e-11);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ChebyshevCurve.Points(1, 1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChebyshevCurve.Points(0, double.NaN, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChebyshevCurve.Points(0, 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChebyshevCurve.Through(0, 1, [1, double.NaN, 3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChebyshevCurve.Through(1, 0, [1, 2, 3]));
    }
}
