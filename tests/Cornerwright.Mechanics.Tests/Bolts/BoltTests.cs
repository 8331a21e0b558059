using Cornerwright.Mechanics.Bolts;

namespace Cornerwright.Mechanics.Tests.Bolts;

public sealed class BoltTests
{
    private static readonly MetricThread M12Fine = MetricThread.Of(0.012, 0.0015);

    // Source: ISO 724 and ISO 898-1 give the factors as 0.649519 and 1.226869 of the pitch.
    [Fact]
    public void Thread_diameters_have_the_standards_factors()
    {
        Assert.Equal(0.012 - (0.649519 * 0.0015), M12Fine.PitchDiameter, 1e-9);
        Assert.Equal(0.012 - (1.226869 * 0.0015), M12Fine.RootDiameter, 1e-9);
        Assert.True(MetricThread.Of(0.012, 0.00175).IsCoarse);
        Assert.False(M12Fine.IsCoarse);
        Assert.True(MetricThread.IsInGeneralPlan(12, 1.5));
        Assert.False(MetricThread.IsInGeneralPlan(12, 1.1));
        Assert.False(MetricThread.IsInGeneralPlan(13, 1.5));
        Assert.Null(MetricThread.CoarsePitchMm(13));
    }

    // Second way: take the preload back to the combined stress at the thread (von Mises on tension and torsion).
    [Fact]
    public void Assembly_preload_brings_the_thread_to_its_share_of_yield()
    {
        const double mu = 0.12, yield = 940e6;
        double preload = Tightening.AssemblyPreload(M12Fine, yield, mu);
        double tension = preload / M12Fine.StressArea;
        double threadTorque = preload * M12Fine.PitchDiameter / 2 * ((M12Fine.Pitch / (Math.PI * M12Fine.PitchDiameter)) + (1.155 * mu));
        double plastic = Math.PI * Math.Pow(M12Fine.StressDiameter, 3) / 12;   // fully plastic torsion, as VDI 2230 takes it
        double torsion = threadTorque / plastic;
        Assert.Equal(0.9 * yield, Math.Sqrt((tension * tension) + (3 * torsion * torsion)), 1);
    }

    [Fact]
    public void More_friction_needs_more_torque_for_less_preload()
    {
        double dry = Tightening.AssemblyPreload(M12Fine, 640e6, 0.16), oiled = Tightening.AssemblyPreload(M12Fine, 640e6, 0.08);
        Assert.True(dry < oiled);
        double bearing = Tightening.HexBearingDiameter(0.012)!.Value;
        Assert.True(Tightening.Torque(dry, M12Fine, 0.16, 0.16, bearing) > Tightening.Torque(oiled, M12Fine, 0.08, 0.08, bearing));
    }

    [Fact]
    public void Nut_factor_of_plain_steel_is_about_a_fifth() =>
        Assert.InRange(Tightening.NutFactor(M12Fine, 0.15, 0.15), 0.18, 0.21);   // Source: Shigley, 10th ed., table 8-15 (K = 0.20)

    [Fact]
    public void Class_8_8_changes_above_16_mm()
    {
        Assert.Equal(580e6, PropertyClass.Strength("8.8", 0.016)!.Value.ProofStress);
        Assert.Equal(600e6, PropertyClass.Strength("8.8", 0.018)!.Value.ProofStress);
        Assert.Null(PropertyClass.Strength("9.8", 0.018));
        Assert.Null(PropertyClass.Strength("11", 0.012));
    }

    // The head's mark says it: first figure times 100 MPa is Rm, second figure its share at yield. Source: ISO 898-1:2013, 5.
    [Theory]
    [InlineData("4.6", 400, 0.6)]
    [InlineData("5.6", 500, 0.6)]
    [InlineData("6.8", 600, 0.8)]
    [InlineData("8.8", 800, 0.8)]
    [InlineData("9.8", 900, 0.8)]
    [InlineData("10.9", 1000, 0.9)]
    [InlineData("12.9", 1200, 0.9)]
    public void Strengths_agree_with_the_mark(string name, double tensileMPa, double yieldShare)
    {
        var strength = PropertyClass.Strength(name, 0.010)!.Value;
        Assert.InRange(strength.TensileStrength / 1e6, tensileMPa, tensileMPa * 1.041);
        Assert.InRange(strength.YieldStrength / 1e6 / tensileMPa, yieldShare, yieldShare * 1.045);
        Assert.InRange(strength.ProofStress / strength.YieldStrength, 0.87, 0.95);
    }

    [Fact]
    public void A_spacer_takes_its_thickness_from_the_engagement()
    {
        double without = ThreadEngagement.OfBolt(0.028, 0.012, 0, 0.020), with = ThreadEngagement.OfBolt(0.028, 0.012, 0.005, 0.020);
        Assert.Equal(0.005, without - with, 1e-12);
        Assert.Equal(0.011, with, 1e-12);
        Assert.True(with < ThreadEngagement.Least(0.012, TappedMaterial.Steel));
        Assert.Equal(11 / 1.5, ThreadEngagement.Turns(with, 0.0015), 1e-9);
        Assert.Equal(0.020, ThreadEngagement.OfBolt(0.060, 0.012, 0.005, 0.020), 1e-12);   // no more than the hub has
        Assert.True(ThreadEngagement.OfStud(0.020, 0.012, 0.015, 0.015) < 0);             // does not reach the nut
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MetricThread.Of(0.001, 0.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => MetricThread.Of(double.NaN, 0.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tightening.AssemblyPreload(default, 640e6, 0.12));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tightening.AssemblyPreload(M12Fine, 640e6, 0.12, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tightening.Torque(-1, M12Fine, 0.12, 0.12, 0.015));
        Assert.Throws<ArgumentOutOfRangeException>(() => ThreadEngagement.OfBolt(0.03, -0.01, 0, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tightening.PreloadFromProof(1.1, 1, 1));
        Assert.Null(Tightening.HexBearingDiameter(0.009));
    }
}
