using System.Text.Json;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Sweeps;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>Axles that carry both wheels: heights and springs with both rising alike, gaps to the body over both travels.</summary>
public sealed class AxleJudgingTests
{
    private const double Degree = Math.PI / 180;

    // Independent rows (the mechanics tests' data) through car file, build and sweep. The motion is sampled at nine travels and read from
    // the polynomial: a hundredth of a millimetre is far more than that leaves.
    [Theory]
    [InlineData("R1", "L_", "travel_left", "motion_ratio_heave")]
    [InlineData("T1", "", "travel", "motion_ratio")]
    public void A_typed_axle_moves_as_the_independent_rows_say(string id, string left, string travel, string ratio)
    {
        JsonElement file = OracleTables.Read(id + ".json"), inputs = file.GetProperty("inputs");
        var car = new Car { Id = "a", Name = "a", Rear = new Axle { Layout = SpringLayout.Apart } };
        Corner Angled(Corner c) => c with
        {
            Camber = OracleTables.Typed(inputs.GetProperty("camber_deg").GetDouble(), "deg", Dimension.Angle),
            Toe = OracleTables.Typed(inputs.GetProperty("toe_deg").GetDouble(), "deg", Dimension.Angle),
        };
        car = car.With(CornerPlace.RearLeft, Angled(car.RearLeft)).With(CornerPlace.RearRight, Angled(car.RearRight));
        car = id == "R1" ? AxleTables.Rigid(car) : AxleTables.Twist(car);
        Assert.Empty(Consistency.Check(car));
        int rows = 0;
        foreach (JsonElement row in file.GetProperty("results").GetProperty("heave_sweep").EnumerateArray())
        {
            double Number(string name) => row.GetProperty(name).GetDouble();
            var grid = new SweepGrid([Number(travel) / 1000], [0], false, []);
            var found = CornerSweep.Of(car, new Build { Id = "b", Name = "b" }, CornerPlace.RearLeft, grid, new()).Value.Single();
            Assert.Equal("", found.Why);
            Assert.Equal(Number(left + "camber_deg") * Degree, found.Motion!.Value.Camber, 1e-6);
            Assert.Equal(Number(left + "toe_deg") * Degree, found.Motion.Value.Toe, 1e-6);
            Assert.Equal(Number(left + "spring_length") / 1000, found.Spring!.Value.Length, 1e-5);
            Assert.Equal(Number(left + "damper_length") / 1000, found.Damper!.Value.Length, 1e-5);
            Assert.Equal(-Number(left + ratio), found.Spring.Value.MotionRatio, 1e-4);
            rows++;
        }

        Assert.Equal(17, rows);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_demo_on_such_an_axle_is_judged_at_both_wheels(bool rigid)
    {
        var demo = DemoCar.Read();
        var car = rigid ? AxleTables.Rigid(demo) : AxleTables.Twist(demo);
        var findings = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings;
        foreach (var place in new[] { CornerPlace.RearLeft, CornerPlace.RearRight })
        {
            var here = findings.Where(f => f.Corner == place).ToList();
            Assert.All(here, f =>
                Assert.True(f.Verdict != Verdict.Unknown && double.IsFinite(f.Margin?.Si ?? 0), $"{f.Key}: {f.Sentence}"));
            Assert.Contains(here, f =>
                f.Check.StartsWith("clear-", StringComparison.Ordinal) && f.Worst!.Words.Contains("other wheel", StringComparison.Ordinal));
            Assert.Contains(here, f => f.Check == "seated-at-droop");
        }

        Assert.Equal(
            Judge.Build(demo, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Where(f => f.Corner == CornerPlace.FrontLeft)
            .Select(f => f.Sentence),
            findings.Where(f => f.Corner == CornerPlace.FrontLeft).Select(f => f.Sentence));
    }

    [Fact]
    public void An_axle_whose_other_side_is_of_another_kind_says_what_is_missing()
    {
        var car = AxleTables.Rigid(DemoCar.Read());
        car = car.With(CornerPlace.RearRight, car.RearRight with { Hardpoints = new HardpointTable { Kind = LinkageKind.SemiTrailing } });
        var finding = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f => f.Key == "rear-left/seated-at-droop");
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains("hardpoints of the same kind at the rear right corner", finding.Missing.Select(m => m.Label));
    }

    // A lateral rod of 140 mm stands on end long before the wheels are up: it is named, with the travel.
    [Fact]
    public void Where_the_axle_ends_the_travel_the_rod_is_named()
    {
        var car = AxleTables.Rigid(DemoCar.Read());
        var table = car.RearLeft.Hardpoints!;
        car = car.With(CornerPlace.RearLeft,
            car.RearLeft with { Hardpoints = table with { LateralBody = OracleTables.Point([-84, 380, 342]) } });
        var finding = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f => f.Key == "rear-left/linkage-reach");
        Assert.Contains("the lateral rod goes no further", finding.Sentence, StringComparison.Ordinal);
    }
}
