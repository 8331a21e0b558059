using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Ranking;
using Cornerwright.Workshop.Tests.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>The quick evaluation against the judge's own checks.</summary>
public class StaticCornerTests
{
    private const int Seed = 20261125;

    /// <summary>Lengths in m, forces in N, shares: the last digits that two roads to one root may differ by.</summary>
    private const double Same = 1e-9;

    [Theory]
    [InlineData(AxlePlace.Front)]
    [InlineData(AxlePlace.Rear)]
    public void Every_combination_of_the_demo_has_the_judges_values(AxlePlace axle)
    {
        int compared = 0;
        var space = Spaces.Of(DemoCar.Read(), new Wishes { Axle = axle, StartingBuild = "gravel-3", Camber = Spaces.Degrees("-0.5 deg") });
        for (int stack = 0; stack < space.Stacks.Length; stack++)
        {
            for (int perch = 0; perch < space.Perches.Length; perch++)
            {
                for (int station = 0; station < space.StationsCount; station++)
                {
                    compared += Compare(space, space.ChoiceOf(stack, perch, station), "demo");
                }
            }
        }

        Assert.True(compared > 300, $"{compared} values");
    }

    [Fact]
    public void What_the_car_taught_is_in_the_quick_values_too()
    {
        var car = DemoCar.Read();
        Garage.Setting.CornerReadings Stood(string height) =>
            new() { Height = Reading.Of(height, Garage.Quantities.Dimension.Length, "1 mm", ReadingSource.Tape) };
        var occasion = new Garage.Setting.Occasion
        {
            Id = "read", Name = "Read", Fitted = car.Build("gravel-3")!, LoadCase = car.LoadCases[0].Id,
            FrontLeft = Stood("418 mm"), FrontRight = Stood("417.5 mm"), RearLeft = Stood("433 mm"), RearRight = Stood("432 mm"),
        };
        var learned = car with { Occasions = [occasion], UseLearned = true };
        var wishes = new Wishes { Axle = AxlePlace.Front, StartingBuild = "gravel-3", Camber = Spaces.Degrees("-1 deg") };
        Assert.NotEqual(Perch(Spaces.Of(car, wishes)), Perch(Spaces.Of(learned, wishes)));
        int compared = 0;
        foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
        {
            var space = Spaces.Of(learned, wishes with { Axle = axle });
            for (int stack = 0; stack < space.Stacks.Length; stack++)
            {
                for (int station = 0; station < space.StationsCount; station++)
                {
                    compared += Compare(space, space.ChoiceOf(stack, space.Perches.Length - 1, station), "learned");
                }
            }
        }

        Assert.True(compared > 200, $"{compared} values");

        static double Perch(SearchSpace space)
        {
            var sheet = new StaticSheet();
            var perch = space.Perches.First(p => p.Turns);
            space.Left.Evaluate(space.Stacks[^1], perch, space.LeftStations[0], sheet, toTheEnd: true);
            return sheet.Perch;
        }
    }

    [Fact]
    public void Random_cars_have_the_judges_values()
    {
        const int Cars = 120, ChoicesACar = 4;
        var random = new Random(Seed);
        var vary = new RandomCar(DemoCar.Read(), random);
        int compared = 0;
        for (int c = 0; c < Cars; c++)
        {
            var car = vary.Next();
            var axle = (AxlePlace)(c % 2);
            var wishes =
                new Wishes { Axle = axle, StartingBuild = car.Builds[random.Next(car.Builds.Count)].Id, Camber = Spaces.Degrees("-1 deg") };
            if (PartsPool.Of(car, wishes).Stacks.Count == 0)
            {
                continue;
            }

            var space = Spaces.Of(car, wishes);
            for (int k = 0; k < ChoicesACar; k++)
            {
                var choice =
                    space.ChoiceOf(random.Next(space.Stacks.Length), random.Next(space.Perches.Length), random.Next(space.StationsCount));
                compared += Compare(space, choice, $"seed {Seed}, car {c}");
            }
        }

        Assert.True(compared > 3000, $"{compared} values");
    }

    [Fact]
    public void The_collar_is_solved_for_the_height_wanted()
    {
        var space = Spaces.Of(DemoCar.Read(),
            new Wishes { Axle = AxlePlace.Front, StartingBuild = "gravel-3", Height = Spaces.Millimetres("423 mm") });
        var sheet = new StaticSheet();
        int solved = 0;
        foreach (var stack in space.Stacks)
        {
            for (int station = 0; station < space.StationsCount; station++)
            {
                foreach (var perch in space.Perches.Where(p => p.Turns))
                {
                    space.Left.Evaluate(stack, perch, space.LeftStations[station], sheet, toTheEnd: true);
                    double height = space.LeftStations[station].Height - sheet.Ride;

                    // A collar set to a tenth of a millimetre leaves half of that, over the motion ratio of 0.96.
                    Assert.True(Math.Abs(height - 0.423) <= 0.5 * StaticCorner.PerchStep / 0.9, $"height {height}");
                    solved++;
                }
            }
        }

        Assert.True(solved >= 50);
    }

