using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Doubt;

public sealed class Explore2
{
    [Fact]
    public void Look()
    {
        var car = DemoCar.Read();
        using var w = new StreamWriter("/tmp/cw/h-explore2.txt");
        foreach (var (b, p, c) in new[] { ("gravel-1", CornerPlace.RearLeft, "ride-height"), ("now", CornerPlace.RearLeft, "ride-height"), ("gravel-2", CornerPlace.RearLeft, "ride-height") })
        {
            var corner = CornerResult.Of(CornerPlan.Compile(car, car.Build(b)!, p));
            int i = corner.Find(c);
            var d = corner.Doubtful(i);
            w.WriteLine($"{b} {p} {c}: value {d.Value * 1e3} sigma {d.Doubt.StandardDeviation * 1e3} (n {d.Doubt.Normal * 1e3}, u {d.Doubt.HalfWidth * 1e3}) bend {d.Bend * 1e3} limits {corner.Checks[i].Low*1e3} {corner.Checks[i].High*1e3}");
            var con = corner.Contributions(i).ToArray();
            var n = new CornerNumbers(corner.Plan);
            var worst = corner.Numbers.Clearance.Worst.ToArray();
            foreach (var k in Enumerable.Range(0, con.Length).OrderByDescending(k => Math.Abs(con[k])).Take(14))
            {
                var inp = corner.Plan.Inputs.Inputs[k];
                string s = "";
                foreach (double f in new[] { -2, -1, -0.5, -0.1, 0.1, 0.5, 1.0, 2 })
                {
                    n.X[k] = inp.Value + f * inp.Sigma; n.Follow(worst); s += $" {(corner.Checks[i].Value(n) - d.Value) * 1e3:0.000}"; n.X[k] = inp.Value;
                }
                w.WriteLine($"  {inp.Path}: {con[k] * 1e3:0.000} | {s}");
            }
            var r = new Random(3); double m = 0, v = 0, m3 = 0; int N = 20000; var xs = new double[N];
            for (int t = 0; t < N; t++) { RandomCorner.Fill(corner.Plan.Inputs.Inputs, r, n.X); n.Follow(worst); xs[t] = corner.Checks[i].Value(n) * 1e3; }
            m = xs.Average(); v = Math.Sqrt(xs.Average(x => (x - m) * (x - m))); m3 = xs.Average(x => Math.Pow((x - m) / v, 3));
            Array.Sort(xs);
            w.WriteLine($"  drawn mean {m} sd {v} skew {m3} kurt {xs.Average(x => Math.Pow((x - m) / v, 4))}; median {xs[N / 2]}; ride {corner.Numbers.Ride[0]*1e3}");
        }
    }
}
