using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Linkages whose motion a textbook gives in closed form.</summary>
public sealed class HardpointClosedFormTests
{
    private static Vec3 Mm(double x, double y, double z) => InventedCorners.Mm(x, y, z);

    private static WheelGeometry At(CornerLinkage corner, double travel, double plate = 0)
    {
        var follower = new KnuckleFollower(new KnuckleLinkage(corner));
        Assert.Equal(Reach.Reached, follower.MoveTo(travel, 0, plate));
        Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel));
        return wheel;
    }

    // Parallel arms of equal length: the coupler of a parallelogram only shifts. Source: Milliken and Milliken, Race Car Vehicle
    // Dynamics (1995), ch. 17 (equal and parallel arms: no camber change); chapter from memory.
    [Theory]
    [InlineData(-80)]
    [InlineData(35)]
    [InlineData(80)]
    public void Equal_parallel_arms_keep_camber(double travelMm)
    {
        // A tie rod as long as the arms and parallel to them, so that nothing steers either.
        CornerLinkage corner = HardpointReachTests.ParallelArms();
        corner = corner.WithJointsAt([.. corner.Joints.Select(j => j.Name == "tie rod inner" ? Mm(-120, 400, 300) : j.At)]);
        double z = travelMm / 1000;
        WheelGeometry wheel = At(corner, z);
        Assert.Equal(0, wheel.Camber, 1e-13);
        Assert.Equal(0, wheel.Toe, 1e-13);
        Assert.Equal(0, wheel.CamberByTravel, 1e-12);

        // Balls on circles of 300 mm: y = √(0.3² - z²) - 0.3, dy/dz = -z/√(0.3² - z²).
        double level = Math.Sqrt((0.3 * 0.3) - (z * z));
        Assert.Equal(level - 0.3, wheel.Contact.Y - 0.76, 1e-13);
        Assert.Equal(-z / level, wheel.ContactByRiseAcross, 1e-12);
        Assert.False(wheel.Screw.Exists);
    }

    // A hinge along X through the car's middle: a swing axle. The wheel centre goes round the hinge, camber = -asin(z/L) for a level
    // half shaft of length L. Source: Reimpell, Stoll and Betzler, The Automotive Chassis, 2nd ed. (2001), ch. 3
    // (swing axle); chapter from memory.
    [Theory]
    [InlineData(-70)]
    [InlineData(25)]
    [InlineData(90)]
    public void Swing_axle_leans_by_the_arc_sine(double travelMm)
    {
        const double Length = 0.6;
        double z = travelMm / 1000;
        CornerLinkage corner = new(
            [new("front bushing", Mm(100, 100, 300)), new("rear bushing", Mm(-150, 100, 300)), new("top", Mm(0, 500, 600)),
            new("foot", Mm(0, 500, 250))],
            [new LinkageTie.Hinge(0, 1)], Mm(0, 700, 300), 0, 0, 0.3, new LinkageStation.OnKnuckle(2, 3));
        WheelGeometry wheel = At(corner, z);
        Assert.Equal(-Math.Asin(z / Length), wheel.Camber, 1e-13);
        Assert.Equal(-1 / Math.Sqrt((Length * Length) - (z * z)), wheel.CamberByTravel, 1e-11);
        Assert.Equal(0, wheel.Toe, 1e-14);

        // The hinge is the instant axis; seen from the front it is the instant centre, and the roll centre lies on the line to it.
        Assert.Equal(0, wheel.Screw.Pitch, 1e-14);
        Assert.Equal(0.1, wheel.Screw.Point.Y, 1e-12);
        Assert.Equal(0.3, wheel.Screw.Point.Z, 1e-12);
        double toCentreY = wheel.Contact.Y - 0.1, drop = 0.3 - wheel.Contact.Z;
        Assert.Equal(wheel.Contact.Y * drop / toCentreY, wheel.RollCentreHeightFixed, 1e-12);
    }

    // A linkage whose joints all lie in planes across X moves as a planar four-bar: the planar wishbone, itself tested against
    // closed forms, is the second route. Source: Norton, Design of Machinery, ch. 4 (four-bar closure).
    [Fact]
    public void Wishbones_across_the_car_are_a_planar_four_bar()
    {
        CornerLinkage corner = new(
            [
                new("lower front", Mm(150, 360, 180)), new("lower rear", Mm(-150, 360, 180)), new("lower ball", Mm(0, 710, 170)),
                new("upper front", Mm(120, 450, 440)), new("upper rear", Mm(-120, 450, 440)), new("upper ball", Mm(0, 670, 455)),
                new("tie rod inner", Mm(-130, 360, 180)), new("tie rod outer", Mm(-130, 710, 170)), new("top", Mm(0, 520, 560)),
                new("foot", Mm(0, 600, 185)),
            ],
            [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Rod(3, 5), new LinkageTie.Rod(4, 5),
            new LinkageTie.Rod(6, 7, true)],
            Mm(0, 760, 304), 0, 0, 0.3, new LinkageStation.OnArm(8, 9, 0, 1, 2), new LinkageStation.OnKnuckle(8, 5));
        PlanarPoint P(double y, double z) => new((y - 760) / 1000, (z - 304) / 1000);
        var planar = new PlanarWishboneMotion(
            new(P(450, 440), P(670, 455), P(360, 180), P(710, 170)), 0,
            new PlanarPickup(P(520, 560), P(600, 185), PickupPart.LowerArm),
            new PlanarPickup(P(520, 560), P(670, 455), PickupPart.Knuckle));
        Same(planar, corner, 0);
    }

    // A strut across the car: the planar strut is the second route. Source: docs/theory/motion.md §3.
    [Theory]
    [InlineData(0)]
    [InlineData(0.02)]
    public void A_strut_across_the_car_is_a_planar_strut(double plate)
    {
        CornerLinkage corner = new(
            [
                new("arm front", Mm(150, 370, 205)), new("arm rear", Mm(-150, 370, 205)), new("ball", Mm(0, 700, 185)),
                    new("strut top", Mm(0, 585, 840)),
                new("strut low", Mm(0, 660, 400)), new("tie rod inner", Mm(-130, 370, 205)), new("tie rod outer", Mm(-130, 700, 185)),
            ],
            [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Strut(3, 4), new LinkageTie.Rod(5, 6, true)],
            Mm(0, 745, 310), 0, 0, 0.3, new LinkageStation.OnStrut(3, 4, 0), new LinkageStation.OnStrut(3, 4, 0), new(0, -1, 0));
        PlanarPoint P(double y, double z) => new((y - 745) / 1000, (z - 310) / 1000);
        Same(new PlanarStrutMotion(new(P(370, 205), P(700, 185), P(585, 840), P(660, 400)), 0, plateOutboard: -plate), corner, plate);
    }

    private static void Same(CornerMotion planar, CornerLinkage corner, double plate)
    {
        var motion = new HardpointMotion(new KnuckleLinkage(corner), 0, plate);
        for (int mm = -90; mm <= 90; mm += 15)
        {
            double z = mm / 1000.0;
            Assert.Equal(Reach.Reached, motion.WheelAt(z, out WheelMotionState wheel));
            Assert.Equal(Reach.Reached, planar.WheelAt(z, out WheelMotionState expected));
            Assert.Equal(expected.Camber, wheel.Camber, 1e-11);
            Assert.Equal(0, wheel.Toe, 1e-11);
            Assert.Equal(expected.LateralShift, wheel.LateralShift, 1e-11);
            foreach (Station station in (Station[])[Station.Spring, Station.Damper])
            {
                Assert.Equal(Reach.Reached, motion.StationAt(z, station, out StationState state));
                Assert.Equal(Reach.Reached, planar.StationAt(z, station, out StationState known));
                Assert.Equal(known.Length, state.Length, 1e-11);
                Assert.Equal(known.MotionRatio, state.MotionRatio, 1e-10);
                Assert.Equal(known.MotionRatioSlope, state.MotionRatioSlope, 1e-8);
            }
        }
    }
}
