using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// The first touch was looked for straight ahead only, so a wheel that meets its liner at half lock before the bump stop is spent had its
/// stop order "hold". Held against a dense sampling of steer and travel.
/// </summary>
public sealed class FirstTouchTests(ITestOutputHelper output)
{
    private const int Seed = 20261202, Corners = 60;
    private const double Degree = Math.PI / 180;

    [Fact]
    public void No_touch_on_random_corners_comes_earlier_than_told()
    {
        var random = new Random(Seed);
        int touched = 0, turned = 0;
        double late = 0, early = 0;
        for (int c = 0; c < Corners; c++)
        {
            var place = random.Next(2) == 0 ? CornerPlace.FrontLeft : CornerPlace.FrontRight;
            var solved = Solved(Obstacle(random), place);
            double sampled = Sampled(solved);
            var told = solved.Clearance.Touch;
            if (double.IsInfinity(sampled) && told.Item < 0)
            {
                continue;
            }

            touched++;
            turned += Math.Abs(told.Way.Steer) > 2 * Degree ? 1 : 0;
            late = Math.Max(late, told.Travel - sampled);
            early = Math.Max(early, double.IsInfinity(sampled) ? 0 : sampled - told.Travel);
            double left = told.Item < 0 ? 0 : solved.Clearance.At(solved.Read, told.Item, told.Way.At(told.Travel)).Gap;
            Assert.True(Math.Abs(left) < 5e-5, $"corner {c}: {left} left at {told}");
            Assert.True(told.Travel < sampled + 3e-4, $"corner {c}: told {told.Travel} at {told.Way}, sampled {sampled}");
        }

        output.WriteLine($"{touched} touched, {turned} with the wheel turned, late by {1e3 * late:0.00}, early by {1e3 * early:0.00} mm");
        Assert.True(touched > 10 && turned > 3, $"{touched} touched, {turned} turned");
        Assert.InRange(early, 0, 4e-3);   // a nearer touch between samples 1.5 degrees apart
    }

    [Fact]
    public void A_liner_met_at_half_lock_before_the_stop_is_spent_fails_the_stop_order_and_is_told()
    {
        var car = DemoCar.Read() with { Allowances = Allowances.None };
        car = car.With(CornerPlace.FrontLeft, car.FrontLeft with { Obstacles = [Liner(26)] });
        var judged = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings;
        var order = judged.Single(f => f.Key == "front-left/stop-order");
        var clear = judged.Single(f => f.Key == "front-left/clear-liner-front");
        Assert.Equal((Verdict.Fails, Verdict.Fails), (order.Verdict, clear.Verdict));
        Assert.Contains("the tyre touches steered", order.Sentence, StringComparison.OrdinalIgnoreCase);
    }

    private static SolvedCorner Solved(Obstacle obstacle, CornerPlace place)
    {
        var car = DemoCar.Read() with { Allowances = Allowances.None };
        car = car.With(place, car.At(place) with { Obstacles = [obstacle] });
        var solved = new SolvedCorner(CornerPlan.Compile(car, car.Build(Demo.Holding)!, place, null));
        solved.Solve();
        return solved;
    }

    // From ride to 40 mm beyond full bump, every 0.25 mm at every 1.5 degrees.
    private static double Sampled(SolvedCorner solved)
    {
        var (read, plan) = (solved.Read, solved.Plan);
        int item = plan.Clearance.Items.ToList().FindIndex(i => i.Id == "any");
        double ride = read.Ride[0], end = read.Swept().Bump + 0.04;
        for (double travel = ride; travel <= end; travel += 0.00025)
        {
            for (double steer = -plan.Clearance.LockRight; steer <= plan.Clearance.LockLeft + 1e-9; steer += 1.5 * Degree)
            {
                // A limit of bump at lock ends the way there.
                double limit = plan.Clearance.BumpAt(steer, read.Swept());
                bool there = limit >= read.Swept().Bump || travel <= limit;
                if (there && solved.Clearance.At(read, item, travel, steer).Gap <= 0)
                {
                    // Touching at ride already is no touch on the way up: the clearance itself says it.
                    return travel == ride ? double.PositiveInfinity : travel;
                }
            }
        }

        return double.PositiveInfinity;
    }

    private static Obstacle Obstacle(Random random)
    {
        double clock = 8 + (6 * random.NextDouble());
        return new Obstacle
        {
            Id = "any", Name = "anything",
            Gaps = [.. Enumerable.Range(0, 1 + random.Next(3)).Select(_ => new Gap
            {
                From = random.Next(2) == 0 ? GapFrom.Crown : GapFrom.OuterShoulder,
                Direction = random.Next(2) == 0 ? GapDirection.Radial : GapDirection.Nearest,
                Clock = (clock + random.NextDouble()) % 12,
                Distance = Mm(20 + (70 * random.NextDouble())),
            })],
        };
    }

    private static Obstacle Liner(double mm) => new()
    {
        Id = "liner-front", Name = "front of the liner",
        Gaps = [new Gap { From = GapFrom.Crown, Direction = GapDirection.Radial, Clock = 9.7, Distance = Mm(mm) }],
    };

    private static Reading Mm(double mm) => Reading.Of(FormattableString.Invariant($"{mm:0.0} mm"), Dimension.Length, "2 mm");
}
