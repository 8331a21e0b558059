using System.Globalization;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Inputs;

/// <summary>
/// What was learned, in the form in which the judge uses it: other best estimates, and a doubt that is smaller and shared.
/// </summary>
internal sealed class LearnedState(IReadOnlyList<Input> parameters, IReadOnlyList<double> loosened, Posterior posterior)
{
    private readonly Dictionary<string, int> _index = parameters.Select((p, i) => (Key: Key(p), i))
        .ToDictionary(x => x.Key, x => x.i, StringComparer.Ordinal);

    public IReadOnlyList<Input> Parameters => parameters;

    public Posterior Posterior => posterior;

    /// <summary>By parameter: how many of its own standard deviations one unit of the posterior is.</summary>
    public IReadOnlyList<double> Loosened => loosened;

    /// <summary>A number that was typed anew since is another number: nothing was learned about it.</summary>
    public static string Key(in Input input) => input.Path + "=" + input.Value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Place among the parameters; -1 for an input about which nothing was learned.</summary>
    public int Find(in Input input) => _index.GetValueOrDefault(Key(input), -1);

    /// <summary>The same input with its best estimate moved.</summary>
    public Input Shifted(in Input input) => Find(input) is var i and >= 0
        ? input with { Value = input.Value + (posterior.Shifts[i] * loosened[i] * input.Sigma) } : input;
}
