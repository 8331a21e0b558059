using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Tests.Motion.Hardpoints;

namespace Cornerwright.Mechanics.Tests.Motion;

public sealed class SwingingLinkTests
{
    // What a link is: as long as ever, its end at the bar's arm from the bushes and in its plane; and continuous from where it stood.
    [Fact]
    public void The_bars_end_keeps_both_lengths_and_its_side()
    {
        var random = new Random(7);
        double In(double low, double high) => low + ((high - low) * random.NextDouble());
        for (int i = 0; i < 400; i++)
        {
            Vec3 outer = new(In(-0.1, 0.1), In(-0.25, -0.15), In(0.05, 0.25)),
                end = outer + new Vec3(In(-0.04, 0.04), In(-0.06, 0.06), (random.Next(4) == 0 ? 1 : -1) * In(0.2, 0.35));
            double ahead = (random.Next(2) == 0 ? 1 : -1) * In(0.15, 0.3), above = In(-0.03, 0.03);
            var link = new SwingingLink(outer, end, ahead, above, (outer - end).Length, 0.006);
            Vec3 pivot = end + new Vec3(ahead, 0, above), before = link.BarEndAt(outer);
            Assert.True((before - end).Length < 1e-12, $"{i}");
            for (int k = 1; k <= 40; k++)
            {
                Vec3 there = outer + new Vec3(0.0005 * k, -0.0004 * k, 0.002 * k);
                Vec3 now = link.BarEndAt(there);
                Assert.Equal(link.Length, (there - now).Length, 1e-12);
                Assert.Equal((end - pivot).Length, (now - pivot).Length, 1e-12);
                Assert.Equal(end.Y, now.Y, 1e-15);
                Assert.True((now - before).Length < 0.012, $"{i} {k}: jumps by {(now - before).Length}");
                before = now;
            }
        }
    }

    [Fact]
    public void A_long_arm_moves_its_end_straight_and_no_arm_at_all_likewise()
    {
        Vec3 outer = new(0, -0.2, 0.1), end = new(0.02, -0.24, -0.18), up = outer + new Vec3(0, 0, 0.1);
        double length = (outer - end).Length;
        Vec3 straight = new SwingingLink(outer, end, double.PositiveInfinity, 0, length, 0).BarEndAt(up),
            nearly = new SwingingLink(outer, end, 999, 0, length, 0).BarEndAt(up);
        Assert.True((straight - (end + new Vec3(0, 0, 0.1))).Length < 1e-12, $"{straight}");
        Assert.True((straight - nearly).Length < 6e-6, $"{nearly}");
    }

    [Fact]
    public void A_link_that_cannot_reach_leaves_the_bars_end_where_it_is_nearest()
    {
        Vec3 outer = new(0, -0.2, 0.1), end = new(0, -0.2, -0.1);
        var link = new SwingingLink(outer, end, -0.2, 0, 0.2, 0);
        Vec3 far = new(0, -0.2, 0.5), now = link.BarEndAt(far), pivot = new(-0.2, -0.2, -0.1);
        Vec3 toward = (far - pivot).Unit();
        Assert.True((now - (pivot + (toward * 0.2))).Length < 1e-12, $"{now}");
    }

    // A joint of the knuckle, asked as a point of it, must be where its rods can hold it.
    [Theory]
    [InlineData("M1")]
    [InlineData("W1")]
    [InlineData("F1")]
    public void A_point_of_the_knuckle_goes_with_it(string id)
    {
        CornerLinkage corner = TracedCorners.Linkage(id);
        var linkage = new KnuckleLinkage(corner, 0);
        var motion = new HardpointMotion(linkage);
        var rods = corner.Ties.OfType<LinkageTie.Rod>().ToList();
        Assert.NotEmpty(rods);
        Assert.Equal(Reach.Reached, motion.PoseAt(0, 0, out WheelPose rest));
        SpindleFrame still = SpindleFrame.Of(rest);
        foreach (var rod in rods)
        {
            Vec3 outer = corner.Joints[rod.Knuckle].At, inner = corner.Joints[rod.Body].At;
            Vec3 hub = corner.WheelCentre, inSpindle = still.ToSpindle(outer - hub);
            for (int mm = -60; mm <= 60; mm += 20)
            {
                foreach (double rack in (double[])[-0.03, 0, 0.03])
                {
                    Assert.Equal(Reach.Reached, motion.PointAt(mm / 1000.0, rack, inSpindle, out Vec3 there));
                    Vec3 held = rod.Steers ? inner + new Vec3(0, rack, 0) : inner;
                    Assert.Equal((outer - inner).Length, (hub + there - held).Length, 1e-9);
                }
            }
        }
    }
}
