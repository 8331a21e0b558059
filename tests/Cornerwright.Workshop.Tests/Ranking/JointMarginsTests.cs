using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Ranking;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>The joint probability against plain draws of every input of both corners, shared inputs drawn once.</summary>
public class JointMarginsTests
{
    private const int Seed = 99, Draws = 20_000;

    [Theory]
    [InlineData("gravel-3", AxlePlace.Front)]
    [InlineData("gravel-2", AxlePlace.Front)]
    [InlineData("winter", AxlePlace.Rear)]
    [InlineData("touring", AxlePlace.Front)]
    public void Everything_holds_as_often_as_stated(string build, AxlePlace axle)
    {
        var car = DemoCar.Read();

        var corners = new[] { axle.Left(), axle.Right() }
            .Select(p => CornerResult.Of(CornerPlan.Compile(car, car.Build(build)!, p, CarLearning.InUse(car)))).ToArray();

        // Limits one to three deviations away, so that there is something to join.
        var joint = new JointMargins();
        var speaking = new List<(int Corner, int Check, double Low)>();
        for (int c = 0; c < 2; c++)
        {
            for (int i = 0; i < corners[c].Checks.Count; i++)
            {
                var check = corners[c].Checks[i];
                var doubt = corners[c].Contributions(i).IsEmpty ? default : corners[c].Doubtful(i).Doubt;
                if (double.IsFinite(corners[c].Value(i)) && check.Kind.Scope == CheckScope.Suspension && doubt.StandardDeviation > 0)
                {
                    int index = i;
                    double low = corners[c].Value(i) - ((1 + (0.25 * (speaking.Count % 9))) * doubt.StandardDeviation);
                    joint.Add(corners[c].Value(i), low, double.PositiveInfinity, doubt,
                        corners[c].Plan.Inputs.Inputs.Select((input, k) => (input, corners[c].Contributions(index)[k])), suspension: true);
                    speaking.Add((c, i, low));
                }
            }
        }

        Assert.True(joint.FailuresSum > 0.02, "Nothing is in doubt here: the test would show nothing.");
        double stated = joint.Probability(), drawn = Drawn(corners, speaking);

        // Never surer than drawn; less sure by a little, where a value falls more than it rises.
        double noise = 3 * Math.Sqrt(drawn * (1 - drawn) / Draws);
        Assert.True(stated - drawn <= 0.01 + noise && drawn - stated <= 0.02 + noise,
            $"seed {Seed}: stated {stated}, drawn {drawn}, least {joint.Least}, apart {1 - joint.FailuresSum}");
        Assert.InRange(stated, Math.Max(0, 1 - joint.FailuresSum) - 1e-12, joint.Least + 1e-12);
    }

    private static double Drawn(CornerResult[] corners, List<(int Corner, int Check, double Low)> speaking)
    {
        var random = new Random(Seed);
        SolvedCorner[] numbers = [.. corners.Select(c => new SolvedCorner(c.Plan))];
        int holds = 0;
        for (int d = 0; d < Draws; d++)
        {
            var drawn = new Dictionary<string, double>(StringComparer.Ordinal);
            for (int c = 0; c < 2; c++)
            {
                var inputs = corners[c].Plan.Inputs.Inputs;
                for (int i = 0; i < inputs.Count; i++)
                {
                    if (!drawn.TryGetValue(inputs[i].Path, out double deviation))
                    {
                        drawn[inputs[i].Path] = deviation = inputs[i].Spread == ToleranceKind.HalfRange
                            ? Math.Sqrt(3) * ((2 * random.NextDouble()) - 1)
                            : Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
                    }

                    numbers[c].Values[i] = inputs[i].Value + (deviation * inputs[i].Sigma);
                }

                numbers[c].Follow(corners[c].Numbers, ReadSet.All(inputs.Count), new ReadSet());
            }

            bool all = true;
            foreach (var (c, i, low) in speaking)
            {
                all &= corners[c].Checks[i].Value(numbers[c].Read) >= low;
            }

            holds += all ? 1 : 0;
        }

        return (double)holds / Draws;
    }
}
