using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Every row of data/R1.json (see the README there), closed forms, differences for the rates, and random axles.</summary>
public class RigidAxleTests
{
    private const double MmPerM = 1000;
    private static readonly JsonElement Oracle = OracleRows.File("R1.json");

    internal static RigidAxlePoints Points(double lateralRodStiffness = 1) => Points(Oracle.GetProperty("inputs"), lateralRodStiffness);

    /// <summary>The axle of any file of this kind.</summary>
    internal static RigidAxlePoints Points(JsonElement inputs, double lateralRodStiffness = 1)
    {
        StationPoints Ends(string name) => new(inputs.GetProperty(name).Point("b"), inputs.GetProperty(name).Point("p"));
        var left = new AxleSide(
            inputs.Point("wheel_center"), inputs.Radians("camber_deg"), inputs.Radians("toe_deg"), inputs.Metres("tyre_radius"),
            Ends("spring"), Ends("damper"));
        var rods = inputs.GetProperty("links").EnumerateArray().Select(link =>
        {
            string name = link.GetProperty("name").GetString()!;
            return new AxleRod(name, link.Point("b"), link.Point("k"), name == "lateral_rod" ? lateralRodStiffness : 1);
        });
        return new(left, left.Mirrored(), [.. rods]);
    }

    [Theory]
    [InlineData("heave_sweep", 17)]
    [InlineData("roll_sweep", 13)]
    [InlineData("one_wheel", 6)]
    public void Every_row_of_the_oracle(string sweep, int rows) =>
        Assert.Equal(rows, CheckSweep("R1", new RigidAxle(Points()), sweep, Oracle.GetProperty("results").GetProperty(sweep)));

    /// <summary>Every row of one sweep; the number of rows.</summary>
    internal static int CheckSweep(string id, RigidAxle axle, string sweep, JsonElement sweepRows)
    {
        int seen = 0;
        foreach (JsonElement row in sweepRows.EnumerateArray())
        {
            RigidAxleState s = axle.At(row.Metres("travel_left"), row.Metres("travel_right"));
            Assert.Equal(Reach.Reached, s.Why);
            var check = new RowCheck(row, $"{id} {sweep} row {seen}");
            Wheel(check, "L_", s.Left!);
            Wheel(check, "R_", s.Right!);
            check.Given("travel_left", "travel_right", "roll_input_deg", "link_length_change")
                .AngleDeg("axle_yaw_deg", s.Yaw).AngleDeg("axle_roll_deg", s.Roll).AngleDeg("axle_pitch_deg", s.Pitch)
                .PositionMm("axle_center", s.Centre)
                .RateOf("axle_steer_heave_deg_per_mm", OracleRows.Degrees(s.SteerInHeave) / MmPerM)
                .RateOf("roll_steer_deg_per_deg", s.RollSteer)
                .RateOf("dxc_dz_heave", s.ContactRecession).RateOf("dxw_dz_heave", s.CentreRecession)
                .LengthMm("rc_z", s.RollCentreZ).LengthMm("rc_height", s.RollCentreHeight)
                .LengthMm("rc_contact_normals_y", s.RollCentre.Y).LengthMm("rc_contact_normals_z", s.RollCentre.Z)
                .Complete();
            if (row.TryGetProperty("roll_input_deg", out JsonElement roll))
            {
                Assert.Equal(roll.GetDouble(), OracleRows.Degrees(s.Roll), OracleRows.AngleDeg);
            }

            Changes(row.GetProperty("link_length_change").EnumerateObject().Select(rod => rod.Value), s.RodChanges);
            seen++;
        }

        return seen;
    }

    private static void Wheel(RowCheck check, string side, AxleWheelState wheel) =>
        check.PositionMm(side + "wheel_center", wheel.Centre).Direction(side + "spindle", wheel.Spindle)
            .AngleDeg(side + "camber_deg", wheel.Camber).AngleDeg(side + "toe_deg", wheel.Toe)
            .PositionMm(side + "contact", wheel.Contact).LengthMm(side + "contact_shift_y", wheel.ContactShiftY)
            .LengthMm(side + "spring_length", wheel.Spring!.Value.Length).LengthMm(side + "damper_length", wheel.Damper!.Value.Length)
            .RateOf(side + "motion_ratio_heave", -wheel.Spring.Value.MotionRatio.Heave)
            .RateOf(side + "motion_ratio_roll", -wheel.Spring.Value.MotionRatio.Roll);

