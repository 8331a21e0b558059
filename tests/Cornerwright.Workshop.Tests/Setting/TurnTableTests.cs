using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Setting;

namespace Cornerwright.Workshop.Tests.Setting;

/// <summary>The turn table on the demo car: heights, cross weight, alignment, and answers to what cannot be.</summary>
public sealed class TurnTableTests
{
    private static readonly Car Car = DemoCar.Read();

    [Fact]
    public void Heights_come_out_within_a_quarter_turn()
    {
        var table = Make(Car, "gravel-2", [416, 416, 431, 431]);
        Assert.True(table.Moves > 0);
        Assert.All(table.Corners, c => Assert.Equal(c.Wanted.Height!.Si, c.Predicted.Height, 0.0015));
        Assert.Empty(table.Shortfalls);
        Assert.Equal(table.Corners.Sum(c => c.Present.Load), table.Corners.Sum(c => c.Predicted.Load), 1e-3);
    }

    // Common practice, no source: up at the front left and rear right, down at the others, moves weight to that diagonal and
    // leaves the heights.
    [Fact]
    public void A_cross_weight_is_set_by_the_warp_pattern()
    {
        var read = Read(Car, "gravel-2", [412, 412, 428, 428]);
        var table = TurnTableMaker.Make(read, read.Build("gravel-2")!,
            Heights("gravel-2", [412, 412, 428, 428]) with { CrossWeight = Percent("51 %") }).Value;
        int[] quarters = [.. table.Corners.Select(c => c.Collar!.Quarters)];
        Assert.True(quarters[0] < 0 && quarters[1] > 0 && quarters[2] > 0 && quarters[3] < 0, string.Join(' ', quarters));
        Assert.Equal(0.51, table.CrossPredicted, TurnTableMaker.UsualCrossBand);
        double[] change = [.. table.Corners.Select(c => c.Predicted.Load - c.Present.Load)];
        Assert.Equal(change[1], -change[0], 0.5);
        Assert.Equal(change[2], -change[3], 0.5);
        Assert.Equal(change[1] * 1512 / 1508, change[2], 0.5);   // sizes as 1/track
    }

    [Fact]
    public void After_the_turns_the_next_table_is_smaller()
    {
        double[] wanted = [428, 428, 437, 437];
        var first = Make(Car, "gravel-2", wanted);

        // The real car is not the model: each height comes out a little off.
        double[] off = [1.5, -2, 3.5, 1];
        var built = Car.With(first.AfterTurning);
        var occasion = new Occasion { Id = "after", Name = "After the first turns", LoadCase = "driver", Fitted = first.AfterTurning };
        foreach (var c in first.Corners)
        {
            occasion = occasion.With(c.Corner, new CornerReadings { Height = Mm((1000 * c.Predicted.Height) + off[(int)c.Corner]) });
        }

        var second = TurnTableMaker.Make(built.With(occasion), built.Build("gravel-2")!, Heights("gravel-2", wanted)).Value;
        int Quarters(TurnTable t) => t.Corners.Sum(c => Math.Abs(c.Collar?.Quarters ?? 0));
        Assert.Equal(PresentFrom.Occasion, second.From);
        Assert.True(Quarters(second) < Quarters(first), $"{Quarters(first)} then {Quarters(second)}");
        Assert.True(Quarters(second) > 0);
        Assert.All(second.Corners, c => Assert.Equal(c.Wanted.Height!.Si, c.Predicted.Height, 0.002));
    }

    [Fact]
    public void A_car_that_stands_as_wanted_is_left_alone()
    {
        var read = Read(Car, "gravel-2", [415, 415, 430, 430]);
        var table = TurnTableMaker.Make(read, read.Build("gravel-2")!, Heights("gravel-2", [415, 415, 430, 430])).Value;
        Assert.Equal(0, table.Moves);
        Assert.True(table.Done);
        Assert.Empty(table.Steps);
    }

    // Readings belong to the parts that were on: with other springs they say nothing of where it stands now.
    [Fact]
    public void Readings_of_other_parts_are_not_the_present()
    {
        var read = Read(Car, "gravel-2", [415, 415, 430, 430]);
        var build = read.Build("gravel-2")!;
        Assert.Equal(PresentFrom.Occasion, TurnTableMaker.Make(read, build, Heights("gravel-2", [415, 415, 430, 430])).Value.From);
        var swapped = build with { FrontLeft = build.FrontLeft with { Stack = ["f-8-220"], PerchHeight = Mm(333) } };
        Assert.Null(TurnTableMaker.NewestReadings(read.With(swapped), swapped));

        // A collar turned since is no other part; the table counts from where it was read, and says so.
        var turned = build with { FrontLeft = build.FrontLeft with { PerchHeight = Mm(297) } };
        var table = TurnTableMaker.Make(read.With(turned), turned, Heights("gravel-2", [415, 415, 430, 430])).Value;
        Assert.Equal(PresentFrom.Occasion, table.From);
        Assert.Contains(table.Assumptions, a => a.StartsWith("front left: the build says 297.0 mm", StringComparison.Ordinal));
    }

