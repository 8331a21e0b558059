using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Fit;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>A reading of the cycled wheel as the fit takes it.</summary>
/// <param name="Words">"camber at +40 mm".</param>
/// <param name="Unit">In which it is shown.</param>
/// <param name="Reading">For the fit.</param>
public sealed record CycledReading(string Words, Unit Unit, FitReading Reading);

/// <summary>A corner's points fitted to its cycled readings.</summary>
/// <param name="Points">Before.</param>
/// <param name="Readings">That were used.</param>
/// <param name="Result">Of the fit.</param>
public sealed record PointFit(CornerHardpoints Points, IReadOnlyList<CycledReading> Readings, HardpointFitResult Result)
{
    private const double Smallest = 1e-5;    // m: a hundredth of a millimetre is no move

    /// <summary>True when there is something to take.</summary>
    public bool Fitted => Result.Why is FitStop.Converged or FitStop.NoFurtherDown or FitStop.IterationLimit && Result.Joints.Count > 0;

    /// <summary>What can be used of a corner's cycled steps; empty without any.</summary>
    /// <param name="corner">With its steps.</param>
    /// <param name="points">Of that corner.</param>
    public static IReadOnlyList<CycledReading> ReadingsOf(Corner corner, CornerHardpoints points)
    {
        ArgumentNullException.ThrowIfNull(corner);
        ArgumentNullException.ThrowIfNull(points);
        var motion = new HardpointMotion(points.Ready());
        WheelGeometry? At(double travel) => motion.GeometryAt(travel, out var wheel) == Reach.Reached ? wheel : null;
        var rough = At(0);
        var found = new List<CycledReading>();
        foreach (var step in corner.Motion.Steps)
        {
            if (step.Travel is not { } travel || At(travel.Si) is not { } here)
            {
                continue;
            }

            // The doubt of the travel is that of the reading, as steeply as the reading goes with travel.
            void Add(Reading? reading, TraceQuantity quantity, string words, Unit unit, double slope, double value)
            {
                if (reading is { StandardDeviation: > 0 } r)
                {
                    double deviation = Math.Sqrt((r.StandardDeviation * r.StandardDeviation)
                        + (slope * slope * travel.StandardDeviation * travel.StandardDeviation));
                    found.Add(new($"{words} at {Pictures.Px.Travel(travel.Si)} mm", unit, new(quantity, travel.Si, value, deviation)));
                }
            }

            // A length counts by its change from the one at the reference height: where the tape began is then no matter.
            double Length(Reading? length, Reading? atReference, double? model) =>
                (length?.Si ?? 0) + (atReference is { } first && model is { } m ? m - first.Si : 0);

            Add(step.Camber, TraceQuantity.Camber, "camber", Units.Degree, here.CamberByTravel, step.Camber?.Si ?? 0);
            Add(step.Toe, TraceQuantity.Toe, "toe", Units.Degree, here.ToeByTravel, step.Toe?.Si ?? 0);
            Add(step.Outboard, TraceQuantity.Outboard, "wheel out", Units.Millimetre, here.ContactByRiseAcross, step.Outboard?.Si ?? 0);
            if (here.Spring is { } spring)
            {
                Add(step.SpringLength, TraceQuantity.SpringLength, "spring axis", Units.Millimetre, spring.MotionRatio,
                    Length(step.SpringLength, corner.SpringAxisLength, rough?.Spring?.Length));
            }

            if (here.Damper is { } damper)
            {
                Add(step.DamperLength, TraceQuantity.DamperLength, "damper axis", Units.Millimetre, damper.MotionRatio,
                    Length(step.DamperLength, corner.DamperAxisLength, rough?.Damper?.Length));
            }
        }

        return found;
    }

    /// <summary>Fits. Takes a fraction of a second.</summary>
    public static PointFit Of(Corner corner, CornerHardpoints points)
    {
        ArgumentNullException.ThrowIfNull(corner);
        ArgumentNullException.ThrowIfNull(points);
        var readings = ReadingsOf(corner, points);

        // Readings were taken at the hub's face, so the linkage is asked about that point.
        var ready = points.Ready();
        Vec3 hub = points.Linkage.Side > 0 ? ready.Origin : new Vec3(ready.Origin.X, -ready.Origin.Y, ready.Origin.Z);
        // Camber and toe where the car was measured are readings too, and go along; alone they would be no fit of points.
        double angle = points.Deviations.Any(d => d.LengthSquared > 0) ? 2 * (corner.Camber?.StandardDeviation ?? 0) : 0;
        var result = HardpointFit.Fit(
            points.Linkage with { WheelCentre = hub }, [.. points.Deviations.Select(d => d * 2)],
            [.. readings.Select(r => r.Reading)], angle);
        return new(points, readings, result);
    }

    /// <summary>The table with the fitted points and the tolerances that are left to them.</summary>
    public HardpointTable Take(HardpointTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        for (int i = 0; i < Result.Joints.Count; i++)
        {
            var (joint, field) = (Result.Joints[i], Points.Joints[i].Field);
            if (field.Get(table) is BodyPoint { X: { } x, Y: { } y, Z: { } z })
            {
                table = RecordShape.Of<HardpointTable>().With(table, field, new BodyPoint
                {
                    X = Moved(x, joint.Moved.X, joint.Deviation.X),
                    Y = Moved(y, joint.Moved.Y, joint.Deviation.Y),
                    Z = Moved(z, joint.Moved.Z, joint.Deviation.Z),
                });
            }
        }

        return table;
    }

    private static Reading Moved(Reading reading, double by, double left)
    {
        if (!(left > 0))
        {
            return reading;
        }

        // What the readings did not see keeps its text; what they did gets a hundredth of a millimetre, and a tolerance rounded up.
        double tolerance = Math.Max(0.01, Math.Ceiling(2000 * left * 100) / 100);
        bool seen = tolerance < 2000 * reading.StandardDeviation * 0.995;
        bool still = Math.Abs(by) < Smallest;
        return still && !seen ? reading : reading with
        {
            Value = still ? reading.Value : Quantity.Of(Math.Round((reading.Si + by) * 1000, 2), Units.Millimetre),
            Tolerance = seen ? new Tolerance(Quantity.Of(tolerance, Units.Millimetre), ToleranceKind.TwoSigma) : reading.Tolerance,
        };
    }

    /// <summary>How it ended, in words.</summary>
    public string Words => Result.Why switch
    {
        FitStop.Converged => $"Fitted: misfit {Result.MisfitPerReading:0.00} a reading (1 is what the stated tolerances let expect).",
        FitStop.NoFurtherDown => "Fitted as far as it goes; no step made it better, though the last one was not small. Look at the "
            + "residuals before you take it.",
        FitStop.IterationLimit => "Stopped after many steps; these are the best points found. Look at the residuals before you take them.",
        FitStop.RoughCannotReach => "The linkage as it stands cannot follow the wheel to one of its "
            + "readings. A point is far off: look at the furthest travel in the picture.",
        _ => Readings.Count == 0 ? "There is no cycled reading to fit to." : "No point has a tolerance, so none may move.",
    };
}
