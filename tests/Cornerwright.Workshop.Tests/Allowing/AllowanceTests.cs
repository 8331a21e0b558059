using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Corners;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Allowing;

public class AllowanceTests
{
    private const double Radius = 0.315, Tolerance = 1e-9;

    // Inboard F (2.4 - 3.4 z/R) mm at 2.8 kN, rounded: 7 mm in at hub height, 3 mm out at the top, twice 7 and 3 in at the bottom.
    [Theory]
    [InlineData(0, -0.007)]
    [InlineData(Radius, 0.003)]
    [InlineData(-Radius, -0.017)]
    [InlineData(0.6, 0.003)]   // above the tyre there is no more of it
    public void The_outer_wheel_leans_outboard_at_its_top_and_goes_inboard_below(double height, double outboard)
    {
        var at = Corner(WheelSide.Left, 0);
        Assert.Equal(outboard, new Sway(1, height, true, 0).Move(0, 0, at).Y, Tolerance);
        Assert.Equal(-outboard, new Sway(1, height, true, 0).Move(0, 0, Corner(WheelSide.Right, 0)).Y, Tolerance);
        Assert.Equal(-0.5 * outboard, new Sway(-0.5, height, true, 0).Move(0, 0, at).Y, Tolerance);
    }

    /// <summary>Seen: a spring that had been read under the car after the work was shortened by its setting once more.</summary>
    [Fact]
    public void A_spring_that_stood_under_the_car_when_something_was_read_has_set()
    {
        var car = DemoCar.Read();
        var build = car.Build(Demo.Holding)!;
        double[] Settling(Car of) =>
            [.. CornerPlan.Compile(of, build, CornerPlace.FrontLeft, null).Station.Stack.Select(slot => slot.Settles)];
        Assert.Contains(0.002, Settling(car));
        var after = car.With(new Occasion { Id = "after", Name = "After", Fitted = build });
        Assert.All(Settling(after), settles => Assert.Equal(0, settles));
    }

    [Fact]
    public void A_thing_stands_lower_on_a_wheel_that_has_risen()
    {
        var at = Corner(WheelSide.Left, 0);
        Assert.Equal(new Sway(1, 0.1, true, 0).Move(0, 0, at).Y, new Sway(1, 0.18, false, 0).Move(0.08, 0, at).Y, Tolerance);
    }

    [Fact]
    public void Full_lock_is_not_joined_with_a_corner_or_with_braking()
    {
        var (at, sway) = (Corner(WheelSide.Left, 0.6), new Sway(1, 0, true, 0.006));
        Assert.Equal(default, sway.Move(0, 0.6, at));
        Assert.Equal(new Vec3(-0.003, -0.0035, 0), sway.Move(0, -0.3, at));
        Assert.Equal(new Vec3(-0.006, -0.007, 0), sway.Move(0, 0, at));
    }

    [Fact]
    public void A_build_goes_by_its_own_line_then_its_cars_then_by_how_it_is_driven()
    {
        var car = new Car { Allowances = new() { Use = CarUse.Track, TyreGrowth = Mm("2 mm") } };
        var own = new Build { Allowances = new() { TyreGrowth = Mm("0 mm") } };
        Assert.Equal((0, LimitOrigin.Build), Line(car, own, nameof(Allowances.TyreGrowth)));
        Assert.Equal((0.002, LimitOrigin.Car), Line(car, new Build(), nameof(Allowances.TyreGrowth)));
        Assert.Equal((0.020, LimitOrigin.Default), Line(car, new Build(), nameof(Allowances.TyreIn)));
        Assert.Equal((0.007, LimitOrigin.Default), Line(new Car(), new Build(), nameof(Allowances.TyreIn)));
        var rough = new Build { Allowances = new() { Use = CarUse.Rough } };
        Assert.Equal((0.010, LimitOrigin.Default), Line(car, rough, nameof(Allowances.WheelBack)));
        Assert.Equal(0.008, LimitsInForce.Of(car, rough).TyreToBody!.Si, Tolerance);
    }