    // Heights that disagree by a millimetre or two are not bought with cross weight that nobody asked to move.
    [Fact]
    public void A_cross_weight_nobody_asked_for_stays()
    {
        var read = Read(Car, "gravel-2", [418, 412.5, 430, 431]);
        var table = TurnTableMaker.Make(read, read.Build("gravel-2")!, Heights("gravel-2", [415, 415, 430, 430])).Value;
        Assert.Equal(table.CrossNow, table.CrossPredicted, 0.01);
        Assert.All(table.Corners, c => Assert.Equal(c.Wanted.Height!.Si, c.Predicted.Height, 0.0028));
    }

    [Fact]
    public void A_driver_who_is_to_sit_in_it_is_turned_for()
    {
        var read = Read(Car, "gravel-2", [415, 415, 430, 430]);
        var wish = Heights("gravel-2", [415, 415, 430, 430]) with
        {
            Aboard = [new PlacedLoad { Name = "driver", Mass = Reading.Of("85 kg", Dimension.Mass), Behind = Mm(1350), Left = Mm(370) }],
        };
        var table = TurnTableMaker.Make(read, read.Build("gravel-2")!, wish).Value;
        Assert.Equal(85 * 9.80665, table.Corners.Sum(c => c.Predicted.Load - c.Present.Load), 1e-3);
        Assert.True(table.At(CornerPlace.FrontLeft).Collar!.Quarters > table.At(CornerPlace.FrontRight).Collar!.Quarters,
            "his side goes up more");
        Assert.True(table.At(CornerPlace.RearLeft).Collar!.Quarters > 0);
    }

    // Camber and toe move with height through the wheel's motion; plate and tie rod then bring them where they are wanted.
    [Fact]
    public void Camber_and_toe_follow_the_height_and_are_set_last()
    {
        var car = WithPlate(Car);
        car = car with { Front = car.Front with { SteeringArm = Mm(140), TieRodPitch = Mm(1.5) } };
        var read = Read(car, "gravel-2", [407, 407, 430, 430], camber: -0.6, toe: 0.05);
        var wish = Heights("gravel-2", [422, 422, 430, 430]);
        foreach (var place in new[] { CornerPlace.FrontLeft, CornerPlace.FrontRight })
        {
            wish = wish.With(place, wish.At(place) with { Camber = Degrees(-1.5), Toe = Degrees(0.3) });
        }

        var untouched =
            TurnTableMaker.Make(read, read.Build("gravel-2")!, Heights("gravel-2", [422, 422, 430, 430])).Value.At(CornerPlace.FrontLeft);
        // 15 mm of droop at -0.016 °/mm of bump
        Assert.Equal(-0.6 + (0.016 * 15), untouched.Predicted.Camber!.Value * 180 / Math.PI, 0.03);
        var table = TurnTableMaker.Make(read, read.Build("gravel-2")!, wish).Value;
        var left = table.At(CornerPlace.FrontLeft);
        Assert.True(left.Plate > 0, "inward for negative camber");
        Assert.Equal(-1.5, left.Predicted.Camber!.Value * 180 / Math.PI, 0.06);
        Assert.Equal(0.3, left.Predicted.Toe!.Value * 180 / Math.PI, 0.06);
        int collar = Step("collar"), plate = Step("top plate"), rod = Step("Tie rod");
        Assert.True(collar < plate && plate < rod, "height, then camber, then toe");
        Assert.Contains("link", table.Steps[1].Words, StringComparison.Ordinal);

        int Step(string word) => table.Steps.Select((s, i) => (s, i)).First(s => s.s.Words.Contains(word, StringComparison.Ordinal)).i;
    }

