using System.Runtime.InteropServices;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Web.Components.Linkages;

namespace Cornerwright.Web.Tests.Linkages;

public class LinkagePoseTests
{
    private static LinkagePose At(LinkageSetting setting, double travel, double rack = 0, double plate = 0) =>
        new LinkageMover(setting).PoseAt(new(travel, rack, plate))!;

    // A rod keeps its length whatever the pose: the joints sent to the browser are those of one and the same linkage.
    [Theory]
    [InlineData(-0.07, 0, 0)]
    [InlineData(0.05, 0.04, 0.01)]
    [InlineData(0.02, -0.06, -0.01)]
    public void Rods_keep_their_length_the_rack_moves_and_the_bytes_hold_it_all(double travel, double rack, double plate)
    {
        var setting = LinkageCars.Present;
        var pose = At(setting, travel, rack, plate);
        Assert.Null(pose.Stop);
        foreach (var rod in setting.Points.Linkage.Ties.OfType<LinkageTie.Rod>())
        {
            double measured = (setting.Points.Linkage.Joints[rod.Body].At - setting.Points.Linkage.Joints[rod.Knuckle].At).Length;
            Assert.Equal(measured, (pose.Joints[rod.Body] - pose.Joints[rod.Knuckle]).Length, 1e-10);
            Assert.Equal(rod.Steers ? rack : 0, pose.Joints[rod.Body].Y - setting.Points.Linkage.Joints[rod.Body].At.Y, 1e-12);
        }

        Vec3 hub = LinkageCars.Table.HubFace is { } h ? new(h.X!.Si, h.Y!.Si, h.Z!.Si) : default;
        Assert.Equal(hub.Z + travel, pose.HubFace.Z, 1e-10);
        var floats = MemoryMarshal.Cast<byte, float>(pose.Bytes());
        int n = pose.Joints.Count;
        Assert.Equal((3 * n) + 25, floats.Length);
        Assert.Equal(pose.HubFace.Y, floats[(3 * n) + 1], 1e-6);
        Assert.Equal(1, floats[(3 * n) + 9]);
        foreach (float value in floats)
        {
            Assert.True(float.IsFinite(value));
        }
    }

    [Fact]
    public void A_travel_out_of_reach_stops_where_the_linkage_does_and_says_why()
    {
        var pose = At(LinkageCars.Present, 0.8);
        Assert.NotNull(pose.Stop);
        Assert.InRange(pose.Place.Travel, 0.05, 0.79);
        Assert.NotEmpty(pose.Stop.Tie);
    }

    [Fact]
    public void A_mirrored_wheel_is_the_mirror_image()
    {
        var right =
            LinkageSetting.Of(LinkageCars.Car, CornerPlace.FrontRight, LinkageCars.Car.Build(LinkageCars.Car.MeasuredBuild), null).Value;
        var (a, b) = (At(LinkageCars.Present, 0.04), At(right, 0.04));
        for (int i = 0; i < a.Joints.Count; i++)
        {
            Assert.Equal(a.Joints[i].Y, -b.Joints[i].Y, 1e-9);
            Assert.Equal(a.Joints[i].Z, b.Joints[i].Z, 1e-9);
        }

        Assert.Equal(-1, LinkagePlan3d.Of(right).Side);
    }

    [Fact]
    public void The_plan_joins_only_joints_that_there_are_and_the_carrier_reaches_the_hub()
    {
        var plan = LinkagePlan3d.Of(LinkageCars.Present);
        Assert.All(plan.Members, m => Assert.InRange(Math.Max(m.A, m.B), 0, plan.Joints.Count));
        Assert.Equal(3, plan.Members.Count(m => m.Kind == "carrier" && m.B == plan.Joints.Count));
        Assert.Equal(["arm", "carrier", "rack", "spring", "strut", "tie"], plan.Members.Select(m => m.Kind).Distinct().Order());
        Assert.True(plan.Tyre.Count > 4);
    }

    [Theory]
    [InlineData(LinkageKind.MacPherson)]
    [InlineData(LinkageKind.MacPhersonTwoLinks)]
    [InlineData(LinkageKind.DoubleWishbone)]
    [InlineData(LinkageKind.FiveLink)]
    [InlineData(LinkageKind.SemiTrailing)]
    public void Every_point_that_a_kind_needs_is_the_end_of_something_drawn(LinkageKind kind)
    {
        foreach (var carrier in HardpointNeeds.Carriers(kind))
        {
            var table = new HardpointTable { Kind = kind, SpringOn = carrier, DamperOn = carrier };
            var ends = LinkageMember.Of(table).SelectMany(m => new[] { m.From, m.To }).ToHashSet(StringComparer.Ordinal);
            var bare = HardpointNeeds.Of(table).Select(f => f.PropertyName).Where(p => !ends.Contains(p));
            Assert.Empty(bare);
        }
    }

    [Fact]
    public void Plain_views_move_with_the_wheel_and_stay_on_their_sheet()
    {
        var (rest, bump) = (LinkageDrawing.Of(LinkageCars.Present, At(LinkageCars.Present, 0)),
            LinkageDrawing.Of(LinkageCars.Present, At(LinkageCars.Present, 0.05)));
        foreach (var side in Enum.GetValues<LinkageSide>())
        {
            var (a, b) = (LinkageLayout.Of(rest, side), LinkageLayout.Of(bump, side));
            Assert.NotEqual(a.Tyre, b.Tyre);
            var top = (a.Dots.Single(d => d.Property == nameof(HardpointTable.StrutTop)),
                b.Dots.Single(d => d.Property == nameof(HardpointTable.StrutTop)));
            Assert.Equal(top.Item1, top.Item2);
            Assert.All(a.Dots.Concat(b.Dots), d => Assert.True(d.X is > 0 and < LinkageLayout.Size && d.Y is > 0 and < LinkageLayout.Size));
            if (side != LinkageSide.Above)
            {
                Assert.True(b.Dots.Single(d => d.Property == nameof(HardpointTable.LowerBall)).Y
                    < a.Dots.Single(d => d.Property == nameof(HardpointTable.LowerBall)).Y - 5);
            }
        }
    }
}
