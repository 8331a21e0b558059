using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Mechanics.Tests.Springs;

public sealed class SpringBucklingTests
{
    private const double G = 79.5e9;
    private const double E = 206e9;

    // Source of the second writing: Shigley, 10th ed., eq. 10-10: y = L0 C1 [1 - √(1 - C2/λ²)], λ = α L0/D,
    // C1 = E/(2(E-G)), C2 = 2π²(E-G)/(2G+E).
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.7)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_standard_and_the_textbook_write_one_formula(double nu)
    {
        const double d = 0.06;
        foreach (double free in new[] { 0.1, 0.2, 0.3, 0.4, 0.6, 1.0 })
        {
            double slim = nu * free / d, c1 = E / (2 * (E - G)), c2 = 2 * Math.PI * Math.PI * (E - G) / ((2 * G) + E);
            double? standard = SpringBuckling.CriticalDeflection(free, d, nu, G, E);
            if (c2 / (slim * slim) > 1)
            {
                Assert.Null(standard);
            }
            else
            {
                Assert.Equal(free * c1 * (1 - Math.Sqrt(1 - (c2 / (slim * slim)))), standard!.Value, 1e-12);
            }
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void The_limit_of_stability_parts_never_from_sometimes(double nu)
    {
        double limit = SpringBuckling.AlwaysStableBelow(0.06, nu, G, E);
        Assert.Null(SpringBuckling.CriticalDeflection(limit * 0.9999, 0.06, nu, G, E));
        Assert.NotNull(SpringBuckling.CriticalDeflection(limit * 1.0001, 0.06, nu, G, E));
        // Steel: 2.63 D/α within 1 %. Source: Shigley, 10th ed., eq. 10-13.
        Assert.Equal(1, SpringBuckling.AlwaysStableBelowSteel(0.06, nu) / limit, 0.01);
    }

    [Fact]
    public void A_slimmer_spring_buckles_after_a_smaller_share_of_its_length()
    {
        double before = double.PositiveInfinity;
        for (double free = 0.2; free < 1.5; free += 0.05)
        {
            double share = SpringBuckling.CriticalDeflection(free, 0.06, 1, G, E)!.Value / free;
            Assert.True(share < before, $"{share} at {free} m after {before}");
            before = share;
        }
    }

    [Fact]
    public void Seating_coefficients_are_the_standards() =>
        Assert.Equal([0.5, 0.7, 1, 2], Enum.GetValues<SpringSeating>().Select(SpringBuckling.SeatingCoefficient));

    [Theory]
    [InlineData(double.NaN, 0.06, 0.5)]
    [InlineData(0.3, 0, 0.5)]
    [InlineData(0.3, 0.06, -1)]
    public void Sizes_that_cannot_be_are_refused(double free, double mean, double nu) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringBuckling.CriticalDeflection(free, mean, nu, G, E));

    [Fact]
    public void A_shear_modulus_above_youngs_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringBuckling.CriticalDeflection(0.3, 0.06, 0.5, E, G));
}
