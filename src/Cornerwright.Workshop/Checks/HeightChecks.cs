using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Where the car stands, and whether the readings agree with the springs that carry it.</summary>
internal static class HeightChecks
{
    /// <summary>
    /// Readings are called contradictory when the present springs miss the measured
    /// height by this much beyond the doubt, m. Common practice, no source.
    /// </summary>
    private const double AgreementBand = 0.010;

    /// <summary>What axle and car checks combine.</summary>
    public static IEnumerable<CarriedValue> Carried(CornerPlan plan)
    {
        int wanted = CornerPlan.Wanted;
        var missing = plan.MissingForRide(wanted);
        var height = plan.Inputs.Add(plan.Path + "/rideHeight", "hub centre to arch edge", plan.Corner.RideHeight);
        yield return new(CarriedKind.RideTravel) { Missing = missing, Value = n => n.Ride[wanted] };
        yield return new(CarriedKind.Height) { Missing = [.. missing, .. plan.Inputs.Lacking(height)], Value = n =>
            n.X[height] - n.Ride[wanted] };
    }

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        int wanted = CornerPlan.Wanted;
        var missing = plan.MissingForRide(wanted);
        var height = plan.Inputs.Add(plan.Path + "/rideHeight", "hub centre to arch edge", plan.Corner.RideHeight);
        var target = plan.Place.Axle() == AxlePlace.Front ? plan.Limits.FrontHeight : plan.Limits.RearHeight;
        if (target is not null)
        {
            double band = Limit(plan.Limits.HeightBand);
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.RideHeight,
                Missing = [.. missing, .. plan.Inputs.Lacking(height)],
                Value = n => n.X[height] - n.Ride[wanted],
                Low = target.Si - band,
                High = target.Si + band,
                Sentence = (_, value) => $"The hub stands {Mm(value, 0)} below the arch edge; {Mm(target.Si, 0)} is wanted, "
                    + $"{Mm(Math.Abs(value - target.Si), 0)} {(value > target.Si ? "lower than it stands" : "higher than it stands")}.",
                Worst = n => new WorstState($"at ride, load case {plan.Loads[wanted].Case.Name}", n.Ride[wanted]),
            };
        }

        if (plan.Now?.Id == plan.Build.Id)
        {
            int measured = Math.Max(0, Enumerable.Range(0, plan.Loads.Count)
                .FirstOrDefault(i => plan.Loads[i].Case.Id == plan.Car.MeasuredLoadCase, 0));
            yield return new CornerCheck
            {
                Kind = CheckCatalogue.ReadingsAgree,
                Curable = false,
                Missing = plan.MissingForRide(measured),
                Value = n => n.Ride[measured],
                Low = -AgreementBand,
                High = AgreementBand,
                Sentence = (_, value) => Math.Abs(value) <= AgreementBand
                    ? $"The springs on the car should carry it {Mm(Math.Abs(value))} from where it was measured: the readings agree."
                    : $"The springs on the car should carry it {Mm(Math.Abs(value))} {(value > 0 ? "lower" : "higher")} than it was "
                    + $"measured: one of the readings is off.",
                Worst = n => new WorstState("as measured", n.Ride[measured]),
            };
        }
    }
}