    private static void Changes(IEnumerable<JsonElement> expectedMm, IReadOnlyList<double> changes)
    {
        double[] expected = [.. expectedMm.Select(e => e.GetDouble())];
        Assert.Equal(expected.Length, changes.Count);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], changes[i] * MmPerM, OracleRows.PositionMm);
        }
    }

    [Fact]
    public void A_stiffer_lateral_rod_takes_less_of_the_change()
    {
        var axle = new RigidAxle(Points(lateralRodStiffness: 1e6));
        int seen = 0;
        foreach (JsonElement row in Oracle.GetProperty("results").GetProperty("sensitivity_lateral_rod_stiffness_x1e6").EnumerateArray())
        {
            double travel = 0.760 * Math.Sin(row.Radians("roll_input_deg"));
            RigidAxleState s = axle.At(travel, -travel);
            new RowCheck(row, $"R1 stiff rod row {seen}").Given("roll_input_deg", "link_length_change")
                .AngleDeg("axle_yaw_deg", s.Yaw).AngleDeg("axle_pitch_deg", s.Pitch).PositionMm("axle_center", s.Centre).Complete();
            Changes(row.GetProperty("link_length_change").EnumerateArray(), s.RodChanges);
            seen++;
        }

        Assert.Equal(4, seen);
    }

    [Fact]
    public void Five_lengths_kept_decide_the_roll()
    {
        var axle = new RigidAxle(Points());
        int seen = 0;
        foreach (JsonElement row in Oracle.GetProperty("results").GetProperty("exact_5_length_mechanism_heave").EnumerateArray())
        {
            RigidAxleState s = axle.AtMean(row.Metres("heave"), keepBranch: false);
            Assert.Equal(Reach.Reached, s.Why);
            new RowCheck(row, $"R1 exact row {seen}").Given("heave", "solved").AngleDeg("axle_roll_deg", s.Roll)
                .LengthMm("left_minus_mean_travel", s.Left!.Centre.Z - s.Centre.Z).Complete();
            Assert.All(s.RodChanges, change => Assert.True(Math.Abs(change) < 1e-12));
            seen++;

            // Found by following: this linkage folds at 37 mm of droop, so what the oracle finds below lies on another branch.
            RigidAxleState followed = axle.AtMean(row.Metres("heave"));
            Assert.Equal(row.Number("heave") > 0 ? Reach.Reached : Reach.LinkageCannotClose, followed.Why);
            Assert.True(followed.Why != Reach.Reached || Math.Abs(followed.Roll - s.Roll) < 1e-12);
        }

        Assert.Equal(4, seen);
        Assert.Equal(Reach.Reached, axle.AtMean(-0.036).Why);
    }

    // Closed form: three equal parallel links let the axle shift but not turn, so every point of it runs on a circle of the links' length;
    // the rod across is a circle of its own. Source: two circles, (L - x)² + y² + z² = L² and x² + (R + y)² + z² = R².
    [Fact]
    public void Parallel_links_carry_a_level_axle_on_a_circle()
    {
        const double Link = 0.5, Rod = 0.8;
        Vec3[] joints = [new(0, 0.5, 0.2), new(0, -0.5, 0.2), new(0, 0, 0.4)];
        var side = new AxleSide(new(0, 0.75, 0.3), 0, 0, 0.3);
        AxleRod[] rods =
        [
            .. joints.Select((joint, i) => new AxleRod($"link {i}", joint + new Vec3(Link, 0, 0), joint)),
            new("across", new(Link, -Rod / 2, 0.3), new(Link, Rod / 2, 0.3)),
        ];

        var axle = new RigidAxle(new(side, side.Mirrored(), rods));
        for (double z = -0.1; z <= 0.1001; z += 0.02)
        {
            RigidAxleState s = axle.At(z, z);
            Assert.Equal(Reach.Reached, s.Why);
            Assert.All(s.RodChanges, change => Assert.True(Math.Abs(change) < 1e-12));
            Assert.Equal(0, s.Yaw, 1e-12);
            Assert.Equal(0, s.Pitch, 1e-12);
            Assert.Equal(Link * Link, Sq(Link - s.Centre.X) + Sq(s.Centre.Y) + Sq(z), 1e-14);
            Assert.Equal(Rod * Rod, Sq(s.Centre.X) + Sq(Rod + s.Centre.Y) + Sq(z), 1e-14);
        }
    }

    [Fact]
    public void Rates_agree_with_differences()
    {
        const double H = 1e-4;
        var axle = new RigidAxle(Points());
        foreach (var (l, r) in new[] { (0.0, 0.0), (0.05, 0.05), (0.06, -0.02), (-0.03, 0.07) })
        {
            RigidAxleState s = axle.At(l, r), up = axle.At(l + H, r + H), down = axle.At(l - H, r - H);
            RigidAxleState over = axle.At(l + H, r - H), under = axle.At(l - H, r + H);
            Assert.Equal((up.Yaw - down.Yaw) / (2 * H), s.SteerInHeave, 1e-6);
            Assert.Equal((over.Yaw - under.Yaw) / (over.Roll - under.Roll), s.RollSteer, 1e-6);
            foreach (var (pick, sign) in new (Func<RigidAxleState, AxleStationState> Pick, int Sign)[]
                { (x => x.Left!.Spring!.Value, 1), (x => x.Right!.Spring!.Value, -1), (x => x.Left!.Damper!.Value, 1),
                (x => x.Right!.Damper!.Value, -1) })
            {
                AxleStationState now = pick(s);
                Assert.Equal(-(pick(up).Length - pick(down).Length) / (2 * H), now.MotionRatio.Heave, 1e-6);
                Assert.Equal((pick(up).MotionRatio.Heave - pick(down).MotionRatio.Heave) / (2 * H), now.MotionRatioSlope.Heave, 1e-5);
                Assert.Equal(-sign * (pick(over).Length - pick(under).Length) / (2 * H), now.MotionRatio.Roll, 1e-6);
                Assert.Equal(
                    sign * (pick(over).MotionRatio.Roll - pick(under).MotionRatio.Roll) / (2 * H), now.MotionRatioSlope.Roll, 1e-5);
            }
        }
    }

    [Fact]
    public void Out_of_reach_says_why_and_names_the_rod()
    {
        RigidAxlePoints points = Points();
        var axle = new RigidAxle(points with { BushingGive = 0.0005 });
        RigidAxleState s = axle.At(0.080, 0);
        Assert.Equal(Reach.LinkageCannotClose, s.Why);
        Assert.Equal("upper_left", s.WorstRod);
        Assert.Null(s.Left);

        Assert.Equal(Reach.LinkageCannotClose, new RigidAxle(points).At(0.9, -0.9).Why);
        Assert.Equal(Reach.NotFinite, axle.At(double.NaN, 0).Why);
        Assert.Equal(Reach.NotFinite, axle.AtMean(double.PositiveInfinity).Why);

        // Four rods leave the roll open.
        RigidAxlePoints four = points with { Rods = [points.Rods[0], points.Rods[1], points.Rods[2], points.Rods[4]] };
        Assert.Equal(Reach.LinkageCannotClose, new RigidAxle(four).AtMean(0.01).Why);
        Assert.Equal(Reach.Reached, new RigidAxle(four).At(0.05, -0.02).Why);
        Assert.Throws<ArgumentException>(() => new RigidAxle(points with { Rods = [.. points.Rods.Take(3)] }));
        Assert.Throws<ArgumentException>(() => new RigidAxle(points with { Left = points.Right, Right = points.Left }));
    }

    [Fact]
    public void Random_axles_answer_or_say_why()
    {
        const int Seed = 20260, Count = 100;
        var random = new Random(Seed);
        RigidAxlePoints given = Points();
        Vec3 Near(Vec3 p) => p + (0.15 * new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5));
        int reached = 0;
        for (int i = 0; i < Count; i++)
        {
            var rods = given.Rods.Select(rod => rod with { OnBody = Near(rod.OnBody), OnAxle = Near(rod.OnAxle) }).Skip(i % 2).ToList();
            var right = given.Right with { WheelCentre = Near(given.Right.WheelCentre) };
            var axle = new RigidAxle(given with { Rods = rods, Right = right });
            Vec3? last = null;
            for (int k = -5; k <= 5; k++)
            {
                double l = 0.016 * k, r = -0.008 * k;
                RigidAxleState s = axle.At(l, r);
                string at = $"seed {Seed}, axle {i}, step {k}: {s}";
                Assert.True(double.IsFinite(s.Roll + s.Yaw + s.Pitch + s.Centre.Length), at);
                if (s.Why != Reach.Reached)
                {
                    Assert.Equal(Reach.LinkageCannotClose, s.Why);
                    last = null;
                    continue;
                }

                reached++;
                Assert.True(double.IsFinite(s.RollSteer + s.SteerInHeave + s.Left!.Spring!.Value.MotionRatio.Roll), at);
                Assert.Equal(given.Left.WheelCentre.Z + l, s.Left.Centre.Z, 1e-12);
                Assert.Equal(right.WheelCentre.Z + r, s.Right!.Centre.Z, 1e-12);
                Assert.True(last is not { } before || (before - s.Centre).Length < 0.06, at);
                last = s.Centre;
            }
        }

        Assert.True(reached > 8 * Count, $"seed {Seed}: only {reached} poses of {11 * Count} reached");
    }

    private static double Sq(double x) => x * x;
}
