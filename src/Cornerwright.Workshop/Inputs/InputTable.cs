using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
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
    private readonly List<Input> _inputs = [];
    private readonly List<MissingReading> _missing = [];
    private readonly List<Input> _sources = [];   // as they were typed
    private readonly SortedList<int, string> _assumptions = [];
    private readonly Dictionary<string, int> _byPath = new(StringComparer.Ordinal);

    public IReadOnlyList<Input> Inputs => _inputs;

    /// <summary>What was taken for granted of each input, in words, by input.</summary>
    public SortedList<int, string> Assumptions => _assumptions;

    public int Count => _inputs.Count;

    public Input this[Handle input] => _inputs[input.Index];

    /// <returns>Its place in the row, or its place among what is missing where there is no reading.</returns>
    public Handle Add(string path, string label, Reading? reading)
    {
        if (reading is null)
        {
            _missing.Add(new(path, label));
            return Handle.Missing(_missing.Count - 1);
        }

        if (Known(path, out Handle known))
        {
            return known;
        }

        if (reading.ToleranceAssumed)
        {
            _assumptions[_inputs.Count] = $"{label}: no tolerance typed, taken as usual for {SourceWords(reading.Source)}";
        }

        return Put(new Input(path, label, reading.Si, reading.StandardDeviation, reading.Spread));
    }

    /// <summary>
    /// A reading that, where it comes off a data sheet and nobody typed a tolerance, is as doubtful as an allowance says.
    /// </summary>
    /// <param name="path">As in <see cref="Add"/>.</param>
    /// <param name="label">Likewise.</param>
    /// <param name="reading">Likewise.</param>
    /// <param name="sigma">Standard deviation off a data sheet, SI.</param>
    public Handle AddOffSheet(string path, string label, Reading? reading, double sigma)
    {
        if (reading is not { Source: ReadingSource.DataSheet, Tolerance: null } || Known(path, out _))
        {
            return Add(path, label, reading);
        }

        _assumptions[_inputs.Count] = $"{label}: no tolerance typed, taken as allowed off a data sheet";
        return Put(new Input(path, label, reading.Si, sigma, ToleranceKind.TwoSigma));
    }

    /// <summary>Which of these numbers nobody gave.</summary>
    public IEnumerable<MissingReading> Lacking(params IEnumerable<Handle> numbers) =>
        numbers.Where(n => n.IsMissing).Select(n => _missing[n.MissingIndex]);

    /// <summary>A number that nobody typed, with the doubt that goes with it; listed as an assumption.</summary>
    public Handle Assume(string path, string label, double value, double sigma, string words)
    {
        if (Known(path, out Handle known))
        {
            return known;
        }

        _assumptions[_inputs.Count] = words;
        return Put(new Input(path, label, value, sigma, ToleranceKind.TwoSigma));
    }

    /// <summary>A number that is defined, not measured: a designation's offset, a lever that stands at zero.</summary>
    public Handle Define(string path, string label, double value) =>
        Known(path, out Handle known) ? known : Put(new Input(path, label, value, 0, ToleranceKind.TwoSigma));

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
            bool known = Known(parameter.Path, out Handle there);
            if (!known || LearnedState.Key(_sources[there.Index]) != LearnedState.Key(parameter))
            {
                _sources.Add(parameter);
                Put(parameter with { Sigma = 0, Path = known ? LearnedState.Key(parameter) : parameter.Path }, raw: true);
            }
        }
    }

    /// <summary>Place of an input among what was learned; -1 where nothing was.</summary>
    public int Learnt(int input) => learned?.Find(_sources[input]) ?? -1;

    /// <summary>The best estimates as a row, SI.</summary>
    public double[] Values()
    {
        double[] values = new double[_inputs.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = _inputs[i].Value;
        }

        return values;
    }

    /// <summary>The best estimates, to be read by somebody who need not know what he read.</summary>
    public Reader Best() => new(Values(), null);

    private bool Known(string path, out Handle known)
    {
        bool found = _byPath.TryGetValue(path, out int index);
        known = found ? Handle.At(index) : Handle.None;
        return found;
    }

    private Handle Put(Input input, bool raw = false)
    {
        if (!raw)
        {
            _sources.Add(input);
            input = learned?.Shifted(input) ?? input;
        }

        _byPath[input.Path] = _inputs.Count;
        _inputs.Add(input);
        return Handle.At(_inputs.Count - 1);
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
