using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Tests.Quantities;

public class UnitsTests
{
    // Source: NIST SP 811 (2008), Appendix B.8; SI Brochure (9th ed.). To the printed digits.
    [Theory]
    [InlineData("in", Dimension.Length, 0.0254, 1e-15)]
    [InlineData("ft", Dimension.Length, 0.3048, 1e-15)]
    [InlineData("lb", Dimension.Mass, 0.45359237, 1e-15)]
    [InlineData("kgf", Dimension.Force, 9.80665, 1e-15)]
    [InlineData("lbf", Dimension.Force, 4.4482216152605, 1e-13)]
    [InlineData("lbf/in", Dimension.SpringRate, 175.1268, 5e-5)]
    [InlineData("kgf/mm", Dimension.SpringRate, 9806.65, 1e-9)]
    [InlineData("lbf·ft", Dimension.Torque, 1.355818, 5e-7)]
    [InlineData("lbf·in", Dimension.Torque, 0.1129848, 5e-8)]
    [InlineData("kgf·m", Dimension.Torque, 9.80665, 1e-15)]
    [InlineData("psi", Dimension.Pressure, 6894.757, 5e-4)]
    [InlineData("bar", Dimension.Pressure, 100000, 1e-9)]
    [InlineData("ksi", Dimension.Stress, 6894757, 0.5)]
    [InlineData("mph", Dimension.Speed, 0.44704, 1e-15)]
    [InlineData("km/h", Dimension.Speed, 0.2777778, 5e-8)]
    [InlineData("°", Dimension.Angle, 0.01745329, 5e-9)]
    [InlineData("'", Dimension.Angle, 2.908882e-4, 5e-11)]
    [InlineData("\"", Dimension.Angle, 4.848137e-6, 5e-13)]
    [InlineData("kgf/cm²", Dimension.Pressure, 98066.5, 1e-9)]
    public void Factors(string symbol, Dimension dimension, double si, double tolerance)
    {
        Unit unit = Units.Find(symbol, dimension)!;
        Assert.Equal(si, unit.SiPerUnit, tolerance);
        Assert.Equal(si, unit.ToSi(1), tolerance);
    }

    // Source: products of the exact factors above.
    [Fact]
    public void From_one_trade_unit_to_another()
    {
        Assert.Equal(5.71014715473, Units.PoundForcePerInch.FromSi(1000), 1e-10);
        Assert.Equal(55.99741459, Units.PoundForcePerInch.FromSi(9806.65), 1e-8);
        Assert.Equal(0.0178579673228, Units.KilogramForcePerMillimetre.FromSi(Units.PoundForcePerInch.SiPerUnit), 1e-12);
        Assert.Equal(70.05, Units.PoundForcePerInch.ToSi(400) / 1000, 0.005);
        Assert.Equal(14.503773773, Units.PoundForcePerSquareInch.FromSi(100_000), 1e-8);
        Assert.Equal(0.45359237 * 9.80665, Units.PoundForce, 1e-15);
    }

    [Fact]
    public void Every_unit_stands_under_its_dimension_and_reads_its_own_symbol()
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            Assert.NotEmpty(Units.Of(dimension));
            foreach (Unit unit in Units.Of(dimension))
            {
                Assert.Equal(dimension, unit.Dimension);
                Assert.Same(unit, Units.Find(unit.Symbol, dimension));
                Assert.Equal(1.7, unit.FromSi(unit.ToSi(1.7)), 1e-14);
            }
        }
    }

    [Fact]
    public void No_spelling_belongs_to_two_units_of_a_dimension_and_each_is_reachable()
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            var seen = new HashSet<string>();
            foreach (Unit unit in Units.Of(dimension))
            {
                Assert.All(unit.Spellings, s => Assert.True(seen.Add(s), $"{dimension}: {s}"));
                Assert.All(unit.Spellings, s => Assert.Same(unit, Units.Find(s, dimension)));
            }
        }
    }
}