    private static int Compare(SearchSpace space, in SuspensionChoice choice, string story)
    {
        StaticSheet left = new(), right = new();
        int station = space.StationOf(choice);
        space.Left.Evaluate(space.Stacks[choice.Stack], space.Perches[choice.Perch], space.LeftStations[station], left, toTheEnd: true);
        space.Right.Evaluate(space.Stacks[choice.Stack], space.Perches[choice.Perch], space.RightStations[station], right, toTheEnd: true);
        var build = space.Make(choice, new WheelChoice(-1, -1, -1), left.Perch, right.Perch);
        return Compare(space, build, space.Axle.Left(), left, story) + Compare(space, build, space.Axle.Right(), right, story);
    }

    private static int Compare(SearchSpace space, Build build, CornerPlace place, StaticSheet sheet, string story)
    {
        var corner = CornerResult.AtBest(CornerPlan.Compile(space.Car, build, place, CarLearning.InUse(space.Car)));
        string parts = string.Join(" ", build.At(place).Stack.Append(build.At(place).Perch).Append(build.At(place).TopMount)
            .Append(build.At(place).Damper));
        int compared = 0;
        foreach (var (check, index, id) in Pairs(corner))
        {
            double judged = corner.Value(index), quick = sheet.Value[(int)check];
            bool same = double.IsFinite(judged) ? Math.Abs(judged - quick) <= Same * Math.Max(1, Math.Abs(judged))
                : !double.IsFinite(quick);
            Assert.True(same, $"{story}: {place.Words()} {id}: judge {judged:R}, quick {quick:R}; {parts}");
            compared += double.IsFinite(judged) ? 1 : 0;

            // And the same verdict.
            if (index < corner.Checks.Count && double.IsFinite(judged))
            {
                var of = corner.Checks[index];
                double margin = Math.Min(judged - of.Low, of.High - judged);
                Assert.True(Math.Abs(margin) < Same * 10 || (margin < 0) == (sheet.Margin[(int)check] < 0),
                    $"{story}: {place.Words()} {id}: judge's margin {margin:R}, quick {sheet.Margin[(int)check]:R}; {parts}");
            }
        }

        return compared;
    }

    // The judge's id of every quick check that it has too. The tyre's touch is not known to the quick one: no wheels, no touch.
    private static IEnumerable<(StaticCheck, int Index, string Id)> Pairs(CornerResult corner)
    {
        yield return (StaticCheck.Camber, corner.Find(FigureKind.CamberAtRide), FigureKind.CamberAtRide.Id);
        if (corner.Plan.Parts.TyreSize is null)
        {
            yield return (StaticCheck.Frequency, corner.Find(FigureKind.RideFrequency), FigureKind.RideFrequency.Id);
        }

        foreach (var check in corner.Checks)
        {
            StaticCheck? quick = check.Id switch
            {
                "seated-at-droop" => StaticCheck.SeatedAtDroop,
                "stop-order" => StaticCheck.StopOrder,
                "bump-travel" => StaticCheck.BumpTravel,
                "droop-travel" => StaticCheck.DroopTravel,
                "stop-use" => StaticCheck.StopUse,
                "damper-window" => StaticCheck.DamperWindow,
                "damper-middle" => StaticCheck.DamperMiddle,
                "collar-thread" => StaticCheck.CollarThread,
                "body-thread" => StaticCheck.BodyThread,
                "ride-height" => StaticCheck.RideHeight,
                _ when check.Id.StartsWith("fit-perch-", StringComparison.Ordinal) => StaticCheck.FitPerch,
                _ when check.Id.StartsWith("fit-mount-", StringComparison.Ordinal) => StaticCheck.FitMount,
                _ when check.Id.StartsWith("coil-room-", StringComparison.Ordinal) => StaticCheck.CoilRoom,
                _ when check.Id.StartsWith("spring-travel-", StringComparison.Ordinal) => StaticCheck.SpringTravel,
                _ when check.Id.StartsWith("spring-stress-", StringComparison.Ordinal) => StaticCheck.SpringStress,
                _ when check.Id.StartsWith("buckling-", StringComparison.Ordinal) => StaticCheck.Buckling,
                _ when check.Id.StartsWith("helper-shut-", StringComparison.Ordinal) => StaticCheck.HelperShut,
                _ when check.Id.StartsWith("crossover-", StringComparison.Ordinal) => StaticCheck.Crossover,
                _ => null,
            };
            if (quick is { } found)
            {
                yield return (found, corner.Find(check.Id), check.Id);
            }
        }
    }
}
