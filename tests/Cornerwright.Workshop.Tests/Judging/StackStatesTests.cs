using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>The demo shows every state that a spring stack can be in, so that every picture of it can be seen.</summary>
public sealed class StackStatesTests
{
    [Fact]
    public void Loose_seated_shut_helper_and_bound_all_occur_in_the_demo()
    {
        var car = DemoCar.Read();
        StackState[] states = [.. car.Builds.SelectMany(b => Judge.Build(car, b.Id).Pictures).SelectMany(p => p.Stack)];
        Assert.NotEmpty(states);
        Assert.True(states.Any(s => s.Gap > 0), "no stack hangs loose");
        Assert.True(states.Any(s => s.Gap == 0 && s.Force > 0 && s.Pieces.Where(p => p.Coil).All(p => !p.Shut)),
            "no stack is seated with all coils open");
        Assert.True(states.Any(s => s.Force > 0 && s.Pieces.Any(p => p.Coil && p.Shut) && s.Pieces.Any(p => p.Coil && !p.Shut)),
            "no helper or tender is shut under an open main spring");
        Assert.True(states.Any(s => s.Pieces.Any(p => p.Coil) && s.Pieces.Where(p => p.Coil).All(p => p.Shut)), "no stack is bound");
    }

    [Fact]
    public void Pieces_fill_the_space_but_for_the_gap()
    {
        var car = DemoCar.Read();
        foreach (var state in car.Builds.SelectMany(b => Judge.Build(car, b.Id).Pictures).SelectMany(p => p.Stack))
        {
            double filled = state.Pieces.Sum(p => p.Length) + state.Gap;
            bool bound = state.Pieces.Where(p => p.Coil).All(p => p.Shut);
            Assert.True(bound ? filled >= state.Space - 1e-9 : Math.Abs(filled - state.Space) < 1e-9, $"{state}");
        }
    }
}
