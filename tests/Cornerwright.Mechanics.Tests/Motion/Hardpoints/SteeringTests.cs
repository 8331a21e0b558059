using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Both wheels from one rack against data/corner-traces.json; Ackermann and circles against closed forms.</summary>
public class SteeringTests
{
    private static SteeringPair Pair(string id)
    {
        CornerLinkage left = TracedCorners.Linkage(id);
        return new(left, left.Mirrored());
    }

    [Theory]
    [InlineData("M1")]
    [InlineData("M3")]
    [InlineData("W1")]
    [InlineData("W3")]
    [InlineData("F1")]
    public void Every_pair_of_the_oracle(string id)
    {
        JsonElement file = TracedCorners.File.GetProperty(id);
        Assert.Equal(7, CheckPairs(id, Pair(id), file.GetProperty("inputs"), file.GetProperty("steering_pair_travel0")));
    }

    /// <summary>Every row of a steering pair; the number of rows.</summary>
    internal static int CheckPairs(string id, SteeringPair pair, JsonElement inputs, JsonElement rows)
    {
        double wheelbase = inputs.GetProperty("antis").Metres("wheelbase"), track = 2 * pair.Left.WheelCentre.Y;
        int seen = 0;
        foreach (JsonElement row in rows.EnumerateArray())
        {
            SteeringPairState s = pair.At(row.Metres("rack"));
            Assert.Equal(Reach.Reached, s.Why);
            AckermannReading? a = SteeringAckermann.Read(s.Left.Steer, s.Right.Steer, wheelbase, track);
            RowCheck check = new RowCheck(row, $"{id} pair row {seen++}").Given("rack")
                .AngleDeg("steer_left_deg", s.Left.Steer).AngleDeg("steer_right_deg", s.Right.Steer);
            if (row.GetProperty("ackermann_pct").ValueKind == JsonValueKind.Null)
            {
                Assert.Null(a);
                check.Given("ackermann_pct").Complete();
                continue;
            }

            check.AngleDeg("inner_deg", a!.Value.Inner).AngleDeg("outer_deg", a.Value.Outer).AngleDeg("outer_ideal_deg", a.Value.IdealOuter)
                .RateOf("ackermann_pct", 100 * a.Value.Share).Complete();
            Assert.Equal(a.Value.Outer - a.Value.IdealOuter, a.Value.Deviation, 1e-15);
        }

        return seen;
    }

    // Closed form, exact Ackermann: L = 2.7 m, steering axes 1.5 m apart, turn centre 10 m from the car's axis on the
    // rear axle's line: inner 16.2721°, outer 14.0989°, cot(outer) - cot(inner) = 1.5/2.7. Source: any
    // vehicle-dynamics text, e.g. Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 8 (chapter from memory);
    // ISO 8855:2011, 7.1.9 defines the geometry.
    [Fact]
    public void Exact_Ackermann_angles_and_their_circle()
    {
        const double L = 2.7, W = 1.5, R = 10, Printed = 5e-5;
        var (inner, outer) = SteeringAckermann.ForRadius(R, L, W);
        Assert.Equal(16.2721, OracleRows.Degrees(inner), Printed);
        Assert.Equal(14.0989, OracleRows.Degrees(outer), Printed);
        Assert.Equal(W / L, (1 / Math.Tan(outer)) - (1 / Math.Tan(inner)), 1e-13);
        Assert.Equal(outer, SteeringAckermann.IdealOuter(inner, L, W), 1e-14);

        foreach (int side in new[] { 1, -1 })
        {
            var (left, right) = side > 0 ? (inner, outer) : (-outer, -inner);
            AckermannReading a = SteeringAckermann.Read(left, right, L, W)!.Value;
            Assert.Equal(1, a.Share, 1e-12);
            Assert.Equal(0, a.Deviation, 1e-14);

            Vec3 corner = new(0.8, -side * 0.9, 0);
            TurningCircle c = SteeringTurn.Circle(new(left, new(0, W / 2, 0)), new(right, new(0, -W / 2, 0)), -L, 0.2, [corner])!.Value;
            Assert.Equal(R, c.Radius, 1e-9);
            Assert.Equal(side * R, c.Centre.Y, 1e-9);
            Assert.Equal(0, c.Scrub, 1e-10);

            // Pythagoras from the turn centre to the outer wheel and to the body's corner.
            Assert.Equal(2 * (Math.Sqrt(Sq(R + (W / 2)) + Sq(L)) + 0.1), c.KerbDiameter, 1e-9);
            Assert.Equal(2 * Math.Sqrt(Sq(R + 0.9) + Sq(L + 0.8)), c.WallDiameter, 1e-9);
        }
    }

    [Fact]
    public void Parallel_wheels_share_the_slip()
    {
        const double L = 2.6, W = 1.5;
        Assert.Equal(0, SteeringAckermann.Read(0.3, 0.3, L, W)!.Value.Share, 1e-15);
        TurningCircle c = SteeringTurn.Circle(new(0.3, new(0, W / 2, 0)), new(0.3, new(0, -W / 2, 0)), -L, 0, [])!.Value;
        double inner = Math.Atan(L / (c.Radius - (W / 2))), outer = Math.Atan(L / (c.Radius + (W / 2)));
        Assert.Equal(0.6, inner + outer, 1e-12);
        Assert.Equal(inner - 0.3, c.Scrub, 1e-12);
        Assert.True(c.Scrub > 0.01);
    }

    [Fact]
    public void Straight_ahead_has_neither_share_nor_circle()
    {
        Assert.Null(SteeringAckermann.Read(-0.002, 0.002, 2.6, 1.5));
        Assert.Null(SteeringAckermann.Read(double.NaN, 0.1, 2.6, 1.5));
        Assert.Null(SteeringTurn.Circle(new(0, new(0, 0.7, 0)), new(0, new(0, -0.7, 0)), -2.6, 0.2, []));
        Assert.Null(SteeringTurn.Circle(new(double.NaN, new(0, 0.7, 0)), new(0, new(0, -0.7, 0)), -2.6, 0.2, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => SteeringAckermann.IdealOuter(0.2, 0, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => SteeringTurn.Circle(default, default, 1, 0.2, []));
    }

    [Fact]
    public void Left_and_right_may_differ_and_a_side_that_cannot_follow_is_named()
    {
        CornerLinkage left = TracedCorners.Linkage("W1");
        int outer = left.Joints.ToList().FindIndex(joint => joint.Name == "tie rod outer");
        Vec3[] moved = [.. left.Joints.Select((joint, i) => i == outer ? joint.At + new Vec3(0.01, 0, 0) : joint.At)];
        var odd = new SteeringPair(left, left.WithJointsAt(moved).Mirrored());
        SteeringPairState even = Pair("W1").At(0.03), uneven = odd.At(0.03);
        Assert.Equal(even.Left.Steer, uneven.Left.Steer, 1e-15);
        Assert.True(Math.Abs(even.Right.Steer - uneven.Right.Steer) > 0.005);

        Assert.Equal(Reach.NotFinite, odd.At(double.NaN).Why);
        double reach = Pair("W1").ReachOfRack(0.3);
        Assert.InRange(reach, 0.06, 0.299);
        Assert.Equal(Reach.Reached, Pair("W1").At(reach).Why);
        SteeringPairState beyond = Pair("W1").At(reach + 1e-4);
        Assert.Equal(Reach.LinkageCannotClose, beyond.Why);
        Assert.NotEqual("", beyond.Side);
        Assert.Equal(0.05, Pair("W1").ReachOfRack(0.05), 1e-15);
    }

    private static double Sq(double x) => x * x;
}
