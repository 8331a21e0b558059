using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Surroundings;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>How wide can I go: every window that is given clears, a step outside does not, and the build's own wheel is found.</summary>
public class WidestWheelTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(CornerPlace.FrontLeft)]
    [InlineData(CornerPlace.RearRight)]
    public void Inside_a_window_everything_clears_and_outside_it_does_not(CornerPlace place)
    {
        var (car, build) = (DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!);
        var answer = WidestWheel.Of(car, build, place, DemoShelf.Shelf, new WidestTask(LeastWidthMm: 185, MostWidthMm: 245));
        Assert.Empty(answer.Missing);
        var (plan, numbers) = Solved(place);
        var room = new WheelRoom(numbers, [.. DemoShelf.Shelf.At(place)]);
        double spacer = numbers.X[plan.Wheel!.Spacer], now = plan.Wheel.AxialCentre(numbers.X);
        int ends = 0;
        foreach (SizeWindow s in answer.Sizes)
        {
            output.WriteLine($"{s.Size} on {s.RimWidthCode}: ET{s.LeastOffsetMm} to ET{s.MostOffsetMm}, in hand "
                + $"{1000 * InHand(s, s.LeastOffsetMm):0.00} {1000 * InHand(s, s.MostOffsetMm):0.00}");
            foreach (int offset in new[] { s.LeastOffsetMm, (s.LeastOffsetMm + s.MostOffsetMm) / 2, s.MostOffsetMm })
            {
                Assert.True(InHand(s, offset) >= -5e-4, $"{s} at ET{offset}: {InHand(s, offset)}");
            }

            // An end that is not where the search ends is where something is touched: 2 mm on it is too near.
            double least = spacer - (s.LeastOffsetMm / 1000.0), most = spacer - (s.MostOffsetMm / 1000.0);
            bool outer = least < now + 0.057, inner = most > now - 0.057;
            Assert.True(!outer || InHand(s, s.LeastOffsetMm - 2) < 2e-4, $"{s}: further out too");
            Assert.True(!inner || InHand(s, s.MostOffsetMm + 2) < 2e-4, $"{s}: further in too");
            ends += (outer ? 1 : 0) + (inner ? 1 : 0);
        }

        Assert.True(ends > 0);
        Assert.True(answer.Tried >= answer.Sizes.Count && answer.Sizes.Count > 3);

        double InHand(SizeWindow s, int offsetMm)
        {
            var (tyre, rim) = SizeWindow.Sections(s.WidthMm, s.AspectPercent, s.RimCode, s.RimWidthCode, spacer - (offsetMm / 1000.0));
            return room.InHand(tyre, rim, 0.01);
        }
    }

    /// <summary>A wheel of a window judged as the judge does, pose by pose over a grid: no gap below the wanted one.</summary>
    [Fact]
    public void A_window_holds_at_every_sampled_pose()
    {
        const CornerPlace Place = CornerPlace.FrontLeft;
        var answer = WidestWheel.Of(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, Place, DemoShelf.Shelf,
            new WidestTask(LeastWidthMm: 205, MostWidthMm: 225));
        var (plan, numbers) = Solved(Place);
        SizeWindow s = answer.Sizes[0];
        var (tyre, rim) = SizeWindow.Sections(s.WidthMm, s.AspectPercent, s.RimCode, s.RimWidthCode,
            numbers.X[plan.Wheel!.Spacer] - (s.MostOffsetMm / 1000.0));
        WheelShape shape = WheelShape.Of(tyre with { Growth = plan.Allowed.Growth }, default, 6);
        var scan = DemoShelf.Shelf.At(Place).Single();
        var box = CornerPoses.Box(numbers);
        CornerPoses[] loads = [new(numbers), .. numbers.Corner.Clearance.AllRound().Select(l => new CornerPoses(numbers, l.Places))];
        double least = double.PositiveInfinity;
        for (int i = 0; i < 3000; i++)
        {
            double steer = box.Least.Steer + ((box.Most.Steer - box.Least.Steer) * (i % 50) / 49),
                top = Math.Min(box.Most.Travel, box.AllowedBump(steer));
            double travel = box.Least.Travel + ((top - box.Least.Travel) * (i / 50) / 59);
            Assert.True(loads[i % loads.Length].TryPose(new(travel, steer, 0), out WheelPose pose));
            for (int k = i % 7; k < scan.PointCount; k += 7)
            {
                least = Math.Min(least, shape.SignedDistance(pose, scan.Mesh!.Point(k)));
            }
        }

        output.WriteLine($"{s.Size} ET{s.MostOffsetMm}: least sampled {1000 * least:0.00} mm to the scan");
        Assert.True(least >= Say.Limit(plan.Limits.TyreToBody) + scan.Bound - 5e-4);
    }

    [Fact]
    public void The_builds_own_wheel_is_in_its_window_and_its_tyre_in_the_room()
    {
        var answer = WidestWheel.Of(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, CornerPlace.FrontLeft, DemoShelf.Shelf,
            new WidestTask(LeastWidthMm: 185, MostWidthMm: 215));
        var (plan, numbers) = Solved(CornerPlace.FrontLeft);
        var size = plan.Parts.TyreSize!;
        output.WriteLine($"{size.WidthMm}/{size.AspectPercent} R{size.RimCode} ET{plan.Parts.Rim!.OffsetMm}; room "
            + $"{string.Join(" ", answer.Envelope.Select(p => $"({1000 * p.A:0},{1000 * p.R:0})"))}");
        SizeWindow own = answer.Sizes.Single(s => s.WidthMm == size.WidthMm && s.AspectPercent == size.AspectPercent);
        Assert.InRange(plan.Parts.Rim.OffsetMm!.Value, own.LeastOffsetMm, own.MostOffsetMm);

        // Rays end where a thin ring has nothing in hand, and not before.
        var room = new WheelRoom(numbers, [.. DemoShelf.Shelf.At(CornerPlace.FrontLeft)]);
        ProfilePoint middle = new(plan.Wheel!.Tyre(numbers.X, 0, 0).AxialCentre, plan.Wheel.Tyre(numbers.X, 0, 0).WidestRadius);
        Assert.Equal(48, answer.Envelope.Count);
        int ends = 0;
        foreach (ProfilePoint p in answer.Envelope)
        {
            double way = Math.Sqrt(((p.A - middle.A) * (p.A - middle.A)) + ((p.R - middle.R) * (p.R - middle.R)));
            Assert.True(room.InHand(p, 0.02) > -5e-4);
            ends += way < 0.149 && room.InHand(p, 0.02) < 1e-3 ? 1 : 0;
        }

        Assert.InRange(ends, 12, 48);
    }

    [Fact]
    public void What_is_missing_is_said()
    {
        var car = DemoShelf.Car with { MeasuredBuild = "" };
        var answer = WidestWheel.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft);
        Assert.NotEmpty(answer.Missing);
        Assert.Empty(answer.Sizes);
        Assert.NotEmpty(ClearanceMap.Of(car, car.Build(Demo.Holding)!, CornerPlace.FrontLeft).Missing);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            WidestWheel.Of(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, CornerPlace.FrontLeft, cancel: stop.Token));
    }

    private static (CornerPlan Plan, CornerReader Numbers) Solved(CornerPlace place)
    {
        var plan = CornerPlan.Compile(DemoShelf.Car, DemoShelf.Car.Build(Demo.Holding)!, place, CarLearning.InUse(DemoShelf.Car));
        var numbers = new SolvedCorner(plan);
        numbers.Solve();
        return (plan, numbers.Read);
    }
}
