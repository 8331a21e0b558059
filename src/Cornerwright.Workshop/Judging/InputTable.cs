using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Judging;

/// <summary>One number that a judgement stands on.</summary>
/// <param name="Path">Where it stands in the car document; the same path is the same number.</param>
/// <param name="Sigma">Standard deviation, SI; 0 for what is set or defined.</param>
internal readonly record struct Input(string Path, string Label, double Value, double Sigma, ToleranceKind Spread);

/// <summary>The numbers of one corner in a row, so that each can be moved within its doubt.</summary>
internal sealed class InputTable
{
    /// <summary>An index that stands for "nobody gave this".</summary>
    public const int None = -1;

    private readonly List<Input> _inputs = [];
    private readonly Dictionary<int, string> _assumptions = [];
    private readonly Dictionary<string, int> _byPath = new(StringComparer.Ordinal);

    public IReadOnlyList<Input> Inputs => _inputs;

    /// <summary>What was taken for granted of each input, in words.</summary>
    public IReadOnlyDictionary<int, string> Assumptions => _assumptions;

    public int Count => _inputs.Count;

    /// <returns>Its place in the row, or <see cref="None"/> where there is no reading.</returns>
    public int Add(string path, string label, Reading? reading)
    {
        if (reading is null)
        {
            return None;
        }

        if (_byPath.TryGetValue(path, out int known))
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
        if (_byPath.TryGetValue(path, out int known))
        {
            return known;
        }

        _assumptions[_inputs.Count] = words;
        return Put(new Input(path, label, value, sigma, ToleranceKind.TwoSigma));
    }

    /// <summary>A number that is defined, not measured: a designation's offset, a lever that stands at zero.</summary>
    public int Define(string path, string label, double value) =>
        _byPath.TryGetValue(path, out int known) ? known : Put(new Input(path, label, value, 0, ToleranceKind.TwoSigma));

    public double[] Values() => [.. _inputs.Select(i => i.Value)];

    private int Put(Input input)
    {
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
