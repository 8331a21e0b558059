using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>
/// Seen: tyre growth enlarged two gaps to a strut. The wall's widest place stood at half the section height, so it rose with the crown and
/// the wall below it drew in. A grown tyre holds the tyre at rest.
/// </summary>
public class GrownTyreTests
{
    [Theory]
    [InlineData(0.185, 0.65, 15, 6, 0.003)]
    [InlineData(0.225, 0.40, 18, 8, 0.010)]
    [InlineData(0.165, 0.50, 16, 8, 0.004)]   // stretched: the bead is wider than the section
    [InlineData(0.205, 0.55, 16, 7, 0.030)]
    public void No_place_is_further_from_a_grown_tyre_than_from_the_tyre_at_rest(double width, double aspect, double rim, double rimWidth,
        double growth)
    {
        double bead = rim * 0.0254 / 2;
        var rest = TyreSection.WithEstimates(0, bead, rimWidth * 0.0254, 2 * (bead + (aspect * width)), width);
        WheelSolid before = Solid(rest), after = Solid(rest with { Growth = growth });
        for (double a = -0.2; a <= 0.2; a += 0.004)
        {
            for (double r = 0.05; r <= 0.45; r += 0.004)
            {
                double was = before.SignedDistance(a, r, out _, out _, out _), now = after.SignedDistance(a, r, out _, out _, out _);
                Assert.True(now <= was + 1e-9, $"({a:0.000}, {r:0.000}): {was} at rest, {now} grown by {growth}");
            }
        }

        Assert.Equal(growth, before.SignedDistance(0, rest.CrownRadius + 0.05, out _, out _, out _)
            - after.SignedDistance(0, rest.CrownRadius + 0.05, out _, out _, out _), 1e-9);

        static WheelSolid Solid(in TyreSection tyre) => WheelSolid.Write(tyre, default, 12, new double[WheelSolid.BufferLength(12)]);
    }
}
