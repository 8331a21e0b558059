using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Files;

/// <summary>
/// Seen: the seventeenth gap of a liner and the sixty-first thing at a corner were left out of the judgement without a word.
/// </summary>
public sealed class NearWheelConsistencyTests
{
    [Theory]
    [InlineData(16, false)]
    [InlineData(17, true)]
    public void More_gaps_of_a_thing_than_can_be_judged_are_refused(int gaps, bool refused)
    {
        var problems =
            Read(new Obstacle { Id = "liner", Name = "Liner", Gaps = [.. Enumerable.Range(0, gaps).Select(i => Gap(9 + (0.3 * i)))] });
        Assert.Equal(
            refused ? ["front left corner / things near the wheel / liner / gaps: \"17 gaps\" is not accepted. Allowed: at most 16 gaps "
                + "of one thing. Make two things of it: let the second begin with the last gap of the first."] : [],
            problems.Select(p => p.ToString()));
    }

    [Theory]
    [InlineData(60, false)]
    [InlineData(61, true)]
    public void More_things_at_a_corner_than_can_be_judged_are_refused(int things, bool refused)
    {
        var problems =
            Read([.. Enumerable.Range(0, things).Select(i => new Obstacle { Id = $"t{i}", Name = $"Thing {i}", Gaps = [Gap(12)] })]);
        Assert.Equal(
            refused ? ["front left corner / things near the wheel: \"61 things\" is not accepted. Allowed: at most 60 things at a corner. "
                + "Leave out what stands far away, or join gaps to one line."] : [],
            problems.Select(p => p.ToString()));
    }

    private static IReadOnlyList<Problem> Read(params Obstacle[] things)
    {
        var car = new Car { Id = "a", Name = "A", FrontLeft = new Corner { Obstacles = things } };
        return CarFile.Read(CarFile.Write(car)).Problems;
    }

    private static Gap Gap(double clock) => new() { Clock = clock % 12, Distance = Reading.Of("30 mm", Dimension.Length) };
}
