using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;
using System.Diagnostics;

namespace Cornerwright.Workshop.Tests.Doubt;

public sealed class Explore
{
    [Fact]
    public void Look()
    {
        var car = DemoCar.Read();
        int draws = int.Parse(Environment.GetEnvironmentVariable("DRAWS") ?? "2000");
        bool search = Environment.GetEnvironmentVariable("SEARCH") == "1";
        using var w = new StreamWriter("/tmp/cw/h-explore.txt");
        foreach (var build in car.Builds)
            foreach (var place in Places.Corners)
            {
                var sw = Stopwatch.StartNew();
                var corner = CornerResult.Of(CornerPlan.Compile(car, build, place));
                var shares = RandomCorner.Draw(corner, build.Id, draws, 1, search);
                w.WriteLine($"## {build.Id} {place}: inputs {corner.Plan.Inputs.Count}, {sw.Elapsed.TotalMicroseconds / draws:0} us a draw");
                foreach (var s in shares.OrderByDescending(s => s.Off))
                    if (s.Off > 0.01 || s.Marked || s.Unsolved > 0) w.WriteLine((s.Off > 0.02 && !s.Marked ? "!! " : s.Marked ? "m  " : "   ") + s);
                w.Flush();
            }
    }
}