    [Fact]
    public void A_cross_weight_that_lifts_a_wheel_is_refused()
    {
        // Left and front heavy: the rear right lifts at (210 + 480 + 2 · 222)/1472 = 77.0 %.
        var read = Read(Car, "gravel-2", [415, 415, 430, 430], loads: [560, 210, 480, 222]);
        var wish = Heights("gravel-2", [415, 415, 430, 430]) with { CrossWeight = Percent("80 %") };
        var problem = Assert.Single(TurnTableMaker.Make(read, read.Build("gravel-2")!, wish).Problems);
        Assert.Equal("cross weight", problem.Field);
        Assert.Equal("80 %", problem.Given);
        Assert.Contains("and 77.0 %", problem.Allowed, StringComparison.Ordinal);
        Assert.Contains("leaves the ground", problem.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cross_weight_beyond_the_threads_says_which_collar_ends()
    {
        var wish = Heights("gravel-2", [415, 415, 430, 430]) with { CrossWeight = Percent("56 %") };
        var shortThread = Car with { Parts = Car.Parts with { Dampers = [
            .. Car.Parts.Dampers.Select(d => d.Id == "d-front" ? d with { ThreadLow = Mm(291), ThreadHigh = Mm(298) } : d)] } };
        var table = TurnTableMaker.Make(shortThread, Car.Build("gravel-2")!, wish).Value;
        Assert.Contains(table.Shortfalls, s =>
            s.StartsWith("Cross weight 56", StringComparison.Ordinal) && s.Contains("end of its thread", StringComparison.Ordinal));
        Assert.All(table.Corners, c => Assert.True(c.Collar!.Least is not { } least || c.Collar.After >= least - 1e-9));
        Assert.All(table.Corners, c => Assert.True(c.Collar!.Most is not { } most || c.Collar.After <= most + 1e-9));
    }

    [Fact]
    public void Four_heights_that_twist_the_body_are_refused_and_the_fourth_is_named()
    {
        var read = Read(Car, "gravel-2", [415, 415, 430, 430]);
        var problem = Assert.Single(TurnTableMaker.Make(read, read.Build("gravel-2")!, Heights("gravel-2", [427, 415, 430, 430])).Problems);
        Assert.Equal("heights wanted", problem.Field);
        Assert.Contains("rear right comes to 418 mm", problem.Allowed, StringComparison.Ordinal);

        // The height it names is then taken.
        Assert.True(TurnTableMaker.Make(read, read.Build("gravel-2")!, Heights("gravel-2", [427, 415, 430, 418])).Ok);
    }

    [Fact]
    public void Missing_readings_are_all_named_at_once()
    {
        var bare = Car with { Wheelbase = null, Front = Car.Front with { Track = null } };
        var problems = TurnTableMaker.Make(bare.With(CornerPlace.RearLeft, bare.RearLeft with { RideHeight = null }),
            bare.Build("gravel-2")!).Problems;
        Assert.Contains(problems, p => p.Field == "wheelbase");
        Assert.Contains(problems, p => p.Field == "front axle / track");
        Assert.Contains(problems, p => p.Field == "rear left / hub centre to arch edge");
    }

    [Fact]
    public void Height_and_load_that_no_spring_explains_are_refused()
    {
        var read = Read(Car, "gravel-2", [415, 415, 430, 430], loads: [370, 366, 60, 366]);
        var problem = Assert.Single(TurnTableMaker.Make(read, read.Build("gravel-2")!).Problems);
        Assert.Equal("rear left / height and load", problem.Field);
    }

    [Theory]
    [InlineData(0, "leave it")]
    [InlineData(1, "up ¼ turn")]
    [InlineData(-7, "down 1¾ turns")]
    [InlineData(8, "up 2 turns")]
    [InlineData(4, "up 1 turn")]
    public void Quarter_turns_are_said_as_people_say_them(int quarters, string words) => Assert.Equal(words, TurnWords.Collar(quarters));

    [Theory]
    [InlineData(8, "1 turn 2 flats toward toe-in")]
    [InlineData(-1, "1 flat toward toe-out")]
    [InlineData(12, "2 turns toward toe-in")]
    public void Flats_are_said_as_people_say_them(int flats, string words) => Assert.Equal(words, TurnWords.TieRod(flats));

    private static TurnTable Make(Car car, string build, double[] heights) =>
        TurnTableMaker.Make(car, car.Build(build)!, Heights(build, heights)).Value;

    internal static SettingWish Heights(string build, double[] mm)
    {
        var wish = new SettingWish { Build = build };
        foreach (var place in Places.Corners)
        {
            wish = wish.With(place, new CornerWish { Height = Mm(mm[(int)place]) });
        }

        return wish;
    }

    internal static Car Read(Car car, string build, double[] heights, double[]? loads = null, double? camber = null, double? toe = null)
    {
        var occasion = new Occasion { Id = "read", Name = "Read", LoadCase = "driver", Fitted = car.Build(build)! };
        foreach (var place in Places.Corners)
        {
            occasion = occasion.With(place, new CornerReadings
            {
                Height = Mm(heights[(int)place]),
                Load = loads is null ? null : Reading.Of(FormattableString.Invariant($"{loads[(int)place]} kg"), Dimension.Mass),
                Camber = camber is { } c ? Degrees(c) : null,
                Toe = toe is { } t ? Degrees(t) : null,
            });
        }

        return car.With(occasion);
    }

    internal static Reading Mm(double mm) => Reading.Of(FormattableString.Invariant($"{mm:0.###} mm"), Dimension.Length);

    private static Reading Percent(string text) => Reading.Of(text, Dimension.Ratio);

    private static Reading Degrees(double degrees) => Reading.Of(FormattableString.Invariant($"{degrees:0.###} deg"), Dimension.Angle);

    private static Car WithPlate(Car car) => car with
    {
        Parts = car.Parts with { TopMounts = [.. car.Parts.TopMounts.Select(m =>
            m.Id == "m-ball" ? m with { SlideIn = Mm(15), SlideOut = Mm(15) } : m)] },
    };
}
