using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// Seen: a liner 30 mm ahead of the crown at 9 o'clock "holds, 13.4 mm in hand, 100 %", where the clearance page of the same build proved
/// 2.6 mm at 17.7° to the right, half way to lock. The verdict looked straight ahead, at both locks and at the steer of the reading; with
/// more lock the failure went away. It looks at every steer now, and says the same as the certified search over all poses.
/// </summary>
public sealed class EverySteerTests(ITestOutputHelper output)
{
    private const int Seed = 20261201, Cars = 60;

    [Fact]
    public void The_front_of_a_liner_is_met_half_way_to_lock()
    {
        // A car that stands still: what the tape says and nothing else.
        var car = With(DemoCar.Read() with { Allowances = Allowances.None }, CornerPlace.FrontLeft, new Obstacle
        {
            Id = "liner-front", Name = "front of the liner",
            Gaps = [new Gap { From = GapFrom.Crown, Direction = GapDirection.Radial, Clock = 9,
                Distance = Reading.Of("30 mm", Dimension.Length, "2 mm", ReadingSource.Tape) }],
        });
        var finding = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f =>
            f.Key == "front-left/clear-liner-front");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.Equal(0.0026, finding.Value!.Value.Si, 1e-4);
        Assert.Equal(-17.7, finding.Worst!.Steer!.Value * 180 / Math.PI, 1.0);
    }

    [Fact]
    public void On_random_corners_the_verdict_says_what_the_certified_search_proves()
    {
        var random = new Random(Seed);
        double above = 0, below = 0;
        int between = 0, compared = 0;
        for (int c = 0; c < Cars; c++)
        {
            var place = (CornerPlace)random.Next(4);
            var car = DemoCar.Read();
            car = car.With(place, car.At(place) with { Obstacles = [Any(random, place)] });
            string build = car.Builds[random.Next(car.Builds.Count)].Id;
            var finding = Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings.Single(f =>
                f.Check == "clear-any" && f.Corner == place);
            var proved = CornerClearance.Of(car, car.Build(build)!, place).Least();
            if (finding.Value is not { } value || proved is not { } least || least.Upper - least.Lower > 0.0005)
            {
                continue;
            }

            // Inside the tyre the distance has ridges along the line: by how much more than 20 mm it overlaps is known less finely.
            compared++;
            double off = value.Si - least.Upper, allowed = least.Upper < -0.02 ? 2e-4 : 5e-5;
            (above, below) = (Math.Max(above, off), Math.Max(below, least.Lower - value.Si));
            between += finding.Worst?.Steer is { } steer && Math.Abs(steer) > 0.02 && Math.Abs(steer) < 0.5 ? 1 : 0;
            Assert.True(off < allowed, $"seed {Seed}, car {c}, {build} {place}: told {1000 * value.Si:0.000} mm, proved at most "
                + $"{1000 * least.Upper:0.000} mm at {least.Place}");
        }

        output.WriteLine(
            $"{compared} compared, {between} between ahead and lock; above by at most {1e6 * above:0} um, below by {1e6 * below:0} um");
        Assert.True(compared > Cars / 2 && between > 3, $"{compared} compared, {between} between");
        Assert.True(below < 2e-4, $"below the proved by {1e6 * below:0} um");
    }

    // One to four gaps of one thing, at any clock position, feature, direction, height and steer.
    private static Obstacle Any(Random random, CornerPlace place)
    {
        bool steered = place.Axle() == AxlePlace.Front;
        GapFrom[] from = [GapFrom.Crown, GapFrom.OuterShoulder, GapFrom.InnerShoulder];
        double clock = 12 * random.NextDouble();
        return new Obstacle
        {
            Id = "any", Name = "anything",
            Gaps =
            [
                .. Enumerable.Range(0, 1 + random.Next(4)).Select(_ => new Gap
                {
                    From = from[random.Next(from.Length)],
                    Direction = random.Next(2) == 0 ? GapDirection.Radial : GapDirection.Nearest,
                    Clock = (clock + (1.5 * random.NextDouble()) + 12) % 12,
                    Distance = Mm(15 + (60 * random.NextDouble())),
                    Travel = random.Next(2) == 0 ? null : Mm(-30 + (60 * random.NextDouble())),
                    Steer = steered && random.Next(2) == 0
                        ? Reading.Of(FormattableString.Invariant($"{-20 + (40 * random.NextDouble()):0.0} deg"), Dimension.Angle) : null,
                }),
            ],
        };
    }

    private static Reading Mm(double mm) => Reading.Of(FormattableString.Invariant($"{mm:0.0} mm"), Dimension.Length);

    private static Car With(Car car, CornerPlace place, Obstacle obstacle) =>
        car.With(place, car.At(place) with { Obstacles = [.. car.At(place).Obstacles, obstacle] });
}
