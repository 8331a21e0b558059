using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>The strut and what hangs on it, from one gap and the parts' sizes.</summary>
public class StrutFurnitureTests
{
    private static readonly TyreSection Tyre = TyreSection.WithEstimates(-0.040, 0.216, 0.190, 0.640, 0.225);
    private static readonly RimSection Rim = RimSection.WithEstimates(-0.040, 0.190, 0.218);

    private static StrutParts Parts(double perchHeight) => new(
        TubeDiameter: 0.050, TubeFoot: -0.05, TubeTop: 0.36, PerchDiameter: 0.090, PerchHeight: perchHeight, PerchThickness: 0.020,
        SpringDiameter: 0.080, StackLength: 0.20, HelperDiameter: 0.078, HelperLength: 0.03);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.08)]
    [InlineData(0.16)]
    [InlineData(-0.03)]
    public void The_tube_is_as_far_from_the_tyre_as_was_read(double inclination)
    {
        StrutLine line = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.008, 0.025, inclination, 0.02);
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(6)];
        WheelSolid wheel = WheelSolid.Write(Tyre, default, 6, buffer);
        Clearing gap = CylinderClearing.Of(wheel, StrutFurniture.Piece(line, Parts(0.3) with { TubeFoot = 0.15 }, StrutPiece.Tube));
        Assert.Equal(0.008, gap.Gap, 2e-6);
        Assert.Equal(12, gap.ClockHours, 1e-3);
        Assert.True(gap.OnObstacle.X < gap.OnWheel.X, "the strut stands on the car's side");

        // 10 mm off the wheel's middle changes the gap by less than the 0.1 mm the comment claims.
        StrutLine aside = StrutLine.FromGap(
            Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.008, 0.025, inclination, 0.02, threeOffset: 0.01);
        Assert.Equal(
            0.008, CylinderClearing.Of(wheel, StrutFurniture.Piece(aside, Parts(0.3) with { TubeFoot = 0.15 }, StrutPiece.Tube)).Gap, 1e-4);

        // The lower reference stands where it was said: 20 mm along the strut above the hub's height.
        Assert.Equal(0.02 * Math.Cos(inclination), line.LowerReference.Y, 1e-12);
    }

    [Fact]
    public void An_axial_reading_meets_the_tube_along_the_spindle()
    {
        StrutLine line = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerShoulder, GapDirection.AxialInboard, 0.012, 0.025, 0.1, 0);
        ProfilePoint shoulder = WheelFeatures.At(Tyre, Rim, WheelFeature.InnerShoulder).At;
        Vec3 touch = new(shoulder.A - 0.012, shoulder.R, 0);
        Vec3 off = touch - line.LowerReference;
        Assert.Equal(0.025, (off - (line.Direction * off.Dot(line.Direction))).Length, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerShoulder, GapDirection.Radial, 0.01, 0.025, 0, 0));
    }

    [Fact]
    public void Parts_stack_up_from_the_lower_reference()
    {
        var line = new StrutLine(new(-0.2, 0, 0), Vec3.UnitY);
        Span<CylinderObstacle> into = stackalloc CylinderObstacle[StrutFurniture.MostPieces];
        Assert.Equal(4, StrutFurniture.Write(line, Parts(0.15), into));
        Assert.Equal(new CylinderObstacle(new(-0.2, -0.05, 0), Vec3.UnitY, 0.41, 0.025), into[0]);
        Assert.Equal((0.13, 0.02, 0.045), (into[1].Foot.Y, Math.Round(into[1].Length, 12), into[1].Radius));
        Assert.Equal((0.15, 0.17, 0.040), (into[2].Foot.Y, Math.Round(into[2].Length, 12), into[2].Radius));
        Assert.Equal((0.32, 0.03), (Math.Round(into[3].Foot.Y, 12), Math.Round(into[3].Length, 12)));
        Assert.Equal(0.15, StrutFurniture.Piece(line, Parts(0.15) with { HelperBelow = true }, StrutPiece.Helper).Foot.Y);
        Assert.Equal(3, StrutFurniture.Write(line, Parts(0.15) with { HelperDiameter = 0 }, into));
    }

    // Fact of the trade, common practice, no source: a perch below the tyre's top sits beside the tyre; above it the
    // tyre may pass underneath.
    [Fact]
    public void A_perch_below_the_top_of_the_tyre_is_beside_it_and_above_the_top_is_over_it()
    {
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(6)];
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, buffer);
        StrutLine line = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.008, 0.025, 0.08, 0);

        Clearing low = CylinderClearing.Of(wheel, StrutFurniture.Piece(line, Parts(0.28), StrutPiece.Perch));
        Assert.True(low.Gap < -0.004, $"20 mm of perch in an 8 mm gap: {low.Gap}");

        // A wider tyre passes under a high perch with room that only the perch's height decides.
        StrutLine close = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.002, 0.025, 0.08, 0);
        Clearing high = CylinderClearing.Of(wheel, StrutFurniture.Piece(close, Parts(0.36), StrutPiece.Perch));
        Clearing higher = CylinderClearing.Of(wheel, StrutFurniture.Piece(close, Parts(0.37), StrutPiece.Perch));
        Assert.True(high.Gap > 0, $"{high.Gap}");
        Assert.InRange(higher.Gap - high.Gap, 0.004, 0.010);
    }

    [Theory]
    [InlineData(-0.010)]
    [InlineData(0.006)]
    [InlineData(0.015)]
    public void Sliding_the_strut_top_keeps_the_gap_to_the_tyre_and_camber_at_the_clamp_does_not(double slide)
    {
        // Second way to the gap: tube and wheel both placed in B from the motion, the tube through the moved strut top.
        double before = GapInBody(0, 0.01, out double camberBefore), after = GapInBody(slide, 0.01, out double camberAfter);
        Assert.Equal(before, after, 1e-9);
        Assert.Equal(before, GapInBody(slide, -0.05, out _), 1e-9);
        Assert.True(Math.Abs(camberAfter - camberBefore) > 0.005, "the slide changes camber");

        // Camber at the clamp: half a degree of negative camber brings the tyre's top toward the tube.
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(6)];
        WheelSolid wheel = WheelSolid.Write(Tyre, Rim, 6, buffer);
        StrutLine line = StrutLine.FromGap(Tyre, Rim, WheelFeature.InnerSidewall, GapDirection.Nearest, 0.008, 0.025, 0.10, -0.02);
        CylinderObstacle tube = StrutFurniture.Piece(line, Parts(0.3) with { TubeFoot = 0.1 }, StrutPiece.Tube);
        CylinderObstacle clamped =
            StrutFurniture.Piece(line.AfterClamp(-0.5 * Math.PI / 180), Parts(0.3) with { TubeFoot = 0.1 }, StrutPiece.Tube);
        double change = CylinderClearing.Of(wheel, clamped).Gap - CylinderClearing.Of(wheel, tube).Gap;

        // The wall's widest place stands about 0.29 m above the clamp: 0.29 m × 0.5° = 2.5 mm.
        Assert.InRange(change, -0.0030, -0.0018);
    }

    private static double GapInBody(double slide, double travel, out double camber)
    {
        PlanarStrutMotion motion = PlanarLinkageTests.StrutMotion(slide);
        Assert.Equal(Reach.Reached, motion.WheelAt(travel, out WheelMotionState state));
        camber = state.Camber;
        Vec3 hub = new(0, 0.75, 0.31);
        WheelPose pose = WheelPose.StraightAhead(hub, WheelSide.Left, state with { Toe = 0 }, travel);

        // The tube's axis in B: from the strut top on its plate, turned from its reference direction by the loss of camber.
        PlanarPoint top = PlanarLinkageTests.Strut.StrutTop, reference = PlanarLinkageTests.Strut.LowerReference;
        Vec3 down =
            new Vec3(0, reference.Outboard - top.Outboard, reference.Up - top.Up).RotatedAbout(Vec3.UnitX, -0.015 - state.Camber).Unit();
        Assert.Equal(Reach.Reached, motion.StationAt(travel, Station.Spring, out StationState station));
        Vec3 topInBody = hub + new Vec3(0, top.Outboard + slide, top.Up);
        Vec3 lower = topInBody + (down * station.Length);
        var tube = new CylinderObstacle(lower + (-down * 0.1), -down, 0.25, 0.025);
        Span<double> buffer = stackalloc double[WheelSolid.BufferLength(6)];
        return CylinderClearing.Of(
            WheelSolid.Write(Tyre with { AxialCentre = 0.06 }, Rim with { AxialCentre = 0.06 }, 6, buffer),
            tube.ToSpindle(SpindleFrame.Of(pose))).Gap;
    }
}
