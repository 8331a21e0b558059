using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Tests.Quantities;

public class QuantityWritingTests
{
    [Theory]
    [InlineData(0.19685, 8, "7 3/4 in")]
    [InlineData(0.1778, 8, "7 in")]
    [InlineData(0.009525, 8, "3/8 in")]
    [InlineData(-0.003175, 8, "-1/8 in")]
    [InlineData(-0.0001, 8, "0 in")]
    [InlineData(0.0015875, 16, "1/16 in")]
    [InlineData(0.0253, 8, "1 in")]
    public void Inches(double si, int parts, string text) => Assert.Equal(text, QuantityText.WriteInches(si, parts));

    [Fact]
    public void Values_for_people()
    {
        Assert.Equal("187.5 mm", QuantityText.Write(0.1875, Units.Millimetre, 1));
        Assert.Equal("-1.50°", QuantityText.Write(-1.5 * Math.PI / 180, Units.Degree, 2));
        Assert.Equal("0 mm", QuantityText.Write(-0.0004, Units.Millimetre, 0));
        Assert.Equal("0.0 mm", QuantityText.Write(-0.00004, Units.Millimetre, 1));
        Assert.Equal("95 %", QuantityText.Write(0.95, Units.Percent, 0));
        Assert.Equal("0.95", QuantityText.Write(0.95, Units.One, 2));
        Assert.Equal("8.0 kgf/mm", QuantityText.Write(78453.2, Units.KilogramForcePerMillimetre, 1));
        Assert.Equal("34 N·m (25 lbf·ft)", QuantityText.WriteTorqueBothWays(34));
        Assert.Equal("8.0 N·m (5.9 lbf·ft)", QuantityText.WriteTorqueBothWays(8));
    }

    [Fact]
    public void Our_own_bugs_are_exceptions()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.Write(double.NaN, Units.Metre, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.Write(1, Units.Metre, 13));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.WriteInches(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.WriteInches(1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Of(double.NaN, Units.Metre));
    }

    [Fact]
    public void A_quantity_from_a_number_reads_back_as_the_same_number()
    {
        var random = new Random(20260);
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            foreach (Unit unit in Units.Of(dimension))
            {
                for (int i = 0; i < 200; i++)
                {
                    double number = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-8, 9));
                    Quantity made = Quantity.Of(number, unit);
                    Quantity read = QuantityText.Parse(made.Typed, dimension, "x").Value;
                    Assert.Equal(made.Si, read.Si);
                    Assert.Same(unit, read.Unit);
                }
            }
        }
    }
}
