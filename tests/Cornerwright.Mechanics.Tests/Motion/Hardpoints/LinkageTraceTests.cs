using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Every trace of data/corner-traces.json (see the README there).</summary>
public class LinkageTraceTests
{
    [Theory]
    [InlineData("M1")]
    [InlineData("M3")]
    [InlineData("W1")]
    [InlineData("W3")]
    [InlineData("F1")]
    [InlineData("S1")]
    public void Every_row_of_the_oracle(string id)
    {
        CornerLinkage linkage = TracedCorners.Linkage(id);
        int seen = 0;
        foreach (JsonElement row in TracedCorners.File.GetProperty(id).GetProperty("trace").EnumerateArray())
        {
            double rack = row.TryGetProperty("rack", out JsonElement r) ? r.GetDouble() / 1000 : 0;
            TraceState s = LinkageTrace.At(linkage, row.Metres("travel"), rack, row.Metres("plate"));
            Assert.Equal(Reach.Reached, s.Why);
            new RowCheck(row, $"{id} row {seen}").Given("travel", "rack", "plate", "wheel_center")
                .AngleDeg("camber_deg", s.Camber).AngleDeg("toe_deg", s.Toe).PositionMm("contact", s.Contact)
                .LengthMm("spring_length", s.Spring.Length).LengthMm("damper_length", s.Damper.Length)
                .RateOf("motion_ratio", -s.Spring.MotionRatio).RateOf("motion_ratio_damper", -s.Damper.MotionRatio)
                .Complete();
            Assert.Equal(row.Triple("wheel_center").Y, (s.Outboard + linkage.WheelCentre.Y) * 1000, OracleRows.PositionMm);
            seen++;
        }

        Assert.True(seen >= 17, $"{id}: only {seen} rows");
    }

    [Fact]
    public void Out_of_reach_and_not_a_number_are_answers()
    {
        CornerLinkage linkage = TracedCorners.Linkage("W1");
        Assert.Equal(Reach.LinkageCannotClose, LinkageTrace.At(linkage, 0.5).Why);
        Assert.Equal(Reach.LinkageCannotClose, LinkageTrace.At(linkage, 0, rack: 0.4).Why);
        Assert.Equal(Reach.NotFinite, LinkageTrace.At(linkage, double.NaN).Why);
        Assert.Equal(default, LinkageTrace.At(linkage, 0.5).Contact);
    }

    // A jump to another way of assembling the linkage would show as a step: the damper's length after 4 mm of travel
    // must be what values, first and second derivatives at both ends say (Hermite, fifth order). Left out are steps
    // next to a fold, where derivatives run away.
    [Fact]
    public void Random_linkages_answer_or_say_why_and_never_jump()
    {
        const int Seed = 5, Count = 30;
        const double Step = 0.004;
        var random = new Random(Seed);
        int reached = 0, refused = 0, compared = 0;
        foreach (string id in new[] { "M1", "W1", "F1", "S1" })
        {
            for (int i = 0; i < Count; i++)
            {
                CornerLinkage given = TracedCorners.Linkage(id);
                Vec3 Near(Vec3 p) => p + (0.12 * new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5));
                CornerLinkage linkage = given.WithJointsAt([.. given.Joints.Select(joint => Near(joint.At))]);
                (TraceState State, JointSlope Slope)? last = null;
                for (int k = -15; k <= 15; k++)
                {
                    TraceState s = LinkageTrace.At(linkage, k * Step);
                    string at = $"seed {Seed}, {id} {i}, step {k}: {s}";
                    Assert.True(
                        double.IsFinite(
                            s.Camber + s.Toe + s.Outboard + s.Contact.Length + s.Spring.MotionRatio + s.Damper.MotionRatioSlope),
                        at);
                    if (s.Why != Reach.Reached)
                    {
                        Assert.Equal(Reach.LinkageCannotClose, s.Why);
                        (last, refused) = (null, refused + 1);
                        continue;
                    }

                    // Damper length, motion ratio and its slope are value, first and second derivative of one curve.
                    var slope = new JointSlope(s.Damper.Length, -s.Damper.MotionRatio, -s.Damper.MotionRatioSlope);
                    if (last is { } before && Math.Abs(slope.Second) + Math.Abs(before.Slope.Second) < 40)
                    {
                        double expected = before.Slope.Value + (0.5 * Step * (before.Slope.First + slope.First))
                            + (Step * Step / 12 * (before.Slope.Second - slope.Second));
                        Assert.True(Math.Abs(expected - slope.Value) < 1e-4, at + $" but {expected}");
                        compared++;
                    }

                    (last, reached) = ((s, slope), reached + 1);
                }
            }
        }

        Assert.True(reached > 4 * Count * 20, $"seed {Seed}: {reached} reached, {refused} refused");
        Assert.True(compared > 0.9 * reached, $"seed {Seed}: {compared} of {reached} compared");
    }

    private readonly record struct JointSlope(double Value, double First, double Second);
}
