using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Tests.Motion.Hardpoints;
using Proof = Cornerwright.Mechanics.Clearance.Certifying.Certifying;

namespace Cornerwright.Mechanics.Tests.Clearance.Certifying;

/// <summary>The third way as the other wheel's travel: roll comes nearer to the rail than both wheels rising alike.</summary>
public class AxlePosesTests
{
    private const double Travel = 0.06;

    private static readonly WheelShape Shape = WheelShape.Of(TyreSection.WithEstimates(0, 0.2285, 0.203, 0.634, 0.233), default, 4);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_interval_holds_over_both_wheels_travels(bool left)
    {
        var poses = new AxlePoses(new RigidAxle(RigidAxleTests.Points()), left);
        Assert.True(poses.TryPose(default, out WheelPose rest));
        Assert.Equal(left ? 1 : -1, Math.Sign(rest.Spindle.Y));

        // A rail inboard of the tyre's top.
        Vec3 rail = rest.HubFace + new Vec3(0, left ? -0.16 : 0.16, 0.28);
        ClearanceObstacle inboard = ClearanceObstacle.OfPoints([rail, rail + new Vec3(0.1, 0, 0.02)]);
        CertifiedGap gap = Proof.Least(Shape, [inboard], poses, new(new(-Travel, 0, -Travel), new(Travel, 0, Travel)));
        Assert.True(gap.Why == CertifyingStop.Closed && gap.Width <= 1.001e-4, $"{gap}");
        var (least, alike) = Sampled(poses, inboard);
        Assert.InRange(least, gap.Lower, gap.Upper + 5e-4);
        Assert.True(gap.Upper < alike - 0.005, $"{gap.Upper} over both travels, {alike} with both alike");
        Assert.True(Math.Abs(gap.Place.Travel - gap.Place.Third) > 0.05, $"{gap.Place}");
    }

    [Fact]
    public void No_steer_and_nothing_out_of_reach()
    {
        var poses = new AxlePoses(new RigidAxle(RigidAxleTests.Points()), true);
        Assert.False(poses.TryPose(new(0, 0.01, 0), out WheelPose none));
        Assert.Equal(default, none);
        Assert.False(poses.TryPose(new(0.9, 0, -0.9), out _));
    }

    // Every thirtieth of both travels, and of both wheels alike.
    private static (double Least, double Alike) Sampled(AxlePoses poses, ClearanceObstacle obstacle)
    {
        double least = double.PositiveInfinity, alike = double.PositiveInfinity;
        for (int i = 0; i <= 30; i++)
        {
            for (int k = 0; k <= 30; k++)
            {
                Assert.True(poses.TryPose(new(Travel * ((i / 15.0) - 1), 0, Travel * ((k / 15.0) - 1)), out WheelPose pose));
                double gap = ScanClearing.Of(obstacle.Tree, Shape, pose).Gap;
                least = Math.Min(least, gap);
                alike = i == k ? Math.Min(alike, gap) : alike;
            }
        }

        return (least, alike);
    }
}
