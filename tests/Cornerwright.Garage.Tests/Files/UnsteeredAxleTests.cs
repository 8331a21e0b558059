using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Garage.Tests.Files;

/// <summary>
/// Seen: with the tick "Steered" forgotten, a lock of 35° and gaps read at lock were ignored, and the verdict said that everything holds.
/// </summary>
public sealed class UnsteeredAxleTests
{
    private static readonly Corner Steering = new()
    {
        Steering = new SteeringAxis
        {
            Kingpin = Reading.Of("14 deg", Dimension.Angle), Caster = Reading.Of("5 deg", Dimension.Angle),
                HubOffset = Reading.Of("78 mm", Dimension.Length),
            Lock = Reading.Of("35 deg", Dimension.Angle), RackTravel = Reading.Of("70 mm", Dimension.Length),
            BumpAtLock = Reading.Of("30 mm", Dimension.Length),
        },
    };

    // A car that was kept before the rule is not lost: it opens, and the rule is told when it is saved again.
    [Fact]
    public void A_car_kept_before_the_rule_opens_all_the_same()
    {
        string kept = CarFile.Write(new Car { Id = "a", Name = "A", FrontLeft = Steering });
        Assert.False(CarFile.Read(kept).Ok);
        Assert.Equal(Steering.Steering, CarFile.ReadKept(kept).Value.FrontLeft.Steering);
        Assert.False(CarFile.ReadKept(kept.Replace("\"id\": \"a\"", "\"id\": \"\"", StringComparison.Ordinal)).Ok);
    }

    [Fact]
    public void A_lock_or_steering_axis_on_an_axle_that_does_not_steer_is_refused()
    {
        const string Cure =
            " is not accepted. Allowed: nothing while the front axle is not steered. Tick \"Steered\" on the front axle, or take this out.";
        Assert.Equal(
            [
                "front left corner / steering axis / kingpin inclination: \"14 deg\"" + Cure,
                "front left corner / steering axis / caster: \"5 deg\"" + Cure,
                "front left corner / steering axis / axis to hub face at hub height: \"78 mm\"" + Cure,
                "front left corner / steering axis / lock, each way: \"35 deg\"" + Cure,
                "front left corner / steering axis / rack travel, each way: \"70 mm\"" + Cure,
                "front left corner / steering axis / most bump at full lock: \"30 mm\"" + Cure,
            ],
            Problems(new Car { Id = "a", Name = "A", FrontLeft = Steering }));
        Assert.Empty(Problems(new Car { Id = "a", Name = "A", Front = new Axle { Steered = true }, FrontLeft = Steering }));
        Assert.Equal(6, Problems(new Car { Id = "a", Name = "A", Front = new Axle { Steered = true }, FrontLeft = Steering,
            RearRight = Steering }).Count(p => p.StartsWith("rear right", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("20 deg", true)]
    [InlineData("0 deg", false)]
    public void A_gap_or_scan_taken_with_the_wheel_steered_on_an_axle_that_does_not_steer_is_refused(string steer, bool refused)
    {
        var gap = new Gap { Distance = Reading.Of("30 mm", Dimension.Length), Steer = Reading.Of(steer, Dimension.Angle) };
        var scan = new Scan { Id = "arch", Name = "Arch", Corner = CornerPlace.RearLeft, ContentHash = new string('a', 64),
            Steer = Reading.Of(steer, Dimension.Angle) };
        var car = new Car { Id = "a", Name = "A", Scans = [scan], RearLeft =
            new Corner { Obstacles = [new Obstacle { Id = "liner", Name = "Liner", Gaps = [gap with { Steer = null }, gap] }] } };
        const string Cure =
            " is not accepted. Allowed: 0 while the rear axle is not steered. Tick \"Steered\" on the rear axle, or take this out.";
        Assert.Equal(
            refused
                ?
                [
                    "rear left corner / things near the wheel / liner / gap 2 / steered when read: \"20 deg\"" + Cure,
                    "scan arch / steered when scanned: \"20 deg\"" + Cure,
                ]
                : [],
            Problems(car));
        Assert.Empty(Problems(car with { Rear = new Axle { Steered = true } }));
    }

    private static List<string> Problems(Car car) => [.. CarFile.Read(CarFile.Write(car)).Problems.Select(p => p.ToString())];
}
