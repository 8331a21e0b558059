using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Web.Components.Linkages;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Tests.Linkages;

public class CurveSheetTests
{
    // The other way to the same numbers: a corner motion asked from scratch at every travel.
    [Fact]
    public void Every_curve_through_travel_is_what_the_corner_motion_says_of_it()
    {
        var sheets = CurveSheet.Of(LinkageCars.Present, null, SweepAlong.Travel);
        Assert.Equal(LinkageQuantity.All.Select(q => q.Key), sheets.Select(s => s.Quantity.Key));
        int compared = 0;
        foreach (var sheet in sheets)
        {
            Assert.Equal(LinkageSweep.Count, sheet.PlacesMm.Count);
            for (int i = 0; i < sheet.PlacesMm.Count; i += 8)
            {
                var motion = new HardpointMotion(LinkageCars.Present.Points.Ready());
                Assert.Equal(Reach.Reached, motion.GeometryAt(sheet.PlacesMm[i] / 1000, out var wheel));
                Assert.Equal(sheet.Quantity.Unit.FromSi(sheet.Quantity.Read(wheel, LinkageCars.Present)!.Value),
                    sheet.Lines[0].Values[i]!.Value, 1e-6);
                compared++;
            }
        }

        Assert.True(compared > 100);
    }

    [Fact]
    public void A_plate_slid_inward_takes_the_top_in_and_the_proposed_line_is_that_of_the_slid_plate()
    {
        var car = LinkageCars.Car;
        var build = car.Builds.First(b => b.Id != car.MeasuredBuild);
        build = build.With(CornerPlace.FrontLeft, build.FrontLeft with { Slide = Reading.Of("8 mm", Dimension.Length) });
        var proposed = LinkageSetting.Of(car, CornerPlace.FrontLeft, build, null).Value;
        double slid = 0.008 - (car.Build(car.MeasuredBuild)!.FrontLeft.Slide?.Si ?? 0);
        Assert.Equal(slid, proposed.Plate, 1e-12);
        var camber = CurveSheet.Of(LinkageCars.Present, proposed, SweepAlong.Travel)[0];
        for (int i = 0; i < camber.PlacesMm.Count; i += 20)
        {
            var motion = new HardpointMotion(proposed.Points.Ready(), 0, slid);
            motion.GeometryAt(camber.PlacesMm[i] / 1000, out var wheel);
            Assert.Equal(wheel.Camber * 180 / Math.PI, camber.Lines[1].Values[i]!.Value, 1e-6);
            Assert.True(camber.Lines[1].Values[i] < camber.Lines[0].Values[i]);
        }
    }

    // The verdict's own figure of the same car, worked out by the judge from its row of inputs.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(6, 0)]
    [InlineData(0, -0.8)]
    [InlineData(-4, 1.2)]
    public void Camber_at_ride_is_what_the_verdict_says_of_it_with_plate_and_clamp_set(double slideMm, double clampDegrees)
    {
        var car = LinkageCars.Car;
        var build = car.Build("gravel-2")!;
        Reading Setting(double value, Unit unit) => new(Quantity.Of(value, unit), null, ReadingSource.Setting);
        build = build.With(CornerPlace.FrontLeft,
            build.FrontLeft with { Slide = Setting(slideMm, Units.Millimetre), ClampCamber = Setting(clampDegrees, Units.Degree) });
        car = car.With(build)
            .With(CornerPlace.FrontLeft, car.FrontLeft with { Motion = car.FrontLeft.Motion with { Level = MotionLevel.Hardpoints } });
        var judged = Judge.Build(car, "gravel-2");
        double told = judged.Figures.Single(f => f.Name == "camber-ride" && f.Corner == CornerPlace.FrontLeft).Value.Si;
        var setting = LinkageSetting.Of(car, CornerPlace.FrontLeft, build, judged).Value;
        var wheel = new LinkageMover(setting).WheelAt(setting.Ride!.Value, 0, setting.Plate)!.Value;
        Assert.Equal(told, wheel.Camber, 1e-6);

        var pose = new LinkageMover(setting).PoseAt(new(setting.Ride.Value, 0, setting.Plate))!;
        int top = setting.Points.Joints.ToList().FindIndex(j => j.Field.PropertyName == nameof(HardpointTable.StrutTop));
        Assert.Equal(setting.Points.Linkage.Joints[top].At.Y - setting.Plate, pose.Joints[top].Y, 1e-9);
    }

    // A wheel with more room for its offset stands further in, and the chart says by how much.
    [Fact]
    public void Another_offset_is_seen_in_the_track()
    {
        var car = LinkageCars.Car;
        var proposed = LinkageSetting.Of(car, CornerPlace.FrontLeft, car.Build("gravel-1"), null).Value;
        double further = LinkageCars.Present.Points.HubFaceOutboard - proposed.Points.HubFaceOutboard;
        var track = CurveSheet.Of(LinkageCars.Present, proposed, SweepAlong.Travel).Single(s => s.Quantity.Key == "track");
        Assert.True(Math.Abs(further) > 0.001);
        Assert.Equal(0, track.ValueAt(track.Lines[0], 0)!.Value, 0.05);
        Assert.Equal(further * 1000, track.ValueAt(track.Lines[1], 0)!.Value, 0.4);
    }

