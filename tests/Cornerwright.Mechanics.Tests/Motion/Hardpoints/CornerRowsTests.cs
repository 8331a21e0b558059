using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Every field of every row of the oracle's corners: positions to 1e-6 mm, angles to 1e-8°, rates to 1e-8 relative.</summary>
public sealed class CornerRowsTests
{
    [Theory]
    [InlineData("M1", 38)]
    [InlineData("M3", 116)]
    [InlineData("W1", 38)]
    [InlineData("W3", 38)]
    [InlineData("F1", 38)]
    [InlineData("S1", 17)]
    public void Every_row_of_a_corner(string id, int rows) => Assert.Equal(rows, CheckAll(id, TracedCorners.Linkage(id)));

    // A right wheel is the left one in a mirror, and the rack, along +Y on both sides, then goes the other way.
    [Theory]
    [InlineData("M1", 38)]
    [InlineData("W3", 38)]
    public void A_right_corner_is_the_left_one_in_a_mirror(string id, int rows) =>
        Assert.Equal(rows, CheckAll(id, TracedCorners.Linkage(id).Mirrored()));

    private static int CheckAll(string id, CornerLinkage corner)
    {
        JsonElement file = OracleRows.File(id + ".json");
        return CheckAll(
            id, corner, file.GetProperty("sweeps").EnumerateObject(), file.GetProperty("antis"),
            file.GetProperty("axle").GetString() == "front");
    }

    /// <summary>Every row of every sweep; the number of rows.</summary>
    internal static int CheckAll(string id, CornerLinkage corner, IEnumerable<JsonProperty> sweeps, JsonElement antis, bool front)
    {
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        int rows = 0;
        foreach (JsonProperty sweep in sweeps)
        {
            int at = sweep.Name.IndexOf("slide", StringComparison.Ordinal);
            double plate = at < 0 ? 0 : double.Parse(sweep.Name[(at + 5)..], System.Globalization.CultureInfo.InvariantCulture) / 1000;
            foreach (JsonElement row in sweep.Value.EnumerateArray())
            {
                string label = $"{id} {sweep.Name} travel {row.Number("travel")} rack {row.Number("rack")}";
                Assert.Equal(Reach.Reached, follower.MoveTo(row.Metres("travel"), corner.Side * row.Metres("rack"), plate));
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel), label);
                CheckRow(new(row, label), row, corner.Side, wheel, antis, front);
                rows++;
            }
        }

        return rows;
    }

    private static void CheckRow(RowCheck check, JsonElement row, int side, in WheelGeometry wheel, JsonElement antis, bool front)
    {
        Vec3 Left(Vec3 p) => side > 0 ? p : new(p.X, -p.Y, p.Z);
        const double PerMm = 180 / Math.PI / 1000;
        double wheelbase = antis.Number("wheelbase"), height = antis.Number("h_cg");
        Vec3 designCentre = row.Point("wheel_center") - row.Point("wheel_center_shift");
        check.Given("travel", "rack", "state_key")
            .PositionMm("wheel_center", Left(wheel.Centre))
            .PositionMm("wheel_center_shift", Left(wheel.Centre) - designCentre)
            .Direction("spindle", Left(wheel.Spindle))
            .AngleDeg("camber_deg", wheel.Camber)
            .AngleDeg("toe_deg", wheel.Toe)
            .PositionMm("contact", Left(wheel.Contact))
            .LengthMm("contact_shift_x", wheel.ContactShift.X)
            .LengthMm("contact_shift_y", Left(wheel.ContactShift).Y)
            .LengthMm("spring_length", wheel.Spring!.Value.Length)
            .LengthMm("damper_length", wheel.Damper!.Value.Length)
            .RateOf("motion_ratio", -wheel.Spring.Value.MotionRatio)
            .RateOf("motion_ratio_damper", -wheel.Damper.Value.MotionRatio)
            .RateOf("camber_gain_deg_per_mm", wheel.CamberByTravel * PerMm)
            .RateOf("bump_steer_deg_per_mm", wheel.ToeByTravel * PerMm)
            .LengthMm("rc_height", wheel.RollCentreHeight)
            .LengthMm("rc_height_locked", wheel.RollCentreHeightFixed)
            .LengthMm("rc_z", wheel.RollCentreZ)
            .RateOf("dxc_dz", wheel.ContactByRiseAhead)
            .RateOf("dyc_dz", wheel.ContactByRiseAcross)
            .RateOf("dxw_dz", wheel.CentreByRiseAhead)
            .RateOf("anti_brake_pct", 100 * wheel.AntiBrake(front, antis.Number("brake_share"), wheelbase, height))
            .RateOf("anti_drive_pct", 100 * wheel.AntiDrive(front, wheelbase, height))
            .PositionMm("isa_point", Left(wheel.Screw.Point))
            .Direction("isa_dir", Left(wheel.Screw.Direction))
            .RateOf("isa_pitch", wheel.Screw.Pitch * 1000);

        if (row.GetProperty("caster_deg").ValueKind == JsonValueKind.Null)
        {
            Assert.False(wheel.Steering.Exists);
            check.Given(
                "steer_axis_point", "steer_axis_dir", "steer_axis_pitch", "caster_deg", "kpi_deg", "trail", "scrub", "trail_veh",
                "scrub_veh",
                "caster_offset_wc", "kingpin_offset_wc").Complete();
            return;
        }

        SteeringAxis axis = wheel.Steering, freed = wheel.FreedAxis;
        check.PositionMm("steer_axis_point", Left(axis.Point))
            .Direction("steer_axis_dir", Left(axis.Direction))
            .RateOf("steer_axis_pitch", axis.Pitch * 1000)
            .AngleDeg("caster_deg", axis.Caster)
            .AngleDeg("kpi_deg", axis.Inclination)
            .LengthMm("trail", axis.Trail)
            .LengthMm("scrub", axis.Scrub)
            .LengthMm("trail_veh", axis.TrailAlongCar)
            .LengthMm("scrub_veh", axis.ScrubAcrossCar)
            .LengthMm("caster_offset_wc", axis.CasterOffset)
            .LengthMm("kingpin_offset_wc", axis.KingpinOffset)
            .RateOf("rack_steer_deg_per_mm", side * wheel.SteerByRack * PerMm)
            .RateOf("rack_camber_deg_per_mm", side * wheel.CamberByRack * PerMm)
            .Given("alt_axis_z_held")
            .Complete();
        JsonElement alt = row.GetProperty("alt_axis_z_held");
        new RowCheck(alt, "axis with the wheel's height held")
            .AngleDeg("caster_deg", freed.Caster).AngleDeg("kpi_deg", freed.Inclination).RateOf("pitch", freed.Pitch * 1000)
            .LengthMm("trail", freed.Trail).LengthMm("scrub", freed.Scrub).Complete();
    }
}
