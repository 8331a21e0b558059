using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Motion;

/// <summary>Strut and wishbones against closed forms, an independent solve and finite differences, on invented suspensions.</summary>
public class PlanarLinkageTests
{
    // An invented strut: arm 0.33 m, slightly drooping outward; tube leaning 9° inboard, its axis passing outboard of the ball joint.
    internal static readonly PlanarStrutPoints Strut = new(
        ArmInner: new(-0.420, -0.085), BallJoint: new(-0.092, -0.118), StrutTop: new(-0.215, 0.540), LowerReference: new(-0.118, 0.020));

    internal static PlanarStrutMotion StrutMotion(double plate = 0, double? length = null) =>
        new(Strut, camber: -0.015, toe: 0.001, toeGain: 0.02, plateOutboard: plate, lengthAtReference: length);

    private static readonly PlanarWishbonePoints Wishbones = new(
        UpperInner: new(-0.360, 0.130), UpperOuter: new(-0.115, 0.145), LowerInner: new(-0.420, -0.110), LowerOuter: new(-0.070, -0.130));

    private static PlanarWishboneMotion WishboneMotion(PickupPart part) =>
        new(Wishbones, camber: -0.01, spring: new(new(-0.30, 0.40), Moving(part), part),
        damper: new(new(-0.28, 0.42), Moving(part), part, 0.5));

    private static PlanarPoint Moving(PickupPart part) =>
        part switch { PickupPart.LowerArm => new(-0.16, -0.10), PickupPart.UpperArm => new(-0.17, 0.15), _ => new(-0.10, 0.05) };

    [Fact]
    public void Parallel_equal_wishbones_keep_the_camber_and_shift_by_the_arms_cosine()
    {
        // Closed form: the knuckle only translates, on a circle of the arm's length.
        const double Arm = 0.35, Start = -0.08;
        PlanarPoint swing = new(Arm * Math.Cos(Start), Arm * Math.Sin(Start));
        PlanarPoint lower = new(-0.45, -0.12), upper = new(-0.45, 0.14);
        var motion = new PlanarWishboneMotion(new(upper, upper + swing, lower, lower + swing), camber: 0.004, null, null);
        for (double z = -0.1; z <= 0.1001; z += 0.01)
        {
            Assert.Equal(Reach.Reached, motion.WheelAt(z, out WheelMotionState wheel));
            double angle = Math.Asin(Math.Sin(Start) + (z / Arm));
            Assert.Equal(0.004, wheel.Camber, 1e-12);
            Assert.Equal(Arm * (Math.Cos(angle) - Math.Cos(Start)), wheel.LateralShift, 1e-12);
        }
    }

    [Fact]
    public void Arms_that_share_their_inner_pivot_swing_the_wheel_rigidly()
    {
        // Closed form: everything turns about the pivot P; the hub face at distance |P| from it.
        PlanarPoint pivot = new(-0.55, -0.06), body = new(-0.30, 0.35), seat = new(-0.20, -0.05);
        var motion = new PlanarWishboneMotion(
            new(pivot, new(-0.10, 0.15), pivot, new(-0.08, -0.12)), camber: 0, spring: new(body, seat, PickupPart.Knuckle), damper: null);
        for (double turn = -0.18; turn <= 0.181; turn += 0.03)
        {
            PlanarPoint hub = Turned(new PlanarPoint(0, 0) - pivot, turn) + pivot;
            Assert.Equal(Reach.Reached, motion.WheelAt(hub.Up, out WheelMotionState wheel));
            Assert.Equal(-turn, wheel.Camber, 1e-11);
            Assert.Equal(hub.Outboard, wheel.LateralShift, 1e-11);

            // MR = -(dD/dturn)/(dz/dturn): velocity of a turning point is its lever, quarter-turned.
            PlanarPoint lever = Turned(seat - pivot, turn), end = lever + pivot, along = (end - body) * (1 / (end - body).Length);
            double lengthRate = along.Dot(new(-lever.Up, lever.Outboard));
            double rise = (hub - pivot).Outboard;
            Assert.Equal(Reach.Reached, motion.StationAt(hub.Up, Station.Spring, out StationState spring));
            Assert.Equal((end - body).Length, spring.Length, 1e-11);
            Assert.Equal(-lengthRate / rise, spring.MotionRatio, 1e-10);
        }

        Assert.Equal(Reach.NotGiven, motion.StationAt(0, Station.Damper, out _));
    }

    [Fact]
    public void Strut_pose_agrees_with_an_independent_solve_of_its_constraints()
    {
        // Second way: unknowns are the knuckle's turn and place; bisection on the turn so that the arm keeps its length,
        // with the knuckle placed so that the hub has the travel and the axis passes through the strut top.
        PlanarStrutMotion motion = StrutMotion(plate: 0.006);
        PlanarPoint top = Strut.StrutTop + new PlanarPoint(0.006, 0);
        double armLength = (Strut.BallJoint - Strut.ArmInner).Length;
        for (double z = -0.09; z <= 0.0901; z += 0.01)
        {
            double low = -0.2, high = 0.2;
            for (int i = 0; i < 200; i++)
            {
                double middle = 0.5 * (low + high);
                (low, high) = (Miss(low, z) > 0) == (Miss(middle, z) > 0) ? (middle, high) : (low, middle);
            }

            Assert.Equal(Reach.Reached, motion.WheelAt(z, out WheelMotionState wheel));
            Assert.Equal(Reach.Reached, motion.StationAt(z, Station.Spring, out StationState station));
            PlanarPoint hub = Hub(low, z);
            Assert.Equal(-0.015 - low, wheel.Camber, 1e-10);
            Assert.Equal(hub.Outboard, wheel.LateralShift, 1e-10);
            Assert.Equal((top - (hub + Turned(Strut.LowerReference, low))).Length, station.Length, 1e-10);
        }

        PlanarPoint Hub(double turn, double z)
        {
            // Axis through the lower reference, turned; slide the knuckle sideways until the strut top is on it.
            PlanarPoint axis = Turned(Strut.StrutTop - Strut.LowerReference, turn),
                reference = Turned(Strut.LowerReference, turn) + new PlanarPoint(0, z);
            double rise = (top.Up - reference.Up) / axis.Up;
            return new(top.Outboard - (axis.Outboard * rise) - reference.Outboard, z);
        }

        double Miss(double turn, double z) => (Hub(turn, z) + Turned(Strut.BallJoint, turn) - Strut.ArmInner).Length - armLength;
    }