    [Fact]
    public void A_file_from_before_there_were_allowances_means_what_it_said()
    {
        var car = new Car { Limits = new() { TyreGrowth = Mm("4 mm"), TyreShift = Mm("3 mm") } };
        var lines = AllowancesInForce.Of(car, new Build());
        Assert.Equal(0.004, lines.Of(nameof(Allowances.TyreGrowth)), Tolerance);
        Assert.Equal(0.003, lines.LeanBothWays!.Value, Tolerance);
        Assert.Equal(0, lines.Of(nameof(Allowances.TyreTopOut)) + lines.Of(nameof(Allowances.TyreIn))
            + lines.Of(nameof(Allowances.TyreOnWheel)), Tolerance);
        var newer = new Build { Allowances = new() { TyreIn = Mm("5 mm") } };
        Assert.Equal(0.005, AllowancesInForce.Of(car, newer).Of(nameof(Allowances.TyreIn)), Tolerance);
    }

    [Fact]
    public void Every_line_has_a_default_in_its_range_for_every_use_and_says_where_it_comes_from()
    {
        foreach (var line in Allowances.Lines)
        {
            Assert.NotEqual("", AllowanceDefaults.SourceOf(line));
            foreach (var use in Enum.GetValues<CarUse>())
            {
                var value = Assert.IsType<Reading>(line.Get(AllowanceDefaults.For(use)));
                Assert.Null(line.RangeProblem(line.Name, value));
                Assert.True(value.Si > 0, $"{line.Name} for {use}: nothing");
            }

            Assert.Equal(0, ((Reading)line.Get(Allowances.None)!).Si);
        }
    }

    [Fact]
    public void A_finding_tells_what_the_allowances_took_from_its_margin()
    {
        var car = DemoCar.Read();
        var lip = Judge.Build(car, Demo.Holding).Findings.Single(f => f.Key == "front-left/clear-arch-lip");
        var still = Judge.Build(car with { Allowances = Allowances.None }, Demo.Holding).Findings.Single(f => f.Key == lip.Key);
        Assert.Equal(still.Margin!.Value.Si - lip.Margin!.Value.Si, lip.Allowed!.Value.Si, 1e-4);
        Assert.True(lip.Allowed.Value.Si > 0.003, $"the lip loses {lip.Allowed}");
        Assert.Null(still.Allowed);
    }

    [Fact]
    public void What_friction_and_a_data_sheet_leave_open_widens_the_doubt_and_moves_no_value()
    {
        var car = DemoCar.Read() with { UseLearned = false };
        var none = Judge.Build(car with { Allowances = Allowances.None }, Demo.Holding, JudgeOptions.FindingsOnly);
        var some = Judge.Build(car with { Allowances = Allowances.None with { RideFriction = Mm("8 mm") } }, Demo.Holding,
            JudgeOptions.FindingsOnly);
        var (before, after) = (none.Findings.Single(f => f.Key == "front-left/ride-height"),
            some.Findings.Single(f => f.Key == "front-left/ride-height"));
        Assert.Equal(before.Value!.Value.Si, after.Value!.Value.Si, 1e-9);
        double added = Math.Sqrt(Math.Pow(after.Doubt!.Value.Si, 2) - Math.Pow(before.Doubt!.Value.Si, 2));
        Assert.Equal(0.008, added, 1e-4);
    }

    private static SwayCorner Corner(WheelSide side, double turned) => new(
        CornerAllowances.Of(new Car(), new Build()), side, Radius, 0.05, turned, turned);

    private static (double Si, LimitOrigin Origin) Line(Car car, Build build, string property) =>
        AllowancesInForce.Of(car, build).Line(property) is var line ? (line.Value.Si, line.Origin) : default;

    private static Reading Mm(string text) => Reading.Of(text, Dimension.Length);
}
