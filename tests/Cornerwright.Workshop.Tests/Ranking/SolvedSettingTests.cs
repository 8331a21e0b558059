using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Ranking;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>Settings that a search solves, and wishes that it keeps to.</summary>
public class SolvedSettingTests
{
    private static readonly Wishes Front = new()
    {
        Axle = AxlePlace.Front, StartingBuild = "gravel-3", Listed = 50, Springs = ["f-6-250", "f-helper"], Perches = ["p-front"],
            TopMounts = ["m-ball"], Dampers = ["d-front"],
        Wheels = ["w-gravel-40"], Tyres = ["t-gravel-55"], Spacers = ["sp-5"],
    };

    /// <summary>The demo car with a plate under its ball mount.</summary>
    private static Car WithPlate()
    {
        var car = DemoCar.Read();
        return car with
        {
            Parts = car.Parts with
            {
                TopMounts = [.. car.Parts.TopMounts.Select(m =>
                    m.Id == "m-ball" ? m with { SlideIn = Spaces.Millimetres("15 mm"), SlideOut = Spaces.Millimetres("15 mm") } : m)],
            },
        };
    }

    [Theory]
    [InlineData("-1.2 deg")]
    [InlineData("-0.6 deg")]
    [InlineData("-1.5 deg")]
    public void The_plate_is_slid_to_the_camber_wanted(string wanted)
    {
        var found = Spaces.Found(WithPlate(), Front with { Camber = Spaces.Degrees(wanted) });
        Assert.NotEmpty(found.Listed);
        foreach (var build in found.Listed)
        {
            foreach (var place in new[] { CornerPlace.FrontLeft, CornerPlace.FrontRight })
            {
                var corner = CornerResult.AtBest(CornerPlan.Compile(WithPlate(), build.Build, place, CarLearning.InUse(WithPlate())));
                double camber = corner.Value(corner.Find(FigureKind.CamberAtRide));

                // A plate set to half a millimetre leaves a quarter, over an axis of about half a metre: 0.03 deg.
                Assert.Equal(Spaces.Degrees(wanted).Si, camber, 0.04 * Math.PI / 180);
                Assert.NotNull(build.Build.At(place).Slide);
            }
        }
    }

    [Fact]
    public void A_camber_out_of_the_plate_s_reach_refuses_by_that_name()
    {
        var found = Spaces.Found(WithPlate(), Front with { Camber = Spaces.Degrees("-6 deg") });
        Assert.Empty(found.Listed);
        Assert.Contains(found.Refused, r => r.Title == StaticChecks.Title(StaticCheck.Camber) && r.Count > 0);
    }

    [Fact]
    public void A_seat_that_does_not_turn_stands_where_a_build_has_it()
    {
        var found = Spaces.Found(DemoCar.Read(),
            new Wishes { Axle = AxlePlace.Rear, StartingBuild = "gravel-3", Height = Spaces.Millimetres("415 mm"), Perches = ["p-rear-now"],
                Springs = ["r-now"], Sheets = ["r-rubber"], Wheels = ["w-now"], Tyres = ["t-now"] });
        Assert.All(found.Listed.Select(b => b.Build).Concat(found.NearMisses.Select(m => m.Build)), b =>
            Assert.Equal("2 mm", b.RearLeft.PerchHeight!.Typed));
        Assert.NotEmpty(found.Listed.Select(b => b.Build).Concat(found.NearMisses.Select(m => m.Build)));
    }

    [Fact]
    public void Helper_budget_and_preference_are_kept_to()
    {
        var car = DemoCar.Read();
        var with = Spaces.Found(car, Front with { Helper = HelperWish.With, Budget = 1710 });
        Assert.NotEmpty(with.Listed);
        Assert.All(with.Listed, b => Assert.Contains(b.Parts, p => p.Id == "f-helper"));
        Assert.All(with.Listed, b => Assert.True(b.Cost <= 1710));
        Assert.Contains(with.Refused, r => r.Title == "To spend at most");
        Assert.Empty(Spaces.Found(car, Front with { Helper = HelperWish.Without }).Listed);

        // What is owned costs nothing: the sum is that of the pieces not owned, two of each.
        foreach (var build in with.Listed)
        {
            Assert.Equal(2 * build.Parts.Where(p => !p.Owned).Sum(p => p.Price ?? 0), build.Cost);
        }
    }

    [Fact]
    public void Of_equally_sure_builds_the_preferred_come_first()
    {
        var car = DemoCar.Read();
        var wishes = Front with { Springs = ["f-6-250", "f-350-10", "f-helper"] };
        foreach (var preference in new[] { Preference.Softest, Preference.Stiffest })
        {
            foreach (var sure in Spaces.Found(car, wishes with { Prefer = preference }).Listed.GroupBy(b => RankKey.DoubtOf(b.Probability)))
            {
                double[] rides = [.. sure.Select(b => Math.Round(b.Frequency!.Value.Si, 2))];
                Assert.Equal(preference == Preference.Softest ? rides.Order() : rides.OrderDescending(), rides);
            }
        }
    }
}
