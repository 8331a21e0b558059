using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

public sealed class LinkageJointsTests
{
    // Every part is rigid: rods, arms, rockers keep the distances they had, and the stations' ends are as far apart as their lengths say.
    [Theory]
    [InlineData("M3", false)]
    [InlineData("W1", false)]
    [InlineData("W3", false)]
    [InlineData("W3", true)]
    [InlineData("F1", true)]
    public void Joints_keep_the_distances_of_their_parts(string id, bool right)
    {
        CornerLinkage corner = TracedCorners.Linkage(id);
        corner = right ? corner.Mirrored() : corner;
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        Assert.Equal(Reach.Reached, follower.MoveTo(0.05, corner.Side * 0.02, 0.01));
        IReadOnlyList<Vec3> now = LinkageJoints.Now(follower);
        void Same(int a, int b) => Assert.Equal((corner.Joints[a].At - corner.Joints[b].At).Length, (now[a] - now[b]).Length, 1e-12);
        foreach (LinkageTie.Rod rod in corner.Ties.OfType<LinkageTie.Rod>())
        {
            Same(rod.Body, rod.Knuckle);
            Assert.Equal(rod.Steers ? corner.Side * 0.02 : 0, now[rod.Body].Y - corner.Joints[rod.Body].At.Y, 1e-15);
        }

        Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
        foreach (var (station, state) in ((LinkageStation?, StationState?)[])[(corner.Spring, wheel.Spring), (corner.Damper, wheel.Damper)])
        {
            double? apart = null;
            switch (station)
            {
                case LinkageStation.OnStrut s:
                    apart = (now[s.Top] - now[s.Low]).Length - s.Along;
                    break;
                case LinkageStation.OnArm s:
                    Same(s.Moving, s.First);
                    Same(s.Moving, s.Second);
                    Same(s.Moving, s.Ball);
                    apart = (now[s.Body] - now[s.Moving]).Length;
                    break;
                case LinkageStation.OnRocker s:
                    Same(s.RodOnArm, s.Ball);
                    Same(s.RodOnArm, s.First);
                    Same(s.RodOnArm, s.RodOnRocker);
                    Same(s.RodOnRocker, s.Moving);
                    Same(s.Moving, s.Pivot);
                    apart = (now[s.Body] - now[s.Moving]).Length;
                    break;
                case LinkageStation.OnRod s:
                    apart = (now[s.RodBody] + ((now[s.RodKnuckle] - now[s.RodBody]) * s.Share) - now[s.Body]).Length;
                    break;
            }

            Assert.NotNull(apart);
            Assert.Equal(state!.Value.Length, apart.Value, 1e-12);
        }
    }
}
