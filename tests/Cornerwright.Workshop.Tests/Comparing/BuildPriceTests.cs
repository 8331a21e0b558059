using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.WorkOrders;

namespace Cornerwright.Workshop.Tests.Comparing;

public sealed class BuildPriceTests
{
    private static readonly WheelBolt Bolt = new() { Id = "long", Name = "Long bolt", Price = 3, Thread = "M12x1.5" };

    private static Car With(int? counted, string designation) => DemoCar.Read() with
    {
        Front = DemoCar.Read().Front with { Hub = new Hub { Bolts = counted } },
        Parts = new PartsShelf { WheelBolts = [Bolt], Wheels = [new Wheel { Id = "w", Name = "W", Designation = designation }] },
    };

    private static Build Bolted(params CornerPlace[] corners) =>
        corners.Aggregate(new Build { Id = "b", Name = "B" }, (b, c) => b.With(c, b.At(c) with { Wheel = "w", WheelBolt = "long" }));

    [Theory]
    [InlineData(4, "7Jx16 ET40 5x110", 8)]    // as counted on the hub
    [InlineData(null, "7Jx16 ET40 5x110", 10)]   // as the rim says
    [InlineData(null, "7Jx16 ET40", 2)]       // nothing says it: one each, rather than none
    public void A_wheel_needs_as_many_bolts_as_its_hub_has(int? counted, string designation, int pieces)
    {
        var line = Assert.Single(BuildPrice.Of(With(counted, designation), Bolted(CornerPlace.FrontLeft, CornerPlace.FrontRight)).Lines,
            l => l.Part is WheelBolt);
        Assert.Equal((pieces, 3m * pieces), (line.Count, line.Sum));
    }

    [Fact]
    public void A_bar_serves_both_wheels_of_its_axle()
    {
        var car = With(5, "7Jx16 ET40") with { Parts = new PartsShelf { AntiRollBars = [new() { Id = "bar", Name = "Bar", Price = 90 }] } };
        var build = new Build { Id = "b", FrontLeft = new() { AntiRollBar = "bar" }, FrontRight = new() { AntiRollBar = "bar" } };
        Assert.Equal(1, Assert.Single(BuildPrice.Of(car, build).Lines).Count);
        Assert.Equal(2, Assert.Single(BuildPrice.Of(car, build with { RearRight = new() { AntiRollBar = "bar" } }).Lines).Count);
    }

    [Fact]
    public void Other_bolts_take_the_wheel_off_and_stand_among_the_parts_to_get()
    {
        var car = DemoCar.Read();
        car = car with { Parts = car.Parts with { WheelBolts = [.. car.Parts.WheelBolts, Bolt] } };
        var start = car.Build("gravel-2")!;
        var to = start with { Id = "other", FrontLeft = start.FrontLeft with { WheelBolt = "long" } };
        var change = Assert.Single(BuildChange.Between(car, start, to));
        Assert.Equal(("Wheel bolts or nuts", "Long bolt", true), (change.Field.Label, change.After, change.Part));
        var order = OrderWriter.Write(car, start, to).Value;
        Assert.Equal(5, Assert.Single(order.Parts, p => p.Part.Id == "long").Count);
        Assert.Contains(order.Steps, s => s.Id.StartsWith("on/", StringComparison.Ordinal)
            && s.Details.Any(d => d.Contains("Long bolt", StringComparison.Ordinal)));
    }
}
