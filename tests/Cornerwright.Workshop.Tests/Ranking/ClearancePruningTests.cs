using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>What one refusal is taken to say of other pairs, held against judging those.</summary>
public class ClearancePruningTests
{
    [Theory]
    [InlineData(AxlePlace.Front, "gravel-3", "12 mm")]
    [InlineData(AxlePlace.Rear, "gravel-2", "6 mm")]
    public void A_pair_refused_without_judging_is_refused_by_the_judge(AxlePlace axle, string start, string gap)
    {
        // Low springs on many packers' worth of travel, and gaps wanted that many wheels cannot give.
        var car = DemoCar.Read();
        var wishes = new Wishes
        {
            Axle = axle, StartingBuild = start, LeastGap = Spaces.Millimetres(gap), Wheels = ["w-gravel", "w-gravel-40", "w-now"],
                Tyres = ["t-gravel-55", "t-gravel-65"],
            Dampers = axle == AxlePlace.Front ? ["d-front", "d-now"] : [],
        };
        var loose = new Limits { CircumferenceChange = Reading.Of("20 %", Garage.Quantities.Dimension.Ratio),
            ScrubChange = Spaces.Millimetres("60 mm"), GroundClearance = Spaces.Millimetres("50 mm") };
        car = car.With(car.Build(start)! with { Limits = loose });
        var space = Spaces.Of(car, wishes);
        var judge = new ChoiceJudge(space);
        List<SuspensionCandidate> suspensions =
            [.. Enumerable.Range(0, space.Stacks.Length).SelectMany(i => StackSweep.Of(space, i).Candidates)];
        WheelSet[] wheels = [.. Enumerable.Range(0, (int)space.Pool.WheelSets).Select(i => WheelSet.Of(space, i))];
        var pruning = new ClearancePruning(space, suspensions);
        int pruned = 0, held = 0;
        for (int s = 0; s < suspensions.Count; s++)
        {
            for (int w = 0; w < wheels.Length; w++)
            {
                if (wheels[w].Broken.Count > 0)
                {
                    continue;
                }

                string? refused = pruning.Refuses(s, w);
                var verdict =
                    judge.Judge(space.Make(suspensions[s].Choice, wheels[w].Choice, suspensions[s].Perch.Left, suspensions[s].Perch.Right));
                Assert.False(refused is not null && verdict.Holds, $"suspension {s}, wheels {w}: refused by {refused}, but it holds");
                if (refused is not null)
                {
                    Assert.Contains(verdict.Broken, b => b.Title == refused);
                    pruned++;
                }
                else
                {
                    pruning.Note(s, w, verdict.Broken);
                }

                held += verdict.Holds ? 1 : 0;
            }
        }

        Assert.True(pruned >= 10, $"{pruned} pruned, {held} hold, of {suspensions.Count} suspensions");
    }
}
