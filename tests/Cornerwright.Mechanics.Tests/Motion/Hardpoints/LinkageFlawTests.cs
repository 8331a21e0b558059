using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using static Cornerwright.Mechanics.Tests.Motion.Hardpoints.InventedCorners;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Points that make no linkage give a reason by name; our own bug stays an exception.</summary>
public class LinkageFlawTests
{
    [Fact]
    public void Sound_points_have_no_flaw()
    {
        foreach (CornerLinkage corner in (CornerLinkage[])[Strut(), StrutOnTwoLinks(), Wishbones(), FiveLinks(), TrailingArm()])
        {
            Assert.NotNull(HardpointMotion.Create(corner, out LinkageFlaw? flaw, 0.04));
            Assert.Null(flaw);
            Assert.NotNull(HardpointMotion.Create(corner.Mirrored(), out flaw, 0.04));
            Assert.Null(flaw);
        }
    }

    [Theory]
    [InlineData("tie rod outer", "tie rod inner", "tie rod inner,tie rod outer")]
    [InlineData("strut low", "strut top", "strut top,strut low")]
    [InlineData("arm front", "ball", "arm front,ball")]
    public void Two_joints_of_a_strut_at_one_place(string joint, string onto, string named) =>
        Expect(HardpointMotionOf(Put(Strut(), joint, onto)), LinkageFault.PointsTogether, named);

    [Theory]
    [InlineData("inner bushing", "outer bushing", "outer bushing,inner bushing")]
    public void Two_bushings_at_one_place(string joint, string onto, string named) =>
        Expect(HardpointMotionOf(Put(TrailingArm(), joint, onto)), LinkageFault.PointsTogether, named);

    [Fact]
    public void A_ball_joint_on_the_line_of_its_arm_s_bushings()
    {
        // The spring's arm only: the lower ball is led by the upper arm's bushings here.
        CornerLinkage corner = Wishbones() with { Spring = new LinkageStation.OnArm(8, 9, 0, 1, 10) };
        Vec3 middle = 0.5 * (corner.Joints[0].At + corner.Joints[1].At);
        corner = corner with { Joints = [.. corner.Joints, new("ball on the line", middle)] };
        LinkageFlaw flaw = Expect(HardpointMotionOf(corner), LinkageFault.BallOnPivotLine, "lower front,lower rear,ball on the line");
        Assert.Equal("ball on the line lies on the line through lower front and lower rear", flaw.What);

        // A millimetre beside the line is enough for a turn.
        corner = corner.WithJointsAt([.. corner.Joints.Select((j, i) => i == 10 ? j.At + Mm(0, 0, 1) : j.At)]);
        Assert.NotNull(HardpointMotion.Create(corner, out _));
    }

    [Fact]
    public void A_rocker_or_bar_without_direction()
    {
        CornerLinkage corner = Wishbones();
        Expect(
            HardpointMotionOf(corner with { Damper = new LinkageStation.OnRocker(8, 9, 3, default, 4, 2, -1, -1, -1) }),
            LinkageFault.NoDirection, "upper front");
        Expect(HardpointMotionOf(corner with { Bar = new(6, default, 3, 2) }), LinkageFault.NoDirection, "tie rod inner");
    }

    [Fact]
    public void A_tyre_without_radius() => Expect(HardpointMotionOf(Strut() with { TyreRadius = -0.02 }), LinkageFault.NoTyre, "");

    // The self-stress by hand: two rods in one line push against each other with equal force, all other rods carry nothing.
    [Fact]
    public void Two_rods_in_one_line_are_both_named_and_no_other()
    {
        CornerLinkage corner = Put(Put(Wishbones(), "tie rod inner", "lower front"), "tie rod outer", "lower ball");
        LinkageFlaw flaw = Expect(
            HardpointMotionOf(corner), LinkageFault.LockedOrLoose, "lower front - lower ball,tie rod inner - tie rod outer");
        Assert.Equal(
            "The linkage is locked or loose where the car was measured: lower front - lower ball and tie rod inner - tie rod outer "
            + "hold one movement twice and leave another free. "
            + "Look for a joint typed twice, or a link in line with another or with the steering axis.",
            flaw.ToString());
    }

    // By hand: the tie rod's force passes through the kingpin's line, so the arms bear it between them, each leg by less than half.
    [Fact]
    public void A_tie_rod_that_meets_the_kingpin_is_named()
    {
        CornerLinkage corner = HardpointReachTests.ParallelArms();
        corner = corner.WithJointsAt([.. corner.Joints.Select(j => j.Name == "tie rod outer" ? Mm(0, 700, 300) : j.At)]);
        Assert.Null(HardpointMotion.Create(corner, out LinkageFlaw? flaw));
        Assert.Equal(LinkageFault.LockedOrLoose, flaw!.Fault);
        Assert.Contains("tie rod inner - tie rod outer", flaw.Points);
    }

