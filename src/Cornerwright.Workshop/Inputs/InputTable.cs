using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Inputs;

/// <summary>One number that a judgement stands on.</summary>
/// <param name="Path">Where it stands in the car document; the same path is the same number.</param>
/// <param name="Sigma">Standard deviation, SI; 0 for what is set or defined.</param>
internal readonly record struct Input(string Path, string Label, double Value, double Sigma, ToleranceKind Spread);

/// <summary>The numbers of one corner in a row, so that each can be moved within its doubt.</summary>
internal sealed class InputTable(LearnedState? learned = null)
{
    /// <summary>An index that stands for "nobody gave this".</summary>
    public const int None = -1;

    private readonly List<Input> _inputs = [];
    private readonly List<Input> _sources = [];   // as they were typed
    private readonly SortedList<int, string> _assumptions = [];
    private readonly List<InputEffect> _effects = [];
    private readonly Dictionary<string, int> _byPath = new(StringComparer.Ordinal);

    public IReadOnlyList<Input> Inputs => _inputs;

    /// <summary>What was taken for granted of each input, in words, by input.</summary>
    public SortedList<int, string> Assumptions => _assumptions;

    public int Count => _inputs.Count;

    /// <summary>Given to every input that is asked for from now on, on top of what it has.</summary>
    public InputEffect Effect { get; set; }

    public InputEffect EffectOf(int input) => _effects[input];

    /// <summary>Adds to what an input is known to move; nothing for <see cref="None"/>.</summary>
    public void Mark(int input, InputEffect effect)
    {
        if (input != None)
        {
            _effects[input] = _effects[input].And(effect);
        }
    }

    /// <returns>Its place in the row, or <see cref="None"/> where there is no reading.</returns>
    public int Add(string path, string label, Reading? reading)
    {
        if (reading is null)
        {
            return None;
        }

        if (Known(path, out int known))
        {
            return known;
        }

        if (reading.ToleranceAssumed)
        {
            _assumptions[_inputs.Count] = $"{label}: no tolerance typed, taken as usual for {SourceWords(reading.Source)}";
        }

        return Put(new Input(path, label, reading.Si, reading.StandardDeviation, reading.Spread));
    }

    /// <summary>A number that nobody typed, with the doubt that goes with it; listed as an assumption.</summary>
    public int Assume(string path, string label, double value, double sigma, string words)
    {
        if (Known(path, out int known))
        {
            return known;
        }

        _assumptions[_inputs.Count] = words;
        return Put(new Input(path, label, value, sigma, ToleranceKind.TwoSigma));
    }

    /// <summary>A number that is defined, not measured: a designation's offset, a lever that stands at zero.</summary>
    public int Define(string path, string label, double value) =>
        Known(path, out int known) ? known : Put(new Input(path, label, value, 0, ToleranceKind.TwoSigma));

    /// <summary>What readings after the work say about these numbers; null where nothing was learned or it is not to be used.</summary>
    public LearnedState? Learned => learned;

    /// <summary>
    /// Puts every number that was learned together with others into the row, without a doubt of its own: what is known of it
    /// is part of what is known of the others.
    /// </summary>
    public void AddBystanders()
    {
        foreach (var parameter in learned?.Parameters ?? [])
        {
            // A number typed anew since stands under its path already; what was learned of the old one goes by its own name.
            Effect = default;
            bool known = Known(parameter.Path, out int index);
            if (!known || LearnedState.Key(_sources[index]) != LearnedState.Key(parameter))
            {
                _sources.Add(parameter);
                Put(parameter with { Sigma = 0, Path = known ? LearnedState.Key(parameter) : parameter.Path }, raw: true);
            }
        }
    }

    /// <summary>Place of an input among what was learned; -1 where nothing was.</summary>
    public int Learnt(int input) => learned?.Find(_sources[input]) ?? -1;

    public double[] Values() => [.. _inputs.Select(i => i.Value)];

    private bool Known(string path, out int known)
    {
        bool found = _byPath.TryGetValue(path, out known);
        if (found)
        {
            Mark(known, Effect);
        }

        return found;
    }

    private int Put(Input input, bool raw = false)
    {
        if (!raw)
        {
            _sources.Add(input);
            input = learned?.Shifted(input) ?? input;
        }

        _effects.Add(Effect);
        _byPath[input.Path] = _inputs.Count;
        _inputs.Add(input);
        return _inputs.Count - 1;
    }

    private static string SourceWords(ReadingSource source) => source switch
    {
        ReadingSource.Tape => "a tape",
        ReadingSource.Calliper => "a calliper",
        ReadingSource.Scale => "a scale",
        ReadingSource.Gauge => "a gauge",
        ReadingSource.DataSheet => "a data sheet",
        _ => "a guess",
    };
}
