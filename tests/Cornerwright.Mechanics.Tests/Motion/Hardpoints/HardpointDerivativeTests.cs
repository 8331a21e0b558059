using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Derivatives against differences, and forces against virtual work.</summary>
public sealed class HardpointDerivativeTests
{
    private static readonly (string Name, CornerLinkage Corner)[] Corners =
    [
        ("strut", InventedCorners.Strut()), ("strut on two links", InventedCorners.StrutOnTwoLinks()),
            ("wishbones", InventedCorners.Wishbones()),
        ("five links", InventedCorners.FiveLinks()), ("trailing arm", InventedCorners.TrailingArm()),
    ];

    // Central differences with 1e-6 err by about 1e-10 here (rounding 1e-16/1e-6, third derivative times 1e-12).
    [Fact]
    public void The_Jacobian_is_the_derivative_of_the_conditions()
    {
        const double Step = 1e-6;
        foreach (var (name, corner) in Corners)
        {
            var linkage = new KnuckleLinkage(corner, 0.04);
            LinkagePlace place = new(0.03, 0.01, 0.005);
            KnucklePose pose = KnucklePose.At(linkage.Origin).MovedBy(0.05, -0.08, 0.21, linkage.Origin + new Vec3(0.004, -0.006, 0.03));
            double[] rows = Rows(linkage, pose, place);
            for (int column = 0; column < 5; column++)
            {
                double[] up = Missed(linkage, Moved(pose, column, Step), place), down = Missed(linkage, Moved(pose, column, -Step), place);
                for (int row = 0; row < 5; row++)
                {
                    double difference = (up[row] - down[row]) / (2 * Step);
                    Assert.True(
                        Math.Abs(difference - rows[(row * 5) + column]) < 1e-8,
                        $"{name}: row {row}, column {column}: {rows[(row * 5) + column]} against {difference}");
                }
            }
        }
    }

    [Fact]
    public void Rates_by_travel_rack_and_plate_are_derivatives()
    {
        const double Step = 1e-5;
        foreach (var (name, corner) in Corners)
        {
            LinkagePlace place = new(0.035, 0.012, 0.004);
            var follower = new KnuckleFollower(new KnuckleLinkage(corner, 0.04));
            WheelGeometry here = Read(follower, place);
            WheelGeometry up = Read(follower, place with { Travel = place.Travel + Step }),
                down = Read(follower, place with { Travel = place.Travel - Step });
            Near(name, (up.Camber - down.Camber) / (2 * Step), here.CamberByTravel);
            Near(name, (up.Toe - down.Toe) / (2 * Step), here.ToeByTravel);
            Near(name, (up.Contact.Y - down.Contact.Y) / (up.Contact.Z - down.Contact.Z), here.ContactByRiseAcross);
            Near(name, (up.Centre.X - down.Centre.X) / (up.Centre.Z - down.Centre.Z), here.CentreByRiseAhead);
            Near(name, (down.Spring!.Value.Length - up.Spring!.Value.Length) / (2 * Step), here.Spring!.Value.MotionRatio);
            Near(name, (up.Spring.Value.MotionRatio - down.Spring.Value.MotionRatio) / (2 * Step), here.Spring.Value.MotionRatioSlope);
            up = Read(follower, place with { Rack = place.Rack + Step });
            down = Read(follower, place with { Rack = place.Rack - Step });
            Near(name, (up.Camber - down.Camber) / (2 * Step), here.CamberByRack);
            Near(name, (up.Toe - down.Toe) / (2 * Step), here.SteerByRack);
            up = Read(follower, place with { Plate = place.Plate + Step });
            down = Read(follower, place with { Plate = place.Plate - Step });
            Near(name, (up.Camber - down.Camber) / (2 * Step), here.CamberByPlate);
            Near(name, (up.Toe - down.Toe) / (2 * Step), here.ToeByPlate);
        }
    }

