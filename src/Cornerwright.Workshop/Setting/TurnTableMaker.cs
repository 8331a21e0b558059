using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Setting;

/// <summary>The verb: from how the car stands and how it should stand to turns, millimetres and flats.</summary>
public static class TurnTableMaker
{
    /// <summary>A height may miss by this where the wish does not say, m. Common practice, no source.</summary>
    public const double UsualHeightBand = 0.002;

    /// <summary>The same for the cross weight. Common practice, no source.</summary>
    public const double UsualCrossBand = 0.005;

    private const int PlateRounds = 3;

    /// <summary>Makes the table of one of the car's builds.</summary>
    /// <param name="car">Its newest readings after the work count; without
    /// any, the readings it was measured with or the prediction.</param>
    /// <param name="build">To be set.</param>
    /// <param name="wish">What is wanted; null takes the car's own, and failing that the heights of its limits.</param>
    /// <param name="price">Of touching a collar at all; see <see cref="CollarSearch.Price"/>.</param>
    public static Checked<TurnTable> Make(Car car, Build build, SettingWish? wish = null, double price = CollarSearch.Price)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        wish ??= car.Wish(build.Id) ?? UsualWish(car, build);
        var problems = new List<Problem>(SettingChecks.OfCar(car));
        var present = PresentState.Of(car, build);
        problems.AddRange(present.Problems);
        problems.AddRange(SettingChecks.OfLoads(wish.Aboard.Concat(present.Try(out var state) ? state.Aboard : [])));
        var corners = new SettingCorner[4];
        if (present.Ok)
        {
            problems.AddRange(MakeCorners(car, present.Value, corners));
        }

        if (problems.Count > 0)
        {
            return Checked<TurnTable>.Wrong(problems);
        }

        var model = SettingModel.Of(car, present.Value, corners, wish);
        problems.AddRange(SettingChecks.OfWish(model));
        return problems.Count > 0 ? Checked<TurnTable>.Wrong(problems) : Solve(model, price);
    }

    /// <summary>The readings from which a build's table starts: the last ones taken with its parts; null where there are none.</summary>
    public static Occasion? NewestReadings(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        return PresentState.Newest(car, build);
    }

    /// <summary>
    /// What is wanted when nobody said: the heights of the limits, left and
    /// right alike, cross weight as it is, toe and camber as they come.
    /// </summary>
    public static SettingWish UsualWish(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(build);
        var limits = LimitsInForce.Of(car, build);
        var wish = new SettingWish { Build = build.Id };
        foreach (var place in Places.Corners)
        {
            wish = wish.With(place, new CornerWish { Height = place.Axle() == AxlePlace.Front ? limits.FrontHeight : limits.RearHeight });
        }

        return wish;
    }

    private static List<Problem> MakeCorners(Car car, PresentState present, SettingCorner[] corners)
    {
        var problems = new List<Problem>();
        foreach (var place in Places.Corners)
        {
            var state = present.Wheels[(int)place];
            double travel = car.At(place).RideHeight!.Si - state.Height;
            var plan = Corners.CornerPlan.Compile(car, present.Build, place, CarLearning.InUse(car));
            if (!plan.CanRide)
            {
                problems.AddRange(plan.MissingForSpring().Concat(plan.Inputs.Lacking(plan.Station.Unsprung)).Distinct()
                    .Select(m => new Problem($"{place.Words()} / {m}", "", "a reading",
                        "Enter it: the spring's force cannot be worked out without it.")));
                continue;
            }

            corners[(int)place] = SettingCorner.Of(car, present.Build, place, travel);
            if (!corners[(int)place].PassThrough(state.Load))
            {
                problems.Add(new Problem(
                    $"{place.Words()} / height and load",
                    FormattableString.Invariant($"{TurnWords.Mm(state.Height, 0)} and {state.Load / RideRates.StandardGravity:0} kg"),
                    "what the springs on the car can carry there",
                    "Height, load, spring or perch is off by a lot: read them again, and check which parts are really on the car."));
            }
        }

        return problems;
    }

    private static Checked<TurnTable> Solve(SettingModel model, double price)
    {
        var builds = model.Present.Build;
        CollarChoice? choice = null;
        double[] plates = new double[4], clamps = new double[4];
        for (int round = 0; round < PlateRounds; round++)
        {
            choice = CollarSearch.Find(model.Car, model.Corners, model.Targets, model.Knobs, price);
            if (choice.Why != BalanceStop.Converged)
            {
                return Checked<TurnTable>.Wrong(new Problem("the car's balance", choice.Why == BalanceStop.OutOfReach
                    ? "a wheel beyond its travel" : "not held", "four wheels on the ground within their travel",
                    "Look at loads on board and at the readings: with them the springs do not carry the car."));
            }

            // Plates and clamps at the travel reached; they move the spring a little, so the collars are asked again.
            bool moved = false;
            for (int i = 0; i < 4; i++)
            {
                var (plate, clamp) = CamberKnob.Find(model, i, choice.Stance.Travel[i]);
                moved |= plate != plates[i] || clamp != clamps[i];
                (plates[i], clamps[i]) = (plate, clamp);
                builds = builds.With(Places.Corners[i], CamberKnob.Set(model.Present.Build.At(Places.Corners[i]), plate, clamp));
            }

            if (!moved)
            {
                break;
            }

            model = model.With(builds);
        }

        return Checked<TurnTable>.From(TableWriter.Write(model, choice!, plates, clamps));
    }
}
