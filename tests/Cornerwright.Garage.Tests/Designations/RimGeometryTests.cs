using Cornerwright.Garage.Designations;

namespace Cornerwright.Garage.Tests.Designations;

public class RimGeometryTests
{
    // Source: geometry of the inset, UN Regulation No. 124, para 2.6; values derived.
    [Fact]
    public void Lips_and_flanks()
    {
        Assert.Equal(0.14025, RimGeometry.MountingFaceToInnerBead(0.1905, 0.045), 1e-9);
        Assert.Equal(0.05025, RimGeometry.MountingFaceToOuterBead(0.1905, 0.045), 1e-9);
        Assert.Equal(0.057, RimGeometry.MountingFaceToOuterFlank(0.214, 0.050), 1e-9);
        Assert.Equal(0.157, RimGeometry.MountingFaceToInnerFlank(0.214, 0.050), 1e-9);
        Assert.Equal(0.00905, RimGeometry.InnerLipMovesIn(0.1905, 0.045, 0.2286, 0.035), 1e-9);
        Assert.Equal(0.02905, RimGeometry.OuterLipMovesOut(0.1905, 0.045, 0.2286, 0.035), 1e-9);
        Assert.Equal(0.020, RimGeometry.TrackChange(0.045, 0.035), 1e-12);
    }

    [Fact]
    public void A_spacer_acts_like_less_offset()
    {
        Assert.Equal(RimGeometry.TrackChange(0.045, 0.035), RimGeometry.TrackChange(0.045, 0.045, 0, 0.010), 1e-12);
        Assert.Equal(
            RimGeometry.InnerLipMovesIn(0.2, 0.045, 0.22, 0.035), RimGeometry.InnerLipMovesIn(0.2, 0.045, 0.22, 0.045, 0, 0.010), 1e-12);
        Assert.Equal(
            RimGeometry.OuterLipMovesOut(0.2, 0.045, 0.22, 0.035), RimGeometry.OuterLipMovesOut(0.2, 0.045, 0.22, 0.045, 0, 0.010), 1e-12);
    }

    // Chord of a regular polygon; UN Regulation No. 124, para 2.1.5 for the bolt circle.
    [Theory]
    [InlineData(4, 100, 70.711)]
    [InlineData(5, 114.3, 67.184)]
    [InlineData(5, 120, 70.534)]
    [InlineData(6, 139.7, 69.850)]
    public void Bolt_holes(int bolts, double circleMm, double distanceMm)
    {
        double distance = RimGeometry.BoltHoleDistance(bolts, circleMm / 1000);
        Assert.Equal(distanceMm / 1000, distance, 1e-5);
        Assert.Equal(circleMm / 1000, RimGeometry.BoltCircleFromHoleDistance(bolts, distance), 1e-12);
    }
}
