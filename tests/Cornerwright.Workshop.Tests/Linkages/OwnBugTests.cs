using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>Points that make no linkage are an answer; an exception from within is our own bug and comes through.</summary>
public class OwnBugTests
{
    [Theory]
    [InlineData(CornerPlace.FrontLeft)]
    [InlineData(CornerPlace.RearLeft)]
    public void A_number_that_is_none_is_not_told_as_no_motion(CornerPlace place)
    {
        foreach (var (plan, row) in Plans(place))
        {
            int x = JointOf(plan);
            row[x] = double.NaN;
            Assert.ThrowsAny<ArgumentException>(() => plan.Motion.Make(new(row, null)));
            Assert.ThrowsAny<ArgumentException>(() => plan.Motion.LinkageRange(new(row, null), 0.1));
        }
    }

    [Theory]
    [InlineData(CornerPlace.FrontLeft)]
    [InlineData(CornerPlace.RearLeft)]
    public void A_drawn_row_of_points_that_fall_together_is_an_answer(CornerPlace place)
    {
        foreach (var (plan, row) in Plans(place))
        {
            // Every hardpoint at one place: nothing is left of strut and axle; the beam's bushing on the middle plane.
            for (int i = 0; i < row.Length; i++)
            {
                string path = plan.Inputs.Inputs[i].Path;
                row[i] = path.EndsWith("/armOuter/y", StringComparison.Ordinal) ? 0
                    : path.Contains("/hardpoints/", StringComparison.Ordinal) ? 0.5 : row[i];
            }

            Assert.Equal(Reach.NotGiven, plan.Motion.Make(new(row, null)).WheelAt(0, out _));
            Assert.Null(plan.Motion.LinkageRange(new(row, null), 0.1));
        }
    }

    private static int JointOf(CornerPlan plan) =>
        Enumerable.Range(0, plan.Inputs.Inputs.Count)
        .First(i => plan.Inputs.Inputs[i].Path.EndsWith("/hubFace/x", StringComparison.Ordinal));

    // The demo's front struts; behind, a rigid axle and a twist beam.
    private static IEnumerable<(CornerPlan Plan, double[] Row)> Plans(CornerPlace place)
    {
        var car = DemoCar.Read() with { UseLearned = false };
        Car[] cars = place == CornerPlace.FrontLeft
            ? [car with { FrontLeft = car.FrontLeft with { Motion = car.FrontLeft.Motion with { Level = MotionLevel.Hardpoints } } }]
            : [AxleTables.Rigid(car), AxleTables.Twist(car)];
        foreach (var one in cars)
        {
            var plan = CornerPlan.Compile(one, one.Build("gravel-3")!, place, CarLearning.InUse(one));
            Assert.Empty(plan.Motion.Missing);
            yield return (plan, plan.Inputs.Values());
        }
    }
}
