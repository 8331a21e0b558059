using Cornerwright.Mechanics.Numerics;


namespace Cornerwright.Mechanics.Tests.Numerics;

public sealed class RisingRootTests
{
    private readonly struct Function(Func<double, (double Value, double Slope)> f) : IRisingFunction
    {
        public double ValueAt(double x, out double slope)
        {
            (double value, slope) = f(x);
            return value;
        }
    }

    private static RisingRoot Find(
        Func<double, (double, double)> f, double target, double low = -1, double high = 1, double guess = 0, double accuracy = 1e-10) =>
        RisingRoot.Find(new Function(f), target, low, high, guess, accuracy);

    [Theory]
    [InlineData(-0.9)]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(0.999)]
    public void Finds_the_root_of_a_smooth_function(double root)
    {
        var found = Find(x => (Math.Sinh(3 * x), 3 * Math.Cosh(3 * x)), Math.Sinh(3 * root));
        Assert.Equal(RootStop.Converged, found.Why);
        Assert.Equal(root, found.X, 1e-9);
        Assert.InRange(found.Iterations, 1, 30);
    }

    // A stack that shuts and a stop that is met: corners, and a rate that grows a thousandfold.
    [Fact]
    public void Corners_do_not_lead_it_astray()
    {
        var random = new Random(8);
        for (int i = 0; i < 2_000; i++)
        {
            double first = (2 * random.NextDouble()) - 1, second = (2 * random.NextDouble()) - 1, root = (2 * random.NextDouble()) - 1;
            (double, double) F(double x) =>
                (x + (1000 * Math.Max(0, x - first)) + (30 * Math.Max(0, x - second)),
                1 + (x >= first ? 1000 : 0) + (x >= second ? 30 : 0));
            var found = Find(F, F(root).Item1, guess: random.NextDouble());
            Assert.Equal(RootStop.Converged, found.Why);
            Assert.Equal(root, found.X, 1e-6);
        }
    }

    [Fact]
    public void Outside_the_range_the_nearer_end_is_the_answer()
    {
        var below = Find(x => (x, 1), -2);
        var above = Find(x => (x, 1), 2);
        Assert.Equal((RootStop.BelowRange, -1.0), (below.Why, Math.Round(below.X, 9)));
        Assert.Equal((RootStop.AboveRange, 1.0), (above.Why, Math.Round(above.X, 9)));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void A_root_at_an_end_is_found(double end)
    {
        var found = Find(x => (x, 1), end);
        Assert.Equal(RootStop.Converged, found.Why);
        Assert.Equal(end, found.X, 1e-9);
    }

    [Fact]
    public void A_step_without_slope_is_halved_down_to()
    {
        var found = Find(x => (x < 0.25 ? 0 : 1, 0), 0.5);
        Assert.Equal(RootStop.Converged, found.Why);
        Assert.Equal(0.25, found.X, 1e-9);
    }

    // An accuracy that no halving reaches, asked of a step that never takes the value looked for.
    [Fact]
    public void It_stops_after_a_hundred_steps_and_says_so()
    {
        var found = Find(x => (x < 0.25 ? 0 : 1, 0), 0.5, accuracy: -1);
        Assert.Equal(RootStop.IterationLimit, found.Why);
        Assert.Equal(100, found.Iterations);
    }

    [Fact]
    public void No_number_is_no_root()
    {
        Assert.Equal(RootStop.NotFinite, Find(_ => (double.NaN, 1), 0).Why);
        Assert.Equal(RootStop.NotFinite, Find(x => x > 0.3 ? (double.PositiveInfinity, 1) : (x, 1), 0.5).Why);
    }
}
