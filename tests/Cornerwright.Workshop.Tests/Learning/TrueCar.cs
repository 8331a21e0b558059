using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Tests.Doubt;

namespace Cornerwright.Workshop.Tests.Learning;

/// <summary>
/// A car whose true numbers are known: each drawn once about its reading,
/// by the reading's own tolerance, and shared by all corners and builds.
/// </summary>
internal sealed class TrueCar(Car car, Random random)
{
    private readonly Dictionary<string, double> _truth = new(StringComparer.Ordinal);

    /// <summary>True height of the hub below the arch, m, in the load case driver; NaN out of reach.</summary>
    public double Height(Build build, CornerPlace place)
    {
        var (plan, numbers, height) = Numbers(build, place);
        return numbers.X[height] - numbers.TravelUnder(numbers.X[plan.Loads[0].Load] * 9.80665);
    }

    public double Load(Build build, CornerPlace place)
    {
        var (plan, numbers, _) = Numbers(build, place);
        return numbers.X[plan.Loads[0].Load];
    }

    /// <summary>Readings after the work as a person would take them: heights ±1.5 mm, loads ±3 kg.</summary>
    public Occasion Read(Build build, string id)
    {
        var occasion = new Occasion { Id = id, Name = id, LoadCase = car.LoadCases[0].Id, Fitted = build };
        foreach (var place in Places.Corners)
        {
            occasion = occasion.With(place, new CornerReadings
            {
                Height = Off(Height(build, place), 0.0015, Units.Millimetre, "1.5 mm", ReadingSource.Tape),
                Load = Off(Load(build, place), 3, Units.Kilogram, "3 kg", ReadingSource.Scale),
            });
        }

        return occasion;
    }

    private Reading Off(double truth, double twoSigma, Unit unit, string tolerance, ReadingSource source)
    {
        double read = truth + (twoSigma / 2 * Mechanics.Doubt.NormalDistribution.Quantile((random.Next() + 0.5) / int.MaxValue));
        return new Reading(Quantity.Of(Math.Round(unit.FromSi(read), 6), unit),
            new Tolerance(QuantityText.ParseTolerance(tolerance, unit.Dimension, "").Value, ToleranceKind.TwoSigma), source);
    }

    private (CornerPlan Plan, CornerReader Numbers, Handle Height) Numbers(Build build, CornerPlace place)
    {
        var plan = CornerPlan.Compile(car with { UseLearned = false }, build, place, CarLearning.InUse(car with { UseLearned = false }));
        var height = plan.Inputs.Add(plan.Path + "/rideHeight", "hub centre to arch edge", plan.Corner.RideHeight);
        var numbers = new SolvedCorner(plan);
        for (int i = 0; i < numbers.Values.Length; i++)
        {
            var input = plan.Inputs.Inputs[i];
            if (input.Sigma > 0)
            {
                if (!_truth.TryGetValue(input.Path, out double value))
                {
                    _truth[input.Path] = value = RandomCorner.One(input, random);
                }

                numbers.Values[i] = value;
            }
        }

        numbers.MakeMotion();
        return (plan, numbers.Read, height);
    }
}
