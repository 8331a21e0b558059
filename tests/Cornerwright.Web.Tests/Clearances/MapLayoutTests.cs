using System.Globalization;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Clearances;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Web.Tests.Clearances;

/// <summary>The drawing of a map whose gaps are a plane, so that every line of it is known.</summary>
public class MapLayoutTests
{
    private static readonly double[] Travels = [-0.04, -0.02, 0, 0.02, 0.04], Steers = [-0.6, -0.3, 0, 0.3, 0.6];

    private static readonly PoseBox Box = new(new(-0.04, -0.6, 0), new(0.04, 0.6, 0), [new(-0.6, 0.02), new(0, 0.04), new(0.6, 0.02)]);

    // 10 mm at rest, a millimetre less for each millimetre of bump.
    private static ClearanceMap Plane(double wanted = 0.005) => new(
        [], Travels, Steers,
        [.. Steers.SelectMany(s =>
            Travels.Select(t => new MapPose(t, s, t > Box.AllowedBump(s) + 1e-9 ? double.NaN : 0.010 - t, 12, "arch")))], wanted);

    [Fact]
    public void Lines_run_where_the_plane_has_their_gap()
    {
        var layout = new MapLayout(Plane(), Box);
        double zero = layout.Y(0.010), wanted = layout.Y(0.005);
        Assert.NotEmpty(layout.Zero);
        Assert.All(Heights(layout.Zero), y => Assert.Equal(zero, y, 0.06));
        Assert.All(Heights(layout.Wanted), y => Assert.Equal(wanted, y, 0.06));
        Assert.True(wanted > zero, "the wanted gap is met at less bump, so lower in the drawing");
    }

    [Fact]
    public void Left_is_left_bump_is_up_and_a_point_leads_back_to_its_pose()
    {
        var layout = new MapLayout(Plane(), Box);
        Assert.True(layout.X(0.6) < layout.X(-0.6));
        Assert.True(layout.Y(0.04) < layout.Y(-0.04));
        var (travel, steer) = layout.PoseAt(layout.X(0.25), layout.Y(0.013));
        Assert.Equal(0.013, travel, 1e-9);
        Assert.Equal(0.25, steer, 1e-9);
        Assert.Equal((0.04, -0.6), layout.PoseAt(5000, -5000));
    }

    [Fact]
    public void What_the_limit_forbids_is_drawn_and_has_no_reading()
    {
        var layout = new MapLayout(Plane(), Box);
        Assert.StartsWith("M", layout.Forbidden, StringComparison.Ordinal);
        string[] readings = layout.Readings().Split(',');
        Assert.Equal(25, readings.Length);
        Assert.Equal("", readings[4]);         // full bump at the right lock
        Assert.Equal("-300", readings[14]);    // full bump straight ahead: 30 mm into it, in tenths
        Assert.Equal(-0.030, layout.Least()!.Value.Gap, 1e-12);
    }

    [Fact]
    public void A_wheel_that_does_not_steer_gets_one_column()
    {
        var map = new ClearanceMap([], Travels, [0], [.. Travels.Select(t => new MapPose(t, 0, 0.010 - t, 12, "arch"))], 0.005);
        var layout = new MapLayout(map, new(new(-0.04, 0, 0), new(0.04, 0, 0)));
        Assert.False(layout.Steers);
        Assert.Empty(layout.SteerMarks);
        Assert.Contains("H" + MapLayout.Right.ToString(CultureInfo.InvariantCulture), layout.Zero, StringComparison.Ordinal);
        Assert.Equal(0, layout.PoseAt(300, 200).Steer);
    }

    // The limits of each step: 0 touches, 5 mm wanted, then 10, 25 and 50 mm above that.
    [Theory]
    [InlineData(-0.0001, "touches")]
    [InlineData(0.0, "short")]
    [InlineData(0.0049, "short")]
    [InlineData(0.005, "first")]
    [InlineData(0.0151, "second")]
    [InlineData(0.0301, "third")]
    [InlineData(0.0551, "far")]
    public void Bands_follow_the_gap_wanted(double gap, string name) => Assert.Equal(name, MapBand.All[MapBand.Of(gap, 0.005)].Name);

    [Fact]
    public void No_number_has_no_band() => Assert.Equal(-1, MapBand.Of(double.NaN, 0.005));

    // Every height of a path of moves and lines.
    private static List<double> Heights(string path) =>
        [.. path.Split('M', 'L').Where(p => p.Length > 0).Select(p => double.Parse(p.Split(' ')[1], CultureInfo.InvariantCulture))];
}