    [Fact]
    public void A_judged_build_rides_between_its_stops_and_the_way_shown_reaches_beyond_them()
    {
        var car = LinkageCars.Car;
        var judged = Judge.Build(car, "gravel-2");
        var setting = LinkageSetting.Of(car, CornerPlace.FrontLeft, car.Build("gravel-2"), judged).Value;
        Assert.True(setting.Droop < setting.Ride && setting.Ride < setting.Bump);
        var sheet = CurveSheet.Of(setting, null, SweepAlong.Travel)[0];
        Assert.Equal(setting.Ride!.Value * 1000, sheet.Lines[0].Ride!.Value, 1e-9);
        Assert.True(sheet.PlacesMm[0] < sheet.ReachMm!.Value.Least && sheet.ReachMm.Value.Most < sheet.PlacesMm[^1]);
    }

    [Fact]
    public void Through_steer_the_wheel_turns_and_a_rear_wheel_has_no_such_charts()
    {
        var steer = CurveSheet.Of(LinkageCars.Present, null, SweepAlong.Rack);
        var toe = steer.Single(s => s.Quantity.Key == "toe").Lines[0].Values;
        Assert.True(Math.Abs(toe[^1]!.Value - toe[0]!.Value) > 30);
        var rear = LinkageCars.Car.With(CornerPlace.RearLeft, LinkageCars.Car.RearLeft with { Hardpoints = LinkageCars.Table });
        Assert.Empty(CurveSheet.Of(LinkageSetting.Of(rear, CornerPlace.RearLeft, null, null).Value, null, SweepAlong.Rack));
    }

    [Fact]
    public void The_file_says_what_the_charts_show_and_reads_back()
    {
        var sheets = CurveSheet.Of(LinkageCars.Present, LinkageCars.Present with { Name = "Winter, \"low\"" }, SweepAlong.Travel);
        string[] lines = SweepTable.Csv(sheets).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        // Every title is in quotes, for every one holds a comma or is the travel's.
        string[] titles = [.. System.Text.RegularExpressions.Regex.Matches(lines[0], "\"((?:[^\"]|\"\")*)\"|[^,]+")
            .Select(m => m.Value.Trim('"').Replace("\"\"", "\"", StringComparison.Ordinal))];
        Assert.Equal("travel, mm", titles[0]);
        Assert.Equal("camber, ° (Winter, \"low\")", titles[2]);
        Assert.Equal(1 + (2 * sheets.Count), titles.Length);
        int rows = 0;
        foreach (string line in lines.Skip(1))
        {
            double[] row = [.. line.Split(',').Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture))];
            Assert.Equal(titles.Length, row.Length);
            Assert.Equal(sheets[0].PlacesMm[rows], row[0], 1e-4);
            Assert.Equal(sheets[0].Lines[1].Values[rows]!.Value, row[2], 1e-5);
            rows++;
        }

        Assert.Equal(LinkageSweep.Count, rows);
    }

    [Theory]
    [InlineData(0.3, 9.7, 1)]
    [InlineData(-0.0004, 0.0003, 1e-4)]
    [InlineData(5, 5, 2)]
    [InlineData(-120, 3000, 10)]
    public void A_scale_covers_its_values_with_round_marks(double least, double most, double narrowest)
    {
        var scale = NiceScale.Over(least, most, narrowest);
        Assert.True(scale.Least <= least && scale.Most >= most);
        double mantissa = scale.Step / Math.Pow(10, Math.Floor(Math.Log10(scale.Step) + 1e-9));
        Assert.Contains([1.0, 2, 5], m => Math.Abs(m - mantissa) < 1e-9);
        Assert.InRange(scale.Marks.Count(), 3, 12);
    }

    [Fact]
    public void Lowering_says_now_then_and_change_as_the_library_does()
    {
        var rows = EffectRow.Of(LinkageCars.Present, 0.02, 0.003);
        var motion = new HardpointMotion(LinkageCars.Present.Points.Ready(), 0, 0.003);
        motion.GeometryAt(0.02, out var then);
        var camber = rows.Single(r => r.Quantity.Key == "camber");
        Assert.Equal(then.Camber * 180 / Math.PI, camber.Then!.Value, 1e-9);
        Assert.Equal(LinkageCars.Car.FrontLeft.Camber!.Si * 180 / Math.PI, camber.Now, 1e-9);
        Assert.Equal("top leans further in", camber.Words);
        Assert.Equal("no change worth a name", EffectRow.Of(LinkageCars.Present, 0, 0)[0].Words);
        Assert.Equal("out of the linkage's reach", EffectRow.Of(LinkageCars.Present, 0.9, 0)[0].Words);
    }
}
