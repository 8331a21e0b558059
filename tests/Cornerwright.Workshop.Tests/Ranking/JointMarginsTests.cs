using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Ranking;

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

        // Tight limits, so that there is something to join; and those of the ground out of the way, which are not the axle's alone.
        var start = car.Build(build)! with
        {
            Limits = new Limits
            {
                BumpTravel = Reading.Of("46 mm", Garage.Quantities.Dimension.Length), DroopTravel = Reading.Of("44 mm", Garage.Quantities.Dimension.Length),
                SideDifference = Reading.Of("40 mm", Garage.Quantities.Dimension.Length), GroundClearance = Reading.Of("60 mm", Garage.Quantities.Dimension.Length),
            },
        };
        var corners = new[] { axle.Left(), axle.Right() }.Select(p => CornerResult.Of(CornerPlan.Compile(car, start, p))).ToArray();
        var joint = new JointMargins();
        var speaking = new List<(int Corner, int Check)>();
        for (int c = 0; c < 2; c++)
        {
            for (int i = 0; i < corners[c].Checks.Count; i++)
            {
                var check = corners[c].Checks[i];
                if (!check.Silent && double.IsFinite(corners[c].Value(i)) && check.NeedsSolving && !check.ReadsTouch && check.Clearance < 0)
                {
                    int index = i;
                    joint.Add(corners[c].Value(i), check.Low, check.High, corners[c].Doubtful(i).Doubt,
                        corners[c].Plan.Inputs.Inputs.Select((input, k) => (input, corners[c].Contributions(index)[k])), suspension: true);
                    speaking.Add((c, i));
                }
            }
        }

        Assert.True(joint.FailuresSum > 0.02, "Nothing is in doubt here: the test would show nothing.");
        double stated = joint.Probability(suspensionOnly: false), drawn = Drawn(corners, speaking);
        Assert.True(Math.Abs(stated - drawn) <= 0.01 + (3 * Math.Sqrt(drawn * (1 - drawn) / Draws)), $"seed {Seed}: stated {stated}, drawn {drawn}, least {joint.Least}, apart {1 - joint.FailuresSum}");
        Assert.InRange(stated, Math.Max(0, 1 - joint.FailuresSum) - 1e-12, joint.Least + 1e-12);
    }

    private static double Drawn(CornerResult[] corners, List<(int Corner, int Check)> speaking)
    {
        var random = new Random(Seed);
        CornerNumbers[] numbers = [.. corners.Select(c => new CornerNumbers(c.Plan))];
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

                    numbers[c].X[i] = inputs[i].Value + (deviation * inputs[i].Sigma);
                }

                numbers[c].Follow(corners[c].Numbers, new InputEffect(Travel: true, Motion: true));
            }

            bool all = true;
            foreach (var (c, i) in speaking)
            {
                var check = corners[c].Checks[i];
                double value = check.Value(numbers[c]);
                all &= value >= check.Low && value <= check.High;
            }

            holds += all ? 1 : 0;
        }

        return (double)holds / Draws;
    }
}