    // Second route: the free body of the knuckle. Five rod forces, the spring's force at its joint on the knuckle and a force up at the
    // travel point balance (six equations); by virtual work that force is the spring's force times the motion ratio.
    [Fact]
    public void Spring_force_times_motion_ratio_is_the_wheel_force_of_the_free_body()
    {
        foreach (CornerLinkage corner in (CornerLinkage[])[InventedCorners.FiveLinks() with { Spring =
            new LinkageStation.OnKnuckle(10, 3) }, InventedCorners.Wishbones() with { Spring = new LinkageStation.OnKnuckle(8, 2) }])
        {
            var linkage = new KnuckleLinkage(corner, 0.04);
            var follower = new KnuckleFollower(linkage);
            for (int mm = -80; mm <= 80; mm += 40)
            {
                Assert.Equal(Reach.Reached, follower.MoveTo(mm / 1000.0, 0.02, 0));
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
                const double Force = 5000;
                var spring = (LinkageStation.OnKnuckle)corner.Spring!;
                Vec3 At(int joint) => follower.Pose.Point(corner.Joints[joint].At - linkage.Origin);
                var balance = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(6, 6);
                var load = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(6);
                void Put(int column, Vec3 force, Vec3 at)
                {
                    Vec3 moment = (at - follower.Pose.Origin).Cross(force);
                    balance.SetColumn(column, [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z]);
                }

                for (int i = 0; i < 5; i++)
                {
                    var rod = (LinkageTie.Rod)corner.Ties[i];
                    Vec3 outer = At(rod.Knuckle), inner = corner.Joints[rod.Body].At + new Vec3(0, rod.Steers ? 0.02 : 0, 0);
                    Put(i, (outer - inner).Unit(), outer);
                }

                Put(5, Vec3.UnitZ, follower.Pose.Origin);
                Vec3 push = (At(spring.Knuckle) - corner.Joints[spring.Body].At).Unit() * Force,
                    arm = (At(spring.Knuckle) - follower.Pose.Origin).Cross(push);
                load.SetValues([-push.X, -push.Y, -push.Z, -arm.X, -arm.Y, -arm.Z]);
                double atWheel = balance.Solve(load)[5];
                Assert.Equal(Force * wheel.Spring!.Value.MotionRatio, atWheel, 1e-8 * Force);
            }
        }
    }

    // No file of the oracle holds a strut on two links: each of the two planes holds the axis, and so does the strut's top.
    [Fact]
    public void Two_links_and_the_top_make_the_steering_axis()
    {
        CornerLinkage corner = InventedCorners.StrutOnTwoLinks();
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        foreach (var (travel, rack) in ((double, double)[])[(0, 0), (0.06, -0.04), (-0.07, 0.05)])
        {
            WheelGeometry wheel = Read(follower, new(travel, rack, 0));
            SteeringAxis axis = wheel.Steering;
            Assert.True(axis.Exists);
            Vec3 top = corner.Joints[4].At;
            Assert.Equal(0, (top - axis.Point).Cross(axis.Direction).Length, 1e-12);
            for (int link = 0; link < 4; link += 2)
            {
                Vec3 outer = follower.Pose.Point(corner.Joints[link + 1].At - follower.Linkage.Origin);
                Vec3 plane = (corner.Joints[link].At - top).Cross(outer - top).Unit();
                Assert.Equal(0, plane.Dot(axis.Direction), 1e-12);
            }
        }

        // Both links to one joint: the axis goes through that joint, as with a single arm.
        CornerLinkage joined =
            corner.WithJointsAt([.. corner.Joints.Select(j => j.Name == "rear link outer" ? corner.Joints[1].At : j.At)]);
        CornerLinkage single = joined with { Ties = [new LinkageTie.Rod(0, 1), new LinkageTie.Rod(2, 1), .. joined.Ties.Skip(2)] };
        SteeringAxis one = Read(new(new KnuckleLinkage(single)), new(0.05, 0.01, 0)).Steering;
        CornerLinkage nearly = corner.WithJointsAt(
            [.. corner.Joints.Select(j => j.Name == "rear link outer" ? corner.Joints[1].At + new Vec3(1e-9, 0, 0) : j.At)]);
        SteeringAxis two = Read(new(new KnuckleLinkage(nearly)), new(0.05, 0.01, 0)).Steering;
        Assert.Equal(one.Caster, two.Caster, 1e-7);
        Assert.Equal(one.Inclination, two.Inclination, 1e-7);
        Assert.Equal(one.Scrub, two.Scrub, 1e-7);
    }

    private static WheelGeometry Read(KnuckleFollower follower, LinkagePlace place)
    {
        Assert.Equal(Reach.Reached, follower.MoveTo(place.Travel, place.Rack, place.Plate));
        Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
        return wheel;
    }

    private static void Near(string name, double difference, double exact) =>
        Assert.True(Math.Abs(difference - exact) <= 2e-7 * Math.Max(1, Math.Abs(exact)), $"{name}: {exact} against {difference}");

    private static KnucklePose Moved(in KnucklePose pose, int column, double step) => pose.MovedBy(
        column == 0 ? step : 0, column == 1 ? step : 0, column == 2 ? step : 0,
        pose.Origin + new Vec3(column == 3 ? step : 0, column == 4 ? step : 0, 0));

    private static double[] Missed(KnuckleLinkage linkage, in KnucklePose pose, in LinkagePlace place)
    {
        var values = new ConditionValues(linkage);
        values.Evaluate(pose, place);
        return values.Missed.ToArray();
    }

    private static double[] Rows(KnuckleLinkage linkage, in KnucklePose pose, in LinkagePlace place)
    {
        var values = new ConditionValues(linkage);
        values.Evaluate(pose, place);
        return values.Entries.ToArray();
    }
}
