using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Weighing;

/// <summary>A weighted sum of corners' values and single readings; inputs that corners share move all of them together.</summary>
internal sealed class CombinedValue
{
    private readonly Dictionary<string, (Input Input, double Contribution)> _parts = new(StringComparer.Ordinal);
    private readonly List<MissingReading> _missing = [];
    private readonly List<(CornerResult Corner, int Check, double Weight)> _corners = [];

    public double Value { get; private set; }

    public IReadOnlyList<MissingReading> Missing => _missing;

    /// <summary>Change of the value for one standard deviation of each input.</summary>
    public IEnumerable<(Input Input, double Contribution)> Parts => _parts.Values;

    /// <summary>Adds what a corner carries to its axle.</summary>
    public CombinedValue Add(CornerResult corner, CarriedKind kind, double weight)
    {
        int index = corner.Find(kind);
        IReadOnlyList<MissingReading> lacking = corner.MissingFor(index) is { Count: 0 } && corner.TooWide(index) is { } wide ? [wide]
            : corner.MissingFor(index);
        if (lacking.Count > 0 || !double.IsFinite(corner.Value(index)))
        {
            string where = Garage.Chassis.Places.Words(corner.Plan.Place);
            _missing.AddRange(lacking.Count == 0
                ? [new(corner.Plan.Path + "/motion", $"{where}: the ride height is out of the motion's reach")]
                : lacking.Select(m => m with { Label = $"{where}: {m.Label}" }));
            return this;
        }

        Value += weight * corner.Value(index);
        _corners.Add((corner, index, weight));
        var contributions = corner.Contributions(index);
        for (int i = 0; i < contributions.Length; i++)
        {
            if (contributions[i] != 0)
            {
                Add(corner.Plan.Inputs.Inputs[i], weight * contributions[i]);
            }
        }

        return this;
    }

    public CombinedValue Add(string path, string label, Reading? reading, double weight)
    {
        if (reading is null)
        {
            _missing.Add(new(path, label));
            return this;
        }

        Value += weight * reading.Si;
        Add(new Input(path, label, reading.Si, reading.StandardDeviation, reading.Spread), weight * reading.StandardDeviation);
        return this;
    }

    public CombinedValue Add(double number)
    {
        Value += number;
        return this;
    }

    /// <summary>Of the value, all corners' shared inputs moving together.</summary>
    public LinearDoubt Doubt()
    {
        var inputs = _parts.Values.OrderBy(p => p.Input.Path, StringComparer.Ordinal).ToList();
        return LinearDoubt.Of([.. inputs.Select(p => p.Contribution)], [.. inputs.Select(p => p.Input.Spread == ToleranceKind.HalfRange)]);
    }

    public Finding Judge(Finding frame, Measure unit, double low, double high, double certainty, Func<double, string> sentence)
    {
        if (_missing.Count > 0)
        {
            return FindingWriter.Unknown(frame.Check, frame.Title, frame.Where, [.. _missing.Distinct()]) with { Axle = frame.Axle };
        }

        var inputs = _parts.Values.OrderBy(p => p.Input.Path, StringComparer.Ordinal).ToList();
        double[] contributions = [.. inputs.Select(p => p.Contribution)];
        var doubt = Doubt();
        var (verdict, margin, probability) = FindingWriter.Weigh(Value, low, high, doubt, certainty);
        return frame with
        {
            Verdict = verdict,
            Value = unit.With(Value),
            Low = double.IsFinite(low) ? unit.With(low) : null,
            High = double.IsFinite(high) ? unit.With(high) : null,
            Margin = unit.With(margin),
            Doubt = unit.With(2 * doubt.StandardDeviation),
            Probability = probability,
            FirstOrderEnough = !(ProbabilityOff(doubt, low, high) > BentProbability.Noticeable),
            Sentence = sentence(Value),
            Deciding = FindingWriter.Deciding([.. inputs.Select(p => p.Input)], contributions),
        };
    }

    /// <summary>
    /// By how much the first-order probability is off, about: the same question as for one corner, asked of all corners at once.
    /// </summary>
    private double ProbabilityOff(in LinearDoubt doubt, double low, double high)
    {
        double sigma = doubt.StandardDeviation;
        double meanShift = _corners.Sum(c => c.Weight * c.Corner.MeanShift(c.Check)),
            blind = _corners.Sum(c => Math.Abs(c.Weight) * c.Corner.Blind(c.Check));
        return BentProbability.Off(Value, sigma, low, high, meanShift, blind, Along);

        // Inputs that are no corner's own (a reading added alone) move the value in a straight line.
        double Along(double far)
        {
            double moved = Value + (far * sigma);
            foreach (var (corner, check, weight) in _corners)
            {
                double[] deviations = [.. corner.Plan.Inputs.Inputs.Select(i =>
                    _parts.TryGetValue(i.Path, out var part) ? far * part.Contribution / sigma : 0)];
                double straight = 0;
                for (int i = 0; i < deviations.Length; i++)
                {
                    straight += deviations[i] * corner.Contributions(check)[i];
                }

                moved += weight * (corner.ValueAt(check, deviations) - corner.Value(check) - straight);
            }

            return moved;
        }
    }

    private void Add(Input input, double contribution)
    {
        double before = _parts.TryGetValue(input.Path, out var known) ? known.Contribution : 0;
        _parts[input.Path] = (input, before + contribution);
    }
}
