using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Checks;

/// <summary>What a tyre bears at the pressure it is given and the speed the car reaches: the full index was taken for both.</summary>
public sealed class TyreLoadCheckTests
{
    private const CornerPlace Place = CornerPlace.RearRight;

    [Fact]
    public void A_commercial_tyre_at_a_car_s_pressure_bears_about_half_of_its_index()
    {
        // By hand: 1000 kg · (1.6 / 4.5)^0.8 = 437 kg; ETRTO's rule and pressure from memory.
        var load = Load("215/70 R16C 108/106T", "1.6 bar", null);
        Assert.Contains("The tyre bears 437 kg at 1.6 bar", load.Sentence, StringComparison.Ordinal);
        Assert.Contains(load.Assumptions, a => a.Contains("ply rating", StringComparison.Ordinal));
        Assert.Contains("1000 kg", Load("215/70 R16C 108/106T", "4.5 bar", null).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_light_truck_tyre_follows_its_own_table()
    {
        // By hand: 1400 kg (120) · (35 / 80)^0.7 = 785 kg.
        Assert.Contains(
            "bears 785 kg", Load("LT235/85R16/E 120/116Q", "35 psi", null).Sentence.Replace("\u00A0", " ", StringComparison.Ordinal),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("205/55 R16 91V", "240 km/h", 560)]   // 615 kg less 9 %, UN R30
    [InlineData("205/55 R16 91V", "225 km/h", 587)]   // half way there
    [InlineData("205/55 R16 91V", "210 km/h", 615)]
    [InlineData("205/55 R16 91W", "270 km/h", 523)]   // 15 %
    [InlineData("205/55 R16 91H", "210 km/h", 615)]
    [InlineData("205/55 R16 91V", "260 km/h", 560)]   // faster than the tyre: its own speed
    public void A_fast_car_leaves_a_tyre_less(string size, string speed, int kilograms)
    {
        string said = Load(size, "2.5 bar", speed).Sentence;
        Assert.Contains($"bears {kilograms} kg", said, StringComparison.Ordinal);
        Assert.Equal(kilograms < 615, said.Contains("km/h", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("205/55 R16 91H", "210 km/h", true)]
    [InlineData("205/55 R16 91V", "240 km/h", true)]
    [InlineData("205/55 R16 91H", "211 km/h", false)]
    public void A_symbol_reaches_just_its_own_speed(string size, string speed, bool holds)
    {
        var finding = Judged(size, "2.5 bar", speed).Single(f => f.Key == "rear-right/tyre-speed");
        Assert.Equal(holds ? Verdict.Holds : Verdict.Fails, finding.Verdict);
    }

    [Fact]
    public void Without_a_top_speed_it_is_told_what_is_left_out()
    {
        Assert.Contains(Load("205/55 R16 91V", "2.5 bar", null).Assumptions, a => a.Contains("top speed", StringComparison.Ordinal));
        Assert.DoesNotContain(Load("205/55 R16 91H", "2.5 bar", null).Assumptions, a => a.Contains("top speed", StringComparison.Ordinal));
    }

    private static Finding Load(string size, string pressure, string? speed) =>
        Judged(size, pressure, speed).Single(f => f.Key == "rear-right/tyre-load");

    private static IReadOnlyList<Finding> Judged(string size, string pressure, string? speed)
    {
        var demo = DemoCar.Read();
        var build = demo.Build(Demo.Holding)!;
        string tyre = build.At(Place).Tyre;
        var car = demo with
        {
            TopSpeed = speed is null ? null : Reading.Of(speed, Dimension.Speed),
            Parts = demo.Parts with { Tyres = [.. demo.Parts.Tyres.Select(t => t.Id == tyre ? t with { Designation = size } : t)] },
            Builds = [.. demo.Builds.Select(b => b.Id == build.Id
                ? b.With(Place, b.At(Place) with { Pressure = Reading.Of(pressure, Dimension.Pressure) }) : b)],
        };
        return Judge.Build(car, build.Id, JudgeOptions.FindingsOnly).Findings;
    }
}
