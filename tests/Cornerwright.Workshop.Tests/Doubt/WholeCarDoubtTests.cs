using Cornerwright.Garage.Files;

namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>The checks of axles and car, which corners share readings in, against random draws.</summary>
public sealed class WholeCarDoubtTests
{
    [Fact]
    public void Stated_probability_of_axles_and_car_is_the_drawn_share_within_two_points_unless_marked()
    {
        var car = DemoCar.Read();
        int spoken = 0;
        foreach (string id in new[] { car.MeasuredBuild, Demo.FirstIdea, Demo.Holding })
        {
            foreach (var share in WholeCarDraw.Draw(car, car.Build(id)!, 8_000, seed: 11))
            {
                spoken++;
                Assert.True(share.Marked || share.Off <= DrawnShare.Promise, share.ToString());
            }
        }

        Assert.True(spoken >= 12);
    }

    // The car as it was measured stands level to a millimetre or two: either axle may be the low one. One axle alone was
    // stated to hold in 17 % of the cases, both did in 7 %.
    [Fact]
    public void Ground_clearance_with_both_axles_alike_is_marked()
    {
        var car = DemoCar.Read();
        var share = WholeCarDraw.Draw(car, car.Build(car.MeasuredBuild)!, 5_000, seed: 12)
            .Single(s => s.Name.EndsWith("ground-clearance", StringComparison.Ordinal));
        Assert.True(share.Off > DrawnShare.Promise, share.ToString());
        Assert.True(share.Marked, share.ToString());
    }
}
