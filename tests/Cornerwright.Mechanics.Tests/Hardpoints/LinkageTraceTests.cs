using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints;

namespace Cornerwright.Mechanics.Tests.Hardpoints;

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
}
