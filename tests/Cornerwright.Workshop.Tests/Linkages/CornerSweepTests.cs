using System.Text.Json;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Sweeps;

namespace Cornerwright.Workshop.Tests.Linkages;

public sealed class CornerSweepTests
{
    private const double Degree = Math.PI / 180;

    // The independent rows again (tests/Cornerwright.Mechanics.Tests/Motion/Hardpoints/data),
    // now through car file, build and sweep, plate included.
    [Theory]
    [InlineData("M1")]
    [InlineData("M3")]
    [InlineData("W3")]
    [InlineData("F1")]
    public void A_sweep_writes_the_independent_rows(string id)
    {
        var car = OracleTables.Car(id);
        var build = new Build { Id = "b", Name = "b" };
        int rows = 0;
        foreach (JsonProperty sweep in OracleTables.Read(id + ".json").GetProperty("sweeps").EnumerateObject())
        {
            int at = sweep.Name.IndexOf("slide", StringComparison.Ordinal);
            double[] slide = at < 0 ? [] : [double.Parse(sweep.Name[(at + 5)..], System.Globalization.CultureInfo.InvariantCulture) / 1000];
            foreach (JsonElement row in sweep.Value.EnumerateArray())
            {
                double Number(string name) => row.GetProperty(name).GetDouble();
                var grid = new SweepGrid([Number("travel") / 1000], [Number("rack") / 1000], false, slide);
                var found = CornerSweep.Of(car, build, CornerPlace.FrontLeft, grid, new(ByHardpoints: true)).Value.Single();
                Assert.Equal("", found.Why);
                Written("camber_deg", Number("camber_deg"), 6);
                Written("caster_deg", Number("caster_deg"), 6);
                Written("kingpin_inclination_deg", Number("kpi_deg"), 6);
                Written("spring_length_mm", Number("spring_length"), 4);
                Written("spring_ratio", -Number("motion_ratio"), 7);
                Written("roll_centre_height_held_contact_mm", Number("rc_height_locked"), 4);
                rows++;

                // The last written digit, and what the tyre's radius shares: it is taken from the hub's height here.
                void Written(string column, double expected, int decimals) => Assert.Equal(
                    expected, SweepColumns.All.Single(c => c.Name == column).Written(found)!.Value,
                    (Math.Pow(10, -decimals) * 0.51) + (column.StartsWith("roll", StringComparison.Ordinal) ? 2 : 0));
            }
        }

        Assert.InRange(rows, 30, 200);
    }

    [Fact]
    public void Steering_by_angle_puts_this_wheel_at_it_and_left_and_right_differ()
    {
        var car = DemoCar.Read();
        double[] angles = [-30 * Degree, 0, 20 * Degree];
        foreach (var place in new[] { CornerPlace.FrontLeft, CornerPlace.FrontRight })
        {
            var rows = CornerSweep.Of(car, car.Build("now")!, place, new([0], angles, true, []), new(ByHardpoints: true)).Value;
            Assert.Equal(angles, rows.Select(r => Math.Round(r.Steer!.Value, 9)).Zip(angles, (a, b) => Math.Abs(a - b) < 1e-8 ? b : a));
            Assert.All(rows.Where(r => r.Steer != 0 && Math.Abs(r.Steer!.Value) > 0.1), r =>
                Assert.InRange(r.Ackermann!.Value.Share, -1, 1.5));
        }

        var pair = new[] { CornerPlace.FrontLeft, CornerPlace.FrontRight }.Select(p =>
            CornerSweep.Of(car, car.Build("now")!, p, new([0.03], [0.05], false, []), new(ByHardpoints: true)).Value.Single()).ToList();
        Assert.True(Math.Abs(pair[0].Steer!.Value - pair[1].Steer!.Value) > 0.1 * Degree);
        Assert.Equal(pair[0].Ackermann, pair[1].Ackermann);
    }

    // A level bar arm of 200 mm below an upright link on the wheel carrier beside
    // the ball joint: at rest its end rises nearly as the ball joint does.
    [Fact]
    public void A_bar_in_the_table_has_its_ratio_and_a_part_its_kind_lacks_is_refused()
    {
        var car = OracleTables.Car("M1");
        var table = car.FrontLeft.Hardpoints! with
        {
            BarOn = StationCarrier.Strut, BarFoot = OracleTables.Point([-10, 690, 300]), BarEnd = OracleTables.Point([-10, 690, 180]),
                BarPivot = OracleTables.Point([-210, 380, 180]),
        };
        car = car.With(CornerPlace.FrontLeft, car.FrontLeft with { Hardpoints = table });
        var row = CornerSweep.Of(car, new Build { Id = "b", Name = "b" }, CornerPlace.FrontLeft, new([0], [0], false, []),
            new(ByHardpoints: true)).Value.Single();
        Assert.InRange(row.BarRatio!.Value, 0.9, 1.05);
        car = car.With(CornerPlace.FrontLeft, car.FrontLeft with { Hardpoints = table with { BarOn = StationCarrier.UpperArm } });
        Assert.Contains(Consistency.Check(car), p => p.Field.EndsWith("Anti-roll bar's link works on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_level_without_steering_says_so_and_too_many_poses_are_refused()
    {
        var car = DemoCar.Read();
        var rows = CornerSweep.Of(car, car.Build("now")!, CornerPlace.FrontLeft, new([0], [0.01], false, []), new()).Value;
        Assert.Equal("steering is known only from hardpoints", rows[0].Why);
        var many = CornerSweep.Of(car, car.Build("now")!, CornerPlace.FrontLeft, new(new double[1000], new double[1000], false, []), new());
        Assert.Equal("1000000 poses at a corner", many.Problems[0].Given);
    }

    [Fact]
    public void Camber_at_the_clamp_is_what_the_gauge_shows()
    {
        var car = DemoCar.Read();
        var build = car.Build("now")!;
        var clamped = build.With(CornerPlace.FrontLeft,
            build.FrontLeft with { ClampCamber = Garage.Readings.Reading.Of("-1.5 deg", Dimension.Angle) });
        SweepRow Of(Build b) =>
            CornerSweep.Of(car, b, CornerPlace.FrontLeft, new([0], [0], false, []), new(ByHardpoints: true)).Value.Single();
        var (before, after) = (Of(build), Of(clamped));

        // What is set is what the gauge shows; the strut leans the other way meanwhile, so the clamp itself turns further.
        Assert.Equal(before.Motion!.Value.Camber - (1.5 * Degree), after.Motion!.Value.Camber, 1e-9);
        Assert.InRange(Math.Abs(after.Spring!.Value.Length - before.Spring!.Value.Length), 1e-4, 0.006);
    }
}
