using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Corners;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// Seen: the gap of the tyre to a helper under the top mount was worked out at full droop, where the helper hangs far above the tyre, and
/// said of every travel. At ride it comes down past the tyre's shoulder. The least over all travel is sampled here.
/// </summary>
public class StrutAtEveryTravelTests
{
    [Theory]
    [InlineData(null)]
    [InlineData("150 mm")]
    public void The_gap_to_a_coil_is_the_least_over_all_travel(string? helperDiameter)
    {
        var car = DemoCar.Read();
        if (helperDiameter is not null)
        {
            // Every helper wider than the main coils: then it matters how far down it comes.
            car = car with
            {
                Parts = car.Parts with
                {
                    Springs = [.. car.Parts.Springs.Select(s => s.Role == Garage.Parts.SpringRole.Main ? s
                        : s with { OuterDiameter = Reading.Of(helperDiameter, Dimension.Length) })],
                },
            };
        }

        int compared = 0, nearerThanHanging = 0;
        foreach (var build in car.Builds)
        {
            foreach (var place in Places.Corners)
            {
                var plan = CornerPlan.Compile(car, build, place, null);
                var solved = new SolvedCorner(plan);
                solved.Solve();
                for (int i = 0; i < plan.Clearance.Items.Count; i++)
                {
                    bool coil = plan.Clearance.Items[i].Piece is StrutPiece.Spring or StrutPiece.Helper;
                    if (!coil || !double.IsFinite(solved.Read.Gap(i)))
                    {
                        continue;
                    }

                    var (droop, bump) = solved.Read.Swept();
                    double least = double.PositiveInfinity;
                    for (int k = 0; k <= 100; k++)
                    {
                        double gap = solved.Clearance.At(solved.Read, i, droop + ((bump - droop) * k / 100), 0).Gap;
                        least = gap < least ? gap : least;
                    }

                    string where = $"{build.Id} {place} {plan.Clearance.Items[i].Id}";
                    Assert.True(solved.Read.Gap(i) <= least + 1e-6, $"{where}: said {solved.Read.Gap(i)}, sampled {least}");
                    Assert.True(solved.Read.Gap(i) >= least - 5e-4, $"{where}: said {solved.Read.Gap(i)}, sampled {least}");
                    compared++;
                    nearerThanHanging += solved.Clearance.At(solved.Read, i, droop, 0).Gap > least + 0.005 ? 1 : 0;
                }
            }
        }

        Assert.InRange(compared, 8, 1000);
        Assert.InRange(nearerThanHanging, 2, compared);
    }
}
