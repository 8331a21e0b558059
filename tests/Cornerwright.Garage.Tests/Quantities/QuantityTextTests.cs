using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Tests.Quantities;

public class QuantityTextTests
{
    // Expected values by hand from the exact factors of NIST SP 811 (2008), Appendix B.8.
    [Theory]
    [InlineData("7 3/4 in", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7.75\"", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7-3/4\"", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7¾ in", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7 ¾ in.", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7,75 in", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("7.75''", Dimension.Length, 7.75 * 0.0254)]
    [InlineData("5' 3''", Dimension.Length, 1.6002)]
    [InlineData("1/2 in\r\n", Dimension.Length, 0.0127)]
    [InlineData("½ inch", Dimension.Length, 0.0127)]
    [InlineData("⅛ in", Dimension.Length, 0.003175)]
    [InlineData("3/8 in", Dimension.Length, 0.009525)]
    [InlineData("3⁄8in", Dimension.Length, 0.009525)]
    [InlineData(".5 in", Dimension.Length, 0.0127)]
    [InlineData("5' 3\"", Dimension.Length, 1.6002)]
    [InlineData("5'3\"", Dimension.Length, 1.6002)]
    [InlineData("5'-3\"", Dimension.Length, 1.6002)]
    [InlineData("5′ 3″", Dimension.Length, 1.6002)]
    [InlineData("5’ 3”", Dimension.Length, 1.6002)]
    [InlineData("5 ft 3 in", Dimension.Length, 1.6002)]
    [InlineData("5ft3in", Dimension.Length, 1.6002)]
    [InlineData("5 ft 3 1/2 in", Dimension.Length, 1.6129)]
    [InlineData("-5' 3\"", Dimension.Length, -1.6002)]
    [InlineData("187,5 mm", Dimension.Length, 0.1875)]
    [InlineData("187.5mm", Dimension.Length, 0.1875)]
    [InlineData("0,250 mm", Dimension.Length, 0.00025)]
    [InlineData("1.250 mm", Dimension.Length, 0.00125)]
    [InlineData("1,2500 mm", Dimension.Length, 0.00125)]
    [InlineData("1,234.5 mm", Dimension.Length, 1.2345)]
    [InlineData("1.234,5 mm", Dimension.Length, 1.2345)]
    [InlineData("1,234,567.5 mm", Dimension.Length, 1234.5675)]
    [InlineData("1250 mm", Dimension.Length, 1.25)]
    [InlineData("1250,125 mm", Dimension.Length, 1.250125)]
    [InlineData("−3 mm", Dimension.Length, -0.003)]
    [InlineData("+3 mm", Dimension.Length, 0.003)]
    [InlineData(" 12\u00A0mm ", Dimension.Length, 0.012)]
    [InlineData("18.75 cm", Dimension.Length, 0.1875)]
    [InlineData("2.7 m", Dimension.Length, 2.7)]
    [InlineData("8 kgf/mm", Dimension.SpringRate, 78453.2)]
    [InlineData("8 kg/mm", Dimension.SpringRate, 78453.2)]
    [InlineData("8kgf / mm", Dimension.SpringRate, 78453.2)]
    [InlineData("450 lb/in", Dimension.SpringRate, 450 * 4.4482216152605 / 0.0254)]
    [InlineData("450 lbs/in", Dimension.SpringRate, 450 * 4.4482216152605 / 0.0254)]
    [InlineData("450 lbf/in", Dimension.SpringRate, 450 * 4.4482216152605 / 0.0254)]
    [InlineData("80 N/mm", Dimension.SpringRate, 80000)]
    [InlineData("25 ft-lb", Dimension.Torque, 25 * 4.4482216152605 * 0.3048)]
    [InlineData("25 lbf·ft", Dimension.Torque, 25 * 4.4482216152605 * 0.3048)]
    [InlineData("25 lb ft", Dimension.Torque, 25 * 4.4482216152605 * 0.3048)]
    [InlineData("25 ft.-lb.", Dimension.Torque, 25 * 4.4482216152605 * 0.3048)]
    [InlineData("34 Nm", Dimension.Torque, 34)]
    [InlineData("34 N·m", Dimension.Torque, 34)]
    [InlineData("34 N m", Dimension.Torque, 34)]
    [InlineData("34 N.m", Dimension.Torque, 34)]
    [InlineData("12 lb-in", Dimension.Torque, 12 * 4.4482216152605 * 0.0254)]
    [InlineData("2.2 bar", Dimension.Pressure, 220000)]
    [InlineData("220 kPa", Dimension.Pressure, 220000)]
    [InlineData("32 psi", Dimension.Pressure, 32 * 4.4482216152605 / (0.0254 * 0.0254))]
    [InlineData("1°30'", Dimension.Angle, 1.5 * Math.PI / 180)]
    [InlineData("1° 30' 36\"", Dimension.Angle, 1.51 * Math.PI / 180)]
    [InlineData("-1°30'", Dimension.Angle, -1.5 * Math.PI / 180)]
    [InlineData("30'", Dimension.Angle, 0.5 * Math.PI / 180)]
    [InlineData("36\"", Dimension.Angle, 0.01 * Math.PI / 180)]
    [InlineData("36''", Dimension.Angle, 0.01 * Math.PI / 180)]
    [InlineData("-1.5 deg", Dimension.Angle, -1.5 * Math.PI / 180)]
    [InlineData("−1.5°", Dimension.Angle, -1.5 * Math.PI / 180)]
    [InlineData("0.1 rad", Dimension.Angle, 0.1)]
    [InlineData("130 km/h", Dimension.Speed, 130 / 3.6)]
    [InlineData("60 mph", Dimension.Speed, 26.8224)]
    [InlineData("10 m/s", Dimension.Speed, 10)]
    [InlineData("45 kg", Dimension.Mass, 45)]
    [InlineData("100 lb", Dimension.Mass, 45.359237)]
    [InlineData("3 kN", Dimension.Force, 3000)]
    [InlineData("350 lbf", Dimension.Force, 350 * 4.4482216152605)]
    [InlineData("300 kg", Dimension.Force, 2941.995)]
    [InlineData("0.95", Dimension.Ratio, 0.95)]
    [InlineData("95 %", Dimension.Ratio, 0.95)]
    [InlineData("1 1/2 turns", Dimension.Turns, 1.5)]
    [InlineData("1½ turns", Dimension.Turns, 1.5)]
    [InlineData("6 coils", Dimension.Count, 6)]
    [InlineData("0.02 deg/mm", Dimension.AnglePerLength, 0.02 * Math.PI / 180 * 1000)]
    [InlineData("0.5 deg/in", Dimension.AnglePerLength, 0.5 * Math.PI / 180 / 0.0254)]
    [InlineData("0.001 1/mm", Dimension.InverseLength, 1)]
    [InlineData("1/4 1/m", Dimension.InverseLength, 0.25)]
    [InlineData("1.6 Hz", Dimension.Frequency, 1.6)]
    [InlineData("3500 N·s/m", Dimension.DampingRate, 3500)]
    [InlineData("3500 Ns/m", Dimension.DampingRate, 3500)]
    [InlineData("900 MPa", Dimension.Stress, 9e8)]
    [InlineData("900 N/mm²", Dimension.Stress, 9e8)]
    [InlineData("900 N/mm^2", Dimension.Stress, 9e8)]
    [InlineData("300 Nm/deg", Dimension.RollStiffness, 300 * 180 / Math.PI)]
    public void Reads_what_people_type(string typed, Dimension dimension, double si)
    {
        Checked<Quantity> read = QuantityText.Parse(typed, dimension, "reading");
        Assert.True(read.Ok, string.Join("; ", read.Problems));
        Assert.Equal(si, read.Value.Si, Math.Abs(si) * 1e-14);
        Assert.Equal(typed, read.Value.Typed);
        Assert.Equal(dimension, read.Value.Dimension);
        Assert.False(read.Value.UnitAssumed);
    }

    // A person must be told what is wrong in words that name it: each row holds a part of the cure.
    [Theory]
    [InlineData("", Dimension.Length, "Type a value")]
    [InlineData("   ", Dimension.Length, "Type a value")]
    [InlineData(null, Dimension.Length, "Type a value")]
    [InlineData("1,250 mm", Dimension.Length, "write 1250 or 1.250")]
    [InlineData("-12,345 mm", Dimension.Length, "write 12345 or 12.345")]
    [InlineData("5' 1,250\"", Dimension.Length, "write 1250 or 1.250")]
    [InlineData("1,234,567 mm", Dimension.Length, "more than once")]
    [InlineData("1.234.567 mm", Dimension.Length, "more than once")]
    [InlineData("12,34.5 mm", Dimension.Length, "do not stand where thousands end")]
    [InlineData("0,123.5 mm", Dimension.Length, "do not stand where thousands end")]
    [InlineData("1,234.567,8 mm", Dimension.Length, "do not stand where thousands end")]
    [InlineData("1 234 mm", Dimension.Length, "gap inside the number")]
    [InlineData("1 234,5 N", Dimension.Force, "gap inside the number")]
    [InlineData("7. in", Dimension.Length, "digit must follow")]
    [InlineData(",5 in", Dimension.Length, "before the comma")]
    [InlineData("1e3 mm", Dimension.Length, "write the number out")]
    [InlineData("1E-3 mm", Dimension.Length, "write the number out")]
    [InlineData("NaN mm", Dimension.Length, "number is expected")]
    [InlineData("Infinity", Dimension.Length, "number is expected")]
    [InlineData("mm", Dimension.Length, "number is expected")]
    [InlineData("7.75", Dimension.Length, "Add the unit")]
    [InlineData("5' 3", Dimension.Length, "Add the unit")]
    [InlineData("5 furlongs", Dimension.Length, "\"furlongs\" is not a unit")]
    [InlineData("5 m m", Dimension.Length, "\"m m\" is not a unit")]
    [InlineData("80 N/mm", Dimension.Length, "measures something else")]
    [InlineData("900 mPa", Dimension.Stress, "not a unit")]
    [InlineData("10-5 mm", Dimension.Length, "Only one number")]
    [InlineData("1'250 mm", Dimension.Length, "never marks thousands")]
    [InlineData("5 ft\n3 in", Dimension.Length, "not a unit")]
    [InlineData("3 in 5 ft", Dimension.Length, "the larger first")]
    [InlineData("5 mm 3 mm", Dimension.Length, "the larger first")]
    [InlineData("5' 12\"", Dimension.Length, "below 12")]
    [InlineData("1° 60'", Dimension.Angle, "below 60")]
    [InlineData("1.5° 30'", Dimension.Angle, "whole number")]
    [InlineData("7 5/4 in", Dimension.Length, "fraction")]
    [InlineData("1/0 in", Dimension.Length, "fraction")]
    [InlineData("1/2.5 in", Dimension.Length, "fraction")]
    [InlineData("± 0.5 mm", Dimension.Length, "belongs in the tolerance")]
    [InlineData("187.5 ± 0.5 mm", Dimension.Length, "belongs in the tolerance")]
    [InlineData("99999999999999999999 mm", Dimension.Length, "too large or too small")]
    [InlineData("--5 mm", Dimension.Length, "number is expected")]
    public void Refuses_and_says_why(string? typed, Dimension dimension, string cure)
    {
        Checked<Quantity> read = QuantityText.Parse(typed, dimension, "front left / perch");
        Problem problem = Assert.Single(read.Problems);
        Assert.Equal("front left / perch", problem.Field);
        Assert.Equal(typed ?? "", problem.Given);
        Assert.Contains(cure, problem.Cure, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Allowed);
    }

    [Fact]
    public void A_bare_number_takes_the_unit_of_the_field_and_says_so()
    {
        Quantity read = QuantityText.Parse("7.5", Dimension.Length, "gap", Units.Millimetre).Value;
        Assert.Equal(0.0075, read.Si);
        Assert.True(read.UnitAssumed);
        Assert.Equal("7.5", read.Typed);
        Assert.Equal("7.5 mm", read.Understood);

        Quantity inches = QuantityText.Parse("3/8 in", Dimension.Length, "gap", Units.Millimetre).Value;
        Assert.False(inches.UnitAssumed);
        Assert.Same(Units.Inch, inches.Unit);

        Assert.False(QuantityText.Parse("5' 3", Dimension.Length, "gap", Units.Millimetre).Ok);
        Assert.Throws<ArgumentException>(() => QuantityText.Parse("5", Dimension.Length, "gap", Units.Degree));
    }

    [Theory]
    [InlineData("±0.5 mm", 0.0005)]
    [InlineData("± 0,5 mm", 0.0005)]
    [InlineData("+/-0.5 mm", 0.0005)]
    [InlineData("+-0.5 mm", 0.0005)]
    [InlineData("+/− 1/16 in", 0.0015875)]
    [InlineData("0.5 mm", 0.0005)]
    [InlineData("0 mm", 0)]
    public void Tolerances(string typed, double si)
    {
        Quantity read = QuantityText.ParseTolerance(typed, Dimension.Length, "tolerance").Value;
        Assert.Equal(si, read.Si, 1e-18);
        Assert.Equal(typed, read.Typed);
    }

    [Theory]
    [InlineData("-0.5 mm", "without a minus")]
    [InlineData("±-0.5 mm", "sign once")]
    [InlineData("±", "Type a value")]
    [InlineData("±0.5", "Add the unit")]
    [InlineData(null, "Type a value")]
    public void Tolerances_refused(string? typed, string cure) =>
        Assert.Contains(cure, Assert.Single(QuantityText.ParseTolerance(typed, Dimension.Length, "t").Problems).Cure,
            StringComparison.Ordinal);

    [Fact]
    public void A_value_out_of_range_is_told_in_the_unit_typed()
    {
        Quantity read = QuantityText.Parse("12 in", Dimension.Length, "x").Value;
        Problem problem = read.RequireWithin(0.0254, 0.254, "free length")!;
        Assert.Equal("1 in to 10 in", problem.Allowed);
        Assert.Equal("12 in", problem.Given);
        Assert.Contains("larger", problem.Cure, StringComparison.Ordinal);
        Assert.Null(read.RequireWithin(0.3048, 0.3048, "free length"));
        Assert.NotNull(read.RequireWithin(double.NaN, double.NaN, "free length"));
    }
}
