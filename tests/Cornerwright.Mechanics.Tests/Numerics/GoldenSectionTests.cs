using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics;

namespace Cornerwright.Mechanics.Tests.Numerics;

public class GoldenSectionTests
{
    private sealed class Counted(Func<double, double> f)
    {
        public int Asked { get; private set; }

        public double At(double x)
        {
            Asked++;
            return f(x);
        }
    }

    private readonly struct Function(Counted counted) : IFunctionOfOne
    {
        public double At(double x) => counted.At(x);
    }

    private static (double X, double Value) Least(Func<double, double> f, double low, double high, double accuracy) =>
        GoldenSection.Least(new Function(new(f)), low, high, accuracy);

    // By hand: 3(x - w)² + 0.01 is least at w; a corner |x - w| too; at an end the place stays within the accuracy of it.
    [Theory]
    [InlineData(0.0123)]
    [InlineData(-0.0799)]
    [InlineData(-0.08)]
    [InlineData(0.09)]
    public void A_valley_is_found_wherever_it_lies(double where)
    {
        var smooth = Least(x => 0.01 + (3 * (x - where) * (x - where)), -0.08, 0.09, 1e-7);
        Assert.Equal(where, smooth.X, 2e-7);
        Assert.Equal(0.01, smooth.Value, 1e-12);
        var corner = Least(x => Math.Abs(x - where), -0.08, 0.09, 1e-9);
        Assert.Equal(where, corner.X, 2e-9);
        Assert.Equal(Math.Abs(corner.X - where), corner.Value);
    }

    // MathNet.Numerics 5.0.0's own search as the second way.
    [Fact]
    public void Agrees_with_MathNet()
    {
        const int Seed = 20261205;
        var random = new Random(Seed);
        for (int k = 0; k < 100; k++)
        {
            double w = random.NextDouble(), c = 0.5 + random.NextDouble();
            double F(double x) => Math.Cosh(c * (x - w));
            double peer = FindMinimum.OfScalarFunctionConstrained(F, -1, 2, 1e-9);
            Assert.Equal(peer, Least(F, -1, 2, 1e-9).X, 1e-6);
        }
    }

    // 0.618ⁿ: from 1 to 1e-6 in 29 steps and two values to begin with.
    [Fact]
    public void One_value_a_step_and_not_more_than_promised()
    {
        var counted = new Counted(x => x * x);
        GoldenSection.Least(new Function(counted), -0.4, 0.6, 1e-6);
        Assert.Equal(2 + 29, counted.Asked);
        var endless = new Counted(x => x * x);
        GoldenSection.Least(new Function(endless), -0.4, 0.6, 0);
        Assert.Equal(2 + 60, endless.Asked);
    }

    [Fact]
    public void What_is_no_number_is_left_behind()
    {
        Assert.Equal(0.2, Least(x => x > 0.5 ? double.NaN : Math.Abs(x - 0.2), 0, 1, 1e-6).X, 1e-5);
        Assert.Equal(0.8, Least(x => x < 0.5 ? double.NaN : Math.Abs(x - 0.8), 0, 1, 1e-6).X, 1e-5);
    }
}
