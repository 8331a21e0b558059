using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Pages;

namespace Cornerwright.Web.Tests.Pictures;

public class SettingTests
{
    [Fact]
    public void A_cure_is_set_on_both_sides_where_both_read_the_same()
    {
        var after = SettingPath.Set(Build, "frontLeft/perchHeight", "212.5 mm", bothSides: true).Value;
        Assert.Equal(0.2125, after.FrontLeft.PerchHeight!.Si, 9);
        Assert.Equal(0.2125, after.FrontRight.PerchHeight!.Si, 9);
        Assert.Equal(Build.RearLeft, after.RearLeft);
    }

    [Fact]
    public void A_side_that_reads_otherwise_is_left_alone()
    {
        var uneven = Build with { FrontRight = Build.FrontRight with { PerchHeight = Length("205 mm") } };
        var after = SettingPath.Set(uneven, "frontLeft/perchHeight", "212.5 mm", bothSides: true).Value;
        Assert.Equal(0.205, after.FrontRight.PerchHeight!.Si, 9);
    }

    [Fact]
    public void What_the_setting_said_of_its_doubt_stays()
    {
        var measured = Build with { FrontLeft = Build.FrontLeft with { PerchHeight = Reading.Of("200 mm", Dimension.Length, "1 mm") } };
        Assert.Equal("1 mm",
            SettingPath.Set(measured, "frontLeft/perchHeight", "212.5 mm").Value.FrontLeft.PerchHeight!.Tolerance!.Amount.Typed);
    }

    [Theory]
    [InlineData("frontLeft/perchHeight", "9999 mm", "9999 mm")]
    [InlineData("frontLeft/perchHeight", "twelve", "twelve")]
    [InlineData("frontLeft/nothing", "1 mm", "1 mm")]
    [InlineData("middle/perchHeight", "1 mm", "1 mm")]
    [InlineData("", "1 mm", "1 mm")]
    public void A_wrong_path_or_value_is_refused_with_a_reason(string path, string typed, string given)
    {
        var problem = Assert.Single(SettingPath.Set(Build, path, typed).Problems);
        Assert.Equal(given, problem.Given);
        Assert.NotEmpty(problem.Allowed);
        Assert.NotEmpty(problem.Cure);
    }

    [Fact]
    public void The_perch_slider_steps_in_quarter_turns_and_stays_on_the_thread()
    {
        var slider = Assert.Single(SettingSliders.Of(Car, Build, apart: false), s => s.Name == "perch-front");
        var lowest = slider.Move(Build, 0).FrontLeft.PerchHeight!.Si;
        var highest = slider.Move(Build, slider.Most).FrontLeft.PerchHeight!.Si;
        Assert.InRange(lowest, 0.180 - 1e-9, 0.180 + 0.000375);
        Assert.InRange(highest, 0.260 - 0.000375, 0.260 + 1e-9);
        Assert.Equal(0.000375, slider.Move(Build, slider.Step + 1).FrontLeft.PerchHeight!.Si - 0.200, 9);
        Assert.Equal("200.0 mm", slider.Shown);
    }

    [Fact]
    public void Looking_at_a_slider_moves_nothing()
    {
        foreach (var slider in SettingSliders.Of(Car, Build, apart: true))
        {
            var same = slider.Move(Build, slider.Step);
            foreach (var corner in Places.Corners)
            {
                Assert.Equal(Build.At(corner).PerchHeight?.Si, same.At(corner).PerchHeight?.Si);
                Assert.Equal(Build.At(corner).Spacer, same.At(corner).Spacer);
                Assert.Equal(Build.At(corner).Packer?.Si ?? 0, same.At(corner).Packer?.Si ?? 0);
            }
        }
    }

    [Fact]
    public void Both_sides_move_by_the_same_amount_and_keep_their_difference()
    {
        var uneven = Build with { FrontRight = Build.FrontRight with { PerchHeight = Length("203 mm") } };
        var slider = SettingSliders.Of(Car, uneven, apart: false).Single(s => s.Name == "perch-front");
        var after = slider.Move(uneven, slider.Step + 8);
        Assert.Equal(0.203, after.FrontLeft.PerchHeight!.Si, 9);
        Assert.Equal(0.206, after.FrontRight.PerchHeight!.Si, 9);
        Assert.Equal("200.0 mm / 203.0 mm", slider.Shown);
    }

    [Fact]
    public void Spacers_are_those_of_the_shelf()
    {
        var slider = SettingSliders.Of(Car, Build, apart: false).Single(s => s.Name == "spacer-rear");
        Assert.Equal(2, slider.Most);
        Assert.Equal("ten", slider.Move(Build, 2).RearRight.Spacer);
        Assert.Equal("", slider.Move(Build, 0).RearRight.Spacer);
    }

    [Fact]
    public void Links_lead_to_the_page_of_a_reading()
    {
        Assert.StartsWith("/car/a/corner/front-left", ReadingLinks.ByPath("a", "frontLeft/springAxisLength"), StringComparison.Ordinal);
        Assert.StartsWith("/car/a/parts?kind=springs&part=s1", ReadingLinks.ByPath("a", "parts/springs/s1/rate"), StringComparison.Ordinal);
        Assert.StartsWith("/car/a/build/b", ReadingLinks.ByPath("a", "builds/b/frontLeft/perchHeight"), StringComparison.Ordinal);
        Assert.StartsWith("/car/a", ReadingLinks.ByPath("a", "loadCases/kerb/frontLeft"), StringComparison.Ordinal);
        Assert.Null(ReadingLinks.ByPath("a", "now"));
        Assert.StartsWith("/car/a", ReadingLinks.ByPath("a", "front/hub/boltCircle"), StringComparison.Ordinal);
        Assert.StartsWith("/car/a", ReadingLinks.ByPath("a", "topSpeed"), StringComparison.Ordinal);
    }

    private static Reading Length(string typed) => Reading.Of(typed, Dimension.Length);

    private static CornerBuild Corner => new() { PerchHeight = Length("200 mm"), Perch = "perch", Damper = "damper" };

    private static Build Build { get; } =
        new() { Id = "b", Name = "B", FrontLeft = Corner, FrontRight = Corner, RearLeft = Corner, RearRight = Corner };

    private static Car Car { get; } = new()
    {
        Id = "a",
        Name = "A",
        Builds = [Build],
        Parts = new PartsShelf
        {
            Perches = [new Perch { Id = "perch", Name = "Collar", Pitch = Length("1.5 mm") }],
            Dampers = [new Damper { Id = "damper", Name = "Damper", ThreadLow = Length("180 mm"), ThreadHigh = Length("260 mm") }],
            Spacers = [new Spacer { Id = "ten", Name = "Ten", Thickness = Length("10 mm") },
                new Spacer { Id = "five", Name = "Five", Thickness = Length("5 mm") }],
        },
    };
}
