using Cornerwright.Mechanics.Bolts;

namespace Cornerwright.Mechanics.Tests.Bolts;

public sealed class TorqueBandTests
{
    // Source: VDI 2230 Part 1 (2003/2015), table A1, coarse threads at friction 0.12 (from memory); 1.5 % as the table rounds.
    [Theory]
    [InlineData(6, 1, "8.8", 10.1)]
    [InlineData(8, 1.25, "8.8", 24.6)]
    [InlineData(8, 1.25, "10.9", 36.1)]
    [InlineData(10, 1.5, "8.8", 48)]
    [InlineData(10, 1.5, "12.9", 83)]
    [InlineData(12, 1.75, "8.8", 84)]
    [InlineData(14, 2, "8.8", 133)]
    public void The_usual_torque_is_the_tables(double diameterMm, double pitchMm, string name, double torque)
    {
        var band = TorqueBand.Of(MetricThread.Of(diameterMm / 1000, pitchMm / 1000), name)!.Value;
        Assert.InRange(band.Usual, torque * 0.985, torque * 1.015);
        Assert.True(band.Least < band.Usual && band.Usual < band.Most, band.ToString());
    }

    // Common practice, no source: nuts of a top mount M8 28 N·m, brace bolts M10 56 N·m, nuts of a bar link M10 25 lbf·ft.
    [Theory]
    [InlineData(8, 1.25, "8", 28)]
    [InlineData(10, 1.5, "8.8", 56)]
    [InlineData(10, 1.25, "8", 33.9)]
    public void Practice_lies_within_the_band(double diameterMm, double pitchMm, string name, double torque)
    {
        var band = TorqueBand.Of(MetricThread.Of(diameterMm / 1000, pitchMm / 1000), name)!.Value;
        Assert.InRange(torque, band.Least, band.Most);
    }

    [Fact]
    public void A_figure_in_the_wrong_unit_falls_out_of_the_band()
    {
        // 110 N·m for a wheel bolt M12x1.5, class 10.9: typed as lbf·ft it is 149 N·m, and as kgf·m far beyond.
        var band = TorqueBand.Of(MetricThread.Of(0.012, 0.0015), "10.9")!.Value;
        Assert.InRange(110, band.Least, band.Most);
        Assert.True(110 * 9.80665 > band.Most);
        Assert.True(110 / 9.80665 < band.Least);
    }

    [Fact]
    public void An_unknown_class_has_no_band()
    {
        Assert.Null(TorqueBand.Of(MetricThread.Of(0.012, 0.0015), "7.7"));
        Assert.NotNull(TorqueBand.Of(MetricThread.Of(0.020, 0.0015), "10.9"));
        Assert.Throws<ArgumentOutOfRangeException>(() => TorqueBand.Of(default, "8.8"));
    }
}
