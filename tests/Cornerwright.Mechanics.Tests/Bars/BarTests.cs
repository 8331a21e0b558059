using Cornerwright.Mechanics.Bars;

namespace Cornerwright.Mechanics.Tests.Bars;

public sealed class BarTests
{
    private const double Psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    [Fact]
    public void Stress_of_a_solid_bar_is_16_T_over_pi_d_cubed() =>
        Assert.Equal(16 * 175 / (Math.PI * Math.Pow(0.03, 3)), TorsionBar.ShearStress(175, 0.03), 1e-3);

    [Fact]
    public void A_tube_is_the_bar_less_its_core() =>
        Assert.Equal(TorsionBar.PolarMoment(0.025) - TorsionBar.PolarMoment(0.018), TorsionBar.PolarMoment(0.025, 0.018), 1e-20);

    [Fact]
    public void Twist_and_stiffness_are_inverses() =>
        Assert.Equal(100, TorsionBar.Stiffness(0.02, 1.1, 80e9) * TorsionBar.Twist(100, 0.02, 1.1, 80e9), 1e-9);

    // Puhn's constants hide G = 12 Mpsi and E = 30 Mpsi; built from torsion and two bending arms the rate must be the same.
    [Theory]
    [InlineData(0.022, 0.23, 0.86, 0.25)]
    [InlineData(0.030, 0.18, 1.00, 0.30)]
    public void Puhns_formula_is_torsion_and_two_bending_arms(double d, double a, double b, double c)
    {
        double stiffness = TorsionBar.Stiffness(d, b, 12e6 * Psi);
        double arms = AntiRollBar.ArmCompliance(c, d, 30e6 * Psi);
        Assert.Equal(1, AntiRollBar.RateOneEnd(stiffness, a, arms) / AntiRollBar.PuhnRate(d, a, b, c), 2e-3);
        Assert.Equal(2, AntiRollBar.RateInRoll(stiffness, a, arms) / AntiRollBar.RateOneEnd(stiffness, a, arms), 1e-12);
    }

    // By energy: rolling the body by φ moves each end by φ·MR·t/2, and the work of both ends is Kφ φ²/2.
    [Fact]
    public void Roll_stiffness_stores_the_work_of_both_ends()
    {
        double k = 40_000, ratio = 0.6, track = 1.5, roll = 0.02, end = roll * ratio * track / 2;
        Assert.Equal(2 * k * end * end / 2, AntiRollBar.RollStiffness(k, ratio, track) * roll * roll / 2, 1e-9);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TorsionBar.PolarMoment(0.02, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => TorsionBar.PolarMoment(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => TorsionBar.ShearStress(double.NaN, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => TorsionBar.Stiffness(0.02, 0, 80e9));
        Assert.Throws<ArgumentOutOfRangeException>(() => AntiRollBar.RateOneEnd(1000, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AntiRollBar.RateOneEnd(1000, 0.2, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => AntiRollBar.PuhnRate(0.02, 0.2, double.NaN, 0.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => AntiRollBar.RollStiffness(1, -1, 1.5));
    }
}
