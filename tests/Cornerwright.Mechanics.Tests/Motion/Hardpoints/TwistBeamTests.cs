using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Every row of data/T1.json (see the README there), closed forms and differences.</summary>
public class TwistBeamTests
{
    private const double MmPerM = 1000;
    private static readonly JsonElement Oracle = OracleRows.File("T1.json");

    internal static TwistBeamPoints Points() => Points(Oracle.GetProperty("inputs"));

    /// <summary>The beam of any file of this kind.</summary>
    internal static TwistBeamPoints Points(JsonElement inputs)
    {
        JsonElement pivot = inputs.GetProperty("pivot");
        StationPoints Ends(string name) => new(inputs.GetProperty(name).Point("b"), inputs.GetProperty(name).Point("p"));
        var wheel = new AxleSide(
            inputs.Point("wheel_center"), inputs.Radians("camber_deg"), inputs.Radians("toe_deg"), inputs.Metres("tyre_radius"),
            Ends("spring"), Ends("damper"));
        return new(wheel, pivot.Point("b_bush"), pivot.Point("shear_centre"));
    }

    [Theory]
    [InlineData("heave_sweep", AxleMovement.Heave, 17)]
    [InlineData("roll_sweep", AxleMovement.Roll, 17)]
    public void Every_row_of_the_oracle(string sweep, AxleMovement movement, int rows) =>
        Assert.Equal(rows, CheckSweep("T1", new TwistBeam(Points()), sweep, movement, Oracle.GetProperty("results").GetProperty(sweep)));

    /// <summary>Every row of one sweep; the number of rows.</summary>
    internal static int CheckSweep(string id, TwistBeam beam, string sweep, AxleMovement movement, JsonElement sweepRows)
    {
        bool heave = movement == AxleMovement.Heave;
        int seen = 0;
        foreach (JsonElement row in sweepRows.EnumerateArray())
        {
            double z = row.Metres("travel");
            TwistBeamState s = heave ? beam.At(z, 0) : beam.At(0, z);
            Assert.Equal(Reach.Reached, s.Why);
            new RowCheck(row, $"{id} {sweep} row {seen}").Given("mode", "travel")
                .AngleDeg("rotation_deg", heave ? s.HeaveTurn : s.RollTurn)
                .PositionMm("wheel_center", s.Centre).Direction("spindle", s.Spindle).AngleDeg("camber_deg", s.Camber).AngleDeg(
                    "toe_deg", s.Toe)
                .PositionMm("contact", s.Contact).LengthMm("contact_shift_y", s.ContactShiftY)
                .LengthMm("spring_length", s.Spring!.Value.Length).RateOf("motion_ratio", -s.Spring.Value.MotionRatio.For(movement))
                .LengthMm("damper_length", s.Damper!.Value.Length).RateOf("motion_ratio_damper", -s.Damper.Value.MotionRatio.For(movement))
                .RateOf("camber_gain_deg_per_mm", OracleRows.Degrees(s.CamberGain.For(movement)) / MmPerM)
                .RateOf("bump_steer_deg_per_mm", OracleRows.Degrees(s.ToeGain.For(movement)) / MmPerM)
                .LengthMm("rc_height", s.RollCentreHeight.For(movement)).LengthMm(
                    "rc_height_locked", s.RollCentreHeightLocked.For(movement))
                .RateOf("dxc_dz", s.ContactRecession.For(movement)).RateOf("dxw_dz", s.CentreRecession.For(movement))
                .Complete();
            seen++;
        }

        return seen;
    }

