using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>
/// What no independent row has: a pushrod on the upper arm or on the knuckle, and the steering axis of a strut over two links.
/// </summary>
public sealed class CarrierTests
{
    private static readonly double[] Travels = [-0.07, -0.03, 0, 0.04, 0.08];

    // Two ways through the same points: the fast follower and the slow trace share no code for arms, rockers or derivatives.
    [Theory]
    [InlineData(0, 1, 2)]
    [InlineData(3, 4, 5)]
    [InlineData(LinkageStation.OnRocker.FromKnuckle, LinkageStation.OnRocker.FromKnuckle, LinkageStation.OnRocker.FromKnuckle)]
    public void A_pushrod_on_either_arm_or_on_the_knuckle_by_two_routes(int first, int second, int ball)
    {
        CornerLinkage corner = WithRocker(first, second, ball);
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        foreach (CornerLinkage side in (CornerLinkage[])[corner, corner.Mirrored()])
        {
            follower = new KnuckleFollower(new KnuckleLinkage(side));
            foreach (double travel in Travels)
            {
                TraceState slow = LinkageTrace.At(side, travel, 0.01);
                Assert.Equal(Reach.Reached, slow.Why);
                Assert.Equal(Reach.Reached, follower.MoveTo(travel, 0.01));
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry fast));
                Assert.Equal(slow.Spring.Length, fast.Spring!.Value.Length, 1e-11);
                Assert.Equal(slow.Spring.MotionRatio, fast.Spring.Value.MotionRatio, 1e-9);
                Assert.Equal(slow.Spring.MotionRatioSlope, fast.Spring.Value.MotionRatioSlope, 1e-6);
            }
        }

        // Drawn joints keep the pushrod's length.
        IReadOnlyList<Vec3> now = LinkageJoints.Now(follower);
        int end = corner.Joints.Count - 2, foot = corner.Joints.Count - 1;
        double rest = (corner.Joints[end].At - corner.Joints[foot].At).Length;
        Assert.Equal(rest, (now[end] - now[foot]).Length, 1e-12);
    }

    // The definition read as motion: with the spring's length held and the rod freed, the knuckle turns about the
    // strut's top, so every point of the axis stands still; each link's outer joint moves across its link. Source: rigid body kinematics.
    [Fact]
    public void A_strut_over_two_links_steers_about_the_line_of_both_planes()
    {
        var follower = new KnuckleFollower(new KnuckleLinkage(InventedCorners.StrutOnTwoLinks()));
        foreach (double travel in Travels)
        {
            Assert.Equal(Reach.Reached, follower.MoveTo(travel, 0.005));
            Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
            Assert.True(follower.Rates(out KnuckleRates rates));
            const double Step = 1e-6;
            double SpringAt(double rack)
            {
                Assert.Equal(Reach.Reached, follower.MoveTo(travel, rack));
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry there));
                return there.Spring!.Value.Length;
            }

            double byRack = (SpringAt(0.005 + Step) - SpringAt(0.005 - Step)) / (2 * Step);
            KnuckleTwist held = rates.ByRack + (rates.ByTravel * (byRack / wheel.Spring!.Value.MotionRatio));
            Vec3 axis = held.Turn.Unit();
            Vec3 upward = axis.Z > 0 ? axis : -axis;
            Assert.True((upward - wheel.Steering.Direction).Length < 1e-7, $"travel {travel}");
            Assert.Equal(Reach.Reached, follower.MoveTo(travel, 0.005));
            Vec3 still = held.Velocity(wheel.Steering.Point - follower.Pose.Origin);
            Assert.True(still.Length < 1e-6 * held.Turn.Length, $"travel {travel}: {still.Length}");
        }
    }

    // The bar's end follows its link: differences of where it is drawn, on both sides of the car, for a link on the
    // arm and one on the knuckle.
    [Theory]
    [InlineData(0, 1, 2)]
    [InlineData(LinkageStation.OnRocker.FromKnuckle, LinkageStation.OnRocker.FromKnuckle, LinkageStation.OnRocker.FromKnuckle)]
    public void The_bar_ends_ratio_is_its_motion_along_the_link(int first, int second, int ball)
    {
        CornerLinkage corner = InventedCorners.Wishbones();
        int n = corner.Joints.Count;
        Vec3 foot = ball < 0 ? InventedCorners.Mm(-60, 690, 230) : corner.Joints[ball].At + InventedCorners.Mm(-40, -90, 12);
        corner = corner with
        {
            Joints = [
                .. corner.Joints, new("bushing", InventedCorners.Mm(-260, 380, 260)), new("bar end", foot + InventedCorners.Mm(5, -8, 110)),
                new("link foot", foot)],
            Bar = new(n, Vec3.UnitY, n + 1, n + 2, first, second, ball),
        };
        foreach (CornerLinkage side in (CornerLinkage[])[corner, corner.Mirrored()])
        {
            var follower = new KnuckleFollower(new KnuckleLinkage(side));
            (Vec3 End, Vec3 Foot) At(double travel)
            {
                Assert.Equal(Reach.Reached, follower.MoveTo(travel));
                IReadOnlyList<Vec3> now = LinkageJoints.Now(follower);
                return (now[n + 1], now[n + 2]);
            }

            foreach (double travel in Travels)
            {
                const double Step = 1e-5;
                var (up, down, here) = (At(travel + Step), At(travel - Step), At(travel));
                Assert.Equal((corner.Joints[n + 1].At - foot).Length, (here.End - here.Foot).Length, 1e-12);
                double ratio = Math.Abs((up.End - down.End).Dot((here.Foot - here.End).Unit())) / (2 * Step);
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
                Assert.Equal(ratio, wheel.Bar!.Value.EndRatio, 1e-7);
                Vec3 arm = here.End - side.Joints[n].At;
                double lever = Math.Sqrt((arm.X * arm.X) + (arm.Z * arm.Z));
                Assert.Equal((up.End - down.End).Length / (2 * Step), Math.Abs(wheel.Bar.Value.TurnByTravel) * lever, 1e-7);
            }
        }
    }

    private static CornerLinkage WithRocker(int first, int second, int ball)
    {
        CornerLinkage corner = InventedCorners.Wishbones();
        Vec3 foot = ball < 0 ? InventedCorners.Mm(0, 690, 300) : corner.Joints[ball].At + InventedCorners.Mm(4, -60, 15);
        var joints = corner.Joints.Concat(
        [
            new("spring body", InventedCorners.Mm(0, 250, 380)), new("spring foot", InventedCorners.Mm(0, 290, 560)),
                new("rocker pivot", InventedCorners.Mm(0, 340, 520)),
            new("pushrod at rocker", InventedCorners.Mm(0, 385, 575)), new("pushrod foot", foot),
        ]).ToList();
        int n = corner.Joints.Count;
        return corner with { Joints = joints, Spring = new LinkageStation.OnRocker(
            n, n + 1, n + 2, new(1, 0.04, -0.02), n + 3, n + 4, first, second, ball), Damper = null };
    }
}
