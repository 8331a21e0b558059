using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Mechanics.Tests.Clearance;

public class TravelSweepTests
{
    private readonly struct Gap(Func<double, double> f) : IGapOfTravel
    {
        public double GapAt(double travel) => f(travel);
    }

    [Theory]
    [InlineData(0.0123)]
    [InlineData(-0.08)]
    [InlineData(0.09)]
    [InlineData(0.0899)]
    public void A_smooth_valley_is_found_to_a_hundredth_of_a_millimetre(double where)
    {
        var gap = new Gap(z => 0.01 + (3 * (z - where) * (z - where)));
        SweepLeast least = TravelSweep.Least(ref gap, -0.08, 0.09);
        Assert.Equal(0.01, least.Gap, 1e-8);
        Assert.Equal(where, least.Travel, 1e-4);
        Assert.True(least.Complete);
        Assert.Equal(double.NegativeInfinity, least.LowerBound);
    }

    [Fact]
    public void A_kink_between_samples_is_found_and_the_proof_holds()
    {
        var random = new Random(91);
        for (int run = 0; run < 100; run++)
        {
            // Least of three random folds, each with slope at most 1.
            var (a, b, c) = (random.Between(-0.08, 0.08), random.Between(-0.08, 0.08), random.Between(-0.08, 0.08));
            var (p, q, r) = (random.Between(0, 0.02), random.Between(0, 0.02), random.Between(0, 0.02));
            Func<double, double> f = z => Math.Min(p + Math.Abs(z - a), Math.Min(q + (0.8 * Math.Abs(z - b)), r + (0.6 * Math.Abs(z - c))));
            var gap = new Gap(f);
            SweepLeast proved = TravelSweep.Least(ref gap, -0.08, 0.08, lipschitz: 1);
            double truth = Math.Min(f(a), Math.Min(f(b), f(c)));
            Assert.True(proved.Complete, $"seed 91, run {run}: {proved}");
            Assert.InRange(proved.Gap, truth, truth + 1e-5);
            Assert.InRange(proved.LowerBound, truth - 1e-5, truth + 1e-5);
        }
    }

    [Fact]
    public void A_gap_that_is_no_number_is_reported_and_bad_ranges_are_refused()
    {
        var gap = new Gap(z => z > 0.05 ? double.NaN : 0.01 + z);
        Assert.False(TravelSweep.Least(ref gap, 0, 0.1).Complete);
        Assert.Throws<ArgumentOutOfRangeException>(() => { var g = new Gap(z => z); TravelSweep.Least(ref g, 0.1, 0); });
        Assert.Throws<ArgumentOutOfRangeException>(() => { var g = new Gap(z => z); TravelSweep.Least(ref g, double.NaN, 0); });
        var flat = new Gap(_ => 0.02);
        Assert.Equal(0.02, TravelSweep.Least(ref flat, 0.01, 0.01).Gap);
    }
}
