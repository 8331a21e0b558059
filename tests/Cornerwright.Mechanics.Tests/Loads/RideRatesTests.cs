using Cornerwright.Mechanics.Loads;
using MathNet.Numerics.LinearAlgebra;

namespace Cornerwright.Mechanics.Tests.Loads;

public sealed class RideRatesTests
{
    // Second way: a spring that runs from a body point to a point on a swinging arm; the force at the wheel is F·MR by
    // virtual work, and the wheel rate must be its numerical derivative.
    [Theory]
    [InlineData(-0.06)]
    [InlineData(0)]
    [InlineData(0.05)]
    public void Wheel_rate_is_the_slope_of_the_wheel_force(double travel)
    {
        const double k = 60_000, free = 0.40, arm = 0.4, seat = 0.25, top = 0.3;
        static double Length(double z)
        {
            double angle = Math.Asin(z / arm);
            return Math.Sqrt(Math.Pow((seat * Math.Cos(angle)) - 0.2, 2) + Math.Pow(top - (seat * Math.Sin(angle)), 2));
        }

        static double Ratio(double z) => -(Length(z + 1e-5) - Length(z - 1e-5)) / 2e-5;
        static double Force(double z) => k * (free - Length(z));

        double slope = (Ratio(travel + 1e-3) - Ratio(travel - 1e-3)) / 2e-3;
        double expected = ((Force(travel + 1e-4) * Ratio(travel + 1e-4)) - (Force(travel - 1e-4) * Ratio(travel - 1e-4))) / 2e-4;
        Assert.Equal(expected, RideRates.WheelRate(k, Ratio(travel), Force(travel), slope), 1e-3 * Math.Abs(expected));
        Assert.NotEqual(expected, RideRates.WheelRate(k, Ratio(travel)), 1e-2 * Math.Abs(expected));
    }

    [Fact]
    public void Frequency_of_a_sag_is_the_frequency_of_its_mass_on_its_rate()
    {
        double sag = RideRates.StaticDeflection(300 * RideRates.StandardGravity, 25_000);
        Assert.Equal(RideRates.BodyFrequency(25_000, 300), RideRates.FrequencyOfSag(sag), 1e-12);
    }

    [Fact]
    public void A_stiff_tyre_leaves_the_wheel_rate() =>
        Assert.Equal(25_000, RideRates.Series(25_000, 1e15), 1e-3);

    [Fact]
    public void Quarter_car_frequencies_agree_with_an_eigenvalue_solver()
    {
        const int seed = 99;
        var chance = new Random(seed);
        for (int i = 0; i < 200; i++)
        {
            double ms = 100 + (500 * chance.NextDouble()), mu = 15 + (60 * chance.NextDouble());
            double ks = 8_000 + (90_000 * chance.NextDouble()), kt = 120_000 + (250_000 * chance.NextDouble());
            var found = QuarterCar.Frequencies(ms, mu, ks, kt);
            double coupling = -ks / Math.Sqrt(ms * mu);   // mass-scaled, so that the matrix is symmetric
            var squares = Matrix<double>.Build.DenseOfArray(new[,] { { ks / ms, coupling }, { coupling, (ks + kt) / mu } })
                .Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).Order().ToArray();
            Assert.True(Math.Abs(found.Body - Math.Sqrt(squares[0])) < 1e-9 * found.Body, $"seed {seed}, case {i}");
            Assert.True(Math.Abs(found.Wheel - Math.Sqrt(squares[1])) < 1e-9 * found.Wheel, $"seed {seed}, case {i}");
        }
    }

    // Second way: turn the line from ball joint to top by the angle; its top must have moved by the shift.
    [Theory]
    [InlineData(0.010)]
    [InlineData(-0.015)]
    public void Sliding_a_strut_top_turns_the_strut_by_what_it_moved(double shift)
    {
        double angle = StrutTop.CamberLost(shift, 0.56);
        Assert.Equal(shift, 0.56 * Math.Sin(angle) / Math.Cos(angle), 1e-15);
        Assert.Equal(Math.Sign(shift), Math.Sign(angle));
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.Series(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.BodyFrequency(0, 300));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.StaticDeflection(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.FrequencyOfSag(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.WheelRate(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.WheelWeight(1500, 1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RideRates.WheelHopFrequency(1, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StrutTop.CamberLost(0.01, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StrutTop.CamberLost(double.NaN, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuarterCar.Frequencies(300, 0, 1, 1));
    }

    // By hand: √(200,000/40)/2π.
    [Fact]
    public void A_wheel_hops_on_spring_and_tyre_together() =>
        Assert.Equal(11.2540, RideRates.WheelHopFrequency(20e3, 180e3, 40), 5e-5);
}