    public static TheoryData<string> Linkages => ["strut", "strut with plate", "lower arm", "upper arm", "knuckle"];

    [Theory]
    [MemberData(nameof(Linkages))]
    public void Motion_ratio_and_its_slope_are_the_derivatives_of_the_length(string which)
    {
        CornerMotion motion = which switch
        {
            "strut" => StrutMotion(),
            "strut with plate" => StrutMotion(-0.012),
            "lower arm" => WishboneMotion(PickupPart.LowerArm),
            "upper arm" => WishboneMotion(PickupPart.UpperArm),
            _ => WishboneMotion(PickupPart.Knuckle),
        };
        foreach (Station station in new[] { Station.Spring, Station.Damper })
        {
            for (double z = -0.08; z <= 0.0801; z += 0.02)
            {
                Assert.Equal(Reach.Reached, motion.StationAt(z, station, out StationState here));

                // Fourth-order central differences, h = 1 mm: truncation about 1e-12, rounding 1e-13/h.
                double ratio = -Difference(x => Length(motion, x, station), z);
                double slope = Difference(x => Ratio(motion, x, station), z);
                Assert.Equal(ratio, here.MotionRatio, 2e-9);
                Assert.Equal(slope, here.MotionRatioSlope, 2e-8);
            }
        }
    }

    [Fact]
    public void Measured_length_at_reference_replaces_the_points_own()
    {
        PlanarStrutMotion measured = StrutMotion(length: 0.5300), bare = StrutMotion();
        measured.StationAt(0, Station.Spring, out StationState a);
        bare.StationAt(0, Station.Spring, out StationState b);
        Assert.Equal(0.5300, a.Length, 1e-12);
        Assert.Equal((Strut.StrutTop - Strut.LowerReference).Length, b.Length, 1e-12);
        Assert.Equal(b.MotionRatio, a.MotionRatio, 1e-12);
    }

    [Fact]
    public void Moving_the_strut_top_inboard_takes_camber_off()
    {
        StrutMotion().WheelAt(0, out WheelMotionState middle);
        StrutMotion(plate: -0.010).WheelAt(0, out WheelMotionState inboard);
        Assert.Equal(-0.015, middle.Camber, 1e-12);
        Assert.Equal(0, middle.LateralShift, 1e-12);

        // The knuckle tilts about the ball joint, 0.66 m below the top: about 10/660 rad, wheel top inward.
        Assert.InRange(inboard.Camber - middle.Camber, -0.0165, -0.0140);
    }

    [Fact]
    public void A_travel_out_of_reach_says_so_and_the_reachable_range_ends_there()
    {
        PlanarStrutMotion motion = StrutMotion();
        Assert.Equal(Reach.LinkageCannotClose, motion.WheelAt(0.6, out WheelMotionState state));
        Assert.Equal(default, state);
        Assert.Equal(Reach.LinkageCannotClose, motion.StationAt(-0.6, Station.Spring, out _));
        Assert.Equal(Reach.NotFinite, motion.WheelAt(double.NaN, out _));

        // Short equal arms of 0.12 m with their outer ends 0.02 m low rise by 0.14 m and sink by 0.10 m, to the dead centre.
        PlanarPoint swing = new(Math.Sqrt((0.12 * 0.12) - (0.02 * 0.02)), -0.02), lower = new(-0.25, -0.10), upper = new(-0.25, 0.15);
        var small = new PlanarWishboneMotion(new(upper, upper + swing, lower, lower + swing), 0, null, null);
        var (droop, bump) = small.ReachableTravel();
        Assert.InRange(bump, 0.139, 0.14);
        Assert.InRange(droop, -0.10, -0.099);
        Assert.True(small.InDomain(0.13));
        Assert.False(small.InDomain(0.15));
    }

    private static PlanarPoint Turned(PlanarPoint p, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new((c * p.Outboard) - (s * p.Up), (s * p.Outboard) + (c * p.Up));
    }

    private static double Length(CornerMotion motion, double z, Station station)
    {
        Assert.True(motion.StationAt(z, station, out StationState s).IsUsable());
        return s.Length;
    }

    private static double Ratio(CornerMotion motion, double z, Station station)
    {
        Assert.True(motion.StationAt(z, station, out StationState s).IsUsable());
        return s.MotionRatio;
    }

    private static double Difference(Func<double, double> f, double x)
    {
        const double H = 1e-3;
        return ((8 * (f(x + H) - f(x - H))) - (f(x + (2 * H)) - f(x - (2 * H)))) / (12 * H);
    }
}
