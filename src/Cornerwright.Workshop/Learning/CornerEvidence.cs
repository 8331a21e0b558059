using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Learning;

/// <summary>One reading and how to work out what it should have been.</summary>
/// <param name="Sigma">Standard deviation of the reading itself, SI.</param>
/// <param name="NeedsGaps">True where the clearances must be laid out first.</param>
internal sealed record EvidenceRow(string Label, Unit Unit, int Decimals, double Read, double Sigma, Func<CornerReader, double> Expected,
    bool NeedsGaps = false);

/// <summary>What was read at one corner on one occasion, over that corner's own numbers as it was built then.</summary>
internal sealed class CornerEvidence
{
    public const string HeightLabel = "hub to arch";

    /// <summary>
    /// Corner loads move with the collars and with who sits where: what scales
    /// say holds for a load case to about this share. Common practice, no source.
    /// </summary>
    private const double LoadCaseShare = 0.02;

    private const double Gravity = RideRates.StandardGravity;

    private readonly SolvedCorner _numbers;
    private readonly bool _gaps;
    private readonly ReadSet _reads = new();
    private bool _noted;
    private readonly List<EvidenceRow> _rows = [];

    private CornerEvidence(Car car, Occasion occasion, CornerPlace place)
    {
        (Occasion, Place) = (occasion, place);

        // As it was fitted then; the car stood still when it was read, so nothing is allowed for but what is not known of its springs.
        var fitted = CornerAllowances.AtRest(car, occasion.Fitted);
        Plan = CornerPlan.Compile(car, fitted, place, null);
        var readings = occasion.At(place);
        var height = Plan.Inputs.Add(Plan.Path + "/rideHeight", "hub centre to arch edge", Plan.Corner.RideHeight);
        var inCase = LoadOf(car, occasion);
        var onScale = Plan.Inputs.Add($"occasions/{occasion.Id}/{Plan.Path}/load", $"load read, {occasion.Name}", readings.Load);
        double aboard = AboardShare(car, occasion, place);
        Func<CornerReader, double>? load = onScale.IsGiven ? n => n.X[onScale] * Gravity
            : inCase.IsGiven ? n => (n.X[inCase] + aboard) * Gravity : null;
        Func<CornerReader, double>? ride = load is not null && Plan.CanRide ? n => n.TravelUnder(load(n)) : null;
        if (readings.Height is { } h && ride is not null && height.IsGiven)
        {
            Add(HeightLabel, Units.Millimetre, 1, h, n => n.X[height] - ride(n));
        }

        if (readings.Load is not null && inCase.IsGiven)
        {
            // Not a reading against a number, but a number read twice: the load case against the scale.
            _rows.Add(new EvidenceRow("load on the scale", Units.Kilogram, 0, 0, LoadCaseShare * readings.Load.Si, n =>
                n.X[inCase] + aboard - n.X[onScale]));
        }

        if (readings.Camber is { } camber && ride is not null)
        {
            Add("camber", Units.Degree, 2, camber, n => n.Motion.WheelAt(ride(n), out var w).IsUsable() ? w.Camber : double.NaN);
        }

        AddGaps(readings, ride);
        AddSteps(readings);
        _gaps = _rows.Any(r => r.NeedsGaps);
        _numbers = new SolvedCorner(Plan);
    }

    public Occasion Occasion { get; }

    public CornerPlace Place { get; }

    public CornerPlan Plan { get; }

    public IReadOnlyList<EvidenceRow> Rows => _rows;

    public static CornerEvidence Of(Car car, Occasion occasion, CornerPlace place) => new(car, occasion, place);

    /// <summary>False for an input that none of the rows was worked out from: known once <see cref="Expect"/> was asked.</summary>
    public bool Matters(int input) => !_noted || _reads.Has(input);

    /// <summary>Expectations of all rows with these inputs.</summary>
    public double[] Expect(ReadOnlySpan<double> x)
    {
        x.CopyTo(_numbers.Values);
        bool note = !_noted;
        _noted = true;
        if (_gaps)
        {
            _numbers.Solve(note);
        }
        else if (Plan.HasMotion)
        {
            _numbers.MakeMotion(note);
        }

        var n = new CornerReader(_numbers, note ? _reads : null);
        return [.. _rows.Select(r => r.Expected(n))];
    }

    private void Add(string label, Unit unit, int decimals, Reading reading, Func<CornerReader, double> expected, bool gaps = false) =>
        _rows.Add(new EvidenceRow(label, unit, decimals, reading.Si, Math.Max(reading.StandardDeviation, 1e-6), expected, gaps));

    private Handle LoadOf(Car car, Occasion occasion)
    {
        string id = occasion.LoadCase.Length > 0 ? occasion.LoadCase : car.MeasuredLoadCase;
        for (int i = 0; i < Plan.Loads.Count; i++)
        {
            if (Plan.Loads[i].Case.Id == id || (id.Length == 0 && i == 0))
            {
                return Plan.Loads[i].Load;
            }
        }

        return Handle.None;
    }

    // By statics alone, kg; the same rule as for the turn table.
    private static double AboardShare(Car car, Occasion occasion, CornerPlace place) =>
        occasion.Aboard.Count == 0 || car.Wheelbase is null || car.At(place.Axle()).Track is null ? 0
            : LoadAboard.ShareOf(car, place, occasion.Aboard) / Gravity;

    private void AddGaps(CornerReadings readings, Func<CornerReader, double>? ride)
    {
        foreach (var gap in readings.Gaps)
        {
            int item = Plan.Clearance.Items.ToList().FindIndex(i => i.Id == gap.Thing);
            if (item >= 0 && ride is not null && gap.Distance is { } distance && Plan.Clearance.Missing.Count == 0
                && Plan.Clearance.Items[item].Missing.Count == 0)
            {
                Add($"gap to {Plan.Clearance.Items[item].Name}", Units.Millimetre, 1, distance, n =>
                    n.GapAt(item, ride(n), 0).Gap, gaps: true);
            }
        }
    }

    private void AddSteps(CornerReadings readings)
    {
        for (int k = 0; k < readings.Steps.Count && Plan.HasMotion; k++)
        {
            var step = readings.Steps[k];
            if (step.Travel is not { } travel)
            {
                continue;
            }

            // The travel is a reading of its own, one that only these rows use.
            var at = Plan.Inputs.Add($"occasions/{Occasion.Id}/{Plan.Path}/steps/{k}/travel",
                $"travel of step {k + 1}, {Occasion.Name}", travel);
            string where = $"at step {k + 1}";
            Station(step.SpringLength, Mechanics.Motion.Station.Spring, $"spring axis {where}");
            Station(step.DamperLength, Mechanics.Motion.Station.Damper, $"damper axis {where}");
            Wheel(step.Camber, Units.Degree, 2, w => w.Camber, $"camber {where}");
            Wheel(step.Outboard, Units.Millimetre, 1, w => w.LateralShift, $"wheel out {where}");

            void Station(Reading? reading, Station station, string label)
            {
                if (reading is not null)
                {
                    Add(label, Units.Millimetre, 1, reading, n =>
                        n.Motion.StationAt(n.X[at], station, out var s).IsUsable() ? s.Length : double.NaN);
                }
            }

            void Wheel(Reading? reading, Unit unit, int decimals, Func<WheelMotionState, double> value, string label)
            {
                if (reading is not null)
                {
                    Add(label, unit, decimals, reading, n => n.Motion.WheelAt(n.X[at], out var w).IsUsable() ? value(w) : double.NaN);
                }
            }
        }
    }
}
