using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Tests.Doubt;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Learning;

/// <summary>The second prediction for the same car: better than the first, with a doubt that is true.</summary>
public sealed class LearningTests(Xunit.Abstractions.ITestOutputHelper output)
{
    private static readonly int Seed =
        int.Parse(Environment.GetEnvironmentVariable("CORNERWRIGHT_SEED") ?? "88001", System.Globalization.CultureInfo.InvariantCulture);
    private static readonly Car Bare = WithoutNeighbours(DemoCar.Read() with { Allowances = Allowances.None });
    private static readonly Build Build = Bare.Build("gravel-2")!;

    // 200 cars whose true numbers are drawn about the readings; heights and loads are read after the work; then the collars are
    // turned by other amounts and the heights predicted again.
    [Fact]
    public void The_second_prediction_beats_the_first_and_its_doubt_is_true()
    {
        var random = new Random(Seed);
        int better = 0, inside = 0, firstInside = 0, corners = 0;
        double first = 0, second = 0, stated = 0;
        const int Cars = 200;
        const double Ninety = 1.6449;   // Source: Abramowitz and Stegun (1964), table 26.5, p = 0.05
        for (int n = 0; n < Cars; n++)
        {
            var car = Varied(random);
            var truth = new TrueCar(car, random);
            var read = car.With(truth.Read(Build, "after"));
            var turned = Turned(random);
            double before = 0, after = 0;
            foreach (var place in Places.Corners)
            {
                double height = truth.Height(turned, place);
                var (one, sigmaOne) = Predict(read, turned, place);
                var (two, sigmaTwo) = Predict(read with { UseLearned = true }, turned, place);
                before += (one - height) * (one - height);
                after += (two - height) * (two - height);
                inside += Math.Abs(two - height) <= Ninety * sigmaTwo ? 1 : 0;
                firstInside += Math.Abs(one - height) <= Ninety * sigmaOne ? 1 : 0;
                corners++;
                stated += sigmaTwo;
            }

            better += after < before ? 1 : 0;
            (first, second) = (first + before, second + after);
        }

        string words = string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"seed {Seed}: better in {better} of {Cars}; rms {1000 * Math.Sqrt(first / corners):0.00} mm then "
            + $"{1000 * Math.Sqrt(second / corners):0.00} mm; {100.0 * inside / corners:0.0} % inside 90 % "
            + $"(first {100.0 * firstInside / corners:0.0} %), stated {1000 * stated / corners:0.00} mm");
        output.WriteLine(words);
        Assert.True(better >= 0.95 * Cars, words);
        Assert.True(inside >= 0.85 * corners && inside <= 0.95 * corners, words);
        Assert.True(second < 0.25 * first, words);
    }

    [Fact]
    public void A_reading_that_agrees_with_nothing_is_named_and_set_aside()
    {
        var random = new Random(Seed + 1);
        var truth = new TrueCar(Bare, random);
        var occasion = truth.Read(Build, "after");
        var wrong = occasion.With(CornerPlace.FrontLeft, occasion.FrontLeft
            with { Height = Reading.Of(FormattableString.Invariant($"{(1000 * occasion.FrontLeft.Height!.Si) + 40:0.0} mm"),
                Dimension.Length, "1.5 mm", ReadingSource.Tape) });
        var learned = CarLearning.Of(Bare.With(wrong));
        var outlier = Assert.Single(learned.Outliers);
        Assert.Equal((CornerPlace.FrontLeft, "hub to arch", "after"), (outlier.Corner, outlier.Label, outlier.Occasion));
        Assert.True(outlier.Sigmas > CarLearning.FarOff);

        // The other three still teach.
        Assert.Equal(3, learned.Readings.Count(r => r.Label == "hub to arch" && !r.SetAside));
        Assert.All(learned.Readings.Where(r => r.Label == "hub to arch" && !r.SetAside), r =>
            Assert.True(Math.Abs(r.Read.Si - r.Expected.Si) < 0.002 && r.Doubt.Si < 0.6 * r.FirstDoubt.Si && r.Doubt.Si > 0));
    }

    [Fact]
    public void A_number_typed_wrong_is_named()
    {
        // The axis length of the front left was typed 12 mm short; read again with the spring out, and the height with it.
        var random = new Random(Seed + 2);
        var truth = new TrueCar(Bare, random);
        var occasion = truth.Read(Build, "after");
        var corner = Bare.FrontLeft;
        var typed = Bare.With(CornerPlace.FrontLeft,
            corner with { SpringAxisLength = Reading.Of("508 mm", Dimension.Length, "1.5 mm", ReadingSource.Tape) });
        occasion = occasion.With(CornerPlace.FrontLeft, occasion.FrontLeft with
        {
            Steps = [new CycledStep { Travel = Reading.Of("0 mm", Dimension.Length, "0.5 mm", ReadingSource.Tape),
                SpringLength = Reading.Of("520 mm", Dimension.Length, "0.5 mm", ReadingSource.Calliper) }],
        });
        var learned = CarLearning.Of(typed.With(occasion));
        Assert.Contains(learned.Numbers, n => n.Suspect && n.Path == "frontLeft/springAxisLength");
        Assert.Equal("frontLeft/springAxisLength", learned.Numbers[0].Path);
        Assert.Equal(0.520, learned.Numbers[0].After.Si, 0.003);
    }

    [Fact]
    public void What_was_learned_can_be_undone_and_asks_to_be_told()
    {
        var occasion = new TrueCar(Bare, new Random(Seed + 3)).Read(Build, "after");
        var read = Bare.With(occasion);
        var plain = Predict(Bare, Build, CornerPlace.FrontLeft);
        Assert.Equal(plain, Predict(read, Build, CornerPlace.FrontLeft));
        var taught = Predict(read with { UseLearned = true }, Build, CornerPlace.FrontLeft);
        Assert.True(taught.Sigma < 0.6 * plain.Sigma, $"{plain.Sigma} then {taught.Sigma}");
        var undone = read.With(occasion with { Ignored = true }) with { UseLearned = true };
        Assert.Equal(plain, Predict(undone, Build, CornerPlace.FrontLeft));
        Assert.False(CarLearning.Of(undone).Any);
    }

    // The doubt that the judge states against drawing all numbers of the car from what was learned.
    [Fact]
    public void The_judges_doubt_is_that_of_drawing_what_was_learned()
    {
        var read = Bare.With(new TrueCar(Bare, new Random(Seed + 4)).Read(Build, "after")) with { UseLearned = true };
        var corner = CornerResult.Of(CornerPlan.Compile(read, Build, CornerPlace.RearLeft, CarLearning.InUse(read)));
        int check = corner.Find(CarriedKind.Height);
        double stated = corner.Doubtful(check).Doubt.StandardDeviation;
        var random = new Random(Seed + 5);
        double[] units = new double[corner.Plan.Inputs.Count];
        double sum = 0, square = 0;
        const int Draws = 4000;
        for (int d = 0; d < Draws; d++)
        {
            for (int i = 0; i < units.Length; i++)
            {
                bool lives = corner.Plan.Inputs.Inputs[i].Sigma > 0 || corner.Plan.Inputs.Learnt(i) >= 0;
                units[i] = lives ? Mechanics.Doubt.NormalDistribution.Quantile((random.Next() + 0.5) / int.MaxValue) : 0;
            }

            double value = corner.ValueAt(check, units);
            (sum, square) = (sum + value, square + (value * value));
        }

        double drawn = Math.Sqrt((square / Draws) - (sum / Draws * sum / Draws));
        Assert.Equal(stated, drawn, 0.05 * stated);
    }

    [Fact]
    public void A_number_typed_anew_is_not_moved_by_what_was_learned_of_the_old_one()
    {
        var read = Bare.With(new TrueCar(Bare, new Random(Seed + 6)).Read(Build, "after")) with { UseLearned = true };
        var spring = read.Parts.Springs.First(s => s.Id == "f-6-250");
        Assert.NotEqual(spring.FreeLength!.Si, InputOf(read, Build, "parts/springs/f-6-250/freeLength"));

        // Another spring on the shelf, measured with a calliper: its number is its own.
        var other = spring with { Id = "f-new", FreeLength = Reading.Of("251.3 mm", Dimension.Length, "0.2 mm", ReadingSource.Calliper) };
        var swapped = Build
            with { FrontLeft = Build.FrontLeft with { Stack = [.. Build.FrontLeft.Stack.Select(s => s == "f-6-250" ? "f-new" : s)] } };
        var car = read with { Parts = read.Parts with { Springs = [.. read.Parts.Springs, other] } };
        Assert.Equal(0.2513, InputOf(car, swapped, "parts/springs/f-new/freeLength"), 1e-12);
    }

    [Fact]
    public void Cycled_readings_after_the_work_teach_the_motion_ratio()
    {
        var travels = new[] { -40, -20, 20, 40 };
        var steps = travels.Select(t => new CycledStep
        {
            Travel = Reading.Of($"{t} mm", Dimension.Length, "0.5 mm", ReadingSource.Tape),
            SpringLength =
                Reading.Of(FormattableString.Invariant($"{520 - (0.94 * t):0.0} mm"), Dimension.Length, "0.5 mm", ReadingSource.Calliper),
        }).ToList();
        var occasion = new Occasion { Id = "c", Name = "cycled", Fitted = Build, FrontLeft = new CornerReadings { Steps = steps } };
        var learned = CarLearning.Of(Bare.With(occasion));
        var ratio = Assert.Single(learned.Numbers, n => n.Path == "frontLeft/motion/springRatio");

        // Weighted: prior ±0.0075, four steps √(0.25² + 0.24²)/√4000 = ±0.0055 (one sigma):
        // two thirds of the way; a bend of the wheel's path nobody measured takes part too.
        Assert.Equal(0.944, ratio.After.Si, 0.004);
        Assert.True(ratio.AfterDoubt.Si < ratio.BeforeDoubt.Si);
    }

    [Fact]
    public void Gaps_read_after_the_work_are_taken_in()
    {
        var car = DemoCar.Read() with { Allowances = Allowances.None };
        var occasion = new Occasion { Id = "g", Name = "gaps", LoadCase = "driver", Fitted = car.Build("gravel-2")! };
        var corner = CornerResult.Of(CornerPlan.Compile(car, occasion.Fitted, CornerPlace.FrontLeft, CarLearning.InUse(car)));
        int perch = corner.Plan.Clearance.Items.ToList().FindIndex(i => i.Id == "perch");
        double gap = corner.Numbers.Read.GapAt(perch, corner.Numbers.Read.Ride[0], 0).Gap;
        occasion =
            occasion.With(CornerPlace.FrontLeft, new CornerReadings { Gaps = [new GapAtRide { Thing = "perch", Distance = Reading.Of(
                FormattableString.Invariant($"{(1000 * gap) + 1.5:0.00} mm"), Dimension.Length, "0.5 mm", ReadingSource.Calliper) }] });
        var learned = CarLearning.Of(car.With(occasion));
        var reading = Assert.Single(learned.Readings);
        Assert.Equal(gap, reading.First.Si, 1e-4);
        Assert.True(Math.Abs(reading.Read.Si - reading.Expected.Si) < 0.4 * Math.Abs(reading.Read.Si - reading.First.Si));
        double Doubt(Car c) =>
            Judge.Build(c, "gravel-2", JudgeOptions.FindingsOnly).Findings.First(f => f.Key == "front-left/clear-perch").Doubt!.Value.Si;
        Assert.True(Doubt(car.With(occasion) with { UseLearned = true }) < 0.7 * Doubt(car));
    }

    private static double InputOf(Car car, Build build, string path) =>
        CornerResult.Of(CornerPlan.Compile(car, build, CornerPlace.FrontLeft, CarLearning.InUse(car)))
        .Plan.Inputs.Inputs.First(i => i.Path == path).Value;

    private static (double Value, double Sigma) Predict(Car car, Build build, CornerPlace place)
    {
        var corner = CornerResult.Of(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)));
        int check = corner.Find(CarriedKind.Height);
        return (corner.Value(check), corner.Doubtful(check).Doubt.StandardDeviation);
    }

    private static Build Turned(Random random)
    {
        var build = Build;
        foreach (var place in Places.Corners)
        {
            var corner = build.At(place);
            double height = (1000 * corner.PerchHeight!.Si) + Math.Round(12 * (random.NextDouble() - 0.5), 2);
            build =
                build.With(place, corner with { PerchHeight = Reading.Of(FormattableString.Invariant($"{height} mm"), Dimension.Length) });
        }

        return build;
    }

    // Loads, rates, lengths and ratios of a car of its own, read once to three times less carefully than the demo car.
    private static Car Varied(Random random)
    {
        var car = Bare;
        string[] paths =
        [
            "frontLeft/springAxisLength", "frontRight/springAxisLength", "frontLeft/motion/springRatio", "frontRight/motion/springRatio",
            "parts/springs/f-6-250/rate", "parts/springs/r-7-320/rate", "parts/springs/f-6-250/freeLength",
            "parts/springs/r-7-320/freeLength", "loadCases/driver/frontLeft", "loadCases/driver/frontRight", "loadCases/driver/rearLeft",
            "loadCases/driver/rearRight",
        ];
        foreach (string path in paths)
        {
            var (field, reading) = CarPath.Find(car, path)!.Value;
            double si = reading!.Si * (1 + (0.03 * (random.NextDouble() - 0.5))), careless = 1 + (2 * random.NextDouble());
            car = CarPath.With(car, path, reading with
            {
                Value = Quantity.Of(field.Unit!.FromSi(si), field.Unit),
                Tolerance = new Tolerance(Quantity.Of(field.Unit.FromSi(2 * careless * reading.StandardDeviation), field.Unit),
                    ToleranceKind.TwoSigma),
            })!;
        }

        return car;
    }

    private static Car WithoutNeighbours(Car car)
    {
        foreach (var place in Places.Corners)
        {
            car = car.With(place, car.At(place) with { Obstacles = [], Strut = null });
        }

        return car;
    }
}