    // Closed form: a trailing arm of length L at the bushing's height turns by asin(z/L). Source: swing axle, Dixon,
    // Suspension Geometry and Computation (2009), ch. on single-arm suspensions (from memory).
    [Fact]
    public void A_level_arm_turns_by_the_arcsine_of_travel()
    {
        const double Length = 0.42;
        var beam = new TwistBeam(new(new(new(0, 0.74, 0.3), 0, 0, 0.3), new(Length, 0.56, 0.3), new(Length, 0, 0.3)));
        for (double z = -0.1; z <= 0.1001; z += 0.02)
        {
            // With the shear centre in the bushings' own line, roll is heave of one arm.
            TwistBeamState heave = beam.At(z, 0), roll = beam.At(0, z);
            Assert.Equal(-Math.Asin(z / Length), heave.HeaveTurn, 1e-13);
            Assert.Equal(heave.HeaveTurn, roll.RollTurn, 1e-13);
            Assert.Equal(Length - Math.Sqrt((Length * Length) - (z * z)), heave.Centre.X, 1e-13);
            Assert.Equal(0, roll.Camber, 1e-13);
            Assert.Equal(0, roll.RollCentreHeight.Roll, 1e-12);
        }

        Assert.Equal(Reach.LinkageCannotClose, beam.At(Length + 0.01, 0).Why);
        Assert.Equal(Reach.LinkageCannotClose, beam.At(0, -Length - 0.01).Why);
        Assert.Equal(Reach.NotFinite, beam.At(double.NaN, 0).Why);
    }

    [Fact]
    public void The_right_side_mirrors_the_left()
    {
        TwistBeam left = new(Points()), right = new(Points().Mirrored());
        TwistBeamState l = left.At(0.03, -0.05), r = right.At(0.03, -0.05);
        Assert.Equal(new Vec3(l.Centre.X, -l.Centre.Y, l.Centre.Z), r.Centre);
        Assert.Equal(l.Camber, r.Camber, 1e-15);
        Assert.Equal(l.Toe, r.Toe, 1e-15);
        Assert.Equal(l.HeaveTurn, r.HeaveTurn, 1e-15);
        Assert.Equal(l.RollTurn, r.RollTurn, 1e-15);
        Assert.Equal(l.RollCentreHeight.Roll, r.RollCentreHeight.Roll, 1e-12);
        Assert.Equal(0.301 - 0.02, l.Centre.Z, 1e-12);
    }

    [Fact]
    public void Rates_agree_with_differences_as_corners_of_the_car()
    {
        const double H = 1e-5;
        var axle = new RigidAxle(RigidAxleTests.Points());
        var beam = new TwistBeam(Points());
        foreach (AxleMovement movement in Enum.GetValues<AxleMovement>())
        {
            CornerMotion[] corners = [
                new TwistBeamMotion(beam, movement), new RigidAxleMotion(axle, left: true, movement),
                new RigidAxleMotion(axle, left: false, movement)];
            foreach (CornerMotion corner in corners)
            {
                foreach (double z in new[] { -0.06, 0, 0.045 })
                {
                    foreach (Station station in Enum.GetValues<Station>())
                    {
                        Assert.Equal(Reach.Reached, corner.StationAt(z, station, out StationState now));
                        Assert.Equal(Reach.Reached, corner.StationAt(z + H, station, out StationState up));
                        Assert.Equal(Reach.Reached, corner.StationAt(z - H, station, out StationState down));
                        Assert.Equal((down.Length - up.Length) / (2 * H), now.MotionRatio, 1e-8);
                        Assert.Equal((up.MotionRatio - down.MotionRatio) / (2 * H), now.MotionRatioSlope, 1e-6);
                    }

                    Assert.Equal(Reach.Reached, corner.WheelAt(z, out WheelMotionState wheel));
                    Assert.True(z != 0 || Math.Abs(wheel.LateralShift) < 1e-12);
                    Assert.InRange(wheel.LateralShift, -0.02, 0.02);
                }

                Assert.Equal(Reach.NotFinite, corner.WheelAt(double.NaN, out _));
            }
        }

        var bare = new TwistBeamMotion(new(Points() with { Wheel = Points().Wheel with { Spring = null } }));
        Assert.Equal(Reach.NotGiven, bare.StationAt(0, Station.Spring, out _));
    }
}