    [Fact]
    public void A_plate_or_clamp_beyond_reach_names_the_strut()
    {
        CornerLinkage corner = Strut();
        Assert.NotNull(StrutSetting.Create(corner, 0.01, 0.01, out LinkageFlaw? flaw));
        Assert.Null(flaw);
        foreach (var (slide, clamp) in new[] { (0.0, 1.4), (0.02, -1.4) })
        {
            Assert.Null(StrutSetting.Create(corner, slide, clamp, out flaw));
            Assert.Equal((LinkageFault.SettingOutOfReach, "strut top,strut low"), (flaw!.Fault, string.Join(',', flaw.Points)));
            Assert.StartsWith(
                "Strut top and strut low cannot stand",
                Assert.Throws<ArgumentException>(() => StrutSetting.Of(corner, slide, clamp)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_strut_that_is_no_strut_is_named_by_the_setting_too()
    {
        Assert.Null(StrutSetting.Create(Put(Strut(), "strut low", "strut top"), 0, 0.01, out LinkageFlaw? flaw));
        Assert.Equal((LinkageFault.PointsTogether, "strut top,strut low"), (flaw!.Fault, string.Join(',', flaw.Points)));
    }

    [Fact]
    public void A_rigid_axle_says_which_points()
    {
        RigidAxlePoints points = RigidAxleTests.Points();
        Assert.NotNull(RigidAxle.Create(points, out LinkageFlaw? flaw));
        Assert.Null(flaw);

        Assert.Null(RigidAxle.Create(points with { Left = points.Right, Right = points.Left }, out flaw));
        Assert.Equal(LinkageFault.WheelsSwapped, flaw!.Fault);
        Assert.Equal(
            "The left wheel centre is not to the left of the right one. Left is positive: check the sign of Y at both hubs.",
            flaw.ToString());

        AxleRod first = points.Rods[0];
        Assert.Null(RigidAxle.Create(points with { Rods = [first with { OnAxle = first.OnBody }, .. points.Rods.Skip(1)] }, out flaw));
        Assert.Equal(
            (LinkageFault.PointsTogether, $"{first.Name} at the body,{first.Name} at the axle"),
            (flaw!.Fault, string.Join(',', flaw.Points)));
        Assert.Throws<ArgumentException>(() => RigidAxle.Create(points with { Rods = [.. points.Rods.Take(3)] }, out _));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => RigidAxle.Create(points with { Left = points.Left with { Camber = double.NaN } }, out _));
    }

    [Fact]
    public void A_twist_beam_says_which_points()
    {
        TwistBeamPoints points = TwistBeamTests.Points();
        Assert.NotNull(TwistBeam.Create(points, out LinkageFlaw? flaw));
        Assert.Null(flaw);
        Assert.NotNull(TwistBeam.Create(points.Mirrored(), out flaw));

        Assert.Null(TwistBeam.Create(points with { Bush = points.Bush.Mirrored() }, out flaw));
        Assert.Equal(LinkageFault.BushingInboard, flaw!.Fault);
        Assert.Contains("sign of Y", flaw.Cure, StringComparison.Ordinal);
        Assert.Null(TwistBeam.Create(points with { Bush = points.ShearCentre }, out flaw));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwistBeam.Create(points with { Bush = new(double.NaN, 0.5, 0.3) }, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwistBeam.Create(points with { Bush = new(0, double.NaN, 0.3) }, out _));
    }

    // A number of ours that is no number, or a linkage put together wrongly, is a bug: no reason hides it.
    [Fact]
    public void Our_own_bug_is_an_exception_not_a_reason()
    {
        CornerLinkage strut = Strut();
        CornerLinkage nan = strut.WithJointsAt([.. strut.Joints.Select((j, i) => i == 4 ? new Vec3(double.NaN, 0, 0) : j.At)]);
        Assert.ThrowsAny<ArgumentException>(() => HardpointMotion.Create(nan, out _));
        Assert.ThrowsAny<ArgumentException>(() => HardpointMotion.Create(strut with { TyreRadius = double.NaN }, out _));
        Assert.ThrowsAny<ArgumentException>(() => HardpointMotion.Create(strut, out _, plate: double.PositiveInfinity));
        Assert.ThrowsAny<ArgumentException>(() => HardpointMotion.Create(strut with { Ties = [.. strut.Ties.Take(3)] }, out _));
        Assert.ThrowsAny<ArgumentException>(() => StrutSetting.Create(strut, double.NaN, 0, out _));
        Assert.ThrowsAny<ArgumentException>(() => StrutSetting.Create(nan, 0, 0.01, out _));
        Assert.ThrowsAny<ArgumentOutOfRangeException>(
            () => KnuckleLinkage.Create(strut with { Spring = new LinkageStation.OnStrut(3, 40, 0) }, out _));
    }

    private static LinkageFlaw? HardpointMotionOf(CornerLinkage corner)
    {
        Assert.Null(HardpointMotion.Create(corner, out LinkageFlaw? flaw));

        // Whoever asks without wanting an answer gets the same words as an exception.
        Assert.StartsWith(
            flaw!.ToString(), Assert.Throws<ArgumentException>(() => new HardpointMotion(new KnuckleLinkage(corner))).Message,
            StringComparison.Ordinal);
        return flaw;
    }

    private static LinkageFlaw Expect(LinkageFlaw? flaw, LinkageFault fault, string points)
    {
        Assert.NotNull(flaw);
        Assert.Equal((fault, points), (flaw.Fault, string.Join(',', flaw.Points)));
        Assert.NotEmpty(flaw.Cure);
        return flaw;
    }

    private static CornerLinkage Put(CornerLinkage corner, string joint, string onto)
    {
        Vec3 at = corner.Joints.Single(j => j.Name == onto).At;
        return corner.WithJointsAt([.. corner.Joints.Select(j => j.Name == joint ? at : j.At)]);
    }
}
