using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Mechanics.Tests.Springs;

public sealed class WireSpringTests
{
    private static readonly WireSpring Spring = new(0.012, 0.082, 6.5, SpringSteel.ShearModulusOilTempered);

    // Source: EN 13906-1:2013, rate formula, evaluated.
    [Fact]
    public void Rate_follows_the_standard() => Assert.Equal(57_500, Spring.Rate(), 57.5);

    [Fact]
    public void Force_at_a_stress_and_stress_at_that_force_are_inverses()
    {
        double force = Spring.ForceAtStress(700e6, CoilStressFactor.En13906(Spring.Index));
        Assert.Equal(700e6, Spring.CorrectedShearStress(force), 1);
        Assert.Equal(700e6, Spring.ShearStress(Spring.ForceAtStress(700e6, 1)), 1);
    }

    // The standard's k is Bergsträsser's factor: (4C+2)/(4C-3). Source: Shigley, 10th ed., eq. 10-5.
    [Theory]
    [InlineData(4)]
    [InlineData(7.5)]
    [InlineData(16)]
    public void Two_writings_of_one_factor_agree(double index)
    {
        Assert.Equal(((4 * index) + 2) / ((4 * index) - 3), CoilStressFactor.En13906(index), 1e-14);
        // Wahl's factor exceeds it by less than 1.5 % in the range of car springs.
        Assert.InRange(CoilStressFactor.Wahl(index) / CoilStressFactor.En13906(index), 1, 1.015);
        Assert.True(CoilStressFactor.DirectShear(index) < CoilStressFactor.En13906(index));
    }

    // Second way: f = (1/2) √(k/m), with the mass of the active wire. Source: Shigley, 10th ed., eq. 10-25.
    [Fact]
    public void Surge_frequency_is_half_the_root_of_rate_over_active_mass()
    {
        double wire = Math.PI * 0.082 * 6.5, mass = wire * Math.PI / 4 * 0.012 * 0.012 * SpringSteel.Density;
        Assert.Equal(0.5 * Math.Sqrt(Spring.Rate() / mass), Spring.SurgeFrequency(SpringSteel.Density), 1e-9);
    }

    [Fact]
    public void Choices_turn_the_rate_formula_round()
    {
        double rate = Spring.Rate(), g = SpringSteel.ShearModulusOilTempered;
        Assert.Equal(6.5, WireChoice.ActiveCoils(rate, 0.012, 0.082, g), 1e-12);
        Assert.Equal(Spring.Index, WireChoice.IndexForRate(rate, 0.012, 6.5, g), 1e-12);
    }

    [Fact]
    public void Index_for_a_stress_gives_that_stress_back()
    {
        double index = WireChoice.IndexForStress(3000, 0.012, 800e6)!.Value;
        Assert.Equal(800e6, new WireSpring(0.012, index * 0.012, 5, 80e9).CorrectedShearStress(3000), 1);
        Assert.Equal(0.012, WireChoice.WireDiameter(3000, index, 800e6, CoilStressFactor.En13906(index)), 1e-12);
        Assert.Null(WireChoice.IndexForStress(1e6, 0.012, 800e6));
    }

    [Theory]
    [InlineData(CoilEnds.ClosedAndGround, 8.5, 0.102)]
    [InlineData(CoilEnds.Closed, 8.5, 0.114)]
    [InlineData(CoilEnds.OpenAndGround, 7.5, 0.090)]
    [InlineData(CoilEnds.Open, 6.5, 0.090)]
    public void Solid_length_by_ends(CoilEnds ends, double totalCoils, double solid)
    {
        // Source: Shigley, 10th ed., table 10-1 (from memory), evaluated for 6.5 active coils of 12 mm.
        Assert.Equal(6.5, totalCoils - SolidLengthRule.DeadCoils(ends), 1e-12);
        Assert.Equal(solid, SolidLengthRule.Textbook(totalCoils, 0.012, ends), 1e-12);
    }

    [Fact]
    public void Unground_ends_are_longer_by_one_and_a_half_wires() =>
        Assert.Equal(
            0.018,
            SolidLengthRule.En13906ColdCoiled(8.5, 0.012, ground: false) - SolidLengthRule.En13906ColdCoiled(8.5, 0.012, ground: true),
            1e-12);

    [Theory]
    [InlineData(0, 0.08, 6, 80e9)]
    [InlineData(0.012, 0.012, 6, 80e9)]
    [InlineData(0.012, double.NaN, 6, 80e9)]
    [InlineData(0.012, 0.08, double.NaN, 80e9)]
    [InlineData(0.012, 0.08, 6, double.PositiveInfinity)]
    public void A_spring_that_cannot_be_has_no_rate(double d, double mean, double coils, double g) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new WireSpring(d, mean, coils, g).Rate());

    [Theory]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void An_index_of_one_or_less_has_no_factor(double index)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CoilStressFactor.Wahl(index));
        Assert.Throws<ArgumentOutOfRangeException>(() => CoilStressFactor.En13906(index));
        Assert.Throws<ArgumentOutOfRangeException>(() => CoilStressFactor.DirectShear(index));
    }
}
